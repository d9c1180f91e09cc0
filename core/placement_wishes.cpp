#include "core/placement_wishes.h"

#include <algorithm>
#include <utility>

namespace carriageway {
namespace {

bool names(const OrderWaiver& waiver, std::uint32_t a, std::uint32_t b) {
    return (waiver.first == a && waiver.second == b) || (waiver.first == b && waiver.second == a);
}

bool prints_before(const PlacementQuestion& question, const PlacementColour& a,
                   const PlacementColour& b) {
    if (a.order >= b.order) return false;
    return std::none_of(question.waived.begin(), question.waived.end(),
                        [&](const OrderWaiver& waiver) { return names(waiver, a.id, b.id); });
}

/// Orders, the nearest first: by how many different orders lie between.
std::vector<PlacementWish> orders_of(const PlacementQuestion& question) {
    std::vector<int> levels;
    levels.reserve(question.colours.size());
    for (const PlacementColour& colour : question.colours) levels.push_back(colour.order);
    std::sort(levels.begin(), levels.end());
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
    const auto level = [&](const PlacementColour& colour) {
        return std::lower_bound(levels.begin(), levels.end(), colour.order) - levels.begin();
    };
    std::vector<std::pair<std::ptrdiff_t, PlacementWish>> found;
    for (const PlacementColour& a : question.colours)
        for (const PlacementColour& b : question.colours)
            if (prints_before(question, a, b))
                found.push_back({level(b) - level(a), {PlacementWishKind::order, a.id, b.id}});
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<PlacementWish> orders;
    for (const auto& [distance, wish] : found) orders.push_back(wish);
    return orders;
}

bool has(const PlacementColour& colour, PlacementWishKind kind) {
    switch (kind) {
        case PlacementWishKind::order:
            return false; // of two colours
        case PlacementWishKind::wet_on_wet:
            return !colour.wet_on_wet;
        case PlacementWishKind::flash_after:
            return colour.flash_after;
        case PlacementWishKind::cool_after:
            return colour.cool_after > 0;
        case PlacementWishKind::together:
            return colour.flash_together;
        case PlacementWishKind::pin:
            return colour.pinned != 0;
    }
    return false;
}

/// Whether an order follows from two others.
bool follows(const PlacementQuestion& question, const PlacementWish& order) {
    const auto colour = [&](std::uint32_t id) {
        return *std::find_if(question.colours.begin(), question.colours.end(),
                             [id](const PlacementColour& c) { return c.id == id; });
    };
    const PlacementColour first = colour(order.colour);
    const PlacementColour last = colour(order.other);
    return std::any_of(question.colours.begin(), question.colours.end(),
                       [&](const PlacementColour& between) {
                           return prints_before(question, first, between) &&
                                  prints_before(question, between, last);
                       });
}

bool is_free(const PlacementStation& station) { return station.kept == StationKept::free; }

/// Changes every station with `change`, which says whether it did; nothing if none did.
template <typename Change>
std::optional<PlacementQuestion> with_stations(PlacementQuestion question, Change change) {
    bool changed = false;
    for (PlacementStation& station : question.stations) changed = change(station) || changed;
    if (!changed) return std::nullopt;
    return question;
}

std::optional<PlacementQuestion> with_moving_flashes(PlacementQuestion question) {
    if (!question.flashes_stay) return std::nullopt;
    int standing = 0;
    for (const PlacementStation& station : question.stations)
        if (is_free(station) && station.flash_now) ++standing;
    question.flashes_stay = false;
    question.flash_units = std::max(question.flash_units, standing);
    return question;
}

} // namespace

std::vector<PlacementWish> wishes_of(const PlacementQuestion& question) {
    if (placement_fault(question).refusal != PlacementRefusal::none) return {};
    std::vector<PlacementWish> wishes = orders_of(question);
    for (const PlacementWishKind kind :
         {PlacementWishKind::wet_on_wet, PlacementWishKind::flash_after,
          PlacementWishKind::cool_after, PlacementWishKind::together, PlacementWishKind::pin})
        for (const PlacementColour& colour : question.colours)
            if (has(colour, kind)) wishes.push_back({kind, colour.id, 0});
    return wishes;
}

std::vector<PlacementWish> wishes_apart(const PlacementQuestion& question) {
    std::vector<PlacementWish> wishes = wishes_of(question);
    std::erase_if(wishes, [&](const PlacementWish& wish) {
        return wish.kind == PlacementWishKind::order && follows(question, wish);
    });
    return wishes;
}

void give_up(PlacementQuestion& question, const PlacementWish& wish) {
    if (wish.kind == PlacementWishKind::order) {
        const std::vector<PlacementWish> orders = orders_of(question);
        if (std::find(orders.begin(), orders.end(), wish) != orders.end())
            question.waived.push_back({wish.colour, wish.other});
        return;
    }
    for (PlacementColour& colour : question.colours) {
        if (colour.id != wish.colour) continue;
        switch (wish.kind) {
            case PlacementWishKind::order:
                break;
            case PlacementWishKind::wet_on_wet:
                colour.wet_on_wet = true;
                break;
            case PlacementWishKind::flash_after:
                colour.flash_after = false;
                break;
            case PlacementWishKind::cool_after:
                colour.cool_after = 0;
                break;
            case PlacementWishKind::together:
                colour.flash_together = false;
                break;
            case PlacementWishKind::pin:
                colour.pinned = 0;
                break;
        }
    }
}

PlacementQuestion without(PlacementQuestion question, std::span<const PlacementWish> wishes) {
    for (const PlacementWish& wish : wishes) give_up(question, wish);
    return question;
}

std::optional<PlacementQuestion> with_fact(const PlacementQuestion& question, PressFact fact,
                                           int more) {
    switch (fact) {
        case PressFact::stations: {
            if (more < 1 || more > most_more(question, fact)) return std::nullopt;
            PlacementQuestion larger = question;
            larger.stations.resize(question.stations.size() + static_cast<std::size_t>(more));
            return larger;
        }
        case PressFact::flash_units: {
            if (more < 1 || more > most_more(question, fact)) return std::nullopt;
            PlacementQuestion larger = question;
            larger.flash_units += more;
            return larger;
        }
        case PressFact::head_places:
            return with_stations(question, [&](PlacementStation& station) {
                const bool taken = question.flashes_stay && station.flash_now;
                return is_free(station) && !taken && !std::exchange(station.head, true);
            });
        case PressFact::flash_places:
            if (question.flashes_stay) return std::nullopt;
            return with_stations(question, [](PlacementStation& station) {
                return is_free(station) && !std::exchange(station.flash, true);
            });
        case PressFact::closed_stations:
            return with_stations(question, [](PlacementStation& station) {
                if (station.kept != StationKept::closed) return false;
                station.kept = StationKept::free;
                return true;
            });
        case PressFact::flashes_stay:
            return with_moving_flashes(question);
    }
    return std::nullopt;
}

int most_more(const PlacementQuestion& question, PressFact fact) {
    const int colours = static_cast<int>(question.colours.size());
    if (fact == PressFact::flash_units)
        return question.flashes_stay ? 0 : std::max(0, colours - question.flash_units);
    if (fact != PressFact::stations) return 0;
    int used = 2 * colours; // each with a flash
    for (const PlacementColour& colour : question.colours) used += colour.cool_after;
    return std::min(used, most_stations - static_cast<int>(question.stations.size()));
}

} // namespace carriageway
