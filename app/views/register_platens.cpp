// Prints by platen and turn: what is the head's, what each platen's, and what is plain scatter.
#include <algorithm>
#include <cmath>

#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

/// Whether a fault asks for more prints, rather than for another look at those there are.
bool asks_for_more(ScatterFaultKind kind) {
    return kind == ScatterFaultKind::too_few_platens || kind == ScatterFaultKind::too_few_turns ||
           kind == ScatterFaultKind::platen_once;
}

SaidVerdict verdict_of(const RegisterView& view, Language language) {
    const PlatenPrints& prints = view.prints;
    const auto text = [&](Word key) { return std::string(word(language, key)); };
    if (prints.readings.empty()) {
        const std::vector<MarkRound>& rounds = view.head->rounds;
        const bool any = std::any_of(rounds.begin(), rounds.end(), is_of_platen);
        return {Tone::ask, text(any ? Word::scatter_more : Word::scatter_none),
                text(Word::scatter_how)};
    }
    if (const ScatterFault* fault = std::get_if<ScatterFault>(&prints.scatter)) {
        const bool more = asks_for_more(fault->kind);
        return {more ? Tone::ask : Tone::stop,
                text(more ? Word::scatter_more : Word::scatter_refused),
                fault_text(language, *fault, prints.readings)};
    }
    return scatter_verdict(language, view.units(), std::get<Scatter>(prints.scatter),
                           view.tolerance());
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
    if (next.marks.empty() && !view.head->rounds.empty())
        next.marks = view.head->rounds.front().marks;
    if (next.marks.empty()) {
        Outline image;
        place_image(view.head->image, image);
        const Rect bounds = bounds_of(image);
        next.marks = {{{bounds.left, bounds.hi}, {}}, {{bounds.right, bounds.lo}, {}}};
    }
    for (MarkReading& mark : next.marks) mark.measured = mark.nominal;
    return next;
}

std::string pair_text(const RegisterView& view, const ScatterEstimate& x,
                      const ScatterEstimate& y) {
    const LengthUnit units = view.units();
    return say(view.state().looks.language, Word::scatter_pair,
               {signed_length(x.value, units), format_fine_length(x.error, units),
                signed_length(y.value, units), format_fine_length(y.error, units)});
}

void results(const RegisterView& view, const Scatter& scatter, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::scatter_result), title_text);
    const auto card = [&](const std::string& name, const std::string& part,
                          const std::string& line) {
        said_card(name, part, {line}, Role::edge, rows);
    };
    card("register/scatter/head", std::string(canvas.word(Word::scatter_head)),
         pair_text(view, scatter.x.head, scatter.y.head));
    for (std::size_t i = 0; i < scatter.platens.size(); ++i) {
        const std::string number = std::to_string(scatter.platens[i]);
        card("register/scatter/platen/" + number,
             say(canvas.language(), Word::scatter_platen, {number}),
             pair_text(view, scatter.x.platens[i], scatter.y.platens[i]));
    }
    card("register/scatter/drift", std::string(canvas.word(Word::scatter_drift)),
         pair_text(view, scatter.x.drift, scatter.y.drift));
    card("register/scatter/deviation", std::string(canvas.word(Word::scatter_deviation)),
         say(canvas.language(), Word::scatter_deviations,
             {format_fine_length(scatter.x.deviation, view.units()),
              format_fine_length(scatter.y.deviation, view.units())}));
}

/// The print looked at, with its platen and turn, and a button for the next one.
void prints_part(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::vector<MarkRound>& rounds = view.head->rounds;
    if (view.index < rounds.size() && is_of_platen(view.round)) {
        rows.text(canvas.word(Word::scatter_this), title_text);
        print_steppers(view, 1, rows);
        rows.space(4.0f);
        wide_button("register/read-print", canvas.word(Word::scatter_read), {}, ButtonLook::strong,
                    ChooseRound{view.index}, rows);
    }
    if (rounds.size() >= most_rounds) return;
    const MarkRound next = next_print(view);
    std::vector<MarkRound> more = rounds;
    more.push_back(next);
    wide_button("register/add-print", canvas.word(Word::scatter_add),
                say(canvas.language(), Word::scatter_add_detail,
                    {std::to_string(next.platen), std::to_string(next.turn)}),
                ButtonLook::plain,
                RegisterEdit{Edit{SetRounds{view.head->id, std::move(more)}}, {}, {}}, rows);
    rows.space(4.0f);
}

std::string marks_words(const MarkRound& round, Language language) {
    if (!is_read(round)) return std::string(word(language, Word::reg_not_read));
    if (round.marks.size() == 1) return std::string(word(language, Word::reg_mark_count_one));
    return say(language, Word::reg_mark_count, {std::to_string(round.marks.size())});
}

/// Every print; a tap shows its marks.
void prints_list(const RegisterView& view, Rows& rows) {
    const Language language = rows.canvas.language();
    bool first = true;
    for (std::size_t i = 0; i < view.head->rounds.size(); ++i) {
        const MarkRound& round = view.head->rounds[i];
        if (!is_of_platen(round)) continue;
        if (first) rows.text(rows.canvas.word(Word::scatter_prints), title_text);
        first = false;
        value_row("register/print/" + std::to_string(i + 1),
                  say(language, Word::scatter_print,
                      {std::to_string(round.platen), std::to_string(round.turn)}),
                  marks_words(round, language), ChooseRound{i}, i == view.index, rows);
    }
}

/// Where a platen's prints lie on the plot, mm, with their standard error.
struct PlatenDot {
    Point at, error;
    std::string number;
};

std::vector<PlatenDot> dots_of(const Scatter& scatter) {
    std::vector<PlatenDot> dots;
    for (std::size_t i = 0; i < scatter.platens.size(); ++i) {
        const ScatterEstimate &x = scatter.x.platens[i], &y = scatter.y.platens[i];
        dots.push_back({{scatter.x.head.value + x.value, scatter.y.head.value + y.value},
                        {x.error, y.error},
                        std::to_string(scatter.platens[i])});
    }
    return dots;
}

/// What the plot shows from its centre to each side, mm: the tolerance and every dot with its bars,
/// with air round them.
double plot_reach(const std::vector<PlatenDot>& dots, double tolerance) {
    constexpr double round_tolerance = 1.6, round_dots = 1.25;
    double reach = round_tolerance * tolerance;
    for (const PlatenDot& dot : dots)
        reach = std::max({reach, round_dots * (std::abs(dot.at.x) + dot.error.x),
                          round_dots * (std::abs(dot.at.y) + dot.error.y)});
    return reach;
}

void draw_axes(DrawingList& list, LabelPlacer& labels, Vec centre, float half, Language language) {
    constexpr float width = 1.2f;
    const Vec across[] = {{centre.x - half, centre.y}, {centre.x + half, centre.y}};
    const Vec along[] = {{centre.x, centre.y - half}, {centre.x, centre.y + half}};
    list.line(across, 2, paint(Role::edge), width);
    list.line(along, 2, paint(Role::edge), width);
    const float line = list.type().height(small_text);
    // At the end of the axis, or farther in where a dot lies there.
    const auto end = [&](float y, float in, Word key) {
        const std::string_view words = word(language, key);
        const float beside = 0.5f * list.type().width(small_text, words) + 6.0f;
        std::vector<Vec> places;
        for (const float by : {0.0f, in, 2.0f * in})
            for (const float x : {-beside, beside}) places.push_back({centre.x + x, y + by});
        write_free(list, labels, places, words, small_text);
    };
    end(centre.y - half + 0.5f * line, line, Word::reg_toward_machine);
    end(centre.y + half - 0.5f * line, -line, Word::reg_toward_operator);
}

void draw_dot(DrawingList& list, Vec at, Vec error) {
    constexpr float width = 1.6f, radius = 5.0f;
    const Vec bar_x[] = {{at.x - error.x, at.y}, {at.x + error.x, at.y}};
    const Vec bar_y[] = {{at.x, at.y - error.y}, {at.x, at.y + error.y}};
    list.line(bar_x, 2, paint(Role::squeegee), width);
    list.line(bar_y, 2, paint(Role::squeegee), width);
    list.disc(at, radius, paint(Role::squeegee));
}

/// Its number, in one of the four corners beside it.
void number_dot(DrawingList& list, LabelPlacer& labels, Vec at, std::string_view number) {
    const float off = 0.8f * list.type().height(small_text) + 4.0f;
    const Vec places[] = {{at.x + off, at.y - off},
                          {at.x - off, at.y - off},
                          {at.x + off, at.y + off},
                          {at.x - off, at.y + off}};
    write_free(list, labels, places, number, small_text);
}

} // namespace

void register_platens_drawing(const RegisterView& view, Box box, Canvas& canvas) {
    constexpr float margin = 16.0f, ring_width = 1.8f;
    DrawingList& list = canvas.list();
    Thing& whole = list.thing("register/scatter-plot", ThingRole::image, box);
    whole.label.assign(canvas.word(Word::scatter_result));
    Box plot = box.inset(margin);
    const std::string allowed = format_fine_length(view.tolerance(), view.units());
    const std::string legend = say(canvas.language(), Word::scatter_plot, {allowed});
    whole.hint = legend;
    const float said = caption(box, legend, canvas);
    plot.y1 -= said;
    std::vector<PlatenDot> dots;
    if (const Scatter* scatter = std::get_if<Scatter>(&view.prints.scatter)) dots = dots_of(*scatter);
    // Large text may leave next to nothing.
    const float half = 0.5f * std::max(1.0f, std::min(plot.width(), plot.height()));
    const float k = half / static_cast<float>(plot_reach(dots, view.tolerance()));
    const Vec centre = plot.centre();
    const auto on_screen = [&](const Point& mm) {
        return Vec{k * static_cast<float>(mm.x), k * static_cast<float>(mm.y)};
    };
    LabelPlacer labels({box.x0, box.y0, box.x1, box.y1 - said});
    list.circle(centre, k * static_cast<float>(view.tolerance()), paint(Role::fit), ring_width);
    for (const PlatenDot& dot : dots) {
        const Vec by = on_screen(dot.at), at{centre.x + by.x, centre.y - by.y};
        draw_dot(list, at, on_screen(dot.error));
        labels.take(around(at, 10.0f, 10.0f));
    }
    draw_axes(list, labels, centre, half, canvas.language());
    for (const PlatenDot& dot : dots) {
        const Vec by = on_screen(dot.at);
        number_dot(list, labels, {centre.x + by.x, centre.y - by.y}, dot.number);
    }
}

void register_platens_panel(const RegisterView& view, Rows& rows) {
    said_verdict("register/scatter", verdict_of(view, rows.canvas.language()), rows);
    prints_part(view, rows);
    if (const Scatter* scatter = std::get_if<Scatter>(&view.prints.scatter))
        results(view, *scatter, rows);
    prints_list(view, rows);
}

} // namespace carriageway
