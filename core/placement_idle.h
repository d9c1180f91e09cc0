// The fewest stations passed idle when colours are all alike but for the flashes between some of
// them: what holes among the heads force whatever the order. Serves placement_node.h.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace carriageway {

struct PlacementRules;

/// Worked out once for a question, from the last station to the first: for every station, number of
/// colours left, number of flashes that may still come, and cool stations still to come behind a
/// flash. A flash may stand behind any colour, with up to `most_cool` cool stations behind it.
class IdleTable {
  public:
    IdleTable() = default; ///< says 0 of everything
    /// A table that would grow beyond most_entries isn't made, and says 0 of everything.
    IdleTable(const PlacementRules& rules, int most_cool);

    /// No way to place the colours.
    static constexpr int none = 255;

    /// The fewest idle stations beyond `station`. `colours` left to print, at least 1; at most
    /// `flashes` to come; `cool`: stations still wanted to cool behind the flash that stands since
    /// the last print, -1: none stands.
    int least(int station, int colours, int flashes, int cool) const;

    /// The same before the first print, which may be anywhere beyond `station`.
    int least_from_start(int station, int colours, int flashes) const;

    /// Ours: a byte each. 20 stations by 16 colours by 4 flashes by 2 cool stations take 7140.
    static constexpr std::size_t most_entries = 500'000;

  private:
    void fill(const PlacementRules& rules);
    std::size_t index(int station, int colours, int flashes, int gap) const;
    int best(const PlacementRules& rules, int station, int colours, int flashes, int gap) const;

    int colours_ = 0;
    int flashes_ = 0;
    int most_cool_ = 0;
    int gaps_ = 0; ///< 0: no flash since the last print; 1 + n: a flash, and n cool stations
                   ///< wanted; the last: nothing printed yet
    std::vector<std::uint8_t> least_;
};

} // namespace carriageway
