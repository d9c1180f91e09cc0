// Marks of one round: the drawing to tap on, what to turn, and the numbers of each mark.
#include <algorithm>

#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

// A mark's thing on the drawing, dp: as seen, and for fingers.
constexpr float mark_side = 40.0f, mark_target = 46.0f;

/// Marks at the corners of the image's bounds, on their places.
MarkRound corner_round(const RegisterView& view) {
    Outline image;
    place_image(view.head->image, image);
    const Rect bounds = bounds_of(image);
    MarkRound round = view.round;
    round.marks.clear();
    for (const Point& corner : {Point{bounds.left, bounds.hi}, Point{bounds.right, bounds.hi},
                                Point{bounds.left, bounds.lo}, Point{bounds.right, bounds.lo}})
        round.marks.push_back({corner, corner});
    return round;
}

int chosen_mark(const RegisterView& view) {
    const std::optional<std::size_t>& mark = view.state().registering.mark;
    return mark && *mark < view.round.marks.size() ? static_cast<int>(*mark) : -1;
}

void screw_cards(const RegisterView& view, const Advice& advice, Rows& rows) {
    const std::vector<Adjuster>& adjusters = view.job().press.adjusters;
    for (const ScrewAdvice& screw : advice.screws) {
        const Adjuster& adjuster = adjusters[screw.adjuster];
        const SaidScrew said = screw_text(rows.canvas.language(), view.units(), screw, adjuster);
        said_card("register/adjuster/" + std::to_string(screw.adjuster + 1), said.title, said.lines,
                  said.turn ? Role::squeegee : Role::edge, rows);
    }
}

/// Stores the advised turns as made and begins the next round, on the same marks.
void next_round_button(const RegisterView& view, const Advice& advice, Rows& rows) {
    std::vector<MarkRound> rounds = view.head->rounds;
    rounds[view.index].turned = advised_turns(advice, view.job().press.adjusters);
    MarkRound next;
    for (const MarkReading& mark : view.round.marks)
        next.marks.push_back({mark.nominal, mark.nominal});
    rounds.push_back(std::move(next));
    rows.space(2.0f);
    wide_button("register/next-round", rows.canvas.word(Word::reg_next_round),
                rows.canvas.word(Word::reg_next_round_detail), ButtonLook::strong,
                RegisterEdit{Edit{SetRounds{view.head->id, std::move(rounds)}}, {}, {}}, rows);
}

/// What to turn, what that leaves, and on to the next round.
void advice_part(const RegisterView& view, Rows& rows) {
    const Registration* lies = std::get_if<Registration>(&view.result.lies);
    if (!lies || !view.result.read || !view.result.advice) return;
    const Advice* advice = std::get_if<Advice>(&*view.result.advice);
    if (!advice) return;
    Canvas& canvas = rows.canvas;
    if (!view.result.within) {
        screw_cards(view, *advice, rows);
        const bool last = view.index + 1 == view.rounds.size();
        if (last && view.rounds.size() < most_rounds && !advice->settled && !advice->screws.empty())
            next_round_button(view, *advice, rows);
        for (const std::string& line : left_over_text(canvas.language(), view.units(), *advice))
            rows.text(line, small_text, Role::ink, 4.0f);
        rows.space(6.0f);
    }
    const float top = rows.y;
    rows.text(canvas.word(Word::reg_growth), bold_text, Role::ink, 2.0f);
    said_lines("register/growth", canvas.word(Word::reg_growth),
               distortion_text(canvas.language(), *lies), small_text, 2.0f, top, rows);
    rows.space(10.0f);
}

void mark_numbers(const RegisterView& view, std::size_t index, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const MarkReading& mark = view.round.marks[index];
    const std::string base = "register/mark/" + std::to_string(index + 1);
    const auto row = [&](const char* name, Word words, RegisterNumber number, double value) {
        value_row(base + name, canvas.word(words),
                  format_quantity(canvas.language(), value, Quantity::length, view.units()),
                  OpenRegisterPad{view.head->id, {number, index}}, false, rows);
    };
    const Point error = error_of(mark);
    row("/error-x", Word::reg_error_x, RegisterNumber::error_x, error.x);
    row("/error-y", Word::reg_error_y, RegisterNumber::error_y, error.y);
    row("/place-x", Word::reg_place_x, RegisterNumber::place_x, mark.nominal.x);
    row("/place-y", Word::reg_place_y, RegisterNumber::place_y, mark.nominal.y);
    MarkRound without = view.round;
    without.marks.erase(without.marks.begin() + static_cast<std::ptrdiff_t>(index));
    wide_button(base + "/remove", canvas.word(Word::reg_remove_mark), {}, ButtonLook::plain,
                RegisterEdit{with_round(view, without), view.index, {}}, rows);
    rows.space(4.0f);
}

void marks_part(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    rows.text(say(language, Word::reg_marks, {std::to_string(view.index + 1)}), title_text);
    const int chosen = chosen_mark(view);
    for (std::size_t i = 0; i < view.round.marks.size(); ++i) {
        const bool open = static_cast<int>(i) == chosen;
        value_row("register/mark/" + std::to_string(i + 1),
                  say(language, Word::reg_mark, {std::to_string(i + 1)}),
                  offset_text(language, view.units(), error_of(view.round.marks[i])),
                  ChooseMark{open ? std::optional<std::size_t>{} : std::optional<std::size_t>{i}},
                  open, rows);
        if (open) mark_numbers(view, i, rows);
    }
    rows.space(4.0f);
    if (!view.result.read && !view.round.marks.empty()) {
        MarkRound read = view.round;
        read.read = true;
        wide_button("register/all-on-place", canvas.word(Word::reg_all_on_place), {},
                    ButtonLook::plain,
                    RegisterEdit{with_round(view, read), view.index, {}}, rows);
    }
    if (view.round.marks.size() < most_marks_a_round) {
        MarkRound more = view.round;
        more.marks.push_back({{0.0, 0.0}, {0.0, 0.0}});
        wide_button("register/add-mark", canvas.word(Word::reg_add_mark), {}, ButtonLook::plain,
                    RegisterEdit{with_round(view, more), view.index, view.round.marks.size()},
                    rows);
    }
    print_steppers(view, 0, rows);
}

} // namespace

void register_marks_drawing(const RegisterView& view, Box box, Canvas& canvas) {
    DrawingList& list = canvas.list();
    RegisterDrawing drawing;
    drawing.job = &view.job();
    drawing.head = view.head;
    drawing.round = &view.round;
    drawing.result = &view.result;
    drawing.chosen_mark = chosen_mark(view);
    drawing.language = canvas.language();
    Box inside = box.inset(2.0f);
    const RegisterScale first = register_scale(view.job().press, *view.head, inside, canvas.type());
    const bool errors = view.result.read;
    const std::string words = errors ? say(canvas.language(), Word::reg_exaggerated,
                                           {std::to_string(exaggeration(view.round, first))})
                                     : std::string(canvas.word(Word::reg_drawing_hint));
    inside.y1 -= caption(box, words, canvas);
    drawing.view = inside;
    drawing.scale = register_scale(view.job().press, *view.head, inside, canvas.type());
    Thing& whole = list.thing("register/drawing", ThingRole::image, inside);
    whole.label.assign(canvas.word(Word::reg_drawing));
    whole.hint.assign(canvas.word(Word::reg_drawing_hint));
    whole.action = canvas.action(AddMarkAt{view.head->id, drawing.scale});
    draw_register(drawing, list);
    for (std::size_t i = 0; i < view.round.marks.size(); ++i) {
        const Vec at = drawing.scale.to(view.round.marks[i].nominal);
        Thing& thing = list.thing("register/cross/" + std::to_string(i + 1), ThingRole::button,
                                  around(at, mark_side, mark_side));
        thing.target = around(at, mark_target, mark_target);
        thing.label = say(canvas.language(), Word::reg_mark, {std::to_string(i + 1)});
        thing.value = offset_text(canvas.language(), view.units(), error_of(view.round.marks[i]));
        thing.chosen = static_cast<int>(i) == drawing.chosen_mark;
        thing.action = canvas.action(ChooseMark{i});
        thing.hold = canvas.hold(HoldMark{view.head->id, i, drawing.scale.dp_per_mm});
    }
}

void register_marks_panel(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    said_verdict("register/verdict",
                 registration_verdict(canvas.language(), view.units(), view.result,
                                      view.job().press, view.tolerance()),
                 rows);
    advice_part(view, rows);
    if (view.round.marks.empty()) {
        wide_button(
            "register/corners", canvas.word(Word::reg_corners), {}, ButtonLook::strong,
            RegisterEdit{with_round(view, corner_round(view)), view.state().registering.round, {}},
            rows);
        rows.space(6.0f);
    }
    marks_part(view, rows);
    register_rounds_part(view, rows);
    rows.space(8.0f);
    number_row(*view.model, 0, Field::registration_tolerance, rows);
    if (base_head(view.job())->id != view.head->id)
        wide_button("register/make-base", canvas.word(Word::reg_make_base), {}, ButtonLook::plain,
                    DoEdit{Edit{SetBaseHead{view.head->id}}}, rows);
}

} // namespace carriageway
