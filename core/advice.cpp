#include "core/advice.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace carriageway {

namespace {

double turns_of(const Adjuster& adjuster, int graduations) {
    return static_cast<double>(graduations) / adjuster.graduations;
}

/// Net graduations by side, and how far they shift the worst mark from where `exact` puts it.
struct Rounding {
    std::array<int, adjuster_sides> graduations{};
    double shift = 0.0;
};

/// Chooses the graduations.
class Rounder {
  public:
    Rounder(const Registration& registration, std::span<const Adjuster> adjusters,
            const RigidMotion& exact)
        : registration_(registration),
          adjusters_(adjusters),
          exact_(exact),
          travel_(travel_for(adjusters, exact)) {}

    /// Up or down at each screw; the one across after the others, whose rounding it makes up for.
    Rounding best() {
        for (const bool left_up : {false, true})
            for (const bool right_up : {false, true})
                for (const bool across_up : {false, true}) try_out(left_up, right_up, across_up);
        return best_.value_or(Rounding{});
    }

  private:
    static constexpr std::size_t across = index_of(AdjusterSide::across);

    void try_out(bool left_up, bool right_up, bool across_up) {
        Rounding tried;
        BySide travel{};
        round_to(AdjusterSide::left, left_up, travel_, tried, travel);
        round_to(AdjusterSide::right, right_up, travel_, tried, travel);
        round_to(AdjusterSide::across, across_up, remade(travel), tried, travel);
        const std::optional<RigidMotion> pose = pose_of(adjusters_, travel);
        if (!pose) return;
        for (const MarkReading& mark : registration_.marks) {
            const Point to = moved(*pose, mark.measured), wanted = moved(exact_, mark.measured);
            tried.shift = std::max(tried.shift, std::hypot(to.x - wanted.x, to.y - wanted.y));
        }
        if (!best_ || tried.shift < best_->shift) best_ = tried;
    }

    void round_to(AdjusterSide side, bool up, const BySide& needed, Rounding& tried,
                  BySide& travel) const {
        const Adjuster* one = find_adjuster(adjusters_, side);
        if (one == nullptr) return;
        const std::size_t at = index_of(side);
        const double marks = turns_for(*one, needed[at]) * one->graduations;
        tried.graduations[at] = static_cast<int>(up ? std::ceil(marks) : std::floor(marks));
        travel[at] = carriageway::travel_of(*one, tried.graduations[at]);
    }

    /// The travel across that brings the middle of the marks to its place with the others rounded.
    BySide remade(BySide travel) const {
        travel[across] = travel_[across];
        if (!reach_of(adjusters_).across) return travel;
        const std::optional<RigidMotion> pose = pose_of(adjusters_, travel);
        if (!pose) return travel;
        const Point& centre = registration_.fit.measured_centre;
        RigidMotion to = *pose;
        to.x += moved(exact_, centre).x - moved(*pose, centre).x;
        return travel_for(adjusters_, to);
    }

    const Registration& registration_;
    std::span<const Adjuster> adjusters_;
    RigidMotion exact_;
    BySide travel_;
    std::optional<Rounding> best_;
};

/// Standard deviation (mm) of the travel that a screw needs; without a turn every screw goes as far
/// as the marks' middle.
double deviation_of_need(const Registration& registration, const Adjuster& adjuster, bool turning) {
    if (!turning) return deviation_of_centre(registration);
    return adjuster.side == AdjusterSide::across ? deviation_across(registration, adjuster.y)
                                                 : deviation_along(registration, adjuster.x);
}

ScrewAdvice needed_at(const Registration& registration, const Adjuster& adjuster, std::size_t place,
                      double travel, bool turning) {
    ScrewAdvice screw;
    screw.adjuster = place;
    screw.travel = travel;
    screw.turns = turns_for(adjuster, travel);
    screw.deviation = deviation_of_need(registration, adjuster, turning) / adjuster.mm_per_turn;
    const double least = std::max(noise_deviations * screw.deviation, 0.5 * turns_of(adjuster, 1));
    screw.within_noise = std::abs(screw.turns) < least;
    return screw;
}

/// How far from the marks' middle a turn of the screen acts at most, mm.
double longest_lever(const Registration& registration, std::span<const Adjuster> adjusters) {
    const Point& centre = registration.fit.nominal_centre;
    double longest = 0.0;
    for (const Adjuster& one : adjusters)
        longest = std::max(longest, std::abs(one.side == AdjusterSide::across ? one.y - centre.y
                                                                              : one.x - centre.x));
    return longest;
}

/// Decides whether the rotation is made, and what is wanted then.
void set_wanted(Advice& advice, const Registration& registration,
                std::span<const Adjuster> adjusters, double tolerance) {
    const RigidFit& fit = registration.fit;
    const double allowed = std::max(tolerance > 0.0 ? tolerance : usual_tolerance,
                                    most_lever * noise_deviations * registration.reading);
    const double off = noise_deviations * longest_lever(registration, adjusters);
    const double deviation = registration.deviation.rotation;
    advice.wanted = inverse_of(fit.motion);
    advice.shift_only =
        !fit.turns || (off * deviation > allowed &&
                       std::abs(fit.motion.rotation) < sure_turn_deviations * deviation);
    if (!advice.shift_only) return;
    advice.wanted = {0.0, fit.nominal_centre.x - fit.measured_centre.x,
                     fit.nominal_centre.y - fit.measured_centre.y};
    // Two marks d apart know the rotation to √2·reading/d; closer than least_spread they are
    // refused.
    advice.least_apart =
        std::sqrt(2.0) * registration.reading * std::max(off / allowed, least_spread);
}

/// Whether what the adjusters reach of the error stands out of the reading error: the shift of the
/// marks' middle and the rotation about it, which are independent of each other.
bool motion_stands_out(const Advice& advice, const Registration& registration) {
    const RigidFit& fit = registration.fit;
    const double centre = deviation_of_centre(registration);
    double squares = 0.0;
    int freedoms = 0;
    const auto add = [&squares, &freedoms](double value, double deviation) {
        squares += std::pow(value / deviation, 2);
        ++freedoms;
    };
    if (advice.reach.across) add(fit.measured_centre.x - fit.nominal_centre.x, centre);
    if (advice.reach.along) add(fit.measured_centre.y - fit.nominal_centre.y, centre);
    if (advice.reach.turning && !advice.shift_only)
        add(fit.motion.rotation, registration.deviation.rotation);
    return freedoms > 0 && squares > chance_limit(freedoms);
}

/// Errors of the marks once the screen has made this motion.
void predict(Advice& advice, const Registration& registration) {
    for (const MarkReading& mark : registration.marks) {
        const Point to = moved(advice.rounded, mark.measured);
        advice.predicted.push_back({to.x - mark.nominal.x, to.y - mark.nominal.y});
    }
    const ErrorSize size = size_of(advice.predicted);
    advice.predicted_rms = size.rms;
    advice.predicted_max = size.max;
}

/// What stays because no adjuster reaches it.
void note_unreached(Advice& advice, const Registration& registration) {
    advice.turn_left = advice.exact.rotation - advice.wanted.rotation;
    const Point centre = registration.fit.measured_centre;
    const Point to = moved(advice.exact, centre), wanted = moved(advice.wanted, centre);
    advice.move_left = {to.x - wanted.x, to.y - wanted.y};
}

/// What each screw needs, for the motion that is made and for the whole fitted one.
void add_needs(Advice& advice, const Registration& registration,
               std::span<const Adjuster> adjusters) {
    const bool turning = advice.reach.turning;
    const BySide travel = travel_for(adjusters, advice.exact);
    const RigidMotion whole =
        reachable(adjusters, inverse_of(registration.fit.motion), registration.fit.measured_centre);
    const BySide whole_travel = travel_for(adjusters, whole);
    for (std::size_t i = 0; i < adjusters.size(); ++i) {
        const Adjuster& one = adjusters[i];
        const std::size_t at = index_of(one.side);
        ScrewAdvice screw =
            needed_at(registration, one, i, travel[at], turning && !advice.shift_only);
        screw.whole_travel = whole_travel[at];
        screw.whole_deviation = deviation_of_need(registration, one, turning);
        advice.screws.push_back(screw);
    }
}

/// Whole graduations for the needs, and the moves that make them.
void round_needs(Advice& advice, const Registration& registration,
                 std::span<const Adjuster> adjusters, const Play& play) {
    const Rounding rounding = Rounder(registration, adjusters, advice.exact).best();
    BySide rounded{};
    for (ScrewAdvice& screw : advice.screws) {
        const Adjuster& one = adjusters[screw.adjuster];
        screw.graduations = rounding.graduations[index_of(one.side)];
        plan_moves(screw, one, play);
        rounded[index_of(one.side)] = travel_of(one, screw.graduations);
    }
    advice.rounded = pose_of(adjusters, rounded).value_or(RigidMotion{});
}

} // namespace

double travel_of(const Adjuster& adjuster, int graduations) {
    const double travel = turns_of(adjuster, graduations) * adjuster.mm_per_turn;
    return adjuster.clockwise_positive ? travel : -travel;
}

void plan_moves(ScrewAdvice& screw, const Adjuster& adjuster, const Play& play) {
    screw.moves = {};
    screw.move_count = 0;
    screw.shortfall = 0.0;
    if (screw.graduations == 0) return;
    screw.shortfall = play.taken_up ? 0.0 : play.backlash;
    const int approach = play.approach_clockwise ? 1 : -1;
    if (!(play.backlash > 0.0) || screw.graduations * approach > 0) {
        screw.moves[0] = screw.graduations;
        screw.move_count = 1;
        return;
    }
    const int beyond =
        static_cast<int>(std::ceil(play.backlash * adjuster.graduations)) + overshoot_reserve;
    screw.moves = {screw.graduations - approach * beyond, approach * beyond};
    screw.move_count = 2;
}

std::variant<Advice, AdjusterFault> advise(const Registration& registration,
                                           std::span<const Adjuster> adjusters, const Play& play,
                                           double tolerance) {
    if (const auto fault = adjuster_fault(adjusters)) return *fault;
    if (!(play.backlash >= 0.0 && play.backlash <= most_backlash))
        return AdjusterFault{AdjusterFaultKind::not_finite, adjusters.size()};
    Advice advice;
    advice.reach = reach_of(adjusters);
    set_wanted(advice, registration, adjusters, tolerance);
    advice.exact = reachable(adjusters, advice.wanted, registration.fit.measured_centre);
    note_unreached(advice, registration);
    add_needs(advice, registration, adjusters);
    const bool any_sure =
        std::any_of(advice.screws.begin(), advice.screws.end(), [](const ScrewAdvice& screw) {
            return std::abs(screw.turns) >= noise_deviations * screw.deviation;
        });
    advice.plain = any_sure || motion_stands_out(advice, registration);
    if (advice.plain) round_needs(advice, registration, adjusters, play);
    advice.settled = std::all_of(advice.screws.begin(), advice.screws.end(),
                                 [](const ScrewAdvice& screw) { return screw.graduations == 0; });
    predict(advice, registration);
    return advice;
}

} // namespace carriageway
