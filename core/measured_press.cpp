#include "core/measured_press.h"

namespace carriageway {

namespace {

double* turn_of(PressProfile& press, const ScrewPlace& screw) {
    if (screw.levels)
        return screw.index < press.level_screws.size()
                   ? &press.level_screws[screw.index].mm_per_turn
                   : nullptr;
    return screw.index < press.adjusters.size() ? &press.adjusters[screw.index].mm_per_turn
                                                : nullptr;
}

} // namespace

std::optional<double> mm_per_turn(const PressProfile& press, const ScrewPlace& screw) {
    // Only read: one way to a screw serves both.
    const double* turn = turn_of(const_cast<PressProfile&>(press), screw);
    return turn ? std::optional(*turn) : std::nullopt;
}

Spread* spread_of(PressProfile& press, Field field) {
    switch (field) {
        case Field::separation_spread:
            return &press.sensors.separation_spread;
        case Field::stop_spread:
            return &press.allowances.stop;
        case Field::screen_spread:
            return &press.allowances.screen;
        case Field::image_spread:
            return &press.allowances.image;
        case Field::overtravel_spread:
            return &press.allowances.overtravel;
        case Field::mark_spread:
            return &press.readings.mark;
        case Field::height_spread:
            return &press.readings.height;
        default:
            return nullptr;
    }
}

std::optional<PressProfile> with_measured(PressProfile press, const Measured& measured,
                                          const std::optional<ScrewPlace>& screw) {
    if (measured.refusal != MeasuredRefusal::none || measured.values.empty()) return std::nullopt;
    for (const MeasuredValue& value : measured.values) {
        if (value.field == Field::count) {
            double* turn = screw ? turn_of(press, *screw) : nullptr;
            if (!turn) return std::nullopt;
            *turn = value.value;
            continue;
        }
        number_of(press, value.field) = value.value;
        if (Spread* spread = spread_of(press, value.field)) spread->measured = true;
        if (value.field == Field::measured_separation) press.sensors.separation_measured = true;
    }
    return press;
}

} // namespace carriageway
