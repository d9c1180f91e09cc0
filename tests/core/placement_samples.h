// Questions of placing for tests.
#pragma once

#include <string>
#include <vector>

#include "core/placement_count.h"
#include "core/placement_study.h"
#include "core/placement_wishes.h"
#include "tests/core/sample_job.h"

namespace carriageway::tests {

/// Free colours with ids from 1, on stations that can hold anything.
PlacementQuestion plain_question(int colours, int stations);

/// A question with everything in it that a question can have. `levels`: different orders.
PlacementQuestion random_question(sample::Random& random, int colours, int stations, int levels);

/// The question in words, for INFO.
std::string told(const PlacementQuestion& question);

/// The question with no wishes but these, made anew from what they say.
PlacementQuestion with_only(const PlacementQuestion& question,
                            const std::vector<PlacementWish>& wishes);

/// Wishes without one of them.
std::vector<PlacementWish> without_one(std::vector<PlacementWish> wishes, std::size_t index);

/// Whether there is a placement.
bool possible(const PlacementQuestion& question);

/// All placements counted, as far as that goes.
PlacementCount counted(const PlacementQuestion& question);

/// The study run to its end so many steps at a time; that its progress only grows is checked.
PlacementStudy studied(const PlacementQuestion& question, long steps);

} // namespace carriageway::tests
