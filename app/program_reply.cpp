// The reply to a call: sent as a link, and shown where it arrives.
#include "app/program.h"
#include "app/records/link_base.h"
#include "app/views/call_view.h"

namespace carriageway {

void Program::carry_out(const SendReply& a) {
    const CallState& call = state_.practice.call;
    const Language language = state_.looks.language;
    if (!call_is_at_hand(call, session_.current())) return;
    const CallPlan plan = call_plan(fault_lore(), call, session_.job(), session_.assessment());
    const std::optional<Reply> reply = reply_of(session_.job(), plan.edits);
    if (!reply) return notice(std::string(word(language, Word::reply_none)), true);
    const std::string fragment = reply_link_fragment(*reply);
    const std::string& base = abilities_.link_base;
    if (!a.share || !usable_link_base(base)) return hand_out_link(fragment);
    const std::string link = link_on(base, fragment);
    if (link.empty()) return notice(std::string(word(language, Word::link_too_long)), true);
    errands_.push_back({ErrandKind::share_text, link});
}

void Program::receive(ReadReply read, const std::string& from) {
    const Language language = state_.looks.language;
    if (!read)
        return notice(say(language, Word::not_opened, {from, fault_sentence(language, read.fault)}),
                      true);
    // What has been answered so far is not thrown away.
    if (state_.practice.exercise.stage == ExerciseStage::under_way)
        return notice(say(language, Word::exercise_first, {from}), true);
    close_exercise();
    auto shown = std::make_shared<ShownReply>();
    shown->reply = std::move(*read.reply);
    assess(shown->reply.before, shown->before);
    assess(shown->reply.after, shown->after);
    const bool was_visiting = session_.visiting();
    // The same link once more, as when a page is loaded again: nothing is lost, nothing to say.
    const bool same = was_visiting && !session_.can_undo() && session_.job() == shown->reply.before;
    if (!same) session_.visit(shown->reply.before);
    arrive(was_visiting && !same);
    state_.practice.call.reply = std::move(shown);
    carry_out(ShowReply{});
}

void Program::carry_out(const ShowReply&) {
    carry_out(ShowPractice{PracticePart::call});
    if (state_.show_focus) state_.focus = "reply/set";
}

void Program::carry_out(const SetReply&) {
    const ShownReply* shown =
        reply_at_hand(state_.practice.call, session_.current(), session_.visiting());
    if (shown) apply_edit(Edit{Together{shown->reply.changes}});
}

} // namespace carriageway
