#include "core/placement_search.h"

#include <algorithm>
#include <limits>

namespace carriageway {
namespace {

constexpr std::size_t first_table = 1024; // a power of two

} // namespace

PlacementSearch::PlacementSearch(const PlacementQuestion& question, PlacementSettings settings)
    : question_(question), settings_(settings), fault_(placement_fault(question)) {
    settings_.alternatives = std::clamp(settings_.alternatives, 1, most_alternatives);
    settings_.most_kept = std::min<std::size_t>(settings_.most_kept,
                                                std::numeric_limits<std::uint32_t>::max() - 1000);
    if (fault_.refusal != PlacementRefusal::none) {
        state_ = PlacementState::refused;
        return;
    }
    begin();
}

void PlacementSearch::begin() {
    rules_ = placement_rules(question_);
    rules_.costless = settings_.any;
    table_.assign(first_table, 0);
    Begun root;
    settle_flashes(rules_, root.node);
    const std::optional<PackedCost> rest = rest_at_least(rules_, root.node);
    if (!rest) {
        state_ = PlacementState::impossible;
        return;
    }
    root.bound = *rest;
    begun_ = {Begun{}, root};
    queue_ = {1};
}

PlacementState PlacementSearch::run(long steps) {
    while (state_ == PlacementState::running && steps-- > 0) take_up();
    return state_;
}

double PlacementSearch::progress() const {
    return state_ == PlacementState::running ? progress_ : 1.0;
}

void PlacementSearch::take_up() {
    const auto compare = [this](std::uint32_t a, std::uint32_t b) { return later(a, b); };
    const auto stop = [this] {
        state_ = found_.empty() ? PlacementState::impossible : PlacementState::found;
    };
    if (queue_.empty()) return stop();
    std::pop_heap(queue_.begin(), queue_.end(), compare);
    const std::uint32_t index = queue_.back();
    queue_.pop_back();
    const Begun begun = begun_[index];
    if (begun.beaten) return;
    if (settings_.below && begun.bound >= packed(*settings_.below)) return stop();
    ++nodes_;
    const double share = static_cast<double>(std::popcount(begun.node.placed)) / rules_.colours;
    progress_ = std::max(
        progress_, (static_cast<double>(found_.size()) + 0.99 * share) / settings_.alternatives);
    if (finished(rules_, begun.node)) {
        found_.push_back(placement_at(index));
        if (static_cast<int>(found_.size()) == settings_.alternatives) stop();
        return;
    }
    for (int k = 0; k < static_cast<int>(rules_.kinds.size()); ++k) extend(index, k);
    extend(index, flash_content);
    extend(index, blank_content);
    if (begun_.size() > settings_.most_kept) state_ = PlacementState::too_large;
}

void PlacementSearch::extend(std::uint32_t from, int content) {
    const Begun parent = begun_[from];
    std::optional<PlacementStep> step = place_next(rules_, parent.node, content);
    if (!step) return;
    settle_flashes(rules_, step->node);
    const std::optional<PackedCost> rest = rest_at_least(rules_, step->node);
    if (!rest) return;
    Begun child;
    child.node = step->node;
    child.parent = from;
    child.cost = parent.cost + step->cost;
    child.bound = std::max(parent.bound, child.cost + *rest);
    child.content = static_cast<std::uint8_t>(content);
    begun_.push_back(child);
    const auto index = static_cast<std::uint32_t>(begun_.size() - 1);
    if (!keep(index)) {
        begun_.pop_back();
        return;
    }
    queue_.push_back(index);
    std::push_heap(queue_.begin(), queue_.end(),
                   [this](std::uint32_t a, std::uint32_t b) { return later(a, b); });
}

/// Among those of its node, the best first, unless enough better ones are there.
bool PlacementSearch::keep(std::uint32_t index) {
    std::uint32_t* link = &slot_of(begun_[index].node);
    const bool first = *link == 0;
    int better = 0;
    while (*link != 0 && cheaper(*link, index)) {
        if (++better == settings_.alternatives) return false;
        link = &begun_[*link].next;
    }
    begun_[index].next = *link;
    *link = index;
    // One too many now: the last of the chain.
    for (++better; *link != 0 && better < settings_.alternatives; ++better)
        link = &begun_[*link].next;
    if (*link != 0 && begun_[*link].next != 0) {
        begun_[begun_[*link].next].beaten = true;
        begun_[*link].next = 0;
    }
    if (first && ++distinct_ * 2 > table_.size()) grow_table();
    return true;
}

std::uint32_t& PlacementSearch::slot_of(const PlacementNode& node) {
    std::size_t at = placement_hash(node) & (table_.size() - 1);
    while (table_[at] != 0 && !(begun_[table_[at]].node == node))
        at = (at + 1) & (table_.size() - 1);
    return table_[at];
}

void PlacementSearch::grow_table() {
    std::vector<std::uint32_t> old(table_.size() * 2, 0);
    old.swap(table_);
    for (const std::uint32_t index : old)
        if (index != 0) slot_of(begun_[index].node) = index;
}

/// Whether `a` comes before `b` in placement.h's order of stations; a beginning comes before what
/// comes of it.
bool PlacementSearch::ahead(std::uint32_t a, std::uint32_t b) const {
    bool result = begun_[a].node.station < begun_[b].node.station;
    while (begun_[a].node.station > begun_[b].node.station) a = begun_[a].parent;
    while (begun_[b].node.station > begun_[a].node.station) b = begun_[b].parent;
    while (a != b) {
        const std::uint8_t of_a = begun_[a].content;
        const std::uint8_t of_b = begun_[b].content;
        if (of_a != of_b) result = of_a < of_b;
        a = begun_[a].parent;
        b = begun_[b].parent;
    }
    return result;
}

bool PlacementSearch::later(std::uint32_t a, std::uint32_t b) const {
    if (begun_[a].bound != begun_[b].bound) return begun_[a].bound > begun_[b].bound;
    return ahead(b, a);
}

bool PlacementSearch::cheaper(std::uint32_t a, std::uint32_t b) const {
    if (begun_[a].cost != begun_[b].cost) return begun_[a].cost < begun_[b].cost;
    return ahead(a, b);
}

Placement PlacementSearch::placement_at(std::uint32_t index) const {
    std::vector<int> contents;
    for (std::uint32_t at = index; begun_[at].node.station > 0; at = begun_[at].parent)
        contents.push_back(begun_[at].content);
    std::reverse(contents.begin(), contents.end());
    return placement_of(rules_, question_, contents, unpacked(begun_[index].cost));
}

PlacementSearch place(const PlacementQuestion& question, const PlacementSettings& settings) {
    PlacementSearch search(question, settings);
    while (search.run(100'000) == PlacementState::running) {
    }
    return search;
}

} // namespace carriageway
