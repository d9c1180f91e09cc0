// Sentences about the rate of a job: how fast it runs, which station sets the rate and why, and
// what a change is worth. Used by the Rate place and by the command line alike.
//
// Times to a hundredth of a second, pieces an hour to a whole one, what is gained to a tenth.
#pragma once

#include <string>
#include <vector>

#include "app/text/measure.h"
#include "core/job_pace.h"

namespace carriageway {

/// "2.69 s".
std::string pace_time(double seconds);

/// A longer time, as people say it: "1 h 12 min", "12 min", below two minutes "95 s".
std::string duration_text(double seconds);

/// A station alone: "Head 5 · Sail yellow", "Station 3 · flash".
std::string station_name(Language language, const Job& job, const RatePlan& plan,
                         std::size_t place);

/// A station within a sentence: "head 5", "station 3's flash".
std::string station_in_words(Language language, const RatePlan& plan, std::size_t place);

/// What happens in a step: "print stroke". `both`: laying on and taking off are one.
Word step_word(StepKind kind, bool both = false);

/// "514 pieces an hour", "42.9 dozen an hour".
std::string rate_text(Language language, const Rate& rate);
std::string dozens_text(Language language, const Rate& rate);

/// From piece to piece: the index and the slowest station.
std::string cycle_text(Language language, const JobPace& pace);

/// The station that sets the rate, and why.
struct SaidStation {
    std::string title;
    std::vector<std::string> why; ///< what its time is made of, and who waits
};
SaidStation slowest_text(Language language, const Job& job, const JobPace& pace);

/// What the time of a station is made of: "head comes down 0.25 s, flood stroke 0.84 s, ...".
/// Empty for one without work.
std::string steps_text(Language language, const StationPace& station, bool both);

/// A change as a thing: "10 mm less stroke". As large as was tried, else as pace_steps has it.
std::string lever_text(Language language, LengthUnit unit, const JobPace& pace,
                       const Worth& worth);

/// What it is worth: "5.1 more pieces an hour", or "nothing: station 3's flash is slower by 1.2 s".
std::string worth_text(Language language, const JobPace& pace, const Worth& worth);

/// Up to where a change is worth anything; empty where it isn't.
std::string break_even_text(Language language, LengthUnit unit, const JobPace& pace,
                            const Worth& worth);

/// "10 mm less stroke → ..." and break_even_text(): what is told of a station's levers. The
/// stroke or the station's own time always, speeds where they gain.
std::vector<std::string> worth_lines(Language language, LengthUnit unit, const JobPace& pace,
                                     std::size_t place);

/// What it is worth to make the table's turn shorter; empty where the table takes no time.
std::string index_worth_text(Language language, LengthUnit unit, const JobPace& pace);

/// What all strokes at their shortest are worth; empty without heads.
std::string joint_text(Language language, const JobPace& pace);

/// The time for the run's pieces, and what is in it. Empty without a rate.
std::vector<std::string> run_text(Language language, const Job& job, const JobPace& pace);

/// How far the rate may be off, and what is assumed for that. Empty without a range.
std::vector<std::string> range_text(Language language, const JobPace& pace);

/// Why there is no rate, a head a line; empty where there is one.
std::vector<std::string> no_rate_text(Language language, const Job& job, const JobPace& pace);

/// Where handling is counted, if not where the job says; else empty.
std::string handling_text(Language language, const JobPace& pace);

/// That heat goes by another cycle; empty where it doesn't.
std::string heat_cycle_text(Language language, const Job& job, const JobPace& pace);

} // namespace carriageway
