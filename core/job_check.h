// What a job's parts must satisfy, one part at a time: apply() and fault_of() judge by the same
// rules.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/edit.h"

namespace carriageway {

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

/// Whether a station exists on the job's press.
bool has_station(const Job& job, int station);

/// What a station of the job is for; it must exist.
StationUse use_of(const Job& job, int station);

}  // namespace carriageway
