#include "core/placement_rules.h"

#include <algorithm>

namespace carriageway {
namespace {

std::size_t place_of(const PlacementQuestion& question, std::uint32_t id) {
    const auto found = std::find_if(question.colours.begin(), question.colours.end(),
                                    [id](const PlacementColour& c) { return c.id == id; });
    return static_cast<std::size_t>(found - question.colours.begin());
}

/// Who prints after each colour, by place in the question.
std::vector<ColourMask> followers(const PlacementQuestion& question) {
    const auto& colours = question.colours;
    std::vector<ColourMask> after(colours.size(), 0);
    for (std::size_t a = 0; a < colours.size(); ++a)
        for (std::size_t b = 0; b < colours.size(); ++b)
            if (colours[a].order < colours[b].order) after[a] |= ColourMask{1} << b;
    for (const OrderWaiver& waiver : question.waived) {
        const std::size_t a = place_of(question, waiver.first);
        const std::size_t b = place_of(question, waiver.second);
        after[a] &= ~(ColourMask{1} << b);
        after[b] &= ~(ColourMask{1} << a);
    }
    return after;
}

/// Wishes that can't matter are dropped, so that colours which differ in nothing else are one kind.
void drop_idle_wishes(std::vector<ColourKind>& colours) {
    bool banned = false;
    int large = 0;
    for (const ColourKind& colour : colours) {
        banned = banned || !colour.wet_on_wet;
        large += colour.large ? 1 : 0;
    }
    for (ColourKind& colour : colours) {
        if (large < 2) colour.large = false;
        if (banned || colour.flash_after) continue;
        colour.cool_after = 0; // no flash ever stands behind it
        colour.together = false;
    }
}

std::vector<ColourKind> colours_alone(const PlacementQuestion& question) {
    const std::vector<ColourMask> after = followers(question);
    std::vector<ColourKind> colours;
    for (std::size_t i = 0; i < question.colours.size(); ++i) {
        const PlacementColour& asked = question.colours[i];
        ColourKind colour;
        colour.flash_after = asked.flash_after;
        colour.together = asked.flash_together;
        colour.wet_on_wet = asked.wet_on_wet;
        colour.large = asked.area >= question.large_area;
        colour.cool_after = asked.cool_after;
        colour.after = after[i];
        for (std::size_t j = 0; j < after.size(); ++j)
            if (after[j] >> i & 1) colour.before |= ColourMask{1} << j;
        colours.push_back(colour);
    }
    drop_idle_wishes(colours);
    return colours;
}

bool alike(const ColourKind& a, const ColourKind& b) {
    return a.flash_after == b.flash_after && a.together == b.together &&
           a.wet_on_wet == b.wet_on_wet && a.large == b.large && a.cool_after == b.cool_after &&
           a.before == b.before && a.after == b.after;
}

/// A mask by places in the question as one by bits of the rules.
ColourMask by_bits(ColourMask by_place, const std::vector<std::size_t>& colour_at) {
    ColourMask mask = 0;
    for (std::size_t bit = 0; bit < colour_at.size(); ++bit)
        if (by_place >> colour_at[bit] & 1) mask |= ColourMask{1} << bit;
    return mask;
}

/// Fills kinds and colour_at; returns the kind of each colour, by place.
std::vector<int> make_kinds(PlacementRules& rules, const std::vector<ColourKind>& colours) {
    std::vector<int> kind_of(colours.size(), -1);
    for (std::size_t i = 0; i < colours.size(); ++i) {
        if (kind_of[i] >= 0) continue;
        ColourKind kind = colours[i];
        for (std::size_t j = i; j < colours.size(); ++j) {
            if (kind_of[j] >= 0 || !alike(colours[i], colours[j])) continue;
            kind_of[j] = static_cast<int>(rules.kinds.size());
            kind.members |= ColourMask{1} << rules.colour_at.size();
            ++kind.count;
            rules.colour_at.push_back(j);
        }
        rules.kinds.push_back(kind);
    }
    for (ColourKind& kind : rules.kinds) {
        kind.before = by_bits(kind.before, rules.colour_at);
        kind.after = by_bits(kind.after, rules.colour_at);
        if (kind.large) rules.large |= kind.members;
        if (kind.flash_after) rules.flash_after |= kind.members;
        if (!kind.wet_on_wet) rules.flash_before |= kind.members;
    }
    return kind_of;
}

void take_stations(PlacementRules& rules, const PlacementQuestion& question) {
    for (std::size_t i = 0; i < question.stations.size(); ++i) {
        const PlacementStation& station = question.stations[i];
        const StationMask bit = StationMask{1} << i;
        const bool free = station.kept == StationKept::free;
        const bool unit = question.flashes_stay && station.flash_now;
        if (free && station.head && !unit) rules.heads |= bit;
        const bool can_flash = question.flashes_stay ? unit : station.flash || station.flash_now;
        if (free && can_flash) rules.flashes |= bit;
        if (free || station.kept == StationKept::closed) rules.cools |= bit;
    }
    rules.flash_units = question.flashes_stay ? std::popcount(rules.flashes) : question.flash_units;
}

void take_pins(PlacementRules& rules, const PlacementQuestion& question,
               const std::vector<int>& kind_of) {
    for (std::size_t i = 0; i < question.colours.size(); ++i) {
        const int pin = question.colours[i].pinned;
        if (pin == 0) continue;
        if (has_station(rules.pins, pin) || !has_station(rules.heads, pin)) rules.impossible = true;
        rules.pins |= station_bit(pin);
        rules.kinds[static_cast<std::size_t>(kind_of[i])].pins |= station_bit(pin);
    }
}

void take_screens(PlacementRules& rules, const PlacementQuestion& question,
                  const std::vector<int>& kind_of) {
    for (std::size_t i = 0; i < question.colours.size(); ++i) {
        const PlacementColour& colour = question.colours[i];
        const int screen_on = colour.screen_on;
        if (screen_on == 0) continue;
        rules.screens |= station_bit(screen_on);
        const bool free = colour.pinned == 0 && !has_station(rules.pins, screen_on);
        if ((free || colour.pinned == screen_on) && has_station(rules.heads, screen_on))
            rules.kinds[static_cast<std::size_t>(kind_of[i])].stays |= station_bit(screen_on);
    }
}

} // namespace

ColourMask PlacementRules::with(int kind, ColourMask placed) const {
    const ColourMask left = kinds[static_cast<std::size_t>(kind)].members & ~placed;
    return placed | (left & -left);
}

int stations_after(StationMask mask, int station) {
    return station >= most_stations ? 0 : std::popcount(mask >> station);
}

int stations_between(StationMask mask, int station, int last) {
    return last <= station ? 0 : stations_after(mask, station) - stations_after(mask, last);
}

StationMask stations_from_to(int first, int last) {
    if (last < first || first > most_stations) return 0;
    return ~StationMask{0} >> (most_stations - (last - first + 1)) << (first - 1);
}

PlacementRules placement_rules(const PlacementQuestion& question) {
    PlacementRules rules;
    rules.stations = static_cast<int>(question.stations.size());
    rules.colours = static_cast<int>(question.colours.size());
    take_stations(rules, question);
    const std::vector<int> kind_of = make_kinds(rules, colours_alone(question));
    take_pins(rules, question, kind_of);
    take_screens(rules, question, kind_of);
    find_reach(rules);
    return rules;
}

Placement placement_of(const PlacementRules& rules, const PlacementQuestion& question,
                       std::span<const int> contents, PlacementCost cost) {
    Placement placement{std::vector<int>(question.colours.size(), 0), {}, cost};
    std::vector<bool> named(contents.size(), false);
    const auto content_at = [&](int station) {
        const auto i = static_cast<std::size_t>(station);
        return i >= 1 && i <= contents.size() ? contents[i - 1] : blank_content;
    };
    const auto name = [&](std::size_t colour, int station) {
        placement.stations[colour] = station;
        named[static_cast<std::size_t>(station - 1)] = true;
    };
    for (std::size_t bit = 0; bit < rules.colour_at.size(); ++bit) {
        const std::size_t colour = rules.colour_at[bit];
        const PlacementColour& asked = question.colours[colour];
        if (asked.pinned != 0) {
            name(colour, asked.pinned);
        } else if (asked.screen_on != 0) {
            const int content = content_at(asked.screen_on);
            if (content < flash_content && rules.stays(content, asked.screen_on))
                name(colour, asked.screen_on);
        }
    }
    // The rest in their order, from the lowest station.
    for (int k = 0; k < static_cast<int>(rules.kinds.size()); ++k) {
        int station = 1;
        for (std::size_t bit = 0; bit < rules.colour_at.size(); ++bit) {
            const bool of_kind = rules.kinds[static_cast<std::size_t>(k)].members >> bit & 1;
            const std::size_t colour = rules.colour_at[bit];
            if (!of_kind || placement.stations[colour] != 0) continue;
            while (content_at(station) != k || named[static_cast<std::size_t>(station - 1)])
                ++station;
            name(colour, station);
        }
    }
    for (std::size_t i = 0; i < contents.size(); ++i)
        if (contents[i] == flash_content) placement.flashes.push_back(static_cast<int>(i) + 1);
    return placement;
}

} // namespace carriageway
