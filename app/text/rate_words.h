// Which word of the catalogue belongs to which station, step and lever of a rate.
#pragma once

#include <string>
#include <vector>

#include "app/text/words.h"
#include "core/rate_worth.h"

namespace carriageway {

/// What a station is for, alone: "flash". `both`: laying on and taking off are done at one station.
Word kind_word(StationKind kind, bool both);

/// A station within a sentence, its number to be filled in: "station {0}'s flash".
Word sentence_word(StationKind kind, bool both);

/// A change as a thing, its size to be filled in: "{0} less stroke".
Word lever_word(Lever lever, StationKind kind, bool both);

/// Several stations within a sentence: "head 5, head 6 and station 3's flash".
std::string stations_in_words(Language language, const RatePlan& plan,
                              const std::vector<std::size_t>& places);

} // namespace carriageway
