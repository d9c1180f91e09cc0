// Marks read on several platens over several turns of the table, under one head: what the head is
// off, what each platen is off, how it drifts, and what is plain scatter.
//
// The model of one number (x, y or rotation) read on platen p in turn t:
//
//     head + platen[p] + drift·(t − middle of the turns) + scatter,   Σ platen = 0
//
// fitted by least squares, so that platens needn't all be read in the same turns. The scatter's
// standard deviation is pooled over all readings, and gives every number its standard error (never
// less than the reading error gives it: scatter can come out small by chance). Nobody should chase
// what isn't larger than that. Only the head is the adjusters' business.
#pragma once

#include <cstddef>
#include <span>
#include <variant>
#include <vector>

#include "core/press.h"
#include "core/rigid_motion.h"

namespace carriageway {

/// The marks read on one print.
struct PlatenReading {
    int platen = 0;                 ///< its number on the press
    int turn = 0;                   ///< turns of the table since counting began
    std::vector<MarkReading> marks; ///< the same nominal places, in the same order, on every print
};

/// Why readings say nothing about scatter.
enum class ScatterFaultKind {
    too_few_platens, ///< value: platens; limit: least_platens
    too_few_turns,   ///< value: turns; limit: least_turns
    platen_once,     ///< reading: of a platen that was read in one turn only
    repeated,        ///< reading: the second of one platen in one turn
    other_marks,     ///< reading: its marks aren't those of the first, or none
    not_readable,    ///< reading: a mark isn't finite or is absurdly far, or no rotation is defined
    too_many,        ///< value: readings; limit: most_platen_readings
    reading_error,   ///< value: the reading error, which must be above 0 and finite
};

struct ScatterFault {
    ScatterFaultKind kind = ScatterFaultKind::too_few_platens;
    std::size_t reading = 0; ///< place in the list, from 0
    double value = 0.0;
    double limit = 0.0;
};

/// Ours: with fewer, head and platen, or drift and scatter, can't be told apart.
inline constexpr int least_platens = 2;
inline constexpr int least_turns = 3;
inline constexpr std::size_t most_platen_readings = 10'000; ///< ours: more is a slip

/// A number with its standard error.
struct ScatterEstimate {
    double value = 0.0;
    double error = 0.0;
};

/// One direction (or the rotation) taken apart. mm and mm a turn; rad and rad a turn.
struct ScatterPart {
    bool known = false;            ///< false for the rotation of single marks
    ScatterEstimate head;                 ///< in the middle of the turns, mean of the good platens
    std::vector<ScatterEstimate> platens; ///< what each is off beyond the head, as in Scatter::platens
    ScatterEstimate drift;                ///< per turn
    double deviation = 0.0;        ///< standard deviation of the scatter, pooled
    double reading = 0.0;          ///< what of it the reading error makes by itself
};

/// What the readings say.
struct Scatter {
    std::vector<int> platens; ///< their numbers, rising
    /// Places among `platens` of those that stand off the others, rising; fewer than half. The head
    /// is what it is over the others, the good ones: a bent platen is no reason to move it.
    std::vector<std::size_t> off;
    int freedoms = 0;         ///< readings less numbers fitted: at least 1
    Point centre;             ///< of the marks' nominal places: where x and y are told
    ScatterPart x;            ///< across the arm: along the table's way round
    ScatterPart y;            ///< along the arm
    ScatterPart rotation;
};

/// Takes readings apart. Marks of one print give a turn and a move (best_motion); a single mark a
/// move alone. `reading_error` is how well one coordinate is read (press.h).
std::variant<Scatter, ScatterFault> scatter_of(std::span<const PlatenReading> readings,
                                               const Spread& reading_error);

/// What scatter, drift and platens point to. Common practice, no source.
enum class ScatterCause {
    index_or_lock, ///< scatter across the arm beyond that along it: the table stops elsewhere
    heat_or_drift, ///< a drift: platens warm up, a clamp or a screw creeps
    platen_off,    ///< one platen off the others: bent, loose or not seated. With two platens it
                   ///< can't be told which
};

struct ScatterSign {
    ScatterCause cause = ScatterCause::index_or_lock;
    int platen = 0; ///< for platen_off
};

/// How many standard errors something must be worth to be pointed at, for a normal distribution;
/// few freedoms ask for more (student_factor). Ours: many numbers are looked at together.
inline constexpr double sign_deviations = 3.0;

/// The causes that stand out of the scatter: index first, then drift, then platens by number. None:
/// nothing but scatter. Scatter across must exceed that along, and what the reading error makes, by
/// more than chance makes of two equal ones.
std::vector<ScatterSign> signs_of(const Scatter& scatter);

/// How far the head's print lies from its place in the middle of the marks, mm, as the good platens
/// have it.
double head_offset(const Scatter& scatter);

/// The factor of Student's distribution that covers the share which `normal` standard deviations
/// (above 0, to 5) cover of a normal one, both sides together: the closed sums for whole freedoms
/// (Abramowitz and Stegun 26.7.3 and 26.7.4, from memory), solved by halving. Freedoms below 1
/// count as 1. Takes a time that grows with the freedoms.
double student_factor(double normal, int freedoms);

} // namespace carriageway
