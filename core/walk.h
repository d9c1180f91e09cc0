// The walk round the press: what is set at each head, in the order in which a person works; how
// much of it is done; and the job as it was really set.
//
// A mark (run_record.h) says of one number whether it is set, and to what if not to what was
// planned. Values are in the core's unit (fields.h). Nothing here changes a job: what ticks or
// types is an edit for apply().
#pragma once

#include <optional>
#include <vector>

#include "core/edit.h"
#include "core/job.h"

namespace carriageway {

/// Where the walk goes: the heads in the order of their stations; last 0, the job's own numbers.
std::vector<HeadId> walk_order(const Job& job);

/// What is set at one head, in the order of working: which blade and which flood bar it is (their
/// widths), angles, gauges, stops, heights, air, speeds, print strokes. Of head 0: the flash units'
/// dwell where a station has one, their temperature if it was noted, and the cycle. Only numbers
/// that can be read off the press: what a screen or an ink is, is the recipe's (recipe.h). A head
/// that the job doesn't have: nothing.
std::vector<Field> walk_fields(const Job& job, HeadId head);

/// What was noted of one number, or nullptr.
const WalkMark* mark_of(const Job& job, HeadId head, Field field);

/// Whether it is ticked.
bool is_done(const Job& job, HeadId head, Field field);

/// What is planned; of a number that the head, or with head 0 the job, doesn't have: nothing.
std::optional<double> planned_value(const Job& job, HeadId head, Field field);

/// What is set: the mark's real value where there is one, otherwise what is planned.
std::optional<double> value_as_set(const Job& job, HeadId head, Field field);

/// Why a real value can't take the place of the planned one.
enum class MarkTrouble {
    no_such_head,      ///< the head has been taken off since
    out_of_range,      ///< outside its field's limits, or a number that isn't set on a walk
    image_has_outline, ///< width or length of a rectangle, of an image that is none
    stops_crossed,     ///< the operator's stop would stand at or beyond the machine's
};
struct UnusableMark {
    HeadId head = 0;
    Field field = Field::count;
    MarkTrouble trouble = MarkTrouble::no_such_head;
    bool operator==(const UnusableMark&) const = default;
};

/// The job with every real value in the place of the planned one, whether or not it is ticked. The
/// walk and the record stay in it. Both stops of a head are put in together; where they would
/// cross, both stay as planned, and their real values are among the unusable. So a job that
/// fault_of() accepts gives one that it accepts too.
Job as_set(const Job& job);

/// The marks whose real values as_set() leaves out, in the order of the walk's marks.
std::vector<UnusableMark> unusable_marks(const Job& job);

/// How far a walk is. Marks of numbers that aren't on the walk don't count.
struct WalkProgress {
    int done = 0;
    int of = 0;
    bool finished() const { return done == of; }
    bool operator==(const WalkProgress&) const = default;
};
WalkProgress progress_at(const Job& job, HeadId head);
WalkProgress progress_of(const Job& job);

/// Where to go on: the first place behind `after` in walking order where something isn't ticked,
/// going round, so that `after` itself comes last. No `after`, or one that isn't on the walk: from
/// the start. Everything ticked: nothing.
std::optional<HeadId> next_unfinished(const Job& job, std::optional<HeadId> after = std::nullopt);

/// The first number at a head that isn't ticked, in the order of working.
std::optional<Field> next_field(const Job& job, HeadId head);

// Edits. All are refused by apply() for numbers that aren't a head's (or, with head 0, the job's).

/// Ticks a number, or takes the tick back; a real value that was noted stays.
SetWalkMark tick(const Job& job, HeadId head, Field field, const Stamp& stamp, bool done = true);

/// Ticks a number as really set to a value. The planned value itself counts as set as planned.
SetWalkMark really_set(const Job& job, HeadId head, Field field, double value, const Stamp& stamp);

/// Takes away whatever was noted of a number.
SetWalkMark forget(HeadId head, Field field);

/// Ticks everything at a head, or takes all its ticks back, as one edit; numbers that stand so
/// already are left alone. Nothing to do: nothing.
std::optional<Edit> tick_all(const Job& job, HeadId head, const Stamp& stamp, bool done = true);

} // namespace carriageway
