#include "tests/core/placement_exhaustive.h"

#include <algorithm>
#include <tuple>

namespace carriageway::tests {
namespace {

/// Colours by place in the question, in the order in which they print.
std::vector<std::size_t> printed_order(const Placement& placement) {
    std::vector<std::size_t> order(placement.stations.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return placement.stations[a] < placement.stations[b];
    });
    return order;
}

const PlacementStation& station_at(const PlacementQuestion& question, int station) {
    return question.stations[static_cast<std::size_t>(station - 1)];
}

bool unit_stays(const PlacementQuestion& question, int station) {
    return question.flashes_stay && station_at(question, station).flash_now;
}

bool can_hold_head(const PlacementQuestion& question, int station) {
    const PlacementStation& place = station_at(question, station);
    return place.kept == StationKept::free && place.head && !unit_stays(question, station);
}

bool can_hold_flash(const PlacementQuestion& question, int station) {
    const PlacementStation& place = station_at(question, station);
    if (place.kept != StationKept::free) return false;
    return question.flashes_stay ? place.flash_now : place.flash || place.flash_now;
}

bool can_cool(const PlacementQuestion& question, int station) {
    const StationKept kept = station_at(question, station).kept;
    return kept != StationKept::load && kept != StationKept::unload;
}

bool must_precede(const PlacementQuestion& question, const PlacementColour& a,
                  const PlacementColour& b) {
    for (const OrderWaiver& waiver : question.waived)
        if ((waiver.first == a.id && waiver.second == b.id) ||
            (waiver.first == b.id && waiver.second == a.id))
            return false;
    return a.order < b.order;
}

/// Flashes strictly between two stations.
std::vector<int> flashes_between(const Placement& placement, int from, int to) {
    std::vector<int> between;
    for (const int flash : placement.flashes)
        if (flash > from && flash < to) between.push_back(flash);
    return between;
}

bool flash_wanted(const PlacementColour& first, const PlacementColour& second) {
    return first.flash_after || !second.wet_on_wet;
}

/// Two colours that print one after the other.
bool gap_obeys(const PlacementQuestion& question, const Placement& placement, std::size_t a,
               std::size_t b) {
    const PlacementColour& first = question.colours[a];
    const int from = placement.stations[a];
    const int to = placement.stations[b];
    const std::vector<int> flashes = flashes_between(placement, from, to);
    if (!flash_wanted(first, question.colours[b])) return flashes.empty();
    if (flashes.size() != 1) return false;
    int cool = 0;
    for (int station = flashes[0] + 1; station < to; ++station)
        if (can_cool(question, station)) ++cool;
    if (cool < first.cool_after) return false;
    if (!first.flash_together) return true;
    if (flashes[0] != from + 1) return false;
    for (int i = 1; i <= first.cool_after; ++i)
        if (!can_cool(question, flashes[0] + i)) return false;
    return true;
}

bool end_obeys(const PlacementQuestion& question, const Placement& placement, std::size_t last) {
    const PlacementColour& colour = question.colours[last];
    const int station = placement.stations[last];
    const std::vector<int> behind = flashes_between(placement, station, most_stations + 1);
    if (behind.size() != (colour.flash_after ? 1u : 0u)) return false;
    return behind.empty() || !colour.flash_together || behind[0] == station + 1;
}

bool places_obey(const PlacementQuestion& question, const Placement& placement) {
    std::vector<int> used = placement.stations;
    used.insert(used.end(), placement.flashes.begin(), placement.flashes.end());
    std::sort(used.begin(), used.end());
    if (std::adjacent_find(used.begin(), used.end()) != used.end()) return false;
    for (std::size_t i = 0; i < placement.stations.size(); ++i) {
        const PlacementColour& colour = question.colours[i];
        const int station = placement.stations[i];
        if (!can_hold_head(question, station)) return false;
        if (colour.pinned != 0 && colour.pinned != station) return false;
        for (std::size_t j = 0; j < placement.stations.size(); ++j)
            if (must_precede(question, colour, question.colours[j]) &&
                station > placement.stations[j])
                return false;
    }
    for (const int flash : placement.flashes)
        if (!can_hold_flash(question, flash)) return false;
    return question.flashes_stay ||
           static_cast<int>(placement.flashes.size()) <= question.flash_units;
}

/// All placements of one question, tried.
class Trial {
  public:
    Trial(const PlacementQuestion& question, std::size_t wanted)
        : question_(question), wanted_(wanted), kinds_(placement_kinds(question)) {
        now_.stations.assign(question.colours.size(), 0);
    }

    AllPlacements all() {
        place_colour(0);
        AllPlacements found;
        found.count = count_;
        for (const Ranked& ranked : best_) found.best.push_back(ranked.placement);
        return found;
    }

  private:
    /// What the order of placements is by; `colours` is also what tells two of one pattern apart.
    struct Ranked {
        Placement placement;
        std::vector<std::size_t> kinds;   ///< on each station; flash and nothing come behind
        std::vector<std::size_t> colours; ///< the same with the colours themselves
        bool operator<(const Ranked& other) const {
            return std::tie(placement.cost, kinds, colours) <
                   std::tie(other.placement.cost, other.kinds, other.colours);
        }
    };

    bool taken(int station) const {
        return std::find(now_.stations.begin(), now_.stations.end(), station) !=
               now_.stations.end();
    }

    /// Nothing is tried that the colours placed before rule out already.
    bool hopeless(std::size_t colour, int station) const {
        const PlacementColour& asked = question_.colours[colour];
        if (taken(station) || !can_hold_head(question_, station)) return true;
        if (asked.pinned != 0 && asked.pinned != station) return true;
        for (std::size_t i = 0; i < colour; ++i) {
            const PlacementColour& other = question_.colours[i];
            if (must_precede(question_, asked, other) && station > now_.stations[i]) return true;
            if (must_precede(question_, other, asked) && station < now_.stations[i]) return true;
        }
        return false;
    }

    void place_colour(std::size_t colour) {
        if (colour == question_.colours.size()) return place_flashes(1);
        for (int station = 1; station <= static_cast<int>(question_.stations.size()); ++station) {
            if (hopeless(colour, station)) continue;
            now_.stations[colour] = station;
            place_colour(colour + 1);
            now_.stations[colour] = 0;
        }
    }

    void place_flashes(int from) {
        if (obeys(question_, now_)) take();
        if (!question_.flashes_stay &&
            static_cast<int>(now_.flashes.size()) == question_.flash_units)
            return;
        for (int station = from; station <= static_cast<int>(question_.stations.size());
             ++station) {
            if (taken(station) || !can_hold_flash(question_, station)) continue;
            now_.flashes.push_back(station);
            place_flashes(station + 1);
            now_.flashes.pop_back();
        }
    }

    void take() {
        ++count_;
        now_.cost = cost_of(question_, now_);
        if (best_.size() == wanted_ && best_.back().placement.cost < now_.cost) return;
        Ranked ranked = ranked_now();
        const auto same = std::find_if(best_.begin(), best_.end(), [&](const Ranked& other) {
            return other.kinds == ranked.kinds;
        });
        if (same == best_.end())
            best_.push_back(ranked);
        else if (ranked < *same)
            *same = ranked;
        std::sort(best_.begin(), best_.end());
        if (best_.size() > wanted_) best_.pop_back();
    }

    Ranked ranked_now() const {
        const std::size_t flash = most_placed_colours;
        std::vector<std::size_t> contents(question_.stations.size(), flash + 1);
        for (const int station : now_.flashes)
            contents[static_cast<std::size_t>(station - 1)] = flash;
        Ranked ranked{now_, contents, contents};
        for (std::size_t i = 0; i < now_.stations.size(); ++i) {
            const auto at = static_cast<std::size_t>(now_.stations[i] - 1);
            ranked.kinds[at] = kinds_[i];
            ranked.colours[at] = i;
        }
        return ranked;
    }

    const PlacementQuestion& question_;
    std::size_t wanted_;
    std::vector<std::size_t> kinds_;
    Placement now_;
    std::uint64_t count_ = 0;
    std::vector<Ranked> best_;
};

} // namespace

bool obeys(const PlacementQuestion& question, const Placement& placement) {
    if (!places_obey(question, placement)) return false;
    const std::vector<std::size_t> order = printed_order(placement);
    if (!flashes_between(placement, 0, placement.stations[order.front()]).empty()) return false;
    for (std::size_t i = 0; i + 1 < order.size(); ++i)
        if (!gap_obeys(question, placement, order[i], order[i + 1])) return false;
    return end_obeys(question, placement, order.back());
}

PlacementCost cost_of(const PlacementQuestion& question, const Placement& placement) {
    const std::vector<std::size_t> order = printed_order(placement);
    PlacementCost cost;
    int last = placement.stations[order.back()];
    for (const int flash : placement.flashes) last = std::max(last, flash);
    cost.idle = last - placement.stations[order.front()] + 1 -
                static_cast<int>(order.size() + placement.flashes.size());
    for (std::size_t i = 0; i + 1 < order.size(); ++i) {
        const PlacementColour& a = question.colours[order[i]];
        const PlacementColour& b = question.colours[order[i + 1]];
        if (flash_wanted(a, b))
            cost.idle -= a.cool_after;
        else if (a.area >= question.large_area && b.area >= question.large_area)
            ++cost.wet_pairs;
    }
    for (std::size_t i = 0; i < question.colours.size(); ++i) {
        const int screen_on = question.colours[i].screen_on;
        if (screen_on != 0 && screen_on != placement.stations[i]) ++cost.moved;
    }
    return cost;
}

AllPlacements all_placements(const PlacementQuestion& question, std::size_t wanted) {
    return Trial(question, wanted).all();
}

} // namespace carriageway::tests
