// What `register` writes with --json (command_json.h): kinds and numbers, no sentences.
#pragma once

#include <nlohmann/json.hpp>

#include "core/head_registration.h"

namespace carriageway {

/// "within", "turn", "leave", "read_finer", "no_adjusters" or "no_answer".
const char* verdict_name(RegistrationVerdict verdict);

/// What to turn at each adjuster of the press.
nlohmann::ordered_json adjusters_report(const Advice& advice, const PressProfile& press);

/// What stands out of prints by platen.
nlohmann::ordered_json signs_report(const Scatter& scatter);

/// The error of the farthest mark of prints, mm; 0 without any.
double farthest_error(const std::vector<PlatenReading>& prints);

/// Adds one print to a report: how it lies, what is wrong with it and what to turn. The head's
/// marks and adjusters must have given an answer. `round` counts from 1.
void add_print(nlohmann::ordered_json& report, const HeadRegistration& head,
               const PressProfile& press, double tolerance, std::size_t round);

/// Adds prints by platen and turn: what is the head's, the platens' and scatter. `error_max` is of
/// the farthest mark, mm.
void add_scatter(nlohmann::ordered_json& report, const Scatter& scatter, double error_max,
                 double tolerance);

} // namespace carriageway
