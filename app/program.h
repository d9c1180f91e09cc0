// The program between a window and a session: turns what a person does into actions, actions into
// edits and view changes, and the whole into one drawing list a frame. Owns no clock and no window.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/film.h"
#include "app/gesture.h"
#include "app/input.h"
#include "app/session.h"
#include "app/views/about.h"
#include "app/views/views.h"
#include "app/window.h"

namespace carriageway {

class Program {
public:
    explicit Program(Session& session);

    /// Takes in one event. Call build() before the next frame is shown.
    void handle(const InputEvent& event);

    /// Makes the frame for a surface at a time (s); after a fresh event at least once.
    const Frame& build(const Surface& surface, double now, bool system_dark, const TypeMeasure& type);

    /// When the next frame is due although nothing happens: `now` while something moves, below 0
    /// when nothing does.
    double next_frame(double now) const;

    /// Carries out an action as a tap on its thing would.
    void act(const Action& action);

    /// Opens what is in a job file: into the library, or with a notice why not.
    void open_file(const std::string& path);

    /// Shows the job in a link, stored only when the person keeps it; or a notice why not.
    void open_link(const std::string& text);

    /// What the window can do, and what it is to do now; the latter is asked for once a turn.
    void set_abilities(const Abilities& abilities) { abilities_ = abilities; }
    const Abilities& abilities() const { return abilities_; }
    std::vector<Errand> take_errands() { return std::exchange(errands_, {}); }

    /// Adds what the window systems are built on.
    void built_on(const std::vector<BuiltOn>& more);
    const About& about() const { return about_; }

    const Frame& frame() const { return frame_; }
    const ViewState& state() const { return state_; }
    ViewState& state() { return state_; }
    Session& session() { return session_; }
    bool closing() const { return closing_; }
    Theme theme() const {
        if (state_.class_view.on) return Theme::projector;
        return state_.dark ? Theme::dark : Theme::light;
    }
    /// The text being typed, for the text field laid over its box; nullptr: none.
    std::string* typing() { return state_.typing ? &state_.typing->text : nullptr; }
    void accept_text();
    void cancel_text();
    /// The text field's contents have changed (a search follows at once).
    void text_changed();

    void notice(const std::string& text, bool trouble = false, JobId restore = 0);
    void choose_head(HeadId head);

private:
    // app/program_actions.cpp
    void say_trouble();
    bool only_to_look(); ///< says why nothing can be changed here; false: it can
    void carry_out(const DoEdit& a);
    void carry_out(const Undo&);
    void carry_out(const Redo&);
    void carry_out(const GoTo& a);
    void carry_out(const ChooseHead& a);
    void carry_out(const ChooseStop& a);
    void carry_out(const StepStop& a);
    void carry_out(const StepNumber& a);
    void carry_out(const SetEveryStop&);
    void carry_out(const Zoom& a);
    void carry_out(const ShowAll&);
    void carry_out(const ToggleSheet&);
    void carry_out(const ToggleSection& a);
    void carry_out(const OpenPad& a);
    void carry_out(const PadPress& a);
    void carry_out(const EditText& a);
    void carry_out(const AcceptText&);
    void carry_out(const CancelText&);
    void carry_out(const ChooseTheme& a);
    void carry_out(const ChooseLanguage& a);
    void carry_out(const ChooseUnits& a);
    void carry_out(const ChooseTextScale& a);
    void carry_out(const OpenJob& a);
    void carry_out(const ChooseJob& a);
    void carry_out(const NewJob&);
    void carry_out(const DuplicateJob& a);
    void carry_out(const RemoveJob& a);
    void carry_out(const RestoreJob& a);
    void carry_out(const ExportJob& a);
    void carry_out(const RetrySaving&);
    void carry_out(const CloseNotice&);
    void carry_out(const TakeOver&);
    void carry_out(const StartNewer&);
    void carry_out(const AddHeadAt& a);
    void carry_out(const KeepPress&);
    void carry_out(const UsePress& a);
    // app/program_register.cpp
    void carry_out(const RegisterHead& a);
    void carry_out(const ChooseRegisterMode& a);
    void carry_out(const ChooseMark& a);
    void carry_out(const ChooseRound& a);
    void carry_out(const AddMarkAt& a);
    void carry_out(const RegisterEdit& a);
    void carry_out(const OpenRegisterPad& a);
    void carry_out(const ChooseHeightPlace& a);
    void carry_out(const RemoveHeightReading& a);
    void accept_register_pad();
    std::optional<Edit> typed_edit(const Pad& pad, double value) const;
    void take_mark(const HoldMark& hold);
    void drag_mark(const HoldMark& hold, Vec by);
    void drop_mark();
    // app/program_share.cpp
    void carry_out(const PickFile&);
    void carry_out(const ShareJob& a);
    void carry_out(const CloseShare&);
    void carry_out(const CopyLink&);
    void carry_out(const ShareLink&);
    void carry_out(const KeepVisit&);
    void carry_out(const LeaveVisit&);
    void carry_out(const BringVisitBack&);
    void arrive(bool was_visiting);
    // app/program_day.cpp
    void carry_out(const OpenDay& a);
    void carry_out(const ShowDay& a);
    void carry_out(const CloseDay&);
    void carry_out(const OpenDayPad& a);
    void accept_day_pad();
    /// Nothing: it is not of the run; false: refused, and said.
    std::optional<bool> accept_day_text(const TextEntry& entry);
    std::string day_text(const EditText& edit) const; ///< what stands in its field
    bool day_key(const InputEvent& event);
    void set_habits(const Habits& habits);
    void accept_counted(DayNumber number, double typed); ///< program_lists.cpp
    Stamp stamp() const; ///< now, by the person at the program
    // app/program_stations.cpp
    void carry_out(const SearchStations&);
    void carry_out(const StopSearch&);
    void carry_out(const UsePlacement& a);
    void run_search(); ///< a piece of it, once a frame
    void drag_colour(const HoldColour& hold, Vec at);
    void drop_colour(const HoldColour& hold);
    bool searching() const;
    // app/program_walk.cpp
    void carry_out(const WalkTo& a);
    void carry_out(const TickWalk& a);
    void carry_out(const TickHead& a);
    void carry_out(const AsPlanned& a);
    void carry_out(const WalkAgain&);
    void resume_walk(); ///< shows the first place where something is left to tick
    // app/program_merge.cpp
    void carry_out(const ChooseSide& a);
    void carry_out(const AcceptMerge&);
    void carry_out(const DropMerge&);
    void carry_out(const OpenTheirs&);
    /// Another half of the walk of the job that is open: shows what the two come to together.
    /// False, with nothing done: it is none.
    bool offer_merge(const Job& theirs, bool by_link = false);
    bool merge_is_new(); ///< false: the job has changed, and it has to be looked through again
    void let_merge_go();
    // app/program_lists.cpp
    void carry_out(const ShowList& a);
    void carry_out(const ShowGaps& a);
    bool add_own_step(const std::string& text); ///< false: refused, and said
    bool put_record(const RunRecord& record); ///< as an edit, where anything in it is new
    void carry_out(const TickStep& a);
    void carry_out(const ChooseReason& a);
    void carry_out(const RemoveCount& a);
    void carry_out(const RemoveStoppage& a);
    void carry_out(const ApproveFirstPiece& a);
    // app/program_paper.cpp
    void carry_out(const ChoosePaper& a);
    void carry_out(const MakePaper& a);
    // app/program_runs.cpp
    void carry_out(const FinishRun&);
    void carry_out(const ChooseRun& a);
    void carry_out(const RemoveRun& a);
    void carry_out(const RestoreRun&);
    void carry_out(const CompareEverything& a);
    void carry_out(const CompareRun& a);
    void carry_out(const CompareJob& a);
    void show_compared(const std::string& name, const Job& job);
    void carry_out(const RunAgain& a);
    void carry_out(const CarryToPress& a);
    // app/program_faults.cpp
    void carry_out(const ChooseSymptom& a);
    void carry_out(const FindFaultAt& a);
    void carry_out(const AnswerTest& a);
    void carry_out(const ForgetAnswers& a);
    void carry_out(const OpenCause& a);
    void carry_out(const MendCause& a);
    void carry_out(const MeasureCause& a);
    // app/program_call.cpp
    void carry_out(const BeginCall& a);
    void carry_out(const OpenCall& a);
    void carry_out(const LeaveCall&);
    void carry_out(const ChooseCallSymptom& a);
    void carry_out(const ChooseCallHead& a);
    void carry_out(const AnswerCall& a);
    void carry_out(const SkipQuestion& a);
    void carry_out(const TellFix& a);
    void carry_out(const ShowCallAfter& a);
    void carry_out(const FixesAreSet&);
    void carry_out(const EndCallAs& a);
    void note_read_out(HeadId head, Field field); ///< a number was typed: in a call it is read out
    /// Nothing: it is not of a call; false: refused, and said.
    std::optional<bool> accept_call_text(const TextEntry& entry);
    std::string call_text(const EditText& edit) const; ///< what stands in its field
    bool begin_call_job(PressId press); ///< false: refused, and said
    void go_to_question();
    // app/program_call_log.cpp
    void carry_out(const AskEraseCall& a);
    void carry_out(const EraseCall& a);
    void read_calls();
    void keep_call(); ///< as it stands now; said where the library refuses
    void show_call(); ///< from its top
    // app/program_reply.cpp
    void carry_out(const SendReply& a);
    void carry_out(const ShowReply&);
    void carry_out(const SetReply&);
    void receive(ReadReply read, const std::string& from);
    // app/program_cycle.cpp
    void carry_out(const OpenCycle& a);
    void carry_out(const PlayCycle& a);
    void carry_out(const PaceCycle& a);
    void carry_out(const StepCycle& a);
    void drag_cycle(const HoldCycle& hold, Vec by);
    void run_cycle(); ///< moves its time on
    bool cycle_runs() const;
    // app/program_first.cpp
    void carry_out(const BeginFirstSteps&);
    void carry_out(const NextFirstStep&);
    void carry_out(const EndFirstSteps&);
    void begin_first_steps(bool copy);
    void go_to_first_step(FirstStep step);
    void put_first_steps_away(); ///< and never shows them by itself again
    void mind_first_steps(); ///< what was done of them; over when the job has gone
    bool first_pulses_run() const;
    bool first_steps_go_on(const FirstState& first) const;
    // app/program_class.cpp
    void carry_out(const ShowClass& a);
    void carry_out(const FollowExercise& a);
    void trace_pointer(const InputEvent& event);
    void run_trail(); ///< takes away what has faded
    void follow_exercise();
    Followed followed() const;
    // app/program_practice.cpp
    void carry_out(const ShowPractice& a);
    // app/program_trainees.cpp
    void carry_out(const ChooseTrainee& a);
    void carry_out(const ShowGroup& a);
    void carry_out(const OpenTopic& a);
    void carry_out(const SignTopic& a);
    void carry_out(const AskErase& a);
    void carry_out(const EraseTrainee& a);
    void carry_out(const ExportTrainee& a);
    void carry_out(const ExportGroup&);
    void carry_out(const NoteResult&);
    void carry_out(const DropResult&);
    void carry_out(const SendExercise& a);
    /// Nothing: it is not of the people; false: refused, and said.
    std::optional<bool> accept_trainee_text(const TextEntry& entry);
    std::string trainee_text(const EditText& edit) const; ///< what stands in its field
    void take_person(); ///< the levels reached are those of who practises
    void note_exercise(const ExerciseRun& run); ///< one that was just marked
    void hand_out(const std::optional<std::string>& path); ///< a file that was written
    void hand_out_link(const std::string& fragment);
    /// What was sent from another device; `from` is the file's name, or what a link is called.
    void receive(ReadExercise read, const std::string& from);
    void receive(ReadResult read, const std::string& from);
    /// A file that is no job: an exercise or a result. False, with nothing done: neither.
    bool receive_document(const std::string& text, const std::string& key, const std::string& from);
    // app/program_exercises.cpp
    void carry_out(const StartExercise& a);
    void carry_out(const RepeatExercise&);
    void carry_out(const ReturnToExercise&);
    void carry_out(const MarkExercise&);
    void carry_out(const LeaveExercise&);
    void carry_out(const ShowHint&);
    void carry_out(const TickClaim& a);
    void carry_out(const ChooseAnswer& a);
    void carry_out(const ChooseTurn& a);
    void carry_out(const ShowExercises&);
    void carry_out(const OpenMarked&);
    void carry_out(const MakeOwnExercise&);
    void carry_out(const ChooseOwnHead& a);
    void carry_out(const BreakHead& a);
    void begin_exercise(std::shared_ptr<ExerciseRun> run);
    void go_to_exercise();
    void close_exercise(); ///< opens what was put aside for it
    void show_practice(ExerciseStage stage);
    void keep_answers_back(); ///< while an exercise is answered at the press
    /// An exercise whose job has gone, because another was opened, is over.
    void mind_exercise();
    // app/program_measure.cpp
    void carry_out(const OpenMeasuring& a);
    void carry_out(const ShowProcedure& a);
    void carry_out(const LeaveProcedure&);
    void carry_out(const CloseMeasuring&);
    void carry_out(const AddReading& a);
    void carry_out(const SetReadingStep& a);
    void carry_out(const RemoveReading& a);
    void carry_out(const UseMeasured&);
    void accept_reading();
    Taking* taking(); ///< of the target shown; nullptr: the list is shown
    bool measure_key(const InputEvent& event);
    // app/program_film.cpp
    void open_film(const std::string& name, std::string bytes);
    void read_film();
    void drop_film(); ///< reads it no further, and takes its progress from the notice
    // app/program_edits.cpp
    bool apply_edit(const Edit& edit); ///< false: refused, and said
    void refuse(const Applied& refused);
    void step_stop(const StepStop& step);
    void press_pad(PadKey key);
    void accept_pad();
    void add_head(int station);
    void edit_text(const EditText& edit);
    void set_looks(const Looks& looks);
    // app/program_input.cpp
    void take(const Gesture& gesture);
    void take_gestures();
    void let_go(); ///< drops what a finger holds, and nothing comes of it
    void tap(const Gesture& gesture);
    void touch(const Thing& thing);
    void step_thing(const std::string& name, int steps);
    void start_drag(const Gesture& gesture);
    void drag(const Gesture& gesture);
    void drop(const Gesture& gesture);
    void drag_stop(const HoldStop& hold, Vec by, Vec at);
    void drag_plot(const HoldPlot& hold, Vec by);
    void drag_tilt(const HoldTilt& hold, Vec by);
    void drag_gauge(const HoldGauge& hold, Vec by);
    void note_tilt(HeadId head, Field field);
    void scroll_at(Vec at, float by);
    void start_fling(const Gesture& gesture);
    void run_fling();
    void wheel(const InputEvent& event);
    void key(const InputEvent& event);
    bool pad_key(const InputEvent& event);
    bool sheet_key(const InputEvent& event);
    void move_focus(int by);
    void keep_focus_in_sight();
    const Thing* focused() const;
    void adjust_focused(const InputEvent& event, int direction);
    // app/program.cpp
    Model model() const;
    void settle_camera();
    void move_camera(const Camera& to);
    Camera home_camera() const;

    Session& session_;
    Abilities abilities_;
    About about_;
    std::vector<Errand> errands_;
    ViewState state_;
    Frame frame_;
    GestureReader gestures_;
    std::vector<Gesture> gestured_; ///< read, not yet taken; empty between events
    Box window_;
    float pixels_per_dp_ = 1.0f;
    Layout layout_;
    double now_ = 0.0;
    bool closing_ = false;
    bool placed_ = false;      ///< the camera has been set for this window
    std::optional<Hold> hold_; ///< being dragged
    std::optional<std::size_t> scroll_; ///< scroll area being dragged
    struct Fling {
        float ViewState::* offset;
        float speed;      ///< dp/s, of the offset
        double last;      ///< s, when it was moved last
    };
    std::optional<Fling> fling_; ///< a list that runs on after the finger has lifted
    bool panning_ = false;
    Stops raw_;                ///< stops of a drag before they snap to the ruler
    std::unique_ptr<Film> film_; ///< while one is being read
    double raw_tilt_ = 0.0;    ///< angle of a drag before it snaps to degrees
    double raw_gauge_ = 0.0;   ///< likewise of a blade's gauge, marks
    Assessment kept_back_;     ///< what views see of the job during an exercise
    std::uint64_t exercises_begun_ = 0; ///< so that two within a millisecond differ
    Vec drag_start_;
    std::optional<Vec> touched_at_; ///< where the finger is while a tap is carried out
};

} // namespace carriageway
