#include "core/practice_next.h"

#include <algorithm>

namespace carriageway {

namespace {

constexpr std::int64_t ms_per_day = 86'400'000;

/// What `better` says of two topics' records decides; of equal ones the one taught first.
template <class Fits, class Better>
std::optional<PracticeTopic> best(const TopicsDone& done, Fits fits, Better better) {
    std::optional<PracticeTopic> found;
    const auto of = [&](PracticeTopic topic) -> const TopicDone& {
        return done[static_cast<std::size_t>(topic)];
    };
    for (const PracticeTopic topic : topics_in_order) {
        if (!has_exercises(topic) || !fits(of(topic))) continue;
        if (!found || better(of(topic), of(*found))) found = topic;
    }
    return found;
}

bool is_longer_ago(const TopicDone& a, const TopicDone& b) { return a.last < b.last; }

} // namespace

std::optional<NextTopic> practice_next(const TopicsDone& done, std::int64_t now) {
    const auto days_since = [&](const TopicDone& topic) {
        return std::max<std::int64_t>(0, now - topic.last) / ms_per_day;
    };
    const auto untried = best(
        done, [](const TopicDone& topic) { return topic.attempts == 0; },
        [](const TopicDone&, const TopicDone&) { return false; });
    if (untried) return NextTopic{*untried, NextReason::never_tried, 0};

    const auto weakest = best(
        done, [](const TopicDone& topic) { return topic.mean_of_last < managed_score; },
        [](const TopicDone& a, const TopicDone& b) { return a.mean_of_last < b.mean_of_last; });
    if (weakest) return NextTopic{*weakest, NextReason::not_managed, 0};

    const auto rested = best(
        done, [&](const TopicDone& topic) { return days_since(topic) >= rested_days; },
        is_longer_ago);
    if (rested) {
        const std::int64_t days = days_since(done[static_cast<std::size_t>(*rested)]);
        return NextTopic{*rested, NextReason::long_ago,
                         static_cast<int>(std::min<std::int64_t>(days, 36'500))};
    }

    const auto lowest = best(
        done, [](const TopicDone& topic) { return topic.level < highest_level; },
        [](const TopicDone& a, const TopicDone& b) {
            return a.level < b.level || (a.level == b.level && is_longer_ago(a, b));
        });
    if (lowest) return NextTopic{*lowest, NextReason::low_level, 0};
    return std::nullopt;
}

} // namespace carriageway
