#include "core/job_placement.h"

#include <algorithm>
#include <cmath>

#include "core/job_check.h"
#include "core/placement_conflict.h"

namespace carriageway {
namespace {

/// Stations of the press in the order of a garment's way.
std::vector<int> way_of(const Job& job) {
    const int count = job.press.stations;
    const auto first_for = [&](StationUse use) {
        for (int station = 1; station <= count; ++station)
            if (has_station(job, station) && use_of(job, station) == use) return station;
        return 0;
    };
    int first = first_for(StationUse::load);
    if (first == 0) first = first_for(StationUse::unload);
    if (first == 0) first = 1;
    std::vector<int> way;
    for (int i = 0; i < count; ++i)
        way.push_back((first - 1 + i) % count + 1);
    return way;
}

/// The place of a station on the way, from 1; 0: it isn't on it.
int place_on(const std::vector<int>& way, int station) {
    const auto at = std::find(way.begin(), way.end(), station);
    return at == way.end() ? 0 : static_cast<int>(at - way.begin()) + 1;
}

PlacementStation station_asked(const Job& job, int station) {
    const StationUse use = has_station(job, station) ? use_of(job, station) : StationUse::open;
    const StationRoom room = station_room(job.press, station);
    PlacementStation asked;
    if (use == StationUse::load) asked.kept = StationKept::load;
    if (use == StationUse::unload) asked.kept = StationKept::unload;
    asked.head = room.print_head;
    asked.flash = room.flash;
    asked.flash_now = use == StationUse::flash;
    return asked;
}

double area_of(const Job& job, const Head& head) {
    Outline placed;
    place_image(head.image, placed);
    const double own = std::abs(signed_area(placed));
    double largest = 0.0;
    for (const Head& other : job.heads) {
        place_image(other.image, placed);
        largest = std::max(largest, std::abs(signed_area(placed)));
    }
    const double share = largest > 0.0 ? own / largest : 0.0;
    return std::clamp(share * head.deposit.printed_share, 0.0, 1.0);
}

PlacementColour colour_asked(const Job& job, const std::vector<int>& way, const Head& head) {
    PlacementColour asked;
    asked.id = head.id;
    asked.order = static_cast<int>(head.wish.order);
    asked.flash_after = head.wish.flash_after;
    asked.cool_after = static_cast<int>(head.wish.cool_after);
    asked.wet_on_wet = head.wish.wet_on_wet;
    asked.flash_together = head.wish.flash_together;
    asked.area = area_of(job, head);
    asked.screen_on = place_on(way, static_cast<int>(head.wish.screen_on));
    asked.pinned = head.wish.pinned ? place_on(way, head.station) : 0;
    return asked;
}

/// What the stations are for in a placement. A flash unit that it doesn't use stays where it is, or
/// stands on the first station that is free for it: it is on the press all the same.
std::vector<StationUse> uses_wanted(const Job& job, const JobPlacement& placed,
                                    const std::vector<StationRole>& roles) {
    std::vector<StationUse> wanted = job.uses;
    int spare = 0;
    std::vector<std::size_t> free;
    for (std::size_t i = 0; i < roles.size(); ++i) {
        StationUse& use = wanted[static_cast<std::size_t>(placed.way[i] - 1)];
        if (use == StationUse::load || use == StationUse::unload) continue;
        if (use == StationUse::flash) ++spare;
        if (roles[i] == StationRole::flash) --spare;
        const bool blank = roles[i] == StationRole::outside || roles[i] == StationRole::idle;
        const bool was_flash = use == StationUse::flash;
        use = roles[i] == StationRole::flash  ? StationUse::flash
              : roles[i] == StationRole::cool ? StationUse::cool
                                              : StationUse::open;
        if (blank && placed.question.stations[i].flash)
            free.insert(was_flash ? free.begin() : free.end(), i);
    }
    for (const std::size_t i : free)
        if (spare-- > 0) wanted[static_cast<std::size_t>(placed.way[i] - 1)] = StationUse::flash;
    return wanted;
}

} // namespace

JobPlacement job_placement(const Job& job, bool flashes_stay) {
    JobPlacement placed;
    placed.way = way_of(job);
    PlacementQuestion& question = placed.question;
    question.flash_units = 0;
    bool taken_off = false;
    for (const int station : placed.way) {
        question.stations.push_back(station_asked(job, station));
        if (taken_off) question.stations.back().head = false;
        // At the first station garments are laid on, whatever else is done there.
        if (question.stations.size() > 1 && question.stations.back().kept == StationKept::unload)
            taken_off = true;
        question.flash_units += question.stations.back().flash_now ? 1 : 0;
    }
    for (const Head& head : job.heads)
        question.colours.push_back(colour_asked(job, placed.way, head));
    question.flashes_stay = flashes_stay;
    return placed;
}

JobPlacement as_placed_now(const Job& job) {
    JobPlacement placed = job_placement(job, true);
    for (std::size_t i = 0; i < job.heads.size(); ++i)
        placed.question.colours[i].pinned = place_on(placed.way, job.heads[i].station);
    return placed;
}

std::vector<PlacementWish> wishes_broken(const JobPlacement& now) {
    // With everything held, a search has next to nothing to choose; the limit is for the rest.
    constexpr PlacementSettings little{1, false, std::nullopt, 20'000};
    const auto is_pin = [](const PlacementWish& wish) {
        return wish.kind == PlacementWishKind::pin;
    };
    const auto impossible = [&](const PlacementQuestion& question) {
        return place(question, little).state() == PlacementState::impossible;
    };
    std::vector<PlacementWish> broken;
    if (!impossible(now.question)) return broken;
    std::vector<PlacementWish> others = wishes_apart(now.question);
    std::erase_if(others, is_pin);
    std::vector<PlacementWish> all = wishes_of(now.question);
    std::erase_if(all, is_pin);
    if (impossible(without(now.question, all))) return broken;
    for (const PlacementWish& one : others) {
        std::vector<PlacementWish> out = all;
        std::erase(out, one);
        if (impossible(without(now.question, out))) broken.push_back(one);
    }
    if (!broken.empty()) return broken;
    for (const PlacementWish& wish : placement_conflict(now.question, little).wishes)
        if (!is_pin(wish)) broken.push_back(wish);
    return broken;
}

int station_of(const JobPlacement& placed, int place) {
    const auto index = static_cast<std::size_t>(place - 1);
    return index < placed.way.size() ? placed.way[index] : 0;
}

std::optional<Edit> placement_edit(const Job& job, const JobPlacement& placed,
                                   const Placement& placement) {
    const std::vector<StationRole> roles = roles_of(placed.question, placement);
    if (roles.size() != placed.way.size()) return std::nullopt;
    const std::vector<StationUse> wanted = uses_wanted(job, placed, roles);
    Together all;
    // Whatever is in the way of a head goes first; heads change places; then the rest is set.
    for (int station = 1; station <= job.press.stations; ++station) {
        const StationUse now = use_of(job, station);
        const bool other = now != wanted[static_cast<std::size_t>(station - 1)];
        if (other && now != StationUse::open) all.edits.push_back({SetUse{station, StationUse::open}});
    }
    for (std::size_t i = 0; i < placement.stations.size() && i < job.heads.size(); ++i) {
        const int station = station_of(placed, placement.stations[i]);
        if (job.heads[i].station != station)
            all.edits.push_back({MoveHead{job.heads[i].id, station}});
    }
    for (int station = 1; station <= job.press.stations; ++station) {
        const StationUse use = wanted[static_cast<std::size_t>(station - 1)];
        if (use != use_of(job, station) && use != StationUse::open)
            all.edits.push_back({SetUse{station, use}});
    }
    if (all.edits.empty()) return std::nullopt;
    return Edit{std::move(all)};
}

} // namespace carriageway
