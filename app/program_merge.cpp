// Another half of the walk that is opened while its job is: put together with this one by one edit.
#include <algorithm>

#include "app/program.h"
#include "core/walk.h"

namespace carriageway {

namespace {

/// Marks that come from theirs: of one head, or, with none, of heads that are not on the press.
int marks_from(const Job& theirs, const Job& before, const Job& after,
               std::optional<HeadId> head) {
    return static_cast<int>(
        std::count_if(after.walk.begin(), after.walk.end(), [&](const WalkMark& mark) {
            const bool on_press = mark.head == 0 || find_head(after, mark.head);
            if (head ? mark.head != *head : on_press) return false;
            if (!mark_of(theirs, mark.head, mark.field)) return false;
            const WalkMark* was = mark_of(before, mark.head, mark.field);
            return !was || !(*was == mark);
        }));
}

template <class Entry>
int added(const std::vector<Entry>& before, const std::vector<Entry>& after) {
    return static_cast<int>(after.size()) - static_cast<int>(before.size());
}

/// What is taken over besides what was noted on the walk, in lists and in the record's own lists.
int others_from(const Edit& edit, const RunRecord& before, const RunRecord& after) {
    int others = 0;
    for (const Edit& part : std::get<Together>(edit.what).edits)
        others += std::holds_alternative<SetWalk>(part.what) ||
                          std::holds_alternative<SetRecord>(part.what) ||
                          std::holds_alternative<SetHeightReadings>(part.what)
                      ? 0
                      : 1;
    return others + (before.approval == after.approval ? 0 : 1) +
           (before.notes == after.notes ? 0 : 1);
}

TakenOver taken_over(const WalkMerge& merge) {
    TakenOver taken;
    if (!merge.edit) return taken;
    const Job& before = merge.mine;
    Job after = before;
    if (!apply(after, *merge.edit)) return taken;
    for (const HeadId head : walk_order(after))
        if (const int marks = marks_from(merge.theirs, before, after, head); marks > 0)
            taken.walk.push_back({head, marks});
    taken.steps = added(before.record.ticks, after.record.ticks);
    taken.counts = added(before.record.counts, after.record.counts);
    taken.stoppages = added(before.record.stoppages, after.record.stoppages);
    taken.readings = added(before.height_readings, after.height_readings);
    taken.others = others_from(*merge.edit, before.record, after.record) +
                   marks_from(merge.theirs, before, after, std::nullopt);
    return taken;
}

MergeState state_of(WalkMerge merge) {
    MergeState state;
    state.take_theirs.assign(merge.conflicts.size(), false);
    state.taken_over = taken_over(merge);
    state.merge = std::move(merge);
    return state;
}

} // namespace

bool Program::offer_merge(const Job& theirs, bool by_link) {
    if (session_.read_only()) return false;
    if (theirs.walk.empty() && theirs.record == RunRecord{}) return false;
    WalkMerge merge = merge_walks(session_.job(), theirs);
    if (merge.refusal != MergeRefusal::none) return false;
    if (!merge.edit && merge.conflicts.empty()) {
        notice(std::string(word(state_.looks.language, Word::merge_nothing_new)));
        if (by_link && !session_.visiting()) errands_.push_back({ErrandKind::link_taken, {}});
        return true;
    }
    // What a finger holds lies below the sheet from now on.
    let_go();
    const DayState& day = state_.day;
    MergeState state = state_of(std::move(merge));
    state.by_link = by_link;
    if (day.open) state.before = day.part == DayPart::merge ? DayPart::walk : day.part;
    state_.day.merge = std::move(state);
    carry_out(OpenDay{DayPart::merge});
    return true;
}

void Program::carry_out(const ChooseSide& a) {
    std::optional<MergeState>& merge = state_.day.merge;
    if (merge && a.conflict < merge->take_theirs.size()) merge->take_theirs[a.conflict] = a.theirs;
}

bool Program::merge_is_new() {
    MergeState& state = *state_.day.merge;
    if (state.merge.mine == session_.job()) return true;
    const Language language = state_.looks.language;
    WalkMerge again = merge_walks(session_.job(), state.merge.theirs);
    if (again.refusal != MergeRefusal::none) {
        notice(std::string(word(language, Word::merge_apart)), true);
        return false;
    }
    const bool alike = again.conflicts == state.merge.conflicts;
    MergeState fresh = state_of(std::move(again));
    if (alike) fresh.take_theirs = state.take_theirs;
    fresh.by_link = state.by_link;
    fresh.before = state.before;
    state = std::move(fresh);
    if (!alike) notice(std::string(word(language, Word::merge_changed)), true);
    return alike;
}

/// What came by a link has been dealt with; a visit's own link stands in its place.
void Program::let_merge_go() {
    const bool taken = state_.day.merge->by_link && !session_.visiting();
    if (taken) errands_.push_back({ErrandKind::link_taken, {}});
    state_.day.merge.reset();
}

void Program::carry_out(const AcceptMerge&) {
    if (!state_.day.merge || !merge_is_new()) return;
    const MergeState& state = *state_.day.merge;
    const std::optional<Edit> edit = resolve(state.merge, state.take_theirs);
    if (edit)
        if (const std::optional<Applied> refused = session_.commit(*edit)) return refuse(*refused);
    let_merge_go();
    carry_out(ShowDay{DayPart::walk});
    notice(std::string(
        word(state_.looks.language, edit ? Word::merge_done : Word::merge_all_mine)));
}

void Program::carry_out(const DropMerge&) {
    if (!state_.day.merge) return;
    const std::optional<DayPart> before = state_.day.merge->before;
    let_merge_go();
    if (before) carry_out(ShowDay{*before});
    else carry_out(CloseDay{});
}

void Program::carry_out(const OpenTheirs&) {
    if (!state_.day.merge) return;
    const bool by_link = state_.day.merge->by_link;
    Job theirs = state_.day.merge->merge.theirs;
    const bool was_visiting = session_.visiting();
    if (by_link) session_.visit(std::move(theirs));
    else if (!session_.open_new(theirs)) return say_trouble();
    arrive(was_visiting);
}

} // namespace carriageway
