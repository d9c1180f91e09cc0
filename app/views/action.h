// What a tap, a key or a drag asks for, as values. Views attach them to things; the program
// (app/program.h) carries them out.
#pragma once

#include <any>
#include <cstddef>
#include <new>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "app/drawing/register_layer.h"
#include "app/records/library.h"
#include "app/views/view_state.h"
#include "core/edit.h"

namespace carriageway {

enum class ExerciseKind; // core/exercise.h

struct DoEdit { Edit edit; };
struct Undo {};
struct Redo {};
struct GoTo { Place place; };
struct ChooseHead { HeadId head; };            ///< 0: the whole press
struct ChooseStop { HeadId head; End end; };
struct StepStop { HeadId head; End end; double steps; double mm; }; ///< graduations, or mm
/// A number moved by whole steps counted from `from`, kept between `least` and `most`.
struct StepNumber { HeadId head; Field field; double from; double step; double least; double most; double by; };
struct SetEveryStop {};
struct Zoom { double factor; };
struct ShowAll {};                              ///< the whole press, or the whole chosen head
struct ToggleSheet {};
struct ToggleSection { Section section; };
struct OpenPad { HeadId head; Field field; };
struct PadPress { PadKey key; };
struct EditText { TextTarget target; JobId job = 0; HeadId head = 0; Note note = Note::ink; };
/// Whether a text field that is being typed in is the one that an action opens.
inline bool is_for(const TextEntry& entry, const EditText& edit) {
    return entry.target == edit.target && entry.job == edit.job && entry.head == edit.head &&
           (edit.target != TextTarget::note || entry.note == edit.note);
}
struct AcceptText {};
struct CancelText {};
struct ChooseTheme { ThemeChoice theme; };
struct ChooseLanguage { Language language; };
struct ChooseUnits { LengthUnit units; };
struct ChooseTextScale { float scale; };
struct OpenJob { JobId job; };
struct ChooseJob { JobId job; };               ///< shows what can be done with it
struct NewJob {};
struct DuplicateJob { JobId job; };
struct RemoveJob { JobId job; };
struct RestoreJob { JobId job; };
struct ExportJob { JobId job; };
struct RetrySaving {};
struct CloseNotice {};
struct TakeOver {};                             ///< makes this window the one that writes the library
struct StartNewer {};                           ///< the newer version that waits
struct AddHeadAt { int station; };
struct KeepPress {};                            ///< stores the job's press for other jobs
struct UsePress { PressId press; };             ///< puts a stored press into the job
struct PickFile {};                             ///< lets the person choose a job file
struct ShareJob { JobId job; };                 ///< opens the share sheet; 0: on a job from a link
struct CloseShare {};
struct CopyLink {};
struct ShareLink {};
struct KeepVisit {};                            ///< takes the job from a link into the library
struct LeaveVisit {};                           ///< goes back to the job that was open before
struct BringVisitBack {};                       ///< the visit that was left without keeping it
struct OpenMeasuring { Field field; };          ///< one number's procedure; Field::count: all of them
struct ShowProcedure { MeasureTarget target; };
struct LeaveProcedure {};                       ///< back to the list, or out of the sheet
struct CloseMeasuring {};
struct AddReading { std::size_t list; };        ///< opens the number pad for it
struct SetReadingStep { std::size_t list; };
struct RemoveReading { std::size_t list; std::size_t reading; bool again; }; ///< again: and take it anew
struct UseMeasured {};                          ///< puts what was measured into the job's press

/// Chooses the head whose registration is shown.
struct RegisterHead { HeadId head; };
struct ChooseRegisterMode { RegisterMode mode; };
struct ChooseMark { std::optional<std::size_t> mark; };
struct ChooseRound { std::optional<std::size_t> round; };
struct AddMarkAt { HeadId head; RegisterScale scale; }; ///< where the drawing was tapped
struct RegisterEdit { Edit edit; std::optional<std::size_t> round, mark; }; ///< and what is shown then
struct OpenRegisterPad { HeadId head; RegisterTarget target; };
struct ChooseHeightPlace { std::uint32_t platen; HeightPoint point; };
struct RemoveHeightReading { std::size_t reading; }; ///< its place among the job's

// The run (app/program_day.cpp and what lies beside it).
struct OpenDay { DayPart part; };
struct ShowDay { DayPart part; };               ///< another part of the sheet; contents: back
struct CloseDay {};
struct OpenDayPad { DayTarget target; };
struct SearchStations {};                       ///< looks for the best placement
struct StopSearch {};
struct UsePlacement { std::size_t rank; };      ///< of what was found, the best is 0
/// Another head of the walk, 0: what is set once for the press; or, behind it, all of them.
struct WalkTo { HeadId head; bool all = false; };
struct TickWalk { HeadId head; Field field; bool done; };
struct TickHead { HeadId head; bool done; };    ///< all of its numbers
struct AsPlanned { HeadId head; Field field; }; ///< what was really set is what was planned
struct WalkAgain {};                            ///< takes every mark away
/// Another list, or what happens in the run; `changing`: its steps are put in and taken out.
struct ShowList { CheckList list; bool in_run = false; bool changing = false; };
struct ShowGaps { bool only; };                 ///< of the recipe: only what isn't noted
struct TickStep { std::uint32_t item; bool done; };
struct ChooseReason { StopReason reason; };
struct RemoveCount { std::size_t count; };
struct RemoveStoppage { std::size_t stoppage; };
struct ApproveFirstPiece { bool approved; };
struct ChoosePaper { PaperSize size; PaperLayout layout; };
struct MakePaper { bool table; };               ///< a PDF, or a table of values (CSV)
struct FinishRun {};
struct ChooseRun { RunId run; };
struct RemoveRun { RunId run; };
struct RestoreRun {};                           ///< the one deleted last
struct CompareEverything { bool everything; };  ///< or only what decides the print
struct CompareRun { RunId run; };               ///< with the job as it stands
struct CompareJob { JobId job; };
struct RunAgain { RunId run; };                 ///< a new job from it, as it was really set
struct CarryToPress { PressId press; };         ///< a new job from this one on another press
struct ChooseSide { std::size_t conflict; bool theirs; };
struct AcceptMerge {};
struct DropMerge {};
struct OpenTheirs {};                           ///< the other half becomes a job of its own

// Practice (app/program_practice.cpp).
struct ShowPractice { PracticePart part; };

// Exercises (app/program_exercises.cpp).
struct StartExercise { ExerciseKind kind; };    ///< a new one, of the level reached
struct RepeatExercise {};                       ///< the same once more
struct ReturnToExercise {};                     ///< to where it is answered
struct MarkExercise {};
struct LeaveExercise {};                        ///< unmarked
struct ShowHint {};                             ///< one more
struct TickClaim { std::size_t claim; };        ///< or take the tick away
struct ChooseAnswer { std::size_t choice; };    ///< of the numbers that are offered
/// A turn at an adjuster: 1 clockwise, -1 the other way, 0 none.
struct ChooseTurn { std::size_t adjuster; int way; };
struct ShowExercises {};                        ///< the list
struct OpenMarked {};                           ///< its job at the press, with everything shown
struct MakeOwnExercise {};                      ///< of the job that is open
struct ChooseOwnHead { HeadId head; };
struct BreakHead { std::size_t breaking; };     ///< of those that fit the head

// Faults (app/program_faults.cpp).
struct ChooseSymptom { std::optional<std::size_t> symptom; }; ///< nothing: another one
struct FindFaultAt { HeadId head; };            ///< what is wrong with a head, 0: with any
struct AnswerTest { TestAnswer answer; };
struct ForgetAnswers {};
struct OpenCause { std::size_t cause; bool open; };
struct MendCause { Edit edit; };                ///< a cause's fix
struct MeasureCause { Measure measure; HeadId head; }; ///< shows where it is measured or typed

// Trainees (app/program_trainees.cpp).
struct ChooseTrainee { TraineeId trainee; };    ///< who practises; 0: nobody in particular
struct ShowGroup { bool group; };               ///< everybody, or one person
struct OpenTopic { std::optional<PracticeTopic> topic; };
struct SignTopic { PracticeTopic topic; SignState state; bool there; };
struct AskErase { std::optional<TraineeId> trainee; }; ///< nothing: it was not meant
struct EraseTrainee { TraineeId trainee; };     ///< for good
struct ExportTrainee { TraineeId trainee; };
struct ExportGroup {};
struct NoteResult {};                           ///< the one that arrived, for who practises
struct DropResult {};
/// An exercise, or what came of it, for another device.
struct SendExercise { bool result; bool link; };

// Calls (app/program_call.cpp).
struct BeginCall { PressId press; };            ///< on a copy of the open job, or on a kept press
struct OpenCall { CallId call; };               ///< goes on with one of the log
struct LeaveCall {};                            ///< the log, and the job that was open before
struct ChooseCallSymptom { std::optional<std::size_t> symptom; };
struct ChooseCallHead { HeadId head; };
struct AnswerCall { TestAnswer answer; };       ///< the same once more takes it back
struct SkipQuestion { CallQuestion question; }; ///< the caller can't say, or it stands as drawn
struct TellFix { std::size_t cause; bool told; };
struct ShowCallAfter { bool after; };           ///< the drawing with what is told, or as it stands
struct FixesAreSet {};                          ///< the caller has set what was told
struct EndCallAs { CallOutcome outcome; };
struct AskEraseCall { std::optional<CallId> call; }; ///< nothing: it was not meant
struct EraseCall { CallId call; };              ///< for good
struct SendReply { bool share; };               ///< hands the link on, or only copies it
struct ShowReply {};                            ///< what to change
struct SetReply {};                             ///< in the visit's job

// Running a cycle (app/program_cycle.cpp).
struct OpenCycle { bool open; };
struct PlayCycle { bool playing; };
struct PaceCycle { double pace; };              ///< of real time
struct StepCycle { int by; };                   ///< to the next event, or with -1 to the one before

// The first steps (app/program_first.cpp).
struct BeginFirstSteps {};                      ///< once more
struct NextFirstStep {};
struct EndFirstSteps {};                        ///< skipped, or done

// For a class (app/program_class.cpp).
struct ShowClass { bool on; };
struct FollowExercise { bool follow; };

/// A list of kinds, known when it is compiled.
template <class... Kinds> struct KindList {
    template <class Kind> static constexpr bool has = (std::is_same_v<Kind, Kinds> || ...);
    /// Where in the list a kind stands, from 1.
    template <class Kind> static constexpr int number() {
        int at = 0, found = 0;
        ((++at, found = std::is_same_v<Kind, Kinds> ? at : found), ...);
        return found;
    }
};

/// Every kind of action; the program has a carry_out for each.
using ActionKinds = KindList<
    DoEdit, Undo, Redo, GoTo, ChooseHead, ChooseStop, StepStop, StepNumber, SetEveryStop, Zoom,
    ShowAll, ToggleSheet, ToggleSection, OpenPad, PadPress, EditText, PickFile, ShareJob,
    CloseShare, CopyLink, ShareLink, KeepVisit, LeaveVisit, BringVisitBack, AcceptText, CancelText,
    ChooseTheme, ChooseLanguage, ChooseUnits, ChooseTextScale, OpenJob, ChooseJob, NewJob,
    DuplicateJob, RemoveJob, RestoreJob, ExportJob, RetrySaving, CloseNotice, TakeOver, StartNewer,
    AddHeadAt, KeepPress, UsePress, OpenMeasuring, ShowProcedure, LeaveProcedure, CloseMeasuring,
    AddReading, SetReadingStep, RemoveReading, UseMeasured, RegisterHead, ChooseRegisterMode,
    ChooseMark, ChooseRound, AddMarkAt, RegisterEdit, OpenRegisterPad, ChooseHeightPlace,
    RemoveHeightReading, OpenDay, ShowDay, CloseDay, OpenDayPad, SearchStations, StopSearch,
    UsePlacement, WalkTo, TickWalk, TickHead, AsPlanned, WalkAgain, ShowList, ShowGaps, TickStep,
    ChooseReason, RemoveCount, RemoveStoppage, ApproveFirstPiece, ChoosePaper, MakePaper, FinishRun,
    ChooseRun, RemoveRun, RestoreRun, CompareEverything, CompareRun, CompareJob, RunAgain,
    CarryToPress, ChooseSide, AcceptMerge, DropMerge, OpenTheirs, StartExercise, RepeatExercise,
    ReturnToExercise, MarkExercise, LeaveExercise, ShowHint, TickClaim, ChooseAnswer, ChooseTurn,
    ShowExercises, OpenMarked, MakeOwnExercise, ChooseOwnHead, BreakHead,
    ShowPractice,
    ChooseTrainee, ShowGroup, OpenTopic, SignTopic, AskErase, EraseTrainee, ExportTrainee,
    ExportGroup, NoteResult, DropResult, SendExercise,
    OpenCycle, PlayCycle, PaceCycle, StepCycle,
    BeginFirstSteps, NextFirstStep, EndFirstSteps, ShowClass, FollowExercise,
    BeginCall, OpenCall, LeaveCall, ChooseCallSymptom, ChooseCallHead, AnswerCall, SkipQuestion,
    TellFix, ShowCallAfter, FixesAreSet, EndCallAs, AskEraseCall, EraseCall, SendReply, ShowReply,
    SetReply,
    ChooseSymptom, FindFaultAt, AnswerTest, ForgetAnswers, OpenCause, MendCause, MeasureCause>;

/// One of these. Not a std::variant, which would be made anew, with a table for each thing that can
/// be done with it, in every file that names an action: with so many kinds that was most of the time
/// of a build, and a good part of the page. What is a few numbers, as most are, lies within the action
/// itself and takes nothing from the heap; only texts and edits do.
class Action {
public:
    template <class Kind>
        requires ActionKinds::has<Kind>
    Action(Kind kind) : kind_(ActionKinds::number<Kind>()) {
        if constexpr (is_small<Kind>) ::new (static_cast<void*>(small_)) Kind(std::move(kind));
        else large_ = std::move(kind);
    }

    /// The action as this kind; null where it is another.
    template <class Kind>
        requires ActionKinds::has<Kind>
    const Kind* as() const {
        if (kind_ != ActionKinds::number<Kind>()) return nullptr;
        if constexpr (is_small<Kind>) return std::launder(reinterpret_cast<const Kind*>(small_));
        else return std::any_cast<Kind>(&large_);
    }

    /// Becomes another edit, in the storage of the one that it may have been.
    void become(DoEdit edit);

private:
    static constexpr std::size_t small_size = 48;
    template <class Kind>
    static constexpr bool is_small = std::is_trivially_copyable_v<Kind> && sizeof(Kind) <= small_size;

    int kind_;
    alignas(double) unsigned char small_[small_size] = {};
    std::any large_;
};

/// The actions of a frame. What the frame before had at the same place lends its storage: most
/// frames can do what the last one could.
class ActionList {
public:
    void clear() { count_ = 0; }
    std::size_t size() const { return count_; }
    const Action& operator[](std::size_t index) const { return all_[index]; }
    /// Adds one; returns its index.
    int add(Action action);
    int add(DoEdit edit);

private:
    std::vector<Action> all_;
    std::size_t count_ = 0;
};

/// What a drag moves.
struct HoldStop { HeadId head; End end; };
struct HoldPlot { HeadId head; Box plot; double mm_per_dp; }; ///< both stops, on the plot of them
struct HoldTilt { HeadId head; Field field; float lean; };           ///< a blade's angle
struct HoldGauge { HeadId head; Field field; double dp_per_mark; };  ///< a blade's height
struct HoldColour { HeadId head; };                                  ///< a head, to another station
struct HoldSheet {};
struct HoldMark { HeadId head; std::size_t mark; float dp_per_mm; }; ///< of the round looked at
struct HoldCycle { double seconds_per_dp; };                         ///< time in a cycle
using Hold = std::variant<HoldCycle, HoldStop, HoldPlot, HoldTilt, HoldGauge, HoldSheet, HoldMark, HoldColour>;

} // namespace carriageway
