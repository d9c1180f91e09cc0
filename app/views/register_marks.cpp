// Marks of one round: the drawing to tap on, what to turn, and the numbers of each mark.
#include <algorithm>

#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

constexpr TypeStyle small{TypeSize::small, false};
constexpr TypeStyle title{TypeSize::title, true};

Point error_of(const MarkReading& mark) {
    return {mark.measured.x - mark.nominal.x, mark.measured.y - mark.nominal.y};
}

/// The rounds with this one in the place of the one looked at, as an edit.
Edit with_round(const RegisterView& view, const MarkRound& round) {
    std::vector<MarkRound> rounds = view.head->rounds;
    if (view.index < rounds.size()) rounds[view.index] = round;
    else rounds.push_back(round);
    return Edit{SetRounds{view.head->id, std::move(rounds)}};
}

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
        if (last && !advice->settled && !advice->screws.empty()) {
            MarkRound turned = view.round;
            turned.turned = advised_turns(*advice, view.job().press.adjusters);
            std::vector<MarkRound> rounds = view.head->rounds;
            rounds[view.index] = turned;
            MarkRound next;
            for (const MarkReading& mark : turned.marks) next.marks.push_back({mark.nominal, mark.nominal});
            rounds.push_back(std::move(next));
            rows.space(2.0f);
            wide_button("register/next-round", canvas.word(Word::reg_next_round),
                        canvas.word(Word::reg_next_round_detail), ButtonLook::strong,
                        RegisterEdit{Edit{SetRounds{view.head->id, std::move(rounds)}}, {}, {}}, rows);
        }
        for (const std::string& line : left_over_text(canvas.language(), view.units(), *advice))
            rows.text(line, small, Role::ink, 4.0f);
        rows.space(6.0f);
    }
    const float top = rows.y;
    std::string all;
    rows.text(canvas.word(Word::reg_growth), {TypeSize::body, true}, Role::ink, 2.0f);
    for (const std::string& line : distortion_text(canvas.language(), *lies)) {
        rows.text(line, small, Role::ink, 2.0f);
        all += (all.empty() ? "" : " ") + line;
    }
    canvas.reading("register/growth", {rows.x, top, rows.x + rows.width, rows.y}, canvas.word(Word::reg_growth), all);
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
                RegisterEdit{with_round(view, without), view.state().registering.round, {}}, rows);
    rows.space(4.0f);
}

void marks_part(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    rows.text(say(language, Word::reg_marks, {std::to_string(view.index + 1)}), title, Role::ink, 6.0f);
    const int chosen = chosen_mark(view);
    for (std::size_t i = 0; i < view.round.marks.size(); ++i) {
        const bool open = static_cast<int>(i) == chosen;
        value_row("register/mark/" + std::to_string(i + 1), say(language, Word::reg_mark, {std::to_string(i + 1)}),
                  offset_text(language, view.units(), error_of(view.round.marks[i])),
                  ChooseMark{open ? std::optional<std::size_t>{} : std::optional<std::size_t>{i}}, open, rows);
        if (open) mark_numbers(view, i, rows);
    }
    rows.space(4.0f);
    if (view.round.marks.size() < most_marks_a_round) {
        MarkRound more = view.round;
        more.marks.push_back({{0.0, 0.0}, {0.0, 0.0}});
        wide_button("register/add-mark", canvas.word(Word::reg_add_mark), {}, ButtonLook::plain,
                    RegisterEdit{with_round(view, more), view.state().registering.round, view.round.marks.size()},
                    rows);
    }
    const auto noted = [&](const char* name, Word words, RegisterNumber number, int value) {
        value_row(name, capitalised(canvas.word(words)),
                  value > 0 ? std::to_string(value) : std::string(canvas.word(Word::reg_not_noted)),
                  OpenRegisterPad{view.head->id, {number, 0}}, false, rows);
    };
    noted("register/platen", Word::reg_platen_number, RegisterNumber::platen, view.round.platen);
    noted("register/turn", Word::reg_turn_number, RegisterNumber::turn, view.round.turn);
}

/// Bars of the rounds' errors against the tolerance, the last dozen of them.
void rounds_chart(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    const std::vector<RoundSize>& sizes = view.result.sizes;
    constexpr std::size_t most = 12;
    const std::size_t first = sizes.size() > most ? sizes.size() - most : 0;
    double largest = view.tolerance();
    for (std::size_t i = first; i < sizes.size(); ++i) largest = std::max(largest, sizes[i].max);
    const float line = canvas.type().height(small);
    const Box box = rows.next(120.0f + line, 4.0f);
    list.round(box, 10.0f, paint(Role::card));
    const float base = box.y1 - line - 8.0f, room = base - box.y0 - 12.0f;
    const auto height = [&](double mm) { return room * static_cast<float>(mm / largest); };
    const float step = (box.width() - 24.0f) / static_cast<float>(std::max<std::size_t>(sizes.size() - first, 3));
    for (std::size_t i = first; i < sizes.size(); ++i) {
        const float x = box.x0 + 12.0f + step * (static_cast<float>(i - first) + 0.5f);
        const float half = std::min(16.0f, 0.32f * step);
        const bool shown = sizes[i].answered && sizes[i].read;
        const Role role = sizes[i].max <= view.tolerance() ? Role::fit : Role::mind;
        if (shown) {
            list.round({x - half, base - std::max(2.0f, height(sizes[i].max)), x + half, base}, 3.0f, paint(role));
            const float y = base - height(sizes[i].rms);
            const Vec rms[] = {{x - half - 3.0f, y}, {x + half + 3.0f, y}};
            list.line(rms, 2, paint(Role::ink), 2.4f);
        }
        const std::string number = std::to_string(i + 1);
        if (canvas.type().width(small, number) < step)
            list.text_centred({x, base + 4.0f + 0.5f * line}, number, small, Role::ink, Role::card);
    }
    const float y = base - height(view.tolerance());
    for (float x = box.x0 + 8.0f; x < box.x1 - 8.0f; x += 10.0f) {
        const Vec dash[] = {{x, y}, {std::min(x + 6.0f, box.x1 - 8.0f), y}};
        list.line(dash, 2, paint(Role::soft_ink), 1.4f);
    }
    canvas.reading("register/chart", box, canvas.word(Word::reg_chart), canvas.word(Word::reg_chart_hint));
    rows.text(canvas.word(Word::reg_chart_hint), small, Role::soft_ink, 8.0f);
}

std::string round_words(const RegisterView& view, std::size_t index, Language language) {
    const RoundSize& size = view.result.sizes[index];
    const std::string number = std::to_string(index + 1);
    if (!size.read) return say(language, Word::reg_round_unread, {number});
    if (!size.answered) return say(language, Word::reg_round_fault, {number});
    return say(language, Word::reg_round_line,
               {number, fine_length(size.max, view.units()), fine_length(size.rms, view.units())});
}

void rounds_part(const RegisterView& view, Rows& rows) {
    if (view.rounds.empty()) return;
    Canvas& canvas = rows.canvas;
    rows.space(6.0f);
    rows.text(canvas.word(Word::reg_rounds), title, Role::ink, 6.0f);
    const float top = rows.y;
    std::string all;
    for (const std::string& line :
         progress_text(canvas.language(), view.units(), view.result.judged, view.job().press)) {
        rows.text(line, {TypeSize::body, false}, Role::ink, 4.0f);
        all += (all.empty() ? "" : " ") + line;
    }
    canvas.reading("register/progress", {rows.x, top, rows.x + rows.width, rows.y}, canvas.word(Word::reg_rounds), all);
    if (view.rounds.size() > 1) rounds_chart(view, rows);
    for (std::size_t i = 0; i < view.rounds.size(); ++i)
        value_row("register/round/" + std::to_string(i + 1), round_words(view, i, canvas.language()), {},
                  ChooseRound{i}, i == view.index, rows);
    std::vector<MarkRound> without = view.head->rounds;
    without.erase(without.begin() + static_cast<std::ptrdiff_t>(view.index));
    rows.space(4.0f);
    if (view.rounds.size() > 1)
        wide_button("register/remove-round", canvas.word(Word::reg_remove_round), {}, ButtonLook::plain,
                    RegisterEdit{Edit{SetRounds{view.head->id, std::move(without)}}, {}, {}}, rows);
    wide_button("register/clear", canvas.word(Word::reg_clear), {}, ButtonLook::plain,
                RegisterEdit{Edit{SetRounds{view.head->id, {}}}, {}, {}}, rows);
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
    const std::string words =
        errors ? say(canvas.language(), Word::reg_exaggerated, {std::to_string(exaggeration(view.round, first))})
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
        Thing& thing = list.thing("register/cross/" + std::to_string(i + 1), ThingRole::button, around(at, 40.0f, 40.0f));
        thing.target = around(at, 46.0f, 46.0f);
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
                 registration_verdict(canvas.language(), view.units(), view.result, view.job().press,
                                      view.tolerance()),
                 rows);
    advice_part(view, rows);
    if (view.round.marks.empty()) {
        wide_button("register/corners", canvas.word(Word::reg_corners), {}, ButtonLook::strong,
                    RegisterEdit{with_round(view, corner_round(view)), view.state().registering.round, {}}, rows);
        rows.space(6.0f);
    }
    marks_part(view, rows);
    rounds_part(view, rows);
    rows.space(8.0f);
    number_row(*view.model, 0, Field::registration_tolerance, rows);
    if (base_head(view.job())->id != view.head->id)
        wide_button("register/make-base", canvas.word(Word::reg_make_base), {}, ButtonLook::plain,
                    DoEdit{Edit{SetBaseHead{view.head->id}}}, rows);
}

} // namespace carriageway
