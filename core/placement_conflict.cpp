#include "core/placement_conflict.h"

#include <algorithm>

namespace carriageway {
namespace {

/// The share of the work that the wishes are, for the guess at progress. Ours.
constexpr double share_of_wishes = 0.7;

PlacementSettings any_of(PlacementSettings settings) {
    settings.any = true;
    settings.alternatives = 1;
    settings.below.reset();
    return settings;
}

} // namespace

PlacementConflictSearch::PlacementConflictSearch(const PlacementQuestion& question,
                                                 PlacementSettings settings)
    : question_(question), settings_(any_of(settings)), search_(question, settings_) {}

PlacementState PlacementConflictSearch::run(long steps) {
    while (state_ == PlacementState::running && steps > 0) {
        const std::uint64_t before = search_.nodes();
        // At least one step a search, so that one that is over at once counts too.
        const PlacementState outcome = search_.run(steps);
        steps -= std::max<long>(1, static_cast<long>(search_.nodes() - before));
        if (outcome != PlacementState::running) judge(outcome);
    }
    return state_;
}

double PlacementConflictSearch::progress() const {
    return state_ == PlacementState::running ? progress_ : 1.0;
}

void PlacementConflictSearch::ask(const PlacementQuestion& question) {
    nodes_ += search_.nodes();
    search_ = PlacementSearch(question, settings_);
}

void PlacementConflictSearch::judge(PlacementState outcome) {
    if (outcome == PlacementState::refused) {
        state_ = PlacementState::refused;
        return;
    }
    const bool unknown = outcome == PlacementState::too_large;
    if (unknown) conflict_.complete = false;
    const bool possible = outcome == PlacementState::found;
    if (stage_ == Stage::wishes) return judge_range(possible || unknown);
    if (stage_ == Stage::facts) return judge_fact(possible);
    if (outcome != PlacementState::impossible) {
        state_ = possible ? PlacementState::impossible : PlacementState::too_large;
        return;
    }
    stage_ = Stage::wishes;
    wishes_ = wishes_of(question_);
    out_.assign(wishes_.size(), false);
    ranges_.push_back({0, wishes_.size()});
    next_range();
}

/// `possible`: there is a placement without the last range (or it can't be told).
void PlacementConflictSearch::judge_range(bool possible) {
    const Range range = ranges_.back();
    ranges_.pop_back();
    if (!possible) {
        for (std::size_t i = range.from; i < range.to; ++i) out_[i] = true;
    } else if (range.to - range.from == 1) {
        conflict_.wishes.push_back(wishes_[range.from]);
    } else {
        const std::size_t middle = range.from + (range.to - range.from) / 2;
        ranges_.push_back({middle, range.to});
        ranges_.push_back({range.from, middle});
    }
    next_range();
}

void PlacementConflictSearch::next_range() {
    while (!ranges_.empty() && ranges_.back().from == ranges_.back().to) ranges_.pop_back();
    if (ranges_.empty()) {
        stage_ = Stage::facts;
        fact_ = -1;
        next_fact();
        return;
    }
    const Range range = ranges_.back();
    progress_ = std::max(progress_, share_of_wishes * static_cast<double>(range.from) /
                                        static_cast<double>(wishes_.size()));
    PlacementQuestion rest = question_;
    for (std::size_t i = 0; i < wishes_.size(); ++i)
        if (out_[i] || (i >= range.from && i < range.to)) give_up(rest, wishes_[i]);
    ask(rest);
}

/// Doubles what is tried until it helps, then halves what is left between.
void PlacementConflictSearch::judge_fact(bool possible) {
    const auto fact = static_cast<PressFact>(fact_);
    if (possible)
        enough_ = tried_;
    else
        too_few_ = tried_;
    if (!is_counted(fact)) {
        if (possible) conflict_.needs.push_back({fact, 0});
        return next_fact();
    }
    const int most = most_more(question_, fact);
    if (enough_ == 0 && tried_ < most) {
        tried_ = std::min(most, 2 * tried_);
    } else if (enough_ - too_few_ > 1) {
        tried_ = too_few_ + (enough_ - too_few_) / 2;
    } else {
        const int already = fact == PressFact::flash_units ? question_.flash_units : 0;
        if (enough_ > 0) conflict_.needs.push_back({fact, already + enough_});
        return next_fact();
    }
    ask(*with_fact(question_, fact, tried_));
}

void PlacementConflictSearch::next_fact() {
    too_few_ = enough_ = 0;
    tried_ = 1;
    while (++fact_ < press_facts) {
        const auto changed = with_fact(question_, static_cast<PressFact>(fact_), tried_);
        if (!changed) continue;
        progress_ =
            std::max(progress_, share_of_wishes + (1.0 - share_of_wishes) * fact_ / press_facts);
        return ask(*changed);
    }
    state_ = PlacementState::found;
}

PlacementConflict placement_conflict(const PlacementQuestion& question,
                                     const PlacementSettings& settings) {
    PlacementConflictSearch search(question, settings);
    while (search.run(100'000) == PlacementState::running) {
    }
    return search.conflict();
}

} // namespace carriageway
