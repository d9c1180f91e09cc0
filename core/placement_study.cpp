#include "core/placement_study.h"

#include <algorithm>

namespace carriageway {

PlacementStudy::PlacementStudy(const PlacementQuestion& question, PlacementSettings settings)
    : question_(question), settings_(settings), search_(question, settings) {
    if (search_.state() == PlacementState::refused) state_ = PlacementState::refused;
}

PlacementState PlacementStudy::run(long steps) {
    if (state_ != PlacementState::running || steps < 1) return state_;
    if (search_.state() == PlacementState::running) {
        const std::uint64_t before = search_.nodes();
        if (search_.run(steps) == PlacementState::running) return state_;
        steps -= static_cast<long>(search_.nodes() - before);
    }
    if (std::holds_alternative<std::monostate>(second_)) {
        if (search_.state() == PlacementState::found)
            second_.emplace<PlacementReasons>(question_, search_.found().front().cost, settings_);
        else if (search_.state() == PlacementState::impossible && !settings_.below)
            second_.emplace<PlacementConflictSearch>(question_, settings_);
        else
            return state_ = search_.state();
    }
    PlacementState second = PlacementState::running;
    if (auto* reasons = std::get_if<PlacementReasons>(&second_)) second = reasons->run(steps);
    if (auto* conflict = std::get_if<PlacementConflictSearch>(&second_))
        second = conflict->run(steps);
    if (second != PlacementState::running) state_ = search_.state();
    return state_;
}

double PlacementStudy::progress() const {
    if (state_ != PlacementState::running) return 1.0;
    double second = 0.0;
    if (const auto* reasons = std::get_if<PlacementReasons>(&second_)) second = reasons->progress();
    if (const auto* conflict = std::get_if<PlacementConflictSearch>(&second_))
        second = conflict->progress();
    return 0.5 * (search_.progress() + second);
}

std::uint64_t PlacementStudy::nodes() const {
    std::uint64_t nodes = search_.nodes();
    if (const auto* reasons = std::get_if<PlacementReasons>(&second_)) nodes += reasons->nodes();
    if (const auto* conflict = std::get_if<PlacementConflictSearch>(&second_))
        nodes += conflict->nodes();
    return nodes;
}

const std::vector<PlacementReason>& PlacementStudy::reasons() const {
    static const std::vector<PlacementReason> none;
    const auto* reasons = std::get_if<PlacementReasons>(&second_);
    return reasons ? reasons->reasons() : none;
}

const PlacementConflict& PlacementStudy::conflict() const {
    static const PlacementConflict none;
    const auto* conflict = std::get_if<PlacementConflictSearch>(&second_);
    return conflict ? conflict->conflict() : none;
}

bool PlacementStudy::complete() const {
    const auto* reasons = std::get_if<PlacementReasons>(&second_);
    return conflict().complete && (!reasons || reasons->complete());
}

} // namespace carriageway
