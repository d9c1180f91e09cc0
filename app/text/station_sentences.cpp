#include "app/text/station_sentences.h"

#include "app/text/sentences.h"

namespace carriageway {
namespace {

std::string counted(Language language, int count, Word none, Word one, Word many) {
    if (count == 0) return std::string(word(language, none));
    if (count == 1) return std::string(word(language, one));
    return say(language, many, {std::to_string(count)});
}

std::string colour_name(Language language, const Job& job, std::uint32_t id) {
    const Head* head = find_head(job, id);
    if (head == nullptr) return std::to_string(id);
    return head->colour.empty() ? head_title(language, *head) : head->colour;
}

const PlacementColour* colour_of(const JobPlacement& asked, std::uint32_t id) {
    for (const PlacementColour& colour : asked.question.colours)
        if (colour.id == id) return &colour;
    return nullptr;
}

std::string fact_text(Language language, PressFact fact) {
    switch (fact) {
    case PressFact::stations: return std::string(word(language, Word::fact_station_one_more));
    case PressFact::flash_units: return std::string(word(language, Word::fact_flash_one_more));
    case PressFact::head_places: return std::string(word(language, Word::fact_head_places));
    case PressFact::flash_places: return std::string(word(language, Word::fact_flash_places));
    case PressFact::closed_stations:
        return std::string(word(language, Word::fact_closed_stations));
    case PressFact::flashes_stay: return std::string(word(language, Word::fact_flashes_stay));
    }
    return {};
}

} // namespace

std::string cost_text(Language language, const PlacementCost& cost) {
    using W = Word;
    return say(
        language, W::stations_cost,
        {counted(language, cost.idle, W::stations_idle_none, W::stations_idle_one, W::stations_idle),
         counted(language, cost.moved, W::stations_moved_none, W::stations_moved_one,
                 W::stations_moved),
         counted(language, cost.wet_pairs, W::stations_pairs_none, W::stations_pairs_one,
                 W::stations_pairs)});
}

std::string wish_text(Language language, const Job& job, const JobPlacement& asked,
                      const PlacementWish& wish) {
    const std::string name = colour_name(language, job, wish.colour);
    const PlacementColour* colour = colour_of(asked, wish.colour);
    switch (wish.kind) {
    case PlacementWishKind::order:
        return say(language, Word::wish_order, {name, colour_name(language, job, wish.other)});
    case PlacementWishKind::wet_on_wet: return say(language, Word::wish_not_wet, {name});
    case PlacementWishKind::flash_after: return say(language, Word::wish_flash, {name});
    case PlacementWishKind::cool_after:
        if (colour && colour->cool_after == 1) return say(language, Word::wish_cool_one, {name});
        return say(language, Word::wish_cool,
                   {name, std::to_string(colour ? colour->cool_after : 0)});
    case PlacementWishKind::together: return say(language, Word::wish_together, {name});
    case PlacementWishKind::pin:
        return say(language, Word::wish_pin,
                   {name, std::to_string(colour ? station_of(asked, colour->pinned) : 0)});
    }
    return {};
}

std::string need_text(Language language, const PressNeed& need) {
    const std::string number = std::to_string(need.needed);
    if (need.fact == PressFact::stations && need.needed > 1)
        return say(language, Word::fact_stations, {number});
    if (need.fact == PressFact::flash_units)
        return say(language, Word::fact_flash_units, {number});
    return fact_text(language, need.fact);
}

std::string reason_text(Language language, const Job& job, const JobPlacement& asked,
                        const PlacementReason& reason) {
    const std::string cost = cost_text(language, reason.cost);
    if (const PlacementWish* wish = std::get_if<PlacementWish>(&reason.of))
        return say(language, Word::stations_reason,
                   {capitalised(wish_text(language, job, asked, *wish)), cost});
    return capitalised(fact_text(language, std::get<PressFact>(reason.of))) + ": " + cost + ".";
}

std::string role_text(Language language, const Job& job, const JobPlacement& asked,
                      const Placement& placement, std::size_t place) {
    const std::vector<StationRole> roles = roles_of(asked.question, placement);
    if (place >= roles.size()) return {};
    switch (roles[place]) {
    case StationRole::colour:
        for (std::size_t i = 0; i < placement.stations.size(); ++i)
            if (placement.stations[i] == static_cast<int>(place) + 1)
                return colour_name(language, job, asked.question.colours[i].id);
        return {};
    case StationRole::flash: return std::string(word(language, Word::use_flash));
    case StationRole::cool: return std::string(word(language, Word::use_cool));
    case StationRole::idle:
    case StationRole::outside: return std::string(word(language, Word::stations_row_blank));
    }
    return {};
}

std::string placement_text(Language language, const Job& job, const JobPlacement& asked,
                           const Placement& placement) {
    const std::vector<StationRole> roles = roles_of(asked.question, placement);
    std::string text;
    for (std::size_t place = 0; place < roles.size(); ++place) {
        if (roles[place] == StationRole::outside) continue;
        if (!text.empty()) text += " · ";
        text += std::to_string(station_of(asked, static_cast<int>(place) + 1)) + " " +
                role_text(language, job, asked, placement, place);
    }
    return text;
}

} // namespace carriageway
