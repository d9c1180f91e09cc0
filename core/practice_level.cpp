#include "core/practice_level.h"

#include <algorithm>

#include "core/exercise.h"

namespace carriageway {

int next_level(std::span<const LevelResult> done) {
    if (done.empty()) return lowest_level;
    const LevelResult& last = done.back();
    const int level = std::clamp(last.level, lowest_level, highest_level);
    const auto managed = [](const LevelResult& result) { return result.score >= managed_score; };
    if (!managed(last)) return std::max(lowest_level, level - 1);
    // How many at this level, one after the other, were managed: every second one leads up.
    std::size_t in_a_row = 0;
    for (std::size_t i = done.size(); i > 0; --i) {
        if (done[i - 1].level != last.level || !managed(done[i - 1])) break;
        ++in_a_row;
    }
    return in_a_row % 2 == 0 ? std::min(highest_level, level + 1) : level;
}

} // namespace carriageway
