#include "tests/core/registration_bench.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace carriageway::bench {

void Screw::turn(double turns) {
    dial += turns;
    tip = std::clamp(tip, dial - 0.5 * backlash, dial + 0.5 * backlash);
}

double within(double half_width, std::mt19937_64& random) {
    return std::uniform_real_distribution<double>(-half_width, half_width)(random);
}

Head::Head(std::vector<Adjuster> adjusters, const Conditions& conditions, std::mt19937_64& random)
    : adjusters_(std::move(adjusters)), conditions_(conditions), random_(&random) {
    const RigidMotion start{within(conditions.most_turn, random),
                            within(conditions.most_move, random),
                            within(conditions.most_move, random)};
    const BySide travel = travel_for(adjusters_, start);
    for (const Adjuster& one : adjusters_) {
        Screw screw;
        screw.backlash = conditions.backlash;
        screw.tip = turns_for(one, travel[index_of(one.side)]);
        screw.dial = screw.tip + within(0.5 * conditions.backlash, random);
        screws_.push_back(screw);
    }
}

RigidMotion Head::pose() const {
    BySide travel{};
    for (std::size_t i = 0; i < adjusters_.size(); ++i) {
        const Adjuster& one = adjusters_[i];
        const double along = screws_[i].tip * one.mm_per_turn;
        travel[index_of(one.side)] = one.clockwise_positive ? along : -along;
    }
    return pose_of(adjusters_, travel).value();
}

std::vector<MarkReading> Head::read(const std::vector<Point>& marks) {
    const RigidMotion now = pose();
    std::vector<MarkReading> readings;
    for (const Point& mark : marks) {
        Point printed = moved(now, mark);
        printed.x += within(conditions_.reading, *random_);
        printed.y += within(conditions_.reading, *random_);
        readings.push_back({mark, printed});
    }
    return readings;
}

double Head::worst(const std::vector<Point>& marks) const {
    const RigidMotion now = pose();
    double worst = 0.0;
    for (const Point& mark : marks) {
        const Point printed = moved(now, mark);
        const double off = std::hypot(printed.x - mark.x, printed.y - mark.y);
        if (!std::isnan(worst) && !(off <= worst)) worst = off; // a NaN is taken, and stays
    }
    return worst;
}

void Head::follow(const Advice& advice) {
    for (const ScrewAdvice& screw : advice.screws)
        for (int i = 0; i < screw.move_count; ++i)
            turn(screw.adjuster, static_cast<double>(screw.moves[static_cast<std::size_t>(i)]) /
                                     adjusters_[screw.adjuster].graduations);
}

std::vector<Adjuster> three_screws(bool left_clockwise, bool right_clockwise,
                                   bool across_clockwise) {
    const auto screw = [](AdjusterSide side, double x, bool clockwise) {
        Adjuster one;
        one.side = side;
        one.x = x;
        one.y = -380.0;
        one.mm_per_turn = 1.25;
        one.graduations = 12;
        one.clockwise_positive = clockwise;
        return one;
    };
    return {screw(AdjusterSide::left, -200.0, left_clockwise),
            screw(AdjusterSide::right, 200.0, right_clockwise),
            screw(AdjusterSide::across, 0.0, across_clockwise)};
}

std::vector<Point> corner_marks() {
    return {{-150.0, -200.0}, {150.0, -200.0}, {150.0, 200.0}, {-150.0, 200.0}};
}

} // namespace carriageway::bench
