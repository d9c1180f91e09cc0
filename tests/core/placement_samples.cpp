#include "tests/core/placement_samples.h"

#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <sstream>

namespace carriageway::tests {

PlacementQuestion plain_question(int colours, int stations) {
    PlacementQuestion question;
    question.stations.resize(static_cast<std::size_t>(stations));
    for (int i = 1; i <= colours; ++i) {
        PlacementColour colour;
        colour.id = static_cast<std::uint32_t>(i);
        question.colours.push_back(colour);
    }
    return question;
}

PlacementQuestion random_question(sample::Random& random, int colours, int stations, int levels) {
    PlacementQuestion question;
    question.stations.resize(static_cast<std::size_t>(stations));
    const double lacking = random.chance(0.5) ? 0.0 : 0.15;
    for (PlacementStation& station : question.stations) {
        station.head = !random.chance(lacking);
        station.flash = !random.chance(2.0 * lacking);
        station.flash_now = random.chance(0.2);
        if (random.chance(0.05)) station.kept = static_cast<StationKept>(random.whole(1, 3));
    }
    question.flashes_stay = random.chance(0.2);
    question.flash_units = random.whole(0, 3);
    const double wants_flash = 0.1 * random.whole(0, 3);
    const double wants_before = 0.1 * random.whole(0, 2);
    const int cool = random.whole(0, 2);
    std::vector<int> free_stations;
    for (int i = 1; i <= stations; ++i) free_stations.push_back(i);
    for (int i = 0; i < colours; ++i) {
        PlacementColour colour;
        colour.id = static_cast<std::uint32_t>(10 + i);
        colour.order = random.whole(1, levels);
        colour.flash_after = random.chance(wants_flash);
        colour.cool_after = random.whole(0, cool);
        colour.wet_on_wet = !random.chance(wants_before);
        colour.flash_together = random.chance(0.3);
        colour.area = random.chance(0.4) ? 0.6 : 0.1;
        if (!free_stations.empty() && random.chance(0.6)) {
            const int pick = random.whole(0, static_cast<int>(free_stations.size()) - 1);
            colour.screen_on = free_stations[static_cast<std::size_t>(pick)];
            free_stations.erase(free_stations.begin() + pick);
        }
        if (random.chance(0.1)) colour.pinned = random.whole(1, stations);
        question.colours.push_back(colour);
    }
    while (random.chance(0.3))
        question.waived.push_back({static_cast<std::uint32_t>(10 + random.whole(0, colours - 1)),
                                   static_cast<std::uint32_t>(10 + random.whole(0, colours - 1))});
    return question;
}

std::string told(const PlacementQuestion& question) {
    std::ostringstream words;
    words << question.flash_units << " units" << (question.flashes_stay ? " that stay" : "")
          << "; stations";
    for (const PlacementStation& station : question.stations)
        words << ' ' << "fluc"[static_cast<int>(station.kept)] << station.head << station.flash
              << station.flash_now;
    for (const PlacementColour& c : question.colours)
        words << "\n  " << c.id << ": order " << c.order << " flash " << c.flash_after << " cool "
              << c.cool_after << " wet on wet " << c.wet_on_wet << " together " << c.flash_together
              << " area " << c.area << " screen " << c.screen_on << " pin " << c.pinned;
    for (const OrderWaiver& waiver : question.waived)
        words << "\n  waived " << waiver.first << ' ' << waiver.second;
    return words.str();
}

PlacementQuestion with_only(const PlacementQuestion& question,
                            const std::vector<PlacementWish>& wishes) {
    PlacementQuestion bare = question;
    const auto wished = [&](PlacementWishKind kind, std::uint32_t colour, std::uint32_t other = 0) {
        return std::find(wishes.begin(), wishes.end(), PlacementWish{kind, colour, other}) !=
               wishes.end();
    };
    for (PlacementColour& colour : bare.colours) {
        if (!wished(PlacementWishKind::wet_on_wet, colour.id)) colour.wet_on_wet = true;
        if (!wished(PlacementWishKind::flash_after, colour.id)) colour.flash_after = false;
        if (!wished(PlacementWishKind::cool_after, colour.id)) colour.cool_after = 0;
        if (!wished(PlacementWishKind::together, colour.id)) colour.flash_together = false;
        if (!wished(PlacementWishKind::pin, colour.id)) colour.pinned = 0;
        for (const PlacementColour& other : question.colours)
            if (!wished(PlacementWishKind::order, colour.id, other.id) &&
                !wished(PlacementWishKind::order, other.id, colour.id))
                bare.waived.push_back({colour.id, other.id});
    }
    return bare;
}

std::vector<PlacementWish> without_one(std::vector<PlacementWish> wishes, std::size_t index) {
    wishes.erase(wishes.begin() + static_cast<std::ptrdiff_t>(index));
    return wishes;
}

bool possible(const PlacementQuestion& question) {
    return place(question).state() == PlacementState::found;
}

PlacementCount counted(const PlacementQuestion& question) {
    PlacementCount count(question);
    while (count.run(1000) == PlacementState::running) {
    }
    return count;
}

PlacementStudy studied(const PlacementQuestion& question, long steps) {
    PlacementStudy study(question);
    double progress = study.progress();
    while (study.run(steps) == PlacementState::running) {
        CHECK(study.progress() >= progress);
        CHECK(study.progress() < 1.0);
        progress = study.progress();
    }
    CHECK(study.progress() == 1.0);
    return study;
}

} // namespace carriageway::tests
