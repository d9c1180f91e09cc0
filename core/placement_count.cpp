#include "core/placement_count.h"

#include <algorithm>
#include <limits>

namespace carriageway {
namespace {

constexpr std::uint64_t most = std::numeric_limits<std::uint64_t>::max();

std::uint64_t sum(std::uint64_t a, std::uint64_t b) { return a > most - b ? most : a + b; }

std::uint64_t product(std::uint64_t a, std::uint64_t b) {
    return b != 0 && a > most / b ? most : a * b;
}

/// In how many ways unpinned colours can be swapped within their kinds.
std::uint64_t swaps_of(const PlacementRules& rules) {
    std::uint64_t swaps = 1;
    for (const ColourKind& kind : rules.kinds)
        for (int i = 2; i <= kind.count - std::popcount(kind.pins); ++i)
            swaps = product(swaps, static_cast<std::uint64_t>(i));
    return swaps;
}

} // namespace

PlacementCount::PlacementCount(const PlacementQuestion& question, std::size_t most_kept)
    : fault_(placement_fault(question)), most_kept_(most_kept) {
    if (fault_.refusal != PlacementRefusal::none) {
        state_ = PlacementState::refused;
        return;
    }
    rules_ = placement_rules(question);
    rules_.costless = true;
    swaps_ = swaps_of(rules_);
    PlacementNode root;
    settle_flashes(rules_, root);
    if (rest_at_least(rules_, root))
        begun_.push_back({root, 1});
    else
        state_ = PlacementState::impossible;
}

PlacementState PlacementCount::run(long steps) {
    while (state_ == PlacementState::running && steps-- > 0) take_up();
    return state_;
}

double PlacementCount::progress() const {
    if (state_ != PlacementState::running) return 1.0;
    const double begun = static_cast<double>(begun_.front().first.station);
    const double share = static_cast<double>(done_) / static_cast<double>(begun_.size());
    return (begun + share) / rules_.stations;
}

void PlacementCount::take_up() {
    const auto [node, ways] = begun_[done_];
    ++nodes_;
    for (int k = 0; k < static_cast<int>(rules_.kinds.size()); ++k) add(node, k, ways);
    add(node, flash_content, ways);
    add(node, blank_content, ways);
    if (++done_ == begun_.size()) next_station();
}

void PlacementCount::next_station() {
    if (next_.empty()) {
        state_ = placements_ == 0 ? PlacementState::impossible : PlacementState::found;
    } else if (next_.size() > most_kept_) {
        state_ = PlacementState::too_large;
    } else {
        begun_.assign(next_.begin(), next_.end());
        next_.clear();
        done_ = 0;
    }
}

void PlacementCount::add(const PlacementNode& node, int content, std::uint64_t ways) {
    std::optional<PlacementStep> step = place_next(rules_, node, content);
    if (!step) return;
    settle_flashes(rules_, step->node);
    if (!rest_at_least(rules_, step->node)) return;
    if (finished(rules_, step->node)) {
        placements_ = sum(placements_, product(ways, swaps_));
        return;
    }
    std::uint64_t& sum_of_node = next_[step->node];
    sum_of_node = sum(sum_of_node, ways);
}

} // namespace carriageway
