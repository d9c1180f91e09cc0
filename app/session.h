// One person's work: the job that is open, undo and redo, what a drag would do, and the library
// that keeps it all. Knows no window and draws nothing.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/records/library.h"
#include "app/records/autosave.h"
#include "app/records/backups.h"
#include "app/records/call_log.h"
#include "app/records/trainees.h"
#include "app/views/views.h"
#include "core/assess.h"

namespace carriageway {

class Session {
public:
    /// Opens the library in `folder` and the job that was open last; a first start opens the
    /// demonstration. A damaged library's backup is opened, and rescued() says so. One that can't
    /// be used is left alone and one in memory takes its place: trouble() then says so.
    /// `on_change` may be called from another thread when something has been saved. `now` gives
    /// the time of day.
    Session(const std::string& folder, std::function<void()> on_change,
            std::function<Timestamp()> now, Language language);
    /// A session on this job alone, without a library: for pictures.
    explicit Session(const Job& job, Language language);
    ~Session();
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;

    const Job& job() const { return job_; }
    /// The job with what a drag would do; the same as job() otherwise.
    const Job& shown() const { return preview_ ? shown_ : job_; }
    const Assessment& assessment() const { return assessment_; }

    /// Carries out an edit, remembers how to undo it and hands it to the library. Refused: why.
    std::optional<Applied> commit(const Edit& edit);
    bool undo();
    bool redo();
    bool can_undo() const { return !undo_.empty(); }
    bool can_redo() const { return !redo_.empty(); }

    /// Shows other stops without changing the job; one edit when kept, none when dropped.
    void preview(HeadId head, const Edit& edit);
    void keep_preview();
    void drop_preview();
    bool previewing() const { return preview_.has_value(); }

    // -- the library ----------------------------------------------------------------------------
    /// 0: a job that isn't the library's.
    JobId current() const { return current_; }
    const std::vector<JobRow>& rows() const { return rows_; }
    void search(const std::string& words);
    bool open(JobId id);
    /// Stores a job and opens it. False when the library refuses: trouble() says why.
    bool open_new(const Job& job);
    bool duplicate(JobId id, const std::string& name);
    bool rename(JobId id, const std::string& name);
    bool remove(JobId id);
    bool restore(JobId id);
    // -- a job from a link (app/session_visit.cpp) ------------------------------------------------
    /// Shows a job without storing it: it may be edited and undone, in memory alone. A visit that is
    /// under way is put aside.
    void visit(Job job);
    bool visiting() const { return visit_.has_value(); }
    /// Stores the job as it stands and goes on with it, undo included. False when the library
    /// refuses: trouble() says why and the visit goes on.
    bool keep_visit();
    /// Puts the visit aside and opens the job that was open before; another one where that has gone.
    void leave_visit();
    /// Goes back to the visit that was put aside last, with its edits. False where there is none.
    bool bring_visit_back();
    /// Name of the job that was put aside; nullptr: none.
    const std::string* left_visit() const { return left_ ? &left_->job.name : nullptr; }

    // -- a job to practise on (app/session_practice.cpp) ------------------------------------------
    /// Shows a job that is never stored; the one that is open is put aside with all that can be
    /// undone in it, a visit and what was to be seen of it included. Another one may follow.
    void practise(Job job);
    bool practising() const { return practice_.has_value(); }
    /// Opens what was put aside exactly as it was. Opening any other job does this first.
    void end_practice();
    /// The edits made in it, in order, without those that were undone.
    const std::vector<Edit>& practised() const { return made_; }

    // -- people who practise, and calls (app/session_trainees.cpp) --------------------------------
    // Each writes to the library at once; false: it refused, and trouble() says why.
    /// Who practises, with what was done so far; id 0 where nobody was chosen.
    const TraineeSummary& practised_by() const { return practised_by_; }
    /// Everybody, as of the last read_group() or change here.
    const std::vector<TraineeSummary>& group() const { return group_; }
    bool read_group();
    /// 0: nobody in particular. One who isn't there any more: nobody, and false.
    bool choose_trainee(TraineeId id);
    /// Adds a person and chooses them.
    bool add_trainee(const std::string& name);
    bool rename_trainee(TraineeId id, const std::string& name);
    /// For good. `locked`: gone, but another program keeps traces from being cleared.
    std::optional<LibraryFault> erase_trainee(TraineeId id);
    /// Signs with the initials of who sits at the program, or takes the signature away.
    bool sign_topic(TraineeId who, PracticeTopic topic, SignState state, bool there);
    /// Notes for `who` what they did; without `who`, for the one who practises.
    bool note_attempt(const Attempt& attempt, std::optional<TraineeId> who = std::nullopt);
    /// Writes one person's data, or the group's table, as a file; its path.
    std::optional<std::string> export_trainee(TraineeId id);
    std::optional<std::string> export_group();
    /// The last begun first.
    std::vector<CallRow> recent_calls(int limit);
    /// Stores a call, or changes the one of this id (0: a new one); the id, or nothing.
    std::optional<CallId> keep_call(CallId id, const CallRecord& call);
    bool erase_call(CallId id);

    // -- runs of the job that is open (app/session_runs.cpp) --------------------------------------
    /// The last ended first; none of a visit.
    const std::vector<RunRow>& runs() const { return runs_; }
    /// Stores the job as it stands as a run, then clears its walk and record as one edit, so that
    /// undo brings those back (the run stays). False, with nothing cleared, when the library or the
    /// autosave is in trouble (trouble() says what to do), and for a visit, which must be kept first.
    bool finish_run();
    /// The job as it was then. Nothing and trouble() where it can't be read.
    std::optional<Job> read_run(RunId id);
    /// Takes a run out of the library. False: trouble() says why.
    bool remove_run(RunId id);
    /// Stores the run that was removed last again, under another id. False where there is none, as
    /// when it was damaged, and when the library refuses.
    bool restore_run();
    bool can_restore_run() const { return removed_run_.has_value(); }
    /// The job of the newest run, read once; nullptr where there is none or it can't be read.
    const Job* last_run();

    // -- what was really set on the walk (app/session_as_set.cpp) --------------------------------
    /// The job that is open as it was really set; nullptr where that is as planned.
    const Job* job_as_set();
    /// What it comes to, worked out once a change; nullptr likewise.
    const Assessment* assessment_as_set();

    /// A job of the library, or the one that is open (0 while it is a visit). Nothing and trouble()
    /// where it can't be read.
    std::optional<Job> read(JobId id);
    /// Writes a job as a file into `exports` beside the library; its path, or nothing and trouble().
    std::optional<std::string> export_job(JobId id);
    /// Likewise any bytes, as a file that is called like `name` and ends in `extension`
    /// (app/session_export.cpp).
    std::optional<std::string> export_bytes(const std::string& name, const std::string& extension,
                                            std::string_view bytes);

    const std::vector<PressRow>& presses() const { return presses_; }
    /// Keeps the job's press profile for other jobs; one of the same name is replaced.
    bool keep_press();
    /// A kept press; nothing and trouble() where it can't be read.
    std::optional<PressProfile> kept_press(PressId id);
    /// Puts a kept press into the job, as an edit. Refused: why.
    std::optional<Applied> use_press(PressId id);

    SaveState save_state() const;
    /// Changes can't be made here: another window writes the library.
    bool read_only() const { return writer_->elsewhere(); }
    std::string trouble() const; ///< in the language; empty: none
    /// That the library was damaged and a backup took its place; empty: nothing of the kind.
    const std::string& rescued() const { return rescued_; }
    /// That no backup could be made, once for each time it comes to that; empty otherwise
    /// (app/session_backups.cpp).
    std::string backup_trouble();
    void retry();
    bool flush(); ///< waits, for closing; false: something could not be saved

    /// Of the library; empty: there is none.
    const std::string& folder() const { return folder_; }
    Looks looks() const { return looks_; }
    void set_looks(const Looks& looks);
    const Habits& habits() const { return habits_; } ///< app/session_habits.cpp
    void set_habits(const Habits& habits);
    Timestamp time() const { return now_(); } ///< of day
    bool first_start() const { return first_start_; }

private:
    void adopt(Job job, JobId id);
    void put_visit_aside();
    enum class Practised { made, undone, redone };
    void note_practised(Practised what, const Edit* edit = nullptr);
    void record(const Edit& edit, const Edit& inverse);
    void reload_rows();
    void reload_runs();
    void library_changed();
    void remember(JobId id);
    void note(const LibraryFault& fault);
    void read_looks();
    void read_habits();
    void read_trainee();
    std::optional<LibraryFault> forget_in_backups(const ErasedRow& erased);
    bool people_changed(const std::optional<LibraryFault>& fault);
    bool person_changed(TraineeId id, const std::optional<LibraryFault>& fault);
    void work_out_as_set();

    std::function<Timestamp()> now_;
    std::string folder_;
    std::optional<Library> library_;
    std::unique_ptr<Autosave> writer_;
    std::unique_ptr<Backups> backups_;       ///< nullptr: none are made
    bool backup_trouble_told_ = false;
    std::string rescued_;
    std::optional<LibraryFault> fault_;      ///< the last failure of the library itself
    std::optional<LibraryFault> open_fault_; ///< why the person's own library is not in use
    Looks looks_;
    Habits habits_;
    bool first_start_ = false;

    Job job_;
    Job shown_;
    JobId current_ = 0;
    struct Visit { JobId before; }; ///< the job that was open
    std::optional<Visit> visit_;
    struct LeftVisit { Job job; std::vector<Edit> undo, redo; };
    std::optional<LeftVisit> left_;
    struct Practice {
        Job own;
        JobId current;
        std::optional<Visit> visit;
        std::vector<Edit> undo, redo;
    };
    std::optional<Practice> practice_; ///< what was put aside for it
    std::vector<Edit> made_, unmade_;  ///< in the job that is practised on; by undo
    struct Preview { HeadId head; Edit edit; };
    std::optional<Preview> preview_;
    Assessment assessment_;
    std::vector<Edit> undo_;
    std::vector<Edit> redo_;
    std::vector<JobRow> rows_;
    std::vector<PressRow> presses_;
    std::string query_;
    std::vector<RunRow> runs_;
    RunId last_run_id_ = 0; ///< the run that was read for last_run()
    std::optional<Job> last_run_;
    TraineeSummary practised_by_;
    std::vector<TraineeSummary> group_;
    struct RemovedRun { JobId job; Timestamp ended; Job as_it_was; };
    std::optional<RemovedRun> removed_run_;
    struct AsSet {
        Job of;      ///< the job that it was worked out for
        Job job;     ///< as really set
        bool differs;
        Assessment assessment; ///< only where it differs
    };
    std::optional<AsSet> as_set_;
};

/// The demonstration job that the program carries.
Job demo_job();

/// A job with a press and no heads yet, to start from.
Job empty_job(const std::string& name);

/// A head to start from, on a station.
Head new_head(const Job& job, int station, const std::string& colour);

} // namespace carriageway
