// Runs of the job that is open: finished, read again, taken away and brought back.
#include "app/session.h"

#include <algorithm>

namespace carriageway {

void Session::reload_runs() {
    runs_.clear();
    if (!last_run_) last_run_id_ = 0; // what could not be read may be by now
    if (current_ == 0) return;
    LibraryResult<std::vector<RunRow>> found = library_->runs(current_);
    if (found) runs_ = std::move(*found);
    // A job that another window purged comes back with its next edit, and has no runs until then.
    else if (found.fault().kind != LibraryFault::Kind::no_such_job) note(found.fault());
}

bool Session::finish_run() {
    drop_preview();
    if (visit_ || practice_) return false;
    // What led to the run is stored before it. Where that can't be, neither could what follows; a
    // store that is still at it is no trouble, because what comes later is kept later.
    if (!writer_->flush(std::chrono::milliseconds(2000)) && writer_->fault()) return false;
    const LibraryResult<RunId> run = library_->add_run(current_, job_, now_());
    if (!run) {
        note(run.fault());
        return false;
    }
    fault_.reset();
    // A program that ends between the two has the run, and still all that the job holds.
    if (!job_.walk.empty() || !(job_.record == RunRecord{}))
        commit(Edit{Together{{Edit{SetWalk{}}, Edit{SetRecord{}}}}});
    library_changed();
    return true;
}

std::optional<Job> Session::read_run(RunId id) {
    LibraryResult<Job> job = library_->open_run(id);
    if (job) return std::move(*job);
    note(job.fault());
    return std::nullopt;
}

bool Session::remove_run(RunId id) {
    const auto row = std::find_if(runs_.begin(), runs_.end(),
                                  [&](const RunRow& run) { return run.id == id; });
    LibraryResult<Job> job = library_->open_run(id);
    const std::optional<LibraryFault> fault = library_->remove_run(id);
    if (fault) {
        note(*fault);
    } else {
        removed_run_.reset();
        if (job && row != runs_.end())
            removed_run_ = RemovedRun{row->job, row->ended, std::move(*job)};
    }
    library_changed();
    return !fault;
}

bool Session::restore_run() {
    if (!removed_run_) return false;
    const LibraryResult<RunId> run =
        library_->add_run(removed_run_->job, removed_run_->as_it_was, removed_run_->ended);
    if (run) removed_run_.reset();
    else note(run.fault());
    library_changed();
    return static_cast<bool>(run);
}

const Job* Session::last_run() {
    if (runs_.empty()) return nullptr;
    const RunId newest = runs_.front().id;
    if (last_run_id_ != newest) {
        last_run_ = read_run(newest);
        last_run_id_ = newest;
    }
    return last_run_ ? &*last_run_ : nullptr;
}

} // namespace carriageway
