#include "core/placement_reasons.h"

#include <algorithm>

namespace carriageway {
namespace {

PlacementSettings better_than(const PlacementCost& best, PlacementSettings settings) {
    settings.any = false;
    settings.alternatives = 1;
    settings.below = best;
    return settings;
}

} // namespace

PlacementReasons::PlacementReasons(const PlacementQuestion& question, const PlacementCost& best,
                                   PlacementSettings settings)
    : question_(question), settings_(better_than(best, settings)), search_(question, settings_) {
    if (search_.state() == PlacementState::refused) {
        state_ = PlacementState::refused;
        return;
    }
    for (const PlacementWish& wish : wishes_apart(question)) subjects_.emplace_back(wish);
    for (int fact = 0; fact < press_facts; ++fact)
        if (with_fact(question, static_cast<PressFact>(fact)))
            subjects_.emplace_back(static_cast<PressFact>(fact));
    if (subjects_.empty())
        state_ = PlacementState::found;
    else
        search_ = PlacementSearch(asked(0), settings_);
}

PlacementQuestion PlacementReasons::asked(std::size_t index) const {
    if (const auto* wish = std::get_if<PlacementWish>(&subjects_[index]))
        return without(question_, {wish, 1});
    return *with_fact(question_, std::get<PressFact>(subjects_[index]));
}

PlacementState PlacementReasons::run(long steps) {
    while (state_ == PlacementState::running && steps > 0) {
        const std::uint64_t before = search_.nodes();
        // At least one step a search, so that one that is over at once counts too.
        const PlacementState outcome = search_.run(steps);
        steps -= std::max<long>(1, static_cast<long>(search_.nodes() - before));
        if (outcome == PlacementState::running) continue;
        if (outcome == PlacementState::too_large) complete_ = false;
        if (!search_.found().empty())
            reasons_.push_back({subjects_[at_], search_.found().front().cost});
        next();
    }
    return state_;
}

void PlacementReasons::next() {
    if (++at_ == subjects_.size()) {
        state_ = PlacementState::found;
        return;
    }
    nodes_ += search_.nodes();
    search_ = PlacementSearch(asked(at_), settings_);
}

double PlacementReasons::progress() const {
    if (state_ != PlacementState::running) return 1.0;
    return static_cast<double>(at_) / static_cast<double>(subjects_.size());
}

} // namespace carriageway
