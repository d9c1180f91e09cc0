// A job to practise on: it takes the place of the one that is open, which comes back exactly as it
// was.
#include "app/session.h"

namespace carriageway {

void Session::practise(Job job) {
    drop_preview();
    if (!practice_)
        practice_ = Practice{std::move(job_), current_, visit_, std::move(undo_), std::move(redo_)};
    visit_.reset();
    job_ = std::move(job);
    current_ = 0;
    undo_.clear();
    redo_.clear();
    made_.clear();
    unmade_.clear();
    reload_runs();
    assess(job_, assessment_);
}

void Session::end_practice() {
    if (!practice_) return;
    preview_.reset();
    job_ = std::move(practice_->own);
    current_ = practice_->current;
    visit_ = practice_->visit;
    undo_ = std::move(practice_->undo);
    redo_ = std::move(practice_->redo);
    practice_.reset();
    made_.clear();
    unmade_.clear();
    reload_runs();
    assess(job_, assessment_);
}

void Session::note_practised(Practised what, const Edit* edit) {
    if (!practice_) return;
    if (what == Practised::made) {
        made_.push_back(*edit);
        unmade_.clear();
        return;
    }
    std::vector<Edit>& from = what == Practised::undone ? made_ : unmade_;
    std::vector<Edit>& to = what == Practised::undone ? unmade_ : made_;
    if (from.empty()) return; // older than what undo keeps
    to.push_back(std::move(from.back()));
    from.pop_back();
}

} // namespace carriageway
