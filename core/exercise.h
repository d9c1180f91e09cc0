// Exercises: questions about a press that the geometry itself asks and marks.
//
// An exercise is made from a kind, a seed and a level, and from nothing else: the same three give
// the same exercise on every machine. It carries its own job, which it has made and broken itself,
// and its solution. Whatever is answered is marked by working the job out with assess(), or with
// the same functions that advise in earnest; so an answer that is as good as the stored one counts
// as much.
//
// Angles rad, lengths mm.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/edit.h"
#include "core/findings.h"

namespace carriageway {

enum class ExerciseKind {
    find_fault,      ///< which findings does this press have? Claims are chosen from a list
    shortest_stroke, ///< set a head's stops to the shortest good stroke in as few moves as possible
    trainee_angle,   ///< which angle of a holder for a trainee? One of a few numbers
    which_dial,      ///< which adjusters, and which way, from where the marks printed
    read_sheet,      ///< set a head as a sheet says
    place_stations,  ///< which colour on which station
    judge_gap,       ///< which off-contact for this garment? One of a few numbers
    count,           ///< how many there are; not a kind
};

/// Something wrong with a head: one of its findings that is a stop or a mind.
struct FaultClaim {
    HeadId head = 0;
    FindingKind kind = FindingKind::both_sensors_on;
    bool operator==(const FaultClaim&) const = default;
};

/// What a sheet says of one number.
struct SheetLine {
    HeadId head = 0;
    Field field = Field::count;
    double value = 0.0; ///< in the core's unit
    bool operator==(const SheetLine&) const = default;
};

/// A turn at one adjuster.
struct DialTurn {
    std::size_t adjuster = 0; ///< its place among the press's
    bool clockwise = true;
    bool operator==(const DialTurn&) const = default;
};

/// An answer: only what the kind asks for counts.
struct ExerciseAnswer {
    std::vector<FaultClaim> faults; ///< find_fault
    std::vector<Edit> edits;        ///< shortest_stroke, read_sheet, place_stations: as made
    std::vector<DialTurn> turns;    ///< which_dial
    std::optional<double> number;   ///< trainee_angle, judge_gap: the one that was chosen
    bool operator==(const ExerciseAnswer&) const = default;
};

struct Exercise {
    ExerciseKind kind = ExerciseKind::find_fault;
    std::uint64_t seed = 0;
    int level = 1;
    Job job;         ///< fault_of() accepts it
    HeadId head = 0; ///< that it is about; 0: the whole press
    Field field = Field::count;      ///< trainee_angle: the holder's angle that is asked for
    std::vector<SheetLine> sheet;    ///< read_sheet: what is to be set
    std::vector<FaultClaim> choices; ///< find_fault: what can be claimed, in no telling order
    std::vector<double> numbers;     ///< trainee_angle, judge_gap: what can be chosen, ascending
    ExerciseAnswer solution;         ///< one that mark() gives full marks
    bool from_job = false;           ///< broken by a trainer (exercise_break.h); no seed or level
    bool operator==(const Exercise&) const = default;
};

inline constexpr int lowest_level = 1;
inline constexpr int highest_level = 8;

/// Makes an exercise. Levels outside the two ends count as the nearer one; `kind` mustn't be count.
/// More faults, more heads, more numbers with a higher level.
Exercise make_exercise(ExerciseKind kind, std::uint64_t seed, int level);

/// Why a line of a marking has its points.
enum class MarkReason {
    fault_found,      ///< claimed, and there: head, finding
    fault_missed,     ///< there, and not claimed
    not_a_fault,      ///< claimed, and not there
    head_fit,         ///< shortest_stroke: the head has no finding that is a stop
    head_not_fit,     ///< it has: finding is the first
    stroke_short,     ///< value: travel; limit: of the shortest good stroke
    stroke_long,      ///< value: travel; limit: likewise
    moves_fewest,     ///< value: stops that were moved, one by one; limit: the fewest
    moves_more,       ///< likewise
    number_right,     ///< value: chosen; limit: what is right
    number_near,      ///< the next one to it
    number_wrong,
    dial_right,       ///< adjuster, and way: value +1 clockwise, -1 the other way
    dial_other_way,   ///< the right adjuster the wrong way
    dial_missed,      ///< it was to be turned
    dial_not_needed,  ///< it was not
    line_set,         ///< read_sheet: head, field; value: as set; limit: as the sheet says
    line_not_set,
    head_disturbed,   ///< read_sheet: head, field that the sheet doesn't name was changed
    wishes_met,       ///< place_stations: every wish of the colours is met
    wishes_broken,    ///< value: how many aren't
    placed_best,      ///< as good as the best placement
    placed_worse,     ///< value: stations passed idle; limit: of the best
    not_answered,
};

/// One line of a marking. Points are shares of the whole: what is there to be had sums to 1 but for
/// lines that take points away.
struct MarkLine {
    MarkReason reason = MarkReason::not_answered;
    HeadId head = 0;
    FindingKind finding = FindingKind::both_sensors_on;
    Field field = Field::count;
    std::size_t adjuster = 0;
    double value = 0.0; ///< as said beside the reason
    double limit = 0.0;
    double points = 0.0; ///< had, or taken away where negative
    double most = 0.0;   ///< to be had
};

struct Marking {
    double score = 0.0; ///< 0 to 1: the points' sum, not below 0
    std::vector<MarkLine> lines;
};

/// Marks an answer. Total: an edit that apply() refuses counts as not made, a number that isn't
/// offered as wrong, a claim or a turn that is there twice as once.
Marking mark(const Exercise& exercise, const ExerciseAnswer& answer);

/// Points that each claim or turn that isn't so takes away, as a share of what one that is so
/// gives: guessing everything must not pay. Ours.
inline constexpr double wrong_share = 0.5;

/// What a hint says; each step says more than the one before.
enum class HintKind {
    how_many,    ///< value: faults, or adjusters to be turned, or lines that differ
    where,       ///< head
    which_part,  ///< head, part
    which_end,   ///< head, side: operator_side or machine_side; the stop to look at
    which_way,   ///< head, side; value: -1 toward the operator, +1 toward the machine
    limit_value, ///< shortest_stroke: value: travel of the shortest good stroke
    not_this,    ///< trainee_angle, judge_gap: value: one of the numbers that is wrong
    which_dial,  ///< adjuster
    which_line,  ///< head, field
    first_place, ///< place_stations: head, value: its station in a best placement
};

struct Hint {
    HintKind kind = HintKind::how_many;
    HeadId head = 0;
    Part part = Part::stops;
    Side side = Side::both;
    Field field = Field::count;
    std::size_t adjuster = 0;
    double value = 0.0;
};

/// The hints of an exercise, the least telling first: at least one.
std::vector<Hint> hints_of(const Exercise& exercise);

/// What a hint costs, as a share of the score. Ours.
inline constexpr double hint_share = 0.15;

/// The score after so many hints: each takes hint_share of the whole, and it never goes below 0.
double after_hints(double score, int used);

/// What was found at a head that is a stop or a mind, in the order of heads and findings.
std::vector<FaultClaim> faults_of(const Job& job);

} // namespace carriageway
