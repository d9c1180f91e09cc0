// The rounds of one head: whether they get there, a chart of their errors, and the list of them.
#include <algorithm>

#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

constexpr float chart_margin = 12.0f; ///< left and right of the bars

/// Where the rounds' bars stand.
struct Chart {
    Box box;
    float base = 0.0f;      ///< y of no error
    float dp_per_mm = 1.0f;
    float step = 0.0f;      ///< from bar to bar
    float centre_of(std::size_t place) const {
        return box.x0 + chart_margin + step * (static_cast<float>(place) + 0.5f);
    }
    float y_of(double mm) const { return base - dp_per_mm * static_cast<float>(mm); }
};

/// One round's bar, the farthest mark, with a line across it at the rms.
void draw_bar(DrawingList& list, const Chart& chart, float x, const RoundSize& size,
              double tolerance) {
    constexpr float widest_half = 16.0f, share = 0.32f, least_height = 2.0f, corner = 3.0f;
    constexpr float rms_beyond = 3.0f, rms_width = 2.4f;
    const float half = std::min(widest_half, share * chart.step);
    const float top = std::min(chart.y_of(size.max), chart.base - least_height);
    list.round({x - half, top, x + half, chart.base}, corner,
               paint(size.max <= tolerance ? Role::fit : Role::mind));
    const float y = chart.y_of(size.rms);
    const Vec rms[] = {{x - half - rms_beyond, y}, {x + half + rms_beyond, y}};
    list.line(rms, 2, paint(Role::ink), rms_width);
}

void draw_tolerance(DrawingList& list, const Chart& chart, double tolerance) {
    constexpr float margin = 8.0f, step = 10.0f, dash = 6.0f, width = 1.4f;
    const float y = chart.y_of(tolerance), end = chart.box.x1 - margin;
    for (float x = chart.box.x0 + margin; x < end; x += step) {
        const Vec line[] = {{x, y}, {std::min(x + dash, end), y}};
        list.line(line, 2, paint(Role::soft_ink), width);
    }
}

/// Bars of the rounds' errors against the tolerance, the last dozen of them.
void rounds_chart(const RegisterView& view, Rows& rows) {
    constexpr std::size_t most = 12, least = 3;
    constexpr float room = 108.0f, above = 12.0f;
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    const std::vector<RoundSize>& sizes = view.result.sizes;
    const std::size_t first = sizes.size() > most ? sizes.size() - most : 0;
    double largest = view.tolerance();
    for (std::size_t i = first; i < sizes.size(); ++i) largest = std::max(largest, sizes[i].max);
    const float line = canvas.type().height(small_text);
    Chart chart;
    chart.box = rows.next(above + room + line + 8.0f, 4.0f);
    chart.base = chart.box.y0 + above + room;
    chart.dp_per_mm = room / static_cast<float>(largest);
    chart.step = (chart.box.width() - 2.0f * chart_margin) /
                 static_cast<float>(std::max(sizes.size() - first, least));
    list.round(chart.box, 10.0f, paint(Role::card));
    for (std::size_t i = first; i < sizes.size(); ++i) {
        const float x = chart.centre_of(i - first);
        if (sizes[i].answered && sizes[i].read)
            draw_bar(list, chart, x, sizes[i], view.tolerance());
        const std::string number = std::to_string(i + 1);
        if (canvas.type().width(small_text, number) < chart.step)
            list.text_centred({x, chart.base + 4.0f + 0.5f * line}, number, small_text, Role::ink,
                              Role::card);
    }
    draw_tolerance(list, chart, view.tolerance());
    canvas.reading("register/chart", chart.box, canvas.word(Word::reg_chart),
                   canvas.word(Word::reg_chart_hint));
    rows.text(canvas.word(Word::reg_chart_hint), small_text, Role::soft_ink, 8.0f);
}

std::string round_words(const RegisterView& view, std::size_t index, Language language) {
    const RoundSize& size = view.result.sizes[index];
    const std::string number = std::to_string(index + 1);
    if (!size.read) return say(language, Word::reg_round_unread, {number});
    if (!size.answered) return say(language, Word::reg_round_fault, {number});
    return say(language, Word::reg_round_line,
               {number, format_fine_length(size.max, view.units()),
                format_fine_length(size.rms, view.units())});
}

} // namespace

void register_rounds_part(const RegisterView& view, Rows& rows) {
    if (view.rounds.empty()) return;
    Canvas& canvas = rows.canvas;
    rows.space(6.0f);
    rows.text(canvas.word(Word::reg_rounds), {TypeSize::title, true});
    said_lines("register/progress", canvas.word(Word::reg_rounds),
               progress_text(canvas.language(), view.units(), view.result.judged, view.job().press),
               {}, 4.0f, rows.y, rows);
    if (view.rounds.size() > 1) rounds_chart(view, rows);
    for (std::size_t i = 0; i < view.rounds.size(); ++i)
        value_row("register/round/" + std::to_string(i + 1),
                  round_words(view, i, canvas.language()), {}, ChooseRound{i}, i == view.index,
                  rows);
    std::vector<MarkRound> without = view.head->rounds;
    without.erase(without.begin() + static_cast<std::ptrdiff_t>(view.index));
    rows.space(4.0f);
    if (view.rounds.size() > 1)
        wide_button("register/remove-round", canvas.word(Word::reg_remove_round), {},
                    ButtonLook::plain,
                    RegisterEdit{Edit{SetRounds{view.head->id, std::move(without)}}, {}, {}}, rows);
    wide_button("register/clear", canvas.word(Word::reg_clear), {}, ButtonLook::plain,
                RegisterEdit{Edit{SetRounds{view.head->id, {}}}, {}, {}}, rows);
}

} // namespace carriageway
