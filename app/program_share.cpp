// Links: a job that comes in by one, and one that is sent by one.
#include "app/program.h"
#include "app/records/exercise_file.h"
#include "app/records/job_link.h"

namespace carriageway {

namespace {

constexpr double left_seconds = 20.0; ///< that the way back to a visit stands there

} // namespace

void Program::open_link(const std::string& text) {
    const Language language = state_.looks.language;
    const std::string link(word(language, Word::the_link));
    const LinkContent content = content_of_link(text);
    if (content == LinkContent::exercise) return receive(read_exercise_link(text), link);
    if (content == LinkContent::result) return receive(read_result_link(text), link);
    if (content == LinkContent::reply) return receive(read_reply_link(text), link);
    ReadJob read = read_job_link(text);
    if (!read.job) {
        notice(say(language, Word::not_opened, {word(language, Word::the_link), fault_sentence(language, read.fault)}),
               true);
        return;
    }
    const bool was_visiting = session_.visiting();
    // The same link once more, as when a page is loaded again: nothing is lost, nothing to say.
    const bool same = was_visiting && !session_.can_undo() && session_.job() == *read.job;
    if (!same && offer_merge(*read.job, true)) return;
    if (!same) session_.visit(std::move(*read.job));
    arrive(was_visiting && !same);
}

/// Another job is open now. What was a visit before was put aside, and that is said.
void Program::arrive(bool was_visiting) {
    // What a finger holds belongs to the job that was shown before.
    let_go();
    fling_.reset();
    drop_film(); // it was for a head of that job
    state_.measuring = {}; // read on the press of the job before
    state_.day = {};
    CallState& call = state_.practice.call; // a reply belongs to the job that it came with
    if (was_visiting) call.left_reply = std::move(call.reply);
    call.reply.reset();
    call.reply_kept = 0;
    choose_head(0);
    if (!was_visiting) return;
    if (!session_.visiting()) errands_.push_back({ErrandKind::link_taken, {}});
    const std::string* left = session_.left_visit();
    if (!left) return;
    notice(say(state_.looks.language, Word::visit_left, {*left}));
    state_.notice->visit_left = true;
    state_.notice->until = now_ + left_seconds;
}

void Program::carry_out(const PickFile&) { errands_.push_back({ErrandKind::pick_file, {}}); }

void Program::carry_out(const ShareJob& a) {
    const std::optional<Job> job = session_.read(a.job);
    if (!job) return say_trouble();
    Share share;
    share.job = a.job;
    share.name = job->name;
    share.opener = state_.focus;
    if (!abilities_.link_base.empty()) {
        const std::string fragment = job_link_fragment(*job);
        share.too_large = fragment.empty();
        if (!share.too_large) share.link = abilities_.link_base + "#" + fragment;
        if (!share.too_large) share.code = qr_code(share.link);
    }
    state_.share = std::move(share);
    state_.share_scroll = 0.0f;
    state_.measuring.open = false;
    state_.pad.reset();
    state_.typing.reset();
    state_.notice.reset();
    if (state_.show_focus) state_.focus = "share/close";
}

void Program::carry_out(const CloseShare&) {
    if (!state_.share) return;
    state_.focus = state_.share->opener;
    state_.share.reset();
}

void Program::carry_out(const CopyLink&) {
    if (state_.share) errands_.push_back({ErrandKind::copy_text, state_.share->link});
}

void Program::carry_out(const ShareLink&) {
    if (state_.share) errands_.push_back({ErrandKind::share_text, state_.share->link});
}

void Program::carry_out(const KeepVisit&) {
    if (!session_.visiting()) return;
    // The library takes no job without a name.
    if (session_.job().name.empty())
        session_.commit(Edit{SetName{0, std::string(word(state_.looks.language, Word::untitled))}});
    if (!session_.keep_visit()) return say_trouble();
    state_.practice.call.reply_kept = session_.current();
    errands_.push_back({ErrandKind::link_taken, {}});
    notice(say(state_.looks.language, Word::visit_kept, {session_.job().name}));
}

void Program::carry_out(const LeaveVisit&) {
    if (!session_.visiting()) return;
    session_.leave_visit();
    arrive(true);
}

void Program::carry_out(const BringVisitBack&) {
    const bool was_visiting = session_.visiting();
    if (!session_.bring_visit_back()) return;
    state_.notice.reset();
    const std::shared_ptr<const ShownReply> reply = state_.practice.call.left_reply;
    arrive(was_visiting);
    state_.practice.call.reply = reply;
}

} // namespace carriageway
