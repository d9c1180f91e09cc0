// What goes back to the caller: sentences to read out, the link that shows it, and that link's page
// where it arrives.
#include "app/text/difference_sentences.h"
#include "app/text/sentences.h"
#include "app/views/call_view.h"
#include "app/views/day_view.h"
#include "app/views/exercise_parts.h"
#include "app/views/measure_words.h"

namespace carriageway {

namespace {

/// As numbers stand: what was noted on a walk is not what a caller reads out.
std::vector<JobDifference> changes_of(const Job& before, const Job& after) {
    return job_changes(before, after, CompareBy{false, false});
}

void cautions(Rows& rows) {
    for (const Caution caution : {Caution::isolated_and_bled, Caution::hands_in_carriage})
        caution_row(rows.canvas.word(caution_word(caution)), rows);
}

bool has_address(const Model& model) {
    return !(model.abilities->link_base.empty() && model.state->habits.link_base.empty());
}

void link_buttons(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    if (has_address(model) && model.abilities->share_text)
        exercise_button("call/share", canvas.word(Word::call_share), {}, ButtonLook::plain,
                        SendReply{true}, rows);
    exercise_button("call/copy", canvas.word(Word::call_copy), {}, ButtonLook::plain,
                    SendReply{false}, rows);
    rows.text(canvas.word(has_address(model) ? Word::call_link_carries : Word::link_none),
              small_text, Role::soft_ink, 12.0f);
}

/// Causes that were told and that nothing in the job mends.
void told_by_hand(const CallView& view, Rows& rows) {
    for (const std::size_t cause : view.call.notes.told)
        if (view.lore.book.causes[cause].fix == Fix::by_hand)
            exercise_text("call/say/" + view.lore.book.causes[cause].id,
                          view.text(view.lore.causes[cause].fix), body_text, Role::ink, 6.0f, rows);
}

/// Both pictures side by side where there is room.
void two_pictures(const Model& model, const ShownReply& shown, Rows& rows) {
    const HeadId head = changed_head(shown.reply.before, shown.reply.after);
    if (head == 0) return;
    Canvas& canvas = rows.canvas;
    constexpr float gap = 12.0f, widest = 300.0f;
    const bool beside = rows.width >= 2.0f * widest;
    const auto picture = [&](Word word, const std::string& name, const Job& job,
                             const Assessment& worked, Rows& column) {
        column.text(canvas.word(word), bold_text, Role::ink, 4.0f);
        head_picture(model, name, canvas.word(word), job, worked, head, column);
    };
    Rows left = rows;
    if (beside) left.width = 0.5f * (rows.width - gap);
    Rows right = left;
    picture(Word::reply_before, "reply/before", shown.reply.before, shown.before, left);
    if (beside) right.x += left.width + gap;
    else right.y = left.y;
    picture(Word::reply_after, "reply/after", shown.reply.after, shown.after, right);
    rows.y = std::max(left.y, right.y);
}

const ShownReply* shown_reply(const Model& model) {
    return reply_at_hand(model.state->practice.call, model.current, model.visiting);
}

} // namespace

HeadId changed_head(const Job& before, const Job& after) {
    for (const JobDifference& one : changes_of(before, after))
        if (one.head_a != 0) return one.head_a;
    return 0;
}

void change_rows(const Model& model, const std::string& name, const Job& before, const Job& after,
                 Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const LengthUnit units = model.state->looks.units;
    const std::vector<JobDifference> all = changes_of(before, after);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const JobDifference& one = all[i];
        if (i == 0 || !same_owner(one, all[i - 1])) {
            rows.text(difference_owner(language, before, after, one), bold_text, Role::ink, 4.0f);
            const Head* was = find_head(before, one.head_a);
            const Head* is = find_head(after, one.head_b);
            if (was && is && !(was->stops == is->stops))
                exercise_text(
                    name + "/stops/" + std::to_string(was->station),
                    stops_text(language, units, before.press.ruler, was->stops, is->stops).main +
                        ".",
                    small_text, Role::soft_ink, 4.0f, rows);
        }
        const SaidDifference said = difference_text(language, units, before, after, one);
        const std::string line =
            say(language, Word::call_line, {capitalised(said.what), said.a, said.b});
        const float top = rows.y;
        rows.text(line, {TypeSize::title, false}, Role::ink, 8.0f);
        canvas.reading(name + "/" + std::to_string(i + 1),
                       {rows.x, top, rows.x + rows.width, rows.y - 8.0f}, line,
                       say(language, Word::reply_value, {said.a, said.b}));
    }
}

void call_read_back(const CallView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::call_read_back), title_text, Role::ink, 6.0f);
    if (view.call.notes.told.empty())
        return exercise_text("call/say/none", canvas.word(Word::call_read_nothing), body_text,
                             Role::ink, 10.0f, rows);
    cautions(rows);
    told_by_hand(view, rows);
    if (view.plan.edits.empty())
        return exercise_text("call/say/done", canvas.word(Word::call_read_as_told), body_text,
                             Role::ink, 10.0f, rows);
    change_rows(view.model, "call/say", *view.model.job, view.plan.after, rows);
    rows.text(canvas.word(Word::call_read_repeat), small_text, Role::soft_ink, 10.0f);
    exercise_button("call/set", canvas.word(Word::call_set), {}, ButtonLook::strong, FixesAreSet{},
                    rows, true);
    link_buttons(view.model, rows);
}

void reply_rows(const Model& model, Rows& rows) {
    const ShownReply* shown = shown_reply(model);
    if (!shown) return;
    Canvas& canvas = rows.canvas;
    exercise_text("reply/title", canvas.word(Word::reply_title), title_text, Role::ink, 4.0f, rows);
    rows.text(canvas.word(Word::reply_about), small_text, Role::soft_ink, 8.0f);
    cautions(rows);
    change_rows(model, "reply/change", shown->reply.before, shown->reply.after, rows);
    rows.text(canvas.word(Word::reply_check), body_text, Role::ink, 10.0f);
    two_pictures(model, *shown, rows);
    if (*model.job == shown->reply.after)
        exercise_text("reply/is-set", canvas.word(Word::reply_is_set), body_text, Role::ink, 8.0f,
                      rows);
    else
        exercise_button("reply/set", canvas.word(Word::reply_set), {}, ButtonLook::strong,
                        SetReply{}, rows, true);
    exercise_button("reply/press", canvas.word(Word::reply_at_press), {}, ButtonLook::plain,
                    ChooseHead{changed_head(shown->reply.before, shown->reply.after)}, rows);
    rows.text(canvas.word(Word::caution), small_text, Role::soft_ink, 16.0f);
}

void reply_button(const Model& model, Rows& rows) {
    if (!shown_reply(model)) return;
    wide_button("reply/show", rows.canvas.word(Word::reply_show), ButtonLook::strong, ShowReply{},
                rows, true);
}

} // namespace carriageway
