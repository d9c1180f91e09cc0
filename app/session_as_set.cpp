// The job that is open as it was really set, for as long as nothing changes in it.
#include "app/session.h"
#include "core/walk.h"

namespace carriageway {

void Session::work_out_as_set() {
    if (as_set_ && as_set_->of == job_) return;
    if (!as_set_) as_set_ = AsSet{};
    as_set_->of = job_;
    as_set_->job = carriageway::as_set(job_);
    as_set_->differs = !(as_set_->job == job_);
    if (as_set_->differs) assess(as_set_->job, as_set_->assessment);
}

const Job* Session::job_as_set() {
    work_out_as_set();
    return as_set_->differs ? &as_set_->job : nullptr;
}

const Assessment* Session::assessment_as_set() {
    work_out_as_set();
    return as_set_->differs ? &as_set_->assessment : nullptr;
}

} // namespace carriageway
