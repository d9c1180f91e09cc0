// How each number of a press profile is measured: what to read, what follows from it, and what to
// keep clear of meanwhile. As data; words come from the catalogue.
//
// Places are y in the head's axes (mm); what is read on the ruler is turned into a place by
// ruler_position() first. Angles rad from the vertical, as everywhere in the core.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/caution.h"
#include "core/fields.h"
#include "core/measuring.h"

namespace carriageway {

/// What a person reads. Its quantity is that of quantity_of().
enum class ReadingKind {
    length,           ///< the thing itself, with rule or caliper
    place,            ///< y of the thing itself
    reference_place,  ///< y of the carriage's reference point
    sensor_place,     ///< y of the middle of the sensor's face, the carriage standing still
    time,             ///< the thing itself, from a slowed-down film or a stopwatch
    angle,            ///< the thing itself, read off the holder's scale
    mark,             ///< the number at a gauge's mark
    decision,         ///< chosen by the person, not read; in the field's own quantity
    span,             ///< distance between two marks of the ruler, or difference of two numbers
    divisions,        ///< how many steps lie between them (a count)
    operator_bar,     ///< y of the operator-side bar's inner end when one lamp goes out
    machine_bar,      ///< y of the machine-side bar's inner end, likewise
    gap_lamp_on,      ///< along the arm from sensor to bar's end when its lamp comes on
    gap_lamp_off,     ///< the same when it goes out again
    slow_speed,       ///< of a stroke, and
    slow_overtravel,  ///< how far beyond switching the carriage then stops
    fast_speed,
    fast_overtravel,
    switching_place,  ///< y of the carriage where the lamp comes on, moved by hand
    resting_place,    ///< y where it stands after a stroke
    stroke_distance,
    stroke_time,
    stroke_speed,     ///< as set
    first_angle,      ///< of a holder, and
    first_edge,       ///< how far its edge then is from the carriage reference, along the arm
    second_angle,
    second_edge,
    height_a_mark,    ///< what a mark of the gauge stands for, mm, as measured before
    first_mark,       ///< of a gauge, and
    first_height,     ///< the height of the edge over the platen at that mark
    second_mark,
    second_height,
    turns,            ///< of a screw (a count, with a fraction)
    travel,           ///< what the turns have moved, mm
    plate,            ///< what the part's plate or the machine's manual says, in the field's quantity
    counted,          ///< how many there are
    play,             ///< turns of a screw, turned back, until what it moves follows
    room_temperature, ///< of the air round the press
    platen_before,    ///< a platen's temperature as it comes to the flash, and
    platen_after,     ///< straight behind it
    flash_time,       ///< that it was under the flash
    platen_warm,      ///< a platen's temperature while nothing warms it, and
    platen_later,     ///< some time later
    waited,           ///< the time between the two
};

/// What a kind of reading measures. A decision or a plate: nothing of its own, so length.
Quantity quantity_of(ReadingKind kind);

/// What follows from the readings.
enum class Steps {
    decide,                  ///< the decision itself
    read,                    ///< the mean of what is read
    read_half,               ///< half of it
    difference,              ///< second kind less first kind
    ratio,                   ///< first kind over second kind
    acceleration_of_stroke,  ///< distance, time, speed: see acceleration_of_stroke()
    latency_at_two_speeds,   ///< overtravels at two speeds: see latency_at_two_speeds()
    lamps_out,               ///< machine bar less operator bar, and how well that is known
    gauge_marks,             ///< change of height over change of mark, without sign
    height_at_zero,          ///< of an upright edge: third kind less second kind times first kind
    two_angles,              ///< see pivot_height_of(), pivot_offset_of()
    scatter,                 ///< standard deviation of one reading
    scatter_of_difference,   ///< the same of pairs: second kind less first kind
    rise_a_second,           ///< second kind less first kind, over the third
    cooling,                 ///< see cooling_constant_of(): room, warm, later, time between
};

struct NeededReading {
    ReadingKind kind = ReadingKind::length;
    int least = 1;      ///< how many of them at least
    bool exact = false; ///< a count or a decision: no uncertainty of its own
};

/// One procedure. Unused places of the lists are beyond the counts.
struct Procedure {
    std::array<Field, 2> fields{Field::count, Field::count}; ///< what it feeds
    int field_count = 0; ///< 0: an adjuster's mm per turn, which is no field
    Steps steps = Steps::read;
    std::array<NeededReading, 4> needed{};
    int needed_count = 0;
    std::array<Caution, 3> cautions{};
    int caution_count = 0;
};

/// All of them: each field that belongs to a press is fed by exactly one; one more feeds an
/// adjuster. In the order of the fields.
const std::vector<Procedure>& procedures();

/// The one that feeds a field; nothing for fields of heads and jobs.
const Procedure* procedure_for(Field field);

/// The one that gives an adjuster's mm per turn.
const Procedure& adjuster_procedure();

/// Readings of one kind.
struct KindReadings {
    ReadingKind kind = ReadingKind::length;
    std::vector<double> values;
    double half_step = 0.0; ///< half the smallest step that can be read, not negative
};

enum class MeasuredRefusal {
    none,
    not_finite,     ///< a reading or a half step
    missing,        ///< a kind that is needed, or too few of it: see kind
    not_wanted,     ///< a kind that the procedure doesn't need, or one given twice
    unequal_counts, ///< pairs that don't pair
    no_difference,  ///< angles, marks, speeds or counts too alike to divide by
    impossible,     ///< no press does that: a stroke faster than its speed, a platen that warms by itself
    outside_limits, ///< the field doesn't accept the value: see values
};

struct MeasuredValue {
    Field field = Field::count; ///< Field::count: mm per turn of an adjuster
    double value = 0.0;
    /// Measured standard uncertainty of the value, in its own unit; its freedom. Unknown: nothing,
    /// when something was read only once and no step was given.
    std::optional<Spread> spread;
    double freedom = 0.0;
};

/// A reading that stands off from the others of its kind (statistics_of()): take it again.
struct StandingOff {
    ReadingKind kind = ReadingKind::length;
    std::size_t reading = 0;
};

struct Measured {
    MeasuredRefusal refusal = MeasuredRefusal::none;
    ReadingKind kind = ReadingKind::length; ///< for not_finite, missing, not_wanted
    std::vector<MeasuredValue> values;      ///< one for each field of the procedure
    std::vector<StandingOff> standing_off;
};

/// Works out a procedure's numbers from its readings.
Measured measured(const Procedure& procedure, const std::vector<KindReadings>& readings);

/// Acceleration (and braking, alike) of a stroke from rest to rest: v/(t − s/v) where it reached
/// its speed v, 4s/t² where it did not (from motion.h's trapezoid and triangle). Not positive or
/// not finite input, or a stroke quicker than s/v: nothing.
std::optional<double> acceleration_of_stroke(double distance, double time, double speed);

/// From o = v·latency + v²/(2a) at two speeds: with o/v a line over v, its value at 0. Speeds not
/// positive or alike: nothing. May come out negative where the readings scatter.
std::optional<double> latency_at_two_speeds(double slow_speed, double slow_overtravel,
                                            double fast_speed, double fast_overtravel);

/// Height of a pivot over its edge, from the edge's distance to the carriage reference at two
/// angles: (e2 − e1)/(sin a2 − sin a1). Angles alike: nothing.
std::optional<double> pivot_height_of(double first_angle, double first_edge, double second_angle,
                                      double second_edge);

/// Distance of the pivot from the carriage reference, from the same: e1 − L·sin a1.
std::optional<double> pivot_offset_of(double first_angle, double first_edge, double second_angle,
                                      double second_edge);

/// Time constant of a platen's cooling toward the room's temperature (Newton's law of cooling):
/// time/ln((warm − room)/(later − room)). Nothing unless warm > later > room and time is positive.
std::optional<double> cooling_constant_of(double room, double warm, double later, double time);

} // namespace carriageway
