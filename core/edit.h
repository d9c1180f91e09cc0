// Edits: the only way to change a job.
//
// An edit is a value. apply() changes the job and returns the edit that undoes it, so that undo,
// history, autosave, links and tests all share one stream. An edit that can't be done leaves the
// job as it was.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/fields.h"
#include "core/job.h"

namespace carriageway {

/// Sets one number. `head` is 0 for numbers of the job or its press. Value in the core's unit. A
/// spread that is typed is no longer a measured one (press.h), and a least separation that is typed
/// is used instead of the formula.
struct SetNumber {
    HeadId head = 0;
    Field field = Field::count;
    double value = 0.0;
    bool operator==(const SetNumber&) const = default;
};

/// Sets both stops of a head at once: what a drag or "set for me" commits.
struct SetStops {
    HeadId head = 0;
    Stops stops;
    bool operator==(const SetStops&) const = default;
};

/// Names the job (`head` 0) or a head's colour. UTF-8, at most longest_name bytes.
struct SetName {
    HeadId head = 0;
    std::string name;
    bool operator==(const SetName&) const = default;
};

/// Sets the ink's colour in the drawing, 0xRRGGBB.
struct SetInk {
    HeadId head = 0;
    std::uint32_t ink = 0;
    bool operator==(const SetInk&) const = default;
};

/// Sets which way a head prints.
struct SetPrintStroke {
    HeadId head = 0;
    Direction direction = Direction::toward_operator;
    bool operator==(const SetPrintStroke&) const = default;
};

/// Says whether a head's flood bar has wings.
struct SetWinged {
    HeadId head = 0;
    bool winged = true;
    bool operator==(const SetWinged&) const = default;
};

/// Replaces the whole image of a head.
struct SetImage {
    HeadId head = 0;
    Image image;
    bool operator==(const SetImage&) const = default;
};

/// Adds a head; its id must be new and not 0, its station free and open.
struct AddHead {
    Head head;
    bool operator==(const AddHead&) const = default;
};

/// Takes a head off.
struct RemoveHead {
    HeadId head = 0;
    bool operator==(const RemoveHead&) const = default;
};

/// Moves a head to another station; a head that stands there changes places with it.
struct MoveHead {
    HeadId head = 0;
    int station = 0;
    bool operator==(const MoveHead&) const = default;
};

/// Says what a station without a head is for.
struct SetUse {
    int station = 0;
    StationUse use = StationUse::open;
    bool operator==(const SetUse&) const = default;
};

/// Replaces the job's press profile. Every station that holds a head must exist on it; `uses` is
/// cut or filled with open stations.
struct SetPress {
    PressProfile press;
    std::vector<StationUse> uses; ///< empty: keep the present ones
    bool operator==(const SetPress&) const = default;
};

/// Says what kind of garment is printed.
struct SetGarment {
    GarmentKind kind = GarmentKind::t_shirt;
    bool operator==(const SetGarment&) const = default;
};

/// Chooses the head that the others are set by. The id of no head, 0 among them: the first. So an
/// undo may name one that has been removed meanwhile.
struct SetBaseHead {
    HeadId head = 0;
    bool operator==(const SetBaseHead&) const = default;
};

/// Says whether a squeegee rests on its height stop.
struct SetHeightStop {
    HeadId head = 0;
    bool on = false;
    bool operator==(const SetHeightStop&) const = default;
};

/// Replaces the registration rounds of a head.
struct SetRounds {
    HeadId head = 0;
    std::vector<MarkRound> rounds;
    bool operator==(const SetRounds&) const = default;
};

/// Replaces the heights read for levelling.
struct SetHeightReadings {
    std::vector<HeightReading> readings;
    bool operator==(const SetHeightReadings&) const = default;
};

/// Says what a colour wants of its place.
struct SetColourWish {
    HeadId head = 0;
    ColourWish wish;
    bool operator==(const SetColourWish&) const = default;
};

/// Says how a head's blade is cut.
struct SetBladeEdge {
    HeadId head = 0;
    BladeEdge edge = BladeEdge::not_noted;
    bool operator==(const SetBladeEdge&) const = default;
};

/// Free texts that go with a head (ink, stencil) or the job (garment, run).
enum class Note { ink, stencil, garment, run };

/// Sets one of them: UTF-8, at most longest_name bytes. `head` is 0 for those of the job.
struct SetNote {
    HeadId head = 0;
    Note note = Note::ink;
    std::string text;
    bool operator==(const SetNote&) const = default;
};

/// Sets, or with `there` false takes away, what was noted on the walk of mark.head and mark.field.
struct SetWalkMark {
    WalkMark mark;
    bool there = true;
    bool operator==(const SetWalkMark&) const = default;
};

/// Replaces everything that was noted on the walk.
struct SetWalk {
    std::vector<WalkMark> marks; ///< in the order of (head, field), each once
    bool operator==(const SetWalk&) const = default;
};

/// Replaces the record of the run.
struct SetRecord {
    RunRecord record;
    bool operator==(const SetRecord&) const = default;
};

struct Edit;

/// Several edits as one: all or none.
struct Together {
    std::vector<Edit> edits;
    bool operator==(const Together&) const;
};

/// Any edit.
struct Edit {
    std::variant<SetNumber, SetStops, SetName, SetInk, SetPrintStroke, SetWinged, SetImage, AddHead,
                 RemoveHead, MoveHead, SetUse, SetPress, SetGarment, SetBaseHead, SetHeightStop,
                 SetRounds, SetHeightReadings, SetColourWish, SetBladeEdge, SetNote, SetWalkMark, SetWalk,
                 SetRecord, Together>
        what;
    bool operator==(const Edit&) const = default;
};

inline bool Together::operator==(const Together& other) const { return edits == other.edits; }

/// Why an edit can't be done.
enum class Refusal {
    no_such_head,
    out_of_range,    ///< a number outside its field's limits, or not finite
    name_too_long,   ///< or not valid UTF-8
    not_an_outline,  ///< corners that cross, too few, too many, too small
    station_taken,   ///< a head stands there, or it is used for something else
    no_such_station,
    id_taken,        ///< or 0
    not_a_press,     ///< a profile whose own numbers contradict one another
    stops_crossed,   ///< the operator's stop at or beyond the machine's
    not_readings,    ///< too many, or numbers outside a place's limits
    not_a_record,    ///< of a walk or a run: too much, out of order, or numbers outside their limits
    too_deep,        ///< edits within edits beyond deepest_together
};

/// Levels of Together within Together that are accepted. Ours.
inline constexpr int deepest_together = 4;

/// What apply() did.
struct Applied {
    std::optional<Edit> inverse; ///< what undoes it; empty when refused
    std::optional<Refusal> refusal; ///< why not; empty when done
    Field field = Field::count;  ///< the number at fault, where there is one
    explicit operator bool() const { return inverse.has_value(); }
};

/// Applies an edit to a job. Refused edits leave the job untouched. Never throws but for lack of
/// memory. apply(job, *applied.inverse) gives back exactly the job before.
Applied apply(Job& job, const Edit& edit);

/// Whether a whole job may be worked with: every number within its field's limits, stops in
/// order, ids and stations unique, outlines simple. Files, links and libraries are checked with
/// this; the first fault is reported.
struct JobFault {
    Refusal refusal = Refusal::out_of_range;
    HeadId head = 0;            ///< 0: the job or its press
    Field field = Field::count; ///< where one number is at fault
};
std::optional<JobFault> fault_of(const Job& job);

/// The same for a press profile alone.
std::optional<JobFault> fault_of(const PressProfile& press);

} // namespace carriageway
