#include "app/views/call_plan.h"

#include <algorithm>

namespace carriageway {

namespace {

/// The head that a cause's fix is for.
HeadId fixed_head(const Ranking& ranking, std::size_t cause) {
    if (ranking.head != 0) return ranking.head;
    for (const RankedCause& ranked : ranking.causes)
        if (ranked.cause == cause) return ranked.head;
    return 0;
}

} // namespace

CallPlan call_plan(const FaultLore& lore, const CallState& call, const Job& job,
                   const Assessment& assessment) {
    CallPlan plan;
    const FaultBook& book = lore.book;
    plan.after = job;
    plan.after_worked = assessment;
    if (call.symptom) {
        plan.ranking = rank_causes(book, *call.symptom, job, assessment, call.notes.head,
                                   call.notes.answers);
        plan.questions =
            best_questions(book, plan.ranking, call.notes.read, call.notes.skipped);
    }
    for (const std::size_t cause : call.notes.told) {
        if (cause >= book.causes.size()) continue;
        const std::optional<Edit> edit =
            fix_edit(book.causes[cause].fix, plan.after, plan.after_worked,
                     fixed_head(plan.ranking, cause));
        if (!edit || !apply(plan.after, *edit)) continue;
        plan.edits.push_back(*edit);
        assess(plan.after, plan.after_worked);
    }
    return plan;
}

const ShownReply* reply_at_hand(const CallState& call, JobId current, bool visiting) {
    const bool here = call.reply_kept == 0 ? visiting : call.reply_kept == current;
    return here ? call.reply.get() : nullptr;
}

} // namespace carriageway
