#include "core/placement.h"

#include <algorithm>
#include <cmath>

#include "core/placement_rules.h"

namespace carriageway {
namespace {

bool knows(const PlacementQuestion& question, std::uint32_t id) {
    return std::any_of(question.colours.begin(), question.colours.end(),
                       [id](const PlacementColour& colour) { return colour.id == id; });
}

PlacementRefusal refusal_of(const PlacementQuestion& question, std::size_t index) {
    const PlacementColour& colour = question.colours[index];
    const int stations = static_cast<int>(question.stations.size());
    const auto on_press = [&](int station) { return station >= 0 && station <= stations; };
    if (!on_press(colour.screen_on) || !on_press(colour.pinned))
        return PlacementRefusal::station_out_of_range;
    if (colour.cool_after < 0 || colour.cool_after > most_stations)
        return PlacementRefusal::bad_cool_count;
    if (!(colour.area >= 0.0 && colour.area <= 1.0)) return PlacementRefusal::bad_area;
    for (std::size_t i = 0; i < index; ++i) {
        const PlacementColour& other = question.colours[i];
        if (other.id == colour.id) return PlacementRefusal::same_id;
        if (colour.screen_on != 0 && other.screen_on == colour.screen_on)
            return PlacementRefusal::same_screen_station;
    }
    return PlacementRefusal::none;
}

PlacementRefusal refusal_of_whole(const PlacementQuestion& question) {
    if (question.stations.empty()) return PlacementRefusal::no_stations;
    if (question.stations.size() > most_stations) return PlacementRefusal::too_many_stations;
    if (question.colours.empty()) return PlacementRefusal::no_colours;
    if (question.colours.size() > most_placed_colours) return PlacementRefusal::too_many_colours;
    if (question.flash_units < 0 || question.flash_units > most_stations)
        return PlacementRefusal::bad_flash_count;
    if (!(question.large_area >= 0.0) || !std::isfinite(question.large_area))
        return PlacementRefusal::bad_large_area;
    return PlacementRefusal::none;
}

/// The colour on each station and the flashes on the others, 0 to 64: a colour's place, or
/// flash_content or blank_content. Empty when the placement isn't one of these stations.
std::vector<int> contents_of(const PlacementQuestion& question, const Placement& placement) {
    std::vector<int> contents(question.stations.size() + 1, blank_content);
    const auto put = [&](int station, int content) {
        if (station < 1 || station >= static_cast<int>(contents.size())) return false;
        contents[static_cast<std::size_t>(station)] = content;
        return true;
    };
    if (placement.stations.size() != question.colours.size()) return {};
    for (std::size_t i = 0; i < placement.stations.size(); ++i)
        if (!put(placement.stations[i], static_cast<int>(i))) return {};
    for (const int station : placement.flashes)
        if (!put(station, flash_content)) return {};
    return contents;
}

} // namespace

PlacementFault placement_fault(const PlacementQuestion& question) {
    const PlacementRefusal whole = refusal_of_whole(question);
    if (whole != PlacementRefusal::none) return {whole, 0};
    for (std::size_t i = 0; i < question.colours.size(); ++i) {
        const PlacementRefusal refusal = refusal_of(question, i);
        if (refusal != PlacementRefusal::none) return {refusal, i};
    }
    for (const OrderWaiver& waiver : question.waived)
        if (!knows(question, waiver.first) || !knows(question, waiver.second))
            return {PlacementRefusal::unknown_colour, 0};
    return {};
}

std::vector<StationRole> roles_of(const PlacementQuestion& question, const Placement& placement) {
    if (placement_fault(question).refusal != PlacementRefusal::none) return {};
    const std::vector<int> contents = contents_of(question, placement);
    if (contents.empty()) return {};
    std::vector<StationRole> roles(question.stations.size(), StationRole::outside);
    std::size_t last_used = 0;
    int colour = -1; // that printed last
    int cool = 0;    // stations still wanted to cool
    for (std::size_t station = 1; station < contents.size(); ++station) {
        const int content = contents[station];
        StationRole& role = roles[station - 1];
        if (content == blank_content) {
            const StationKept kept = question.stations[station - 1].kept;
            const bool cools = kept == StationKept::free || kept == StationKept::closed;
            if (colour >= 0) role = cools && cool > 0 ? StationRole::cool : StationRole::idle;
            if (role == StationRole::cool) --cool;
            continue;
        }
        role = content == flash_content ? StationRole::flash : StationRole::colour;
        if (content != flash_content) colour = content;
        cool = content == flash_content && colour >= 0
                   ? question.colours[static_cast<std::size_t>(colour)].cool_after
                   : 0;
        last_used = station;
    }
    std::fill(roles.begin() + static_cast<std::ptrdiff_t>(last_used), roles.end(),
              StationRole::outside);
    return roles;
}

std::vector<std::size_t> placement_kinds(const PlacementQuestion& question) {
    if (placement_fault(question).refusal != PlacementRefusal::none) return {};
    const PlacementRules rules = placement_rules(question);
    std::vector<std::size_t> first(question.colours.size());
    for (const ColourKind& kind : rules.kinds) {
        const auto lowest = static_cast<std::size_t>(std::countr_zero(kind.members));
        for (std::size_t i = 0; i < static_cast<std::size_t>(kind.count); ++i)
            first[rules.colour_at[lowest + i]] = rules.colour_at[lowest];
    }
    return first;
}

} // namespace carriageway
