// What a person should practise next: one simple rule, so that it can be told and argued with.
//
// 1. What was never tried, in the order in which it is taught (topics_in_order).
// 2. Else what isn't managed yet: the topic whose last five exercises have the lowest mean below
//    managed_score.
// 3. Else what was practised longest ago, if that is rested_days or more: what is known
//    fades.
// 4. Else the topic at the lowest level, unless all are at the highest; of equal ones the one that
//    was practised longest ago.
// 5. Else nothing in particular.
//
// The rule is ours; that practice spread over time holds better than massed practice is well known
// (N. J. Cepeda et al., "Distributed practice in verbal recall tasks", Psychological Bulletin
// 132(3), 2006; from memory), the two weeks are a judgement.
#pragma once

#include <array>
#include <cstdint>
#include <optional>

#include "core/practice_level.h"
#include "core/practice_topic.h"

namespace carriageway {

/// What one person has done of one topic.
struct TopicDone {
    int attempts = 0;
    int level = 0;                 ///< of the next exercise (next_level()); 0: never tried
    double mean_of_last = 0.0;     ///< score of the last five, or of as many as there are, 0 to 1
    double seconds = 0.0;          ///< in all
    std::int64_t last = 0;         ///< when the last one was done, ms since 1970; 0: never
    bool operator==(const TopicDone&) const = default;
};

using TopicsDone = std::array<TopicDone, topic_count>; ///< by PracticeTopic

/// How many of the last exercises the mean is of.
inline constexpr std::size_t mean_of = 5;

/// After so many days without it a topic is due again.
inline constexpr int rested_days = 14;

enum class NextReason {
    never_tried,
    not_managed, ///< the mean of the last five is below managed_score
    long_ago,    ///< `days` since it was practised
    low_level,
};

struct NextTopic {
    PracticeTopic topic = PracticeTopic::shortest_stroke;
    NextReason reason = NextReason::never_tried;
    int days = 0; ///< for long_ago
    bool operator==(const NextTopic&) const = default;
};

/// What to practise next; only what has exercises. Nothing: all are managed at the highest level,
/// and none is due. `now` in ms since 1970; a time after it counts as now.
std::optional<NextTopic> practice_next(const TopicsDone& done, std::int64_t now);

} // namespace carriageway
