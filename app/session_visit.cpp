// A job from a link: shown and worked on, stored only when the person says so.
#include "app/session.h"

namespace carriageway {

void Session::put_visit_aside() {
    if (!visit_) return;
    left_ = LeftVisit{std::move(job_), std::move(undo_), std::move(redo_)};
    visit_.reset();
}

void Session::visit(Job job) {
    end_practice();
    const JobId before = visit_ ? visit_->before : current_;
    adopt(std::move(job), 0);
    visit_ = Visit{before};
}

bool Session::keep_visit() {
    if (!visit_) return false;
    drop_preview();
    const LibraryResult<JobId> id = library_->create(job_, now_());
    if (!id) {
        note(id.fault());
        return false;
    }
    visit_.reset();
    current_ = *id;
    fault_.reset();
    library_changed();
    remember(*id);
    return true;
}

void Session::leave_visit() {
    if (!visit_) return;
    const JobId before = visit_->before;
    if (before != 0 && open(before)) return;
    const LibraryResult<std::vector<JobRow>> rows = library_->list({}, 1);
    if (rows && !rows->empty() && open(rows->front().id)) return;
    if (!open_new(demo_job())) adopt(demo_job(), 0);
}

bool Session::bring_visit_back() {
    if (!left_) return false;
    LeftVisit left = std::move(*left_);
    left_.reset();
    visit(std::move(left.job));
    undo_ = std::move(left.undo);
    redo_ = std::move(left.redo);
    return true;
}

} // namespace carriageway
