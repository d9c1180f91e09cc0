// What `register` writes with --json (command_json.h): kinds and numbers, no sentences.
#pragma once

#include <nlohmann/json.hpp>

#include "core/head_registration.h"

namespace carriageway {

/// Adds one print to a report: how it lies, what is wrong with it and what to turn. The head's
/// marks and adjusters must have given an answer. `round` counts from 1.
void add_print(nlohmann::ordered_json& report, const HeadRegistration& head,
               const PressProfile& press, double tolerance, std::size_t round);

/// Adds prints by platen and turn: what is the head's, the platens' and scatter. `error_max` is of
/// the farthest mark, mm.
void add_scatter(nlohmann::ordered_json& report, const Scatter& scatter, double error_max,
                 double tolerance);

} // namespace carriageway
