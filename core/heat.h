// Platens that warm up under the flash, and what that means for the flash's dwell.
//
// On every turn of the table a platen passes the flash, which warms it by a constant rise a second,
// and then cools toward the room's temperature at a rate that falls with the difference (Newton's
// law of cooling). From turn to turn that is a first-order rise toward a steady temperature. The
// constants are measured on the press with a surface thermometer.
//
// Temperatures °C, times s. Everything here is advice, never a verdict: the ink's maker decides.
#pragma once

#include <optional>
#include <vector>

namespace carriageway {

/// What a platen's warming depends on. The defaults are invented for the demonstration.
struct PlatenHeat {
    double ambient = 22.0;        ///< the room
    double flash_rise = 0.8;      ///< °C a second of flash gives the platen, not negative
    double flash_seconds = 5.0;   ///< of all flashes in one turn together, not negative
    double time_constant = 900.0; ///< of its cooling, above 0
    double cycle_time = 6.0;      ///< from one index to the next, above 0
    int stations = 10;            ///< cycles in one turn, at least 1
    double turn_time() const { return cycle_time * stations; }
};

/// Whether all the numbers are finite and within the bounds said beside them.
bool usable(const PlatenHeat& heat);

/// Temperature toward which the platen warms, as it comes to the flash (the coolest of its turn);
/// behind the flash it is warmer by flash_rise·flash_seconds. Not usable: the ambient temperature.
double steady_temperature(const PlatenHeat& heat);

/// Temperature as it comes to the flash after `turns` turns, `start` being that of the first time.
/// In closed form. Not usable, or turns not positive: `start`.
double temperature_after(const PlatenHeat& heat, double start, int turns);

/// The first turn from which the platen stays within `band` of the steady temperature; nothing when
/// the band is not above 0, the numbers are not usable or it takes more than a million turns.
std::optional<int> steady_from(const PlatenHeat& heat, double start, double band);

/// A platen's temperature at some time while it warms or cools.
struct TemperatureReading {
    double time = 0.0;
    double temperature = 0.0;
};

enum class WarmUpRefusal {
    none,
    not_finite,
    too_few,        ///< less than four different times: three constants and one to judge them by
    still_straight, ///< no bend yet, so nothing tells where it ends: read for longer
    already_steady, ///< nothing rises
};

/// steady + (start − steady)·exp(−time/time_constant), time counted from the first reading.
struct WarmUp {
    WarmUpRefusal refusal = WarmUpRefusal::none;
    double steady = 0.0;
    double start = 0.0;
    double time_constant = 0.0;
    double steady_error = 0.0; ///< standard errors
    double start_error = 0.0;
    double time_constant_error = 0.0;
    double deviation = 0.0; ///< standard deviation of a reading from the curve
};

/// Fits the constants by least squares; the order of the readings doesn't matter. For a given time
/// constant the rest is linear, so only that one is searched for: over a grid, then by golden
/// section. A time constant of more than five times the time that was read counts as no bend
/// (ours).
WarmUp fit_warm_up(std::vector<TemperatureReading> readings);

/// The constants of a press on which this warm-up was measured; the rest of `known` (ambient, flash
/// seconds, cycle, stations) being those of that run. Nothing for a refused fit, without flash, or
/// when the platen did not end warmer than the room.
std::optional<PlatenHeat> heat_from(const WarmUp& warm_up, PlatenHeat known);

/// Flash dwell that is usual, s (published trade guidance; advice).
inline constexpr double least_flash_dwell = 3.0;
inline constexpr double most_flash_dwell = 6.0;
/// Where plastisol gels, 180 to 250 °F, and cures, 280 to 320 °F (likewise).
inline constexpr double gel_from = 82.0;
inline constexpr double gel_to = 121.0;
inline constexpr double cure_from = 138.0;
inline constexpr double cure_to = 160.0;

/// A dwell that was found to gel the base on a platen of some temperature.
struct FlashSetting {
    double dwell = 5.0;                 ///< above 0
    double platen_temperature = 30.0;   ///< below the gel temperature
    double gel_temperature = 100.0;     ///< what the ink is to reach
};

struct DwellAdvice {
    double dwell = 0.0;   ///< within the usual range
    double model = 0.0;   ///< what the model says, 0 at least
    bool shorter = false; ///< the model wants less than the usual range holds
    bool longer = false;  ///< the model wants more
};

/// The dwell that brings the ink to the same temperature on a warmer or cooler platen. The model is
/// our assumption: the ink starts at the platen's temperature and warms evenly, so the dwell is in
/// proportion to what is missing: dwell·(gel − T)/(gel − T_found). Nothing for input that is not
/// finite or beyond the bounds said in FlashSetting.
std::optional<DwellAdvice> flash_dwell(const FlashSetting& found, double platen_temperature);

enum class HeatWarningKind {
    sticking,       ///< hot platen: garments stick, screens too
    dye_migration,  ///< hot platen: the garment's dye moves into the ink
    poor_adhesion,  ///< hot platen or base: the next colour holds badly on what is cured already
    not_gelled,     ///< at the flash: below the gel range
    past_gel,       ///< at the flash: above the gel range
    not_cured,      ///< in the dryer: below the cure range
    past_cure,      ///< in the dryer: above the cure range
};

struct HeatWarning {
    HeatWarningKind kind = HeatWarningKind::sticking;
    double value = 0.0; ///< the temperature
    double limit = 0.0; ///< the one that it passes
};

/// Platen temperatures from which to warn. Hot platens make garments stick, dyes move and colours
/// hold badly (published trade guidance), but from where on is said nowhere: settings of the user,
/// defaults ours.
struct PlatenLimits {
    double sticking = 60.0;
    double dye_migration = 60.0;
    double poor_adhesion = 60.0;
};

/// Warnings for a platen, for ink as it leaves the flash, and for ink in the dryer. A temperature
/// that is not finite warns of nothing.
std::vector<HeatWarning> platen_warnings(double temperature, const PlatenLimits& limits = {});
std::vector<HeatWarning> flash_warnings(double ink_temperature);
std::vector<HeatWarning> cure_warnings(double ink_temperature);

} // namespace carriageway
