// What a job's parts must satisfy, one part at a time: apply() and fault_of() judge by the same
// rules.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/adjusters.h"
#include "core/edit.h"

namespace carriageway {

// Limits of what no field limits, ours: they only keep slips of the keyboard out.
inline constexpr double most_mm_per_turn = 100.0;           ///< of a screw
inline constexpr std::size_t most_adjusters = 16;           ///< of a head, or a platen
inline constexpr double most_turns = 1000.0;                ///< of a screw, both ways
inline constexpr std::uint32_t most_number = 1'000'000;     ///< of a platen or a turn of the press
inline constexpr double most_height = 1000.0;               ///< read, in mm, both ways

/// Whether a text may be a name: valid UTF-8 (RFC 3629) of at most longest_name bytes.
bool is_name(const std::string& text);

/// Whether bytes are valid UTF-8 (RFC 3629).
bool is_utf8(std::string_view text);

/// The first fault of an image: a number outside its limits, or corners that make no outline.
std::optional<JobFault> image_fault(const Image& image);

/// The first fault of stops: a number outside its limits, or the two crossed.
std::optional<JobFault> stops_fault(const Stops& stops);

/// The first fault of a head by itself; whether its id and its station are free is the job's.
std::optional<JobFault> head_fault(const Head& head);

/// The first of a profile's numbers that contradict one another; each is taken to be within its
/// own limits.
std::optional<JobFault> press_contradiction(const PressProfile& press);

/// Whether rounds of marks, or heights, may be kept: not too many, places within an image's limits,
/// turns within an adjuster's.
bool are_rounds(const std::vector<MarkRound>& rounds);
bool are_height_readings(const std::vector<HeightReading>& readings);

/// Whether what was noted on a walk, or in a run, may be kept: in order and each once, not too much,
/// numbers within their fields' limits, texts not too long and valid UTF-8.
bool is_walk_mark(const WalkMark& mark);
bool is_walk(const std::vector<WalkMark>& marks);
bool is_record(const RunRecord& record);

/// Whether a profile's lists may be kept: ids above 0 and unique, own steps with a text.
bool are_checks(const std::vector<CheckItem>& checks);

/// Order of two marks of a walk: by head, then by field.
inline bool walk_before(const WalkMark& a, const WalkMark& b) {
    return a.head != b.head ? a.head < b.head : a.field < b.field;
}

/// Whether a station exists on the job's press.
bool has_station(const Job& job, int station);

/// What a station of the job is for; it must exist.
StationUse use_of(const Job& job, int station);

}  // namespace carriageway
