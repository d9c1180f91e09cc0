#include "core/heat.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

constexpr int most_turns_of_heat = 1'000'000;

/// Share of a difference from the room's temperature that is left after one turn.
double left_after_turn(const PlatenHeat& heat) {
    return std::exp(-heat.turn_time() / heat.time_constant);
}

} // namespace

bool usable(const PlatenHeat& heat) {
    return std::isfinite(heat.ambient) && std::isfinite(heat.flash_rise) &&
           std::isfinite(heat.flash_seconds) && std::isfinite(heat.time_constant) &&
           std::isfinite(heat.cycle_time) && heat.flash_rise >= 0.0 &&
           heat.flash_seconds >= 0.0 && heat.time_constant > 0.0 && heat.cycle_time > 0.0 &&
           heat.stations >= 1;
}

double steady_temperature(const PlatenHeat& heat) {
    if (!usable(heat)) return heat.ambient;
    // Over ambient u = (u + rise)·q, with q = exp(−turn/constant): u = rise·q/(1 − q).
    const double rise = heat.flash_rise * heat.flash_seconds;
    return heat.ambient + rise / std::expm1(heat.turn_time() / heat.time_constant);
}

double temperature_after(const PlatenHeat& heat, double start, int turns) {
    if (!usable(heat) || turns <= 0) return start;
    const double steady = steady_temperature(heat);
    return steady + (start - steady) * std::pow(left_after_turn(heat), turns);
}

std::optional<int> steady_from(const PlatenHeat& heat, double start, double band) {
    if (!usable(heat) || !std::isfinite(start) || !(band > 0.0)) return std::nullopt;
    const double steady = steady_temperature(heat);
    const double missing = std::abs(start - steady);
    if (!(missing > band)) return 0;
    const double turns = std::log(missing / band) * heat.time_constant / heat.turn_time();
    if (!(turns < most_turns_of_heat)) return std::nullopt;
    // The logarithm may be off by a rounding: the turns beside it decide.
    const auto within = [&](int turn) {
        return std::abs(temperature_after(heat, start, turn) - steady) <= band;
    };
    int turn = static_cast<int>(std::ceil(turns));
    if (turn > 1 && within(turn - 1)) --turn;
    if (!within(turn)) ++turn;
    return turn;
}

std::optional<PlatenHeat> heat_from(const WarmUp& warm_up, PlatenHeat known) {
    if (warm_up.refusal != WarmUpRefusal::none || !(known.flash_seconds > 0.0))
        return std::nullopt;
    known.time_constant = warm_up.time_constant;
    known.flash_rise = 0.0;
    if (!usable(known) || !(warm_up.steady > known.ambient)) return std::nullopt;
    known.flash_rise = (warm_up.steady - known.ambient) *
                       std::expm1(known.turn_time() / known.time_constant) / known.flash_seconds;
    return known;
}

std::optional<DwellAdvice> flash_dwell(const FlashSetting& found, double platen_temperature) {
    const double missing_then = found.gel_temperature - found.platen_temperature;
    if (!std::isfinite(found.dwell) || !std::isfinite(missing_then) ||
        !std::isfinite(platen_temperature) || !(found.dwell > 0.0) || !(missing_then > 0.0))
        return std::nullopt;
    DwellAdvice advice;
    advice.model = std::max(
        0.0, found.dwell * (found.gel_temperature - platen_temperature) / missing_then);
    advice.dwell = std::clamp(advice.model, least_flash_dwell, most_flash_dwell);
    advice.shorter = advice.model < least_flash_dwell;
    advice.longer = advice.model > most_flash_dwell;
    return advice;
}

std::vector<HeatWarning> platen_warnings(double temperature, const PlatenLimits& limits) {
    std::vector<HeatWarning> warnings;
    const auto look = [&](HeatWarningKind kind, double limit) {
        if (std::isfinite(temperature) && temperature >= limit)
            warnings.push_back({kind, temperature, limit});
    };
    look(HeatWarningKind::sticking, limits.sticking);
    look(HeatWarningKind::dye_migration, limits.dye_migration);
    look(HeatWarningKind::poor_adhesion, limits.poor_adhesion);
    return warnings;
}

std::vector<HeatWarning> flash_warnings(double ink_temperature) {
    std::vector<HeatWarning> warnings;
    if (!std::isfinite(ink_temperature)) return warnings;
    if (ink_temperature < gel_from)
        warnings.push_back({HeatWarningKind::not_gelled, ink_temperature, gel_from});
    if (ink_temperature > gel_to)
        warnings.push_back({HeatWarningKind::past_gel, ink_temperature, gel_to});
    if (ink_temperature >= cure_from)
        warnings.push_back({HeatWarningKind::poor_adhesion, ink_temperature, cure_from});
    return warnings;
}

std::vector<HeatWarning> cure_warnings(double ink_temperature) {
    std::vector<HeatWarning> warnings;
    if (!std::isfinite(ink_temperature)) return warnings;
    if (ink_temperature < cure_from)
        warnings.push_back({HeatWarningKind::not_cured, ink_temperature, cure_from});
    if (ink_temperature > cure_to)
        warnings.push_back({HeatWarningKind::past_cure, ink_temperature, cure_to});
    return warnings;
}

} // namespace carriageway
