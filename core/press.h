// What one press does its own way. Nothing in the core assumes any of these numbers: a profile
// carries them as data, and a job keeps a frozen copy of the profile that it was set with.
//
// The defaults describe an invented press for the demonstration; a user replaces them by
// measuring. Lengths mm, times s, speeds mm/s, angles rad.
#pragma once

#include <string>
#include <vector>

#include "core/check_list.h"
#include "core/mesh.h"
#include "core/units.h"

namespace carriageway {

/// The two ends of an arm.
enum class End { operator_side, machine_side };

/// Which way a stroke travels along the arm.
enum class Direction { toward_operator, toward_machine };

/// +1 toward the machine, -1 toward the operator: the sign of d in the formulas.
constexpr double sign_of(Direction direction) {
    return direction == Direction::toward_machine ? 1.0 : -1.0;
}
constexpr Direction opposite(Direction direction) {
    return direction == Direction::toward_machine ? Direction::toward_operator
                                                  : Direction::toward_machine;
}

/// How well a number is known. Typed as "plus or minus" it is the half-width of a rectangular
/// distribution (JCGM 100:2008, 4.3.7); measured by repeated readings it is a standard deviation.
struct Spread {
    double value = 0.0;    ///< mm, not negative
    bool measured = false; ///< true: a standard deviation; false: a half-width
    bool operator==(const Spread&) const = default;
};

/// The ruler on the arm, against which the inner ends of the limit bars are read.
struct Ruler {
    double zero = -500.0; ///< y of the ruler's zero mark
    Direction counts = Direction::toward_machine; ///< the way its numbers grow
    double graduation = 1.0; ///< distance between marks, above 0
    bool inches = false; ///< whether its numbers are inches; otherwise mm
    bool operator==(const Ruler&) const = default;
};

/// The two end sensors and the limit bars that switch them. Each sensor sees only its own bar.
struct Sensors {
    double operator_offset = -30.0; ///< a_o: sensor's y from the carriage reference
    double machine_offset = 30.0;   ///< a_m
    double bar_length = 60.0;       ///< B, outward from the bar's inner end
    double reach = 4.0;             ///< r: sensing past a bar's end
    double hysteresis = 2.0;        ///< h: extra distance before a sensor lets go
    double latency = 0.015;         ///< s between switching and the start of braking
    double separation_margin = 5.0; ///< wanted above the least separation (ours)
    bool separation_measured = false; ///< use `measured_separation` instead of the formula
    double measured_separation = 70.0; ///< least separation as read off the press
    Spread separation_spread{1.0, false}; ///< how well the least separation is known
    bool operator==(const Sensors&) const = default;
};

/// The carriage and its drive.
struct Carriage {
    double range_lo = -380.0; ///< c_lo: operator end of the reference point's travel
    double range_hi = 380.0;  ///< c_hi
    double acceleration = 8000.0; ///< mm/s², for speeding up and for braking
    double fastest = 1200.0;  ///< highest speed that can be set, mm/s
    double drop_time = 0.15;  ///< s for a blade to come down
    double drop_dwell = 0.20; ///< s the carriage waits before it starts
    bool operator==(const Carriage&) const = default;
};

/// A holder that pivots at a height above its edge. For a stroke toward the machine the pivot of
/// the squeegee stands at -d·pivot_offset and that of the flood bar at +d·pivot_offset from the
/// carriage reference, d being the sign of the print stroke.
struct Holder {
    double pivot_offset = 15.0; ///< distance of the pivot from the carriage reference
    double pivot_height = 65.0; ///< L: height of the pivot above the edge when upright
    double half_depth = 15.0;   ///< half the holder's own depth along the arm
    bool operator==(const Holder&) const = default;
};

/// A gauge for the height of a blade; lower marks are nearer the platen (common practice).
struct Gauge {
    double mm_per_mark = 6.0; ///< above 0
    double lowest = 0.0;      ///< lowest mark
    double highest = 2.0;     ///< highest mark
    double graduation = 0.1;  ///< smallest step that can be read
    bool operator==(const Gauge&) const = default;
};

/// Angles that the holders allow, and the wings of a flood bar.
struct Angles {
    double least = radians(5.0);    ///< common practice
    double most = radians(25.0);    ///< common practice
    double wings_flat = radians(25.0); ///< the angle at which the wings lie flat on the mesh
    double wing_length = 30.0;
    bool operator==(const Angles&) const = default;
};

/// What an adjuster of the screen moves.
enum class AdjusterSide { left, right, across };

/// One registration screw. What a turn does is the profile's, never a rule of the core.
struct Adjuster {
    std::string name; ///< as marked on the press
    AdjusterSide side = AdjusterSide::left;
    double x = 0.0; ///< where it acts, in the head's axes
    double y = 0.0;
    double mm_per_turn = 1.25; ///< above 0
    int graduations = 12;      ///< marks on its dial per turn, at least 1
    bool clockwise_positive = true; ///< a clockwise turn moves the screen toward +y (or +x)
    bool operator==(const Adjuster&) const = default;
};

/// The air cylinders that press the blades down, all of one blade alike.
struct PressCylinders {
    double squeegee_bore = 32.0; ///< diameter; 0: not known
    double squeegee_count = 1.0; ///< how many press the squeegee
    double flood_bore = 32.0;
    double flood_count = 1.0;
    bool operator==(const PressCylinders&) const = default;
};

/// Where the gauges' zero lies: the height over the bare platen at which the edge of an upright
/// blade stands with its gauge at mark 0, if nothing is in its way. Invented for the demonstration.
struct EdgeHeights {
    double squeegee = -8.7;
    double flood = -5.7;
    bool operator==(const EdgeHeights&) const = default;
};

/// Where the height of a screen is adjusted, in the head's axes: left and right at the operator's
/// side, one at the machine's side.
struct HeightPoints {
    double across = 250.0; ///< the left one stands at -across, the right one at +across
    double operator_y = -350.0;
    double machine_y = 350.0;
    bool operator==(const HeightPoints&) const = default;
};

/// How well marks, heights and screws are read and held.
struct Readings {
    double backlash = 0.1;     ///< turns of play in an adjuster's screw
    Spread mark{0.05, false};  ///< place of a printed mark
    Spread height{0.05, false}; ///< height under a screen
    bool operator==(const Readings&) const = default;
};

/// How the platens warm up, from readings with a surface thermometer. Invented for the demonstration.
struct Warming {
    double ambient = 22.0;  ///< °C
    double per_second = 1.2; ///< rise of a platen, °C, for each second under the flash unit
    double cooling = 420.0; ///< s, time constant of its cooling
    bool operator==(const Warming&) const = default;
};

/// A screw that levels a platen on its arm, in the platen's own axes (as the head's under a head).
struct LevelScrew {
    std::string name; ///< as marked on the press
    double x = 0.0;
    double y = 0.0;
    double mm_per_turn = 1.25; ///< above 0
    bool clockwise_raises = true;
    bool operator==(const LevelScrew&) const = default;
};

/// Distances to keep, and how well the settings are held.
struct Allowances {
    double frame_clearance = 50.0; ///< blade, flood bar and holders to the frame
    double platen_inset = 10.0;    ///< squeegee band inside the platen (ours)
    double least_bead = 40.0;      ///< between the two edges, for the bead of ink (ours)
    Spread stop{1.0, false};       ///< setting of one stop
    Spread screen{1.0, false};     ///< loading of the screen
    Spread image{1.0, false};      ///< image on its screen
    Spread overtravel{2.0, false}; ///< distance between switching and standing still
    bool operator==(const Allowances&) const = default;
};

/// Which way the table turns, seen from above.
enum class Turning { clockwise, counter_clockwise };

/// How the table turns and the heads come down and up. Invented for the demonstration.
struct PressPace {
    double index = 2.0;  ///< s from one station to the next
    double lower = 0.25; ///< s for a head to come down onto its platen
    double lift = 0.25;  ///< s until the table may turn again
    double jerk = 0.0;   ///< mm/s³, of a carriage; 0: not limited, its motion is a trapezoid
    bool floods_while_indexing = false; ///< a head floods its lifted screen while the table turns
    bool operator==(const PressPace&) const = default;
};

/// What can stand over a station.
struct StationRoom {
    bool print_head = true;
    bool flash = true;
    bool operator==(const StationRoom&) const = default;
};

/// Everything about one machine.
struct PressProfile {
    std::string name;
    int stations = 10; ///< places round the table, 2 to most_stations
    Turning turning = Turning::clockwise;
    double arm_radius = 1450.0; ///< press centre to the centre of a clamped frame
    Ruler ruler;
    Sensors sensors;
    Carriage carriage;
    Holder squeegee_holder;
    Holder flood_holder;
    Gauge squeegee_gauge;
    Gauge flood_gauge;
    Angles angles;
    Allowances allowances;
    PressCylinders cylinders;
    EdgeHeights edge_heights;
    HeightPoints height_points;
    Readings readings;
    Warming warming;
    PressPace pace;
    std::vector<StationRoom> rooms; ///< station 1 first; stations beyond its end hold anything
    std::vector<CheckItem> checks;  ///< its lists; empty: usual_checks()
    std::vector<Adjuster> adjusters;
    std::vector<LevelScrew> level_screws; ///< of every platen
    std::vector<MeshRow> meshes; ///< a person's own, beside the published ones (mesh.h)
    bool operator==(const PressProfile&) const = default;
};

/// What a station can hold.
inline StationRoom station_room(const PressProfile& press, int station) {
    const auto index = static_cast<std::size_t>(station - 1);
    return index < press.rooms.size() ? press.rooms[index] : StationRoom{};
}

/// The lists that go with a run on this press.
inline const std::vector<CheckItem>& checks_of(const PressProfile& press) {
    return press.checks.empty() ? usual_checks() : press.checks;
}

/// Most stations that a profile may have. Ours.
inline constexpr int most_stations = 64;

/// Most meshes that a profile keeps. Ours.
inline constexpr std::size_t most_meshes = 200;

/// The standard deviation that a spread stands for, mm: the value itself when measured, the
/// half-width over the square root of three otherwise (JCGM 100:2008, 4.3.7).
double standard_deviation(const Spread& spread);

/// The largest deviation to reckon with, mm: the half-width, or three standard deviations of a
/// measured value (ours).
double worst_deviation(const Spread& spread);

/// The number that a person reads on the ruler when a bar's inner end stands at `y`; in the
/// ruler's own unit (mm or inches).
double ruler_reading(const Ruler& ruler, double y);

/// The y (mm) at which the ruler shows `reading`, given in the ruler's own unit.
double ruler_position(const Ruler& ruler, double reading);

/// The graduation at or beyond `y` in the given direction, as a y in mm. A position within
/// `graduation_slack` of a mark counts as standing on it. A ruler whose graduation is not positive
/// gives `y` back; so below.
double graduation_toward(const Ruler& ruler, double y, Direction direction);

/// The graduation nearest to `y`, as a y in mm.
double nearest_graduation(const Ruler& ruler, double y);

/// mm by which a position may miss a mark and still stand on it: rounding of stored numbers.
inline constexpr double graduation_slack = 1e-6;

/// Turns of an adjuster's screw that move its side of the screen by `travel` mm toward +y (or +x
/// for the one across): positive is clockwise, as the profile says. Not rounded. A screw that moves
/// nothing in a turn: 0.
double turns_for(const Adjuster& adjuster, double travel);

} // namespace carriageway
