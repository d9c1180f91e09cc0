#include "core/mistakes.h"

#include <algorithm>

namespace carriageway {

namespace {

/// Points that are nothing but rounding, as a share of the whole.
constexpr double no_points = 1e-9;

Mistake mistake_of(const MarkLine& line) {
    Mistake mistake{line.reason, {}, {}};
    if (is_about_finding(line.reason)) mistake.finding = line.finding;
    if (is_about_field(line.reason)) mistake.field = line.field;
    return mistake;
}

bool went_wrong(const MarkLine& line) {
    return is_mistake(line.reason) &&
           (line.points < -no_points || line.points < line.most - no_points || line.most <= 0.0);
}

} // namespace

bool is_about_finding(MarkReason reason) {
    return reason == MarkReason::fault_missed || reason == MarkReason::not_a_fault ||
           reason == MarkReason::head_not_fit;
}

bool is_about_field(MarkReason reason) {
    return reason == MarkReason::line_not_set || reason == MarkReason::head_disturbed;
}

bool is_mistake(MarkReason reason) {
    switch (reason) {
    case MarkReason::fault_missed:
    case MarkReason::not_a_fault:
    case MarkReason::head_not_fit:
    case MarkReason::stroke_long:
    case MarkReason::moves_more:
    case MarkReason::number_near:
    case MarkReason::number_wrong:
    case MarkReason::dial_other_way:
    case MarkReason::dial_missed:
    case MarkReason::dial_not_needed:
    case MarkReason::line_not_set:
    case MarkReason::head_disturbed:
    case MarkReason::wishes_broken:
    case MarkReason::placed_worse:
    case MarkReason::not_answered: return true;
    case MarkReason::fault_found:
    case MarkReason::head_fit:
    case MarkReason::stroke_short:
    case MarkReason::moves_fewest:
    case MarkReason::number_right:
    case MarkReason::dial_right:
    case MarkReason::line_set:
    case MarkReason::wishes_met:
    case MarkReason::placed_best: break;
    }
    return false;
}

std::vector<Mistake> mistakes_of(const Marking& marking) {
    std::vector<Mistake> out;
    for (const MarkLine& line : marking.lines) {
        if (!went_wrong(line)) continue;
        const Mistake mistake = mistake_of(line);
        if (std::find(out.begin(), out.end(), mistake) == out.end()) out.push_back(mistake);
    }
    return out;
}

std::vector<MistakeCount> commonest(const std::vector<std::vector<Mistake>>& all,
                                    std::size_t most) {
    std::vector<MistakeCount> out;
    for (const std::vector<Mistake>& made : all)
        for (const Mistake& mistake : made) {
            const auto known = std::find_if(out.begin(), out.end(), [&](const MistakeCount& count) {
                return count.mistake == mistake;
            });
            if (known == out.end()) out.push_back({mistake, 1});
            else ++known->times;
        }
    std::stable_sort(out.begin(), out.end(), [](const MistakeCount& a, const MistakeCount& b) {
        return a.times > b.times;
    });
    if (out.size() > most) out.resize(most);
    return out;
}

} // namespace carriageway
