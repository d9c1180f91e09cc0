#include "core/placement_idle.h"

#include <algorithm>

#include "core/placement_rules.h"

namespace carriageway {

IdleTable::IdleTable(const PlacementRules& rules, int most_cool)
    : colours_(rules.colours),
      flashes_(std::min(rules.flash_units,
                        std::popcount(rules.flash_after) + std::popcount(rules.flash_before))),
      most_cool_(most_cool) {
    int longest = most_cool;
    for (const ColourKind& kind : rules.kinds) longest = std::max(longest, kind.cool_after);
    gaps_ = longest + 3;
    const auto entries = static_cast<std::size_t>(rules.stations + 1) *
                         static_cast<std::size_t>(colours_ + 1) *
                         static_cast<std::size_t>(flashes_ + 1) * static_cast<std::size_t>(gaps_);
    if (entries > most_entries) return;
    least_.assign(entries, none);
    fill(rules);
}

void IdleTable::fill(const PlacementRules& rules) {
    for (int station = rules.stations; station >= 0; --station)
        for (int colours = 0; colours <= colours_; ++colours)
            for (int flashes = 0; flashes <= flashes_; ++flashes)
                for (int gap = 0; gap < gaps_; ++gap)
                    least_[index(station, colours, flashes, gap)] =
                        static_cast<std::uint8_t>(best(rules, station, colours, flashes, gap));
}

std::size_t IdleTable::index(int station, int colours, int flashes, int gap) const {
    const int row = (station * (colours_ + 1) + colours) * (flashes_ + 1) + flashes;
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(gaps_) +
           static_cast<std::size_t>(gap);
}

/// From the entries of the next station.
int IdleTable::best(const PlacementRules& rules, int station, int colours, int flashes,
                    int gap) const {
    if (colours == 0) return 0;
    const int next = station + 1;
    if (next > rules.stations) return none;
    const auto beyond = [&](int left, int to_come, int in_gap) {
        return static_cast<int>(least_[index(next, left, to_come, in_gap)]);
    };
    const bool started = gap < gaps_ - 1;
    int least = none;
    if (has_station(rules.heads, next)) least = beyond(colours - 1, flashes, 0);
    if (has_station(rules.pins, next)) return least;
    if (gap == 0 && flashes > 0 && has_station(rules.flashes, next))
        least = std::min(least, beyond(colours, flashes - 1, 1 + most_cool_));
    const bool cools = started && gap > 1 && has_station(rules.cools, next);
    const int blank = beyond(colours, flashes, cools ? gap - 1 : gap);
    return std::min({none, least, blank + (cools || !started ? 0 : 1)});
}

int IdleTable::least(int station, int colours, int flashes, int cool) const {
    if (least_.empty()) return 0;
    return least_[index(station, colours, std::min(flashes, flashes_), 1 + cool)];
}

int IdleTable::least_from_start(int station, int colours, int flashes) const {
    if (least_.empty()) return 0;
    return least_[index(station, colours, std::min(flashes, flashes_), gaps_ - 1)];
}

} // namespace carriageway
