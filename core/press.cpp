#include "core/press.h"

#include <cmath>

namespace carriageway {

namespace {

/// Standard deviations of a measured number to reckon with at worst. Ours: of a normal
/// distribution 0.27 % lies farther out.
constexpr double worst_deviations = 3.0;

/// Marks from the ruler's zero to `y`, in the way in which its numbers grow.
double marks_to(const Ruler& ruler, double y) {
    return sign_of(ruler.counts) * (y - ruler.zero) / ruler.graduation;
}

/// The y of a mark.
double mark_at(const Ruler& ruler, double marks) {
    return ruler.zero + sign_of(ruler.counts) * marks * ruler.graduation;
}

} // namespace

double standard_deviation(const Spread& spread) {
    return spread.measured ? spread.value : spread.value / std::sqrt(3.0);
}

double worst_deviation(const Spread& spread) {
    return spread.measured ? worst_deviations * spread.value : spread.value;
}

double ruler_reading(const Ruler& ruler, double y) {
    const double along = sign_of(ruler.counts) * (y - ruler.zero);
    return ruler.inches ? along / mm_per_inch : along;
}

double ruler_position(const Ruler& ruler, double reading) {
    const double along = ruler.inches ? reading * mm_per_inch : reading;
    return ruler.zero + sign_of(ruler.counts) * along;
}

double graduation_toward(const Ruler& ruler, double y, Direction direction) {
    if (!(ruler.graduation > 0.0)) return y;
    const double marks = marks_to(ruler, y);
    const double slack = graduation_slack / ruler.graduation;
    const bool up = direction == ruler.counts;
    return mark_at(ruler, up ? std::ceil(marks - slack) : std::floor(marks + slack));
}

double nearest_graduation(const Ruler& ruler, double y) {
    if (!(ruler.graduation > 0.0)) return y;
    return mark_at(ruler, std::round(marks_to(ruler, y)));
}

double turns_for(const Adjuster& adjuster, double travel) {
    if (!(adjuster.mm_per_turn > 0.0)) return 0.0;
    const double turns = travel / adjuster.mm_per_turn;
    return adjuster.clockwise_positive ? turns : -turns;
}

} // namespace carriageway
