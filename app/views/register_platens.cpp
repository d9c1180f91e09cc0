// Prints by platen and turn: what is the head's, what each platen's, and what is plain scatter.
#include <algorithm>

#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

constexpr TypeStyle small{TypeSize::small, false};

/// The readings by platen among a head's rounds, and what they come to.
struct PlatenView {
    std::vector<std::size_t> places; ///< of the readings among the rounds
    std::vector<PlatenReading> readings;
    std::variant<Scatter, ScatterFault> result;
};

PlatenView platens_of(const RegisterView& view) {
    PlatenView out;
    out.readings = platen_readings(view.rounds, out.places);
    out.result = scatter_of(out.readings, view.job().press.readings.mark);
    return out;
}

SaidVerdict verdict_of(const PlatenView& platens, Language language) {
    const auto text = [&](Word key) { return std::string(word(language, key)); };
    if (platens.readings.empty()) return {Tone::ask, text(Word::scatter_none), text(Word::scatter_how)};
    if (const ScatterFault* fault = std::get_if<ScatterFault>(&platens.result))
        return {Tone::ask, text(Word::scatter_none), fault_text(language, *fault, platens.readings)};
    const std::vector<std::string> signs = signs_text(language, std::get<Scatter>(platens.result));
    if (signs.empty()) return {Tone::good, text(Word::scatter_nothing), text(Word::scatter_how)};
    std::string why;
    for (const std::string& sign : signs) why += (why.empty() ? "" : " ") + sign;
    return {Tone::act, text(Word::scatter_signs), why};
}

/// The next print: the platen after the last one, in the same turn or the next.
MarkRound next_print(const RegisterView& view) {
    MarkRound next;
    next.platen = 1;
    next.turn = 1;
    for (const MarkRound& round : view.head->rounds) {
        if (!is_of_platen(round)) continue;
        const bool last = round.platen >= view.job().press.stations;
        next.platen = last ? 1 : round.platen + 1;
        next.turn = last ? round.turn + 1 : round.turn;
        next.marks = round.marks;
    }
    if (next.marks.empty() && !view.head->rounds.empty()) next.marks = view.head->rounds.front().marks;
    if (next.marks.empty()) {
        Outline image;
        place_image(view.head->image, image);
        const Rect bounds = bounds_of(image);
        next.marks = {{{bounds.left, bounds.hi}, {}}, {{bounds.right, bounds.lo}, {}}};
    }
    for (MarkReading& mark : next.marks) mark.measured = mark.nominal;
    return next;
}

std::string pair_text(const RegisterView& view, const ScatterEstimate& x, const ScatterEstimate& y) {
    const LengthUnit units = view.units();
    return say(view.state().looks.language, Word::scatter_pair,
               {signed_length(x.value, units), fine_length(x.error, units), signed_length(y.value, units),
                fine_length(y.error, units)});
}

void results(const RegisterView& view, const Scatter& scatter, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::scatter_result), {TypeSize::title, true}, Role::ink, 6.0f);
    const auto card = [&](const std::string& name, const std::string& title, const std::string& line) {
        said_card(name, title, {line}, Role::edge, rows);
    };
    card("register/scatter/head", std::string(canvas.word(Word::scatter_head)),
         pair_text(view, scatter.x.head, scatter.y.head));
    for (std::size_t i = 0; i < scatter.platens.size(); ++i) {
        const std::string number = std::to_string(scatter.platens[i]);
        card("register/scatter/platen/" + number, say(canvas.language(), Word::scatter_platen, {number}),
             pair_text(view, scatter.x.platens[i], scatter.y.platens[i]));
    }
    card("register/scatter/drift", std::string(canvas.word(Word::scatter_drift)),
         pair_text(view, scatter.x.drift, scatter.y.drift));
    card("register/scatter/deviation", std::string(canvas.word(Word::scatter_deviation)),
         say(canvas.language(), Word::scatter_deviations,
             {fine_length(scatter.x.deviation, view.units()), fine_length(scatter.y.deviation, view.units())}));
}

} // namespace

void register_platens_drawing(const RegisterView& view, Box box, Canvas& canvas) {
    DrawingList& list = canvas.list();
    list.thing("register/scatter-plot", ThingRole::image, box).label.assign(canvas.word(Word::scatter_result));
    Box plot = box.inset(16.0f);
    plot.y1 -= caption(box, canvas.word(Word::scatter_plot), canvas);
    const PlatenView platens = platens_of(view);
    const Scatter* scatter = std::get_if<Scatter>(&platens.result);
    double reach = 1.6 * view.tolerance();
    if (scatter)
        for (std::size_t i = 0; i < scatter->platens.size(); ++i)
            for (const ScatterPart* part : {&scatter->x, &scatter->y})
                reach = std::max(reach, 1.25 * (std::abs(part->head.value + part->platens[i].value) +
                                                part->platens[i].error));
    const float half = 0.5f * std::min(plot.width(), plot.height());
    const float k = half / static_cast<float>(reach);
    const Vec centre = plot.centre();
    const Vec across[] = {{centre.x - half, centre.y}, {centre.x + half, centre.y}};
    const Vec along[] = {{centre.x, centre.y - half}, {centre.x, centre.y + half}};
    list.line(across, 2, paint(Role::edge), 1.2f);
    list.line(along, 2, paint(Role::edge), 1.2f);
    list.circle(centre, k * static_cast<float>(view.tolerance()), paint(Role::fit), 1.8f);
    if (!scatter) return;
    FreeTexts texts(list);
    for (std::size_t i = 0; i < scatter->platens.size(); ++i) {
        const auto at = [&](const ScatterPart& part) {
            return static_cast<float>(part.head.value + part.platens[i].value) * k;
        };
        const Vec dot{centre.x + at(scatter->x), centre.y - at(scatter->y)};
        const float ex = k * static_cast<float>(scatter->x.platens[i].error);
        const float ey = k * static_cast<float>(scatter->y.platens[i].error);
        const Vec bar_x[] = {{dot.x - ex, dot.y}, {dot.x + ex, dot.y}};
        const Vec bar_y[] = {{dot.x, dot.y - ey}, {dot.x, dot.y + ey}};
        list.line(bar_x, 2, paint(Role::squeegee), 1.6f);
        list.line(bar_y, 2, paint(Role::squeegee), 1.6f);
        list.disc(dot, 5.0f, paint(Role::squeegee));
        const float off = 0.8f * list.type().height(small) + 4.0f;
        texts.write({{dot.x + off, dot.y - off}, {dot.x - off, dot.y - off}, {dot.x + off, dot.y + off},
                     {dot.x - off, dot.y + off}},
                    std::to_string(scatter->platens[i]), small);
    }
}

void register_platens_panel(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const PlatenView platens = platens_of(view);
    said_verdict("register/scatter", verdict_of(platens, language), rows);
    if (const Scatter* scatter = std::get_if<Scatter>(&platens.result); scatter && !platens.readings.empty())
        results(view, *scatter, rows);
    const MarkRound next = next_print(view);
    if (view.head->rounds.size() < most_rounds) {
        std::vector<MarkRound> more = view.head->rounds;
        more.push_back(next);
        wide_button("register/add-print", canvas.word(Word::scatter_add),
                    say(language, Word::scatter_add_detail,
                        {std::to_string(next.platen), std::to_string(next.turn)}),
                    ButtonLook::plain, RegisterEdit{Edit{SetRounds{view.head->id, std::move(more)}}, {}, {}}, rows);
    }
    if (platens.readings.empty() && view.head->rounds.empty()) return;
    rows.text(canvas.word(Word::scatter_prints), {TypeSize::title, true}, Role::ink, 6.0f);
    for (std::size_t i = 0; i < view.head->rounds.size(); ++i) {
        const MarkRound& round = view.head->rounds[i];
        if (!is_of_platen(round)) continue;
        const std::string title =
            say(language, Word::scatter_print, {std::to_string(round.platen), std::to_string(round.turn)});
        value_row("register/print/" + std::to_string(i + 1), title,
                  is_read(round) ? std::to_string(round.marks.size()) : std::string(canvas.word(Word::reg_not_noted)),
                  ChooseRound{i}, false, rows);
    }
}

} // namespace carriageway
