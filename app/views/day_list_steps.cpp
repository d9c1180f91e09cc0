// The steps of one list: ticked by a tap anywhere on their row, with the cautions that go with
// them; putting steps in and taking them out; the first piece's approval.
#include <algorithm>

#include "app/drawing/diagram.h"
#include "app/text/list_sentences.h"
#include "app/views/list_view.h"
#include "app/views/measure_words.h"
#include "core/list_edits.h"

namespace carriageway {

namespace {

constexpr float pad = 14.0f;
constexpr float tick_side = 30.0f;
constexpr float sign_side = 13.0f;
constexpr float tool = 48.0f;
constexpr float row_gap = 8.0f;
constexpr float least_height = 64.0f;

std::string thing_name(const CheckItem& item) { return "lists/step/" + std::to_string(item.id); }

/// The box that a tick stands in: with its mark when ticked, so that colour alone tells nothing.
void draw_tick_box(Canvas& canvas, Vec centre, bool ticked) {
    const Box box = around(centre, tick_side, tick_side);
    if (ticked) {
        canvas.list().round(box, 8.0f, paint(Role::strong));
        canvas.icon(Icon::check, centre, 20.0f, Role::on_strong);
        return;
    }
    canvas.list().round(box, 8.0f, paint(Role::panel));
    canvas.list().ring(box, 8.0f, paint(Role::soft_ink), 1.8f);
}

/// A step's lines: its words, the sign of its caution, who ticked it and when.
struct StepLines {
    std::string words, sign, stamp;
    float words_height = 0.0f, sign_height = 0.0f, stamp_height = 0.0f;
    float sign_indent = 0.0f;
    float height() const { return words_height + sign_height + stamp_height; }
};

StepLines lines_of(const Model& model, const CheckItem& item, float width, const Canvas& canvas) {
    constexpr float beside_sign = 6.0f, above = 3.0f;
    StepLines lines;
    lines.words = step_text(canvas.language(), item);
    lines.words_height = canvas.paragraph_height(width, lines.words, body_text);
    lines.sign_indent = sign_side + beside_sign;
    if (const Caution caution = caution_of(item); caution != Caution::none) {
        lines.sign = canvas.word(sign_word(caution));
        lines.sign_height =
            above + canvas.paragraph_height(width - lines.sign_indent, lines.sign, small_text);
    }
    if (const CheckTick* tick = tick_of(model.job->record, item.id)) {
        lines.stamp = stamp_text(tick->stamp);
        if (!lines.stamp.empty())
            lines.stamp_height = above + canvas.paragraph_height(width, lines.stamp, small_text);
    }
    return lines;
}

void draw_lines(const StepLines& lines, Vec at, float width, Canvas& canvas) {
    canvas.paragraph(at, width, lines.words, body_text, Role::ink, Role::quiet);
    at.y += lines.words_height;
    if (!lines.sign.empty()) {
        const float text =
            canvas.paragraph_height(width - lines.sign_indent, lines.sign, small_text);
        const float top = at.y + lines.sign_height - text;
        draw_verdict(canvas.list(),
                     {at.x + 0.5f * sign_side, top + 0.5f * canvas.type().height(small_text)},
                     sign_side, Role::mind);
        canvas.paragraph({at.x + lines.sign_indent, top}, width - lines.sign_indent, lines.sign,
                         small_text, Role::ink, Role::quiet);
        at.y += lines.sign_height;
    }
    if (lines.stamp.empty()) return;
    const float text = canvas.paragraph_height(width, lines.stamp, small_text);
    canvas.paragraph({at.x, at.y + lines.stamp_height - text}, width, lines.stamp, small_text,
                     Role::soft_ink, Role::quiet);
}

void tick_row(const Model& model, const CheckItem& item, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float indent = pad + tick_side + pad;
    const float width = rows.width - indent - pad;
    const StepLines lines = lines_of(model, item, width, canvas);
    const Box box = rows.next(std::max(least_height, lines.height() + 22.0f), row_gap);
    const bool ticked = tick_of(model.job->record, item.id) != nullptr;
    canvas.list().round(box, 12.0f, paint(Role::quiet));
    draw_tick_box(canvas, {box.x0 + pad + 0.5f * tick_side, box.centre().y}, ticked);
    draw_lines(lines, {box.x0 + indent, box.centre().y - 0.5f * lines.height()}, width, canvas);
    Thing& thing = canvas.list().thing(thing_name(item), ThingRole::button, box);
    thing.label = lines.words;
    thing.value = canvas.word(ticked ? Word::list_ticked : Word::list_not_ticked);
    for (const std::string* more : {&lines.stamp, &lines.sign})
        if (!more->empty()) thing.value += " · " + *more;
    thing.chosen = ticked;
    thing.action = canvas.action(TickStep{item.id, !ticked});
}

/// While the list is being changed.
void change_row(const Model& model, const CheckItem& item, Rows& rows) {
    const std::string words = step_text(rows.canvas.language(), item);
    const std::optional<Edit> without = remove_step(*model.job, item.id);
    ListEntry entry{thing_name(item), words, {},
                    say(rows.canvas.language(), Word::list_remove_step, {words}), Undo{}};
    if (without) entry.action = DoEdit{*without};
    else entry.remove.clear();
    entry_row(entry, rows);
}

} // namespace

void list_cautions(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::vector<CheckItem>& items = checks_of(model.job->press);
    const auto needed = [&](Caution caution) {
        return std::any_of(items.begin(), items.end(), [&](const CheckItem& item) {
            return item.list == model.state->day.list && caution_of(item) == caution;
        });
    };
    for (const Caution caution :
         {Caution::index_path, Caution::hands_in_carriage, Caution::isolated_and_bled,
          Caution::lamps_alive, Caution::hot_surface, Caution::solvents}) {
        // Before a hand reaches in, air and power are isolated: the one goes with the other.
        const bool with_hands =
            caution == Caution::isolated_and_bled && needed(Caution::hands_in_carriage);
        if (!needed(caution) && !with_hands) continue;
        const std::string words =
            say(canvas.language(), Word::caution_sign,
                {canvas.word(sign_word(caution)), canvas.word(caution_word(caution))});
        const float top = rows.y;
        caution_row(words, rows);
        canvas.reading("lists/caution/" + std::to_string(static_cast<int>(caution)),
                       {rows.x, top, rows.x + rows.width, rows.y}, words, {});
    }
    rows.space(4.0f);
}

void list_steps(const Model& model, Rows& rows) {
    const DayState& day = model.state->day;
    bool any = false;
    for (const CheckItem& item : checks_of(model.job->press)) {
        if (item.list != day.list) continue;
        any = true;
        if (day.changing_list) change_row(model, item, rows);
        else tick_row(model, item, rows);
    }
    if (!any) rows.text(rows.canvas.word(Word::list_empty), body_text, Role::soft_ink, 12.0f);
}

void list_change(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    if (checks_of(model.job->press).size() < most_check_items)
        text_row(model, "lists/add-step", canvas.word(Word::list_add_step), {},
                 canvas.word(Word::list_add_hint), EditText{TextTarget::own_step}, rows);
    else
        rows.text(say(canvas.language(), Word::list_full, {std::to_string(most_check_items)}),
                  small_text, Role::mind, 8.0f);
    if (const std::optional<Edit> usual = bring_usual_steps_back(*model.job))
        wide_button("lists/usual", canvas.word(Word::list_usual_back), ButtonLook::plain,
                    DoEdit{*usual}, rows);
    rows.text(canvas.word(Word::list_of_press), small_text, Role::soft_ink, 8.0f);
}

void first_piece_approval(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Approval& approval = model.job->record.approval;
    const bool approved = !approval.by.empty();
    list_heading(canvas.word(Word::approval), rows);
    text_row(model, "lists/approved-by", canvas.word(Word::approval_by), approval.by,
             canvas.word(Word::approval_by_hint), EditText{TextTarget::approved_by}, rows);
    text_row(model, "lists/approved-against", canvas.word(Word::approval_against), approval.against,
             canvas.word(Word::approval_against_hint), EditText{TextTarget::approved_against},
             rows);
    const std::string stands =
        approved ? say(canvas.language(), Word::approval_given,
                       {stamp_text({approval.time, approval.by})})
                 : std::string(canvas.word(Word::approval_not_given));
    const float top = rows.y;
    rows.text(stands, body_text, approved ? Role::ink : Role::soft_ink, 8.0f);
    canvas.reading("lists/approval", {rows.x, top, rows.x + rows.width, rows.y - 8.0f}, stands, {});
    canvas.list().things().back().live = true;
    wide_button("lists/approve",
                canvas.word(approved ? Word::approval_take_back : Word::approval_give),
                approved ? ButtonLook::plain : ButtonLook::strong, ApproveFirstPiece{!approved},
                rows, !approved);
}

void entry_row(const ListEntry& entry, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const bool removable = !entry.remove.empty();
    const float width = rows.width - pad - (removable ? tool + 8.0f : pad);
    const float first = canvas.paragraph_height(width, entry.words, body_text);
    const float second = entry.detail.empty()
                             ? 0.0f
                             : canvas.paragraph_height(width, entry.detail, small_text) + 2.0f;
    const Box box = rows.next(std::max(56.0f, first + second + 18.0f), row_gap);
    canvas.list().round(box, 12.0f, paint(Role::quiet));
    const Vec at{box.x0 + pad, box.centre().y - 0.5f * (first + second)};
    canvas.paragraph(at, width, entry.words, body_text, Role::ink, Role::quiet);
    if (!entry.detail.empty())
        canvas.paragraph({at.x, at.y + first + 2.0f}, width, entry.detail, small_text,
                         Role::soft_ink, Role::quiet);
    canvas.reading(entry.name, {box.x0, box.y0, box.x1 - (removable ? tool : 0.0f), box.y1},
                   entry.words, entry.detail);
    if (!removable) return;
    canvas.icon_button(entry.name + "/remove",
                       around({box.x1 - 4.0f - 0.5f * tool, box.centre().y}, tool, tool),
                       Icon::trash, entry.remove, canvas.action(entry.action), true,
                       ButtonLook::bare);
}

} // namespace carriageway
