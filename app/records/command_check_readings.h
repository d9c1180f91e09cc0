// What `check` says of what was read at a job's press: registration, levelling and heat. For
// information: none of it is a finding, nor changes how `check` ends.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "app/records/console.h"
#include "core/head_registration.h"
#include "core/job.h"

namespace carriageway {

/// What the rounds of a head come to: its last round or, where that is a print of one platen among
/// several, all of those prints.
struct RoundsRead {
    HeadRegistration last;
    std::optional<PlatenPrints> prints; ///< where the last round is one of them
};

/// Of a head with rounds.
RoundsRead rounds_read(const Job& job, const Head& head);

/// What was read, in words; empty where there are no rounds, no heights and no flash unit.
std::string readings_text(const Console& console, const Job& job);

/// Parts of the report (command_json.h); null: the job has no such readings, or no flash unit.
nlohmann::ordered_json registration_report(const Job& job, const Head& head);
nlohmann::ordered_json levelling_report(const Job& job);
nlohmann::ordered_json heat_report(const Job& job);

} // namespace carriageway
