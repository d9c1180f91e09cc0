// The panel of the Rate place: how fast, what sets it, how long the run takes, and the numbers that
// it all comes from.
#include "app/text/rate_sentences.h"
#include "app/views/rate_view.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

/// Pieces an hour as large as it goes, dozens and the cycle below: read aloud when they change.
void headline(const RateView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const std::string rate = rate_text(language, view.pace.rate);
    const std::string dozens = dozens_text(language, view.pace.rate);
    const std::string cycle = cycle_text(language, view.pace);
    const float top = rows.y;
    rows.text(rate, large_text, Role::ink, 2.0f);
    rows.text(dozens, bold_text, Role::soft_ink, 6.0f);
    rows.text(cycle, body_text, Role::ink, 12.0f);
    Thing& thing = canvas.list().thing("rate/headline", ThingRole::text,
                                       {rows.x, top, rows.x + rows.width, rows.y - 12.0f});
    thing.label = rate;
    thing.value = in_one_line({dozens, cycle});
    thing.live = true;
}

/// Each head that moves nothing: its finding with what mends it where there is one, else a row that
/// leads to the head.
void still_heads(const RateView& view, Rows& rows) {
    for (const StillHead& still : view.pace.still) {
        const HeadAssessment* head = find_head(*view.model->assessment, still.head);
        std::size_t index = 0;
        while (index < head->findings.size() &&
               head->findings[index].kind != FindingKind::both_sensors_on)
            ++index;
        if (index < head->findings.size())
            finding_card(*view.model, *head, index, true, true, rows);
        else
            value_row("rate/still/" + std::to_string(still.station),
                      head_name(*view.model, *find_head(view.job(), still.head)), {},
                      ChooseHead{still.head}, false, rows);
    }
}

void no_rate(const RateView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::vector<std::string> lines =
        no_rate_text(canvas.language(), view.job(), view.pace);
    rows.text(canvas.word(Word::rate_none), title_text, Role::ink, 6.0f);
    said_lines("rate/none", canvas.word(Word::rate_none), lines, body_text, 6.0f, rows.y, rows);
    rows.space(10.0f);
    still_heads(view, rows);
}

/// Lines under a title, the first of them bold.
void titled_lines(std::string_view name, Word heading, const std::vector<std::string>& lines,
                  Rows& rows) {
    if (lines.empty()) return;
    Canvas& canvas = rows.canvas;
    rows.space(6.0f);
    const float top = rows.y;
    rows.text(canvas.word(heading), title_text, Role::ink, 4.0f);
    rows.text(lines.front(), bold_text, Role::ink, 4.0f);
    for (std::size_t i = 1; i < lines.size(); ++i)
        rows.text(lines[i], small_text, Role::soft_ink, 4.0f);
    Thing& thing = canvas.list().thing(name, ThingRole::text,
                                       {rows.x, top, rows.x + rows.width, rows.y - 4.0f});
    thing.label = lines.front();
    thing.value = in_one_line({lines.begin() + 1, lines.end()});
    rows.space(8.0f);
}

/// That heat goes by another cycle, and the button that puts this one there.
void heat_cycle(const RateView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string words = heat_cycle_text(canvas.language(), view.job(), view.pace);
    if (words.empty()) return;
    said_text("rate/heat-cycle", words, body_text, Role::ink, 6.0f, rows);
    if (const std::optional<Edit> edit = take_cycle(view.job(), view.pace))
        wide_button("rate/take-cycle",
                    say(canvas.language(), Word::rate_take_cycle,
                        {pace_time(view.pace.rate.cycle)}),
                    {}, ButtonLook::plain, DoEdit{*edit}, rows);
    rows.space(6.0f);
}

/// Whether the press floods while its table turns.
void flood_choice(const RateView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const PressProfile& press = view.job().press;
    const auto choice = [&](const char* name, Word words, bool early) {
        PressProfile changed = press;
        changed.pace.floods_while_indexing = early;
        return Choice{name, std::string(canvas.word(words)),
                      canvas.action(DoEdit{Edit{SetPress{std::move(changed), {}}}}),
                      press.pace.floods_while_indexing == early};
    };
    rows.text(canvas.word(Word::rate_flood_when), bold_text, Role::ink, 4.0f);
    choices("rate/flood", canvas.word(Word::rate_flood_when),
            {choice("rate/flood/standing", Word::rate_floods_after, false),
             choice("rate/flood/turning", Word::rate_floods_early, true)},
            rows);
    rows.text(canvas.word(Word::rate_flood_hint), small_text, Role::soft_ink, 8.0f);
}

/// The numbers of the people and of the table; a tap types them.
void numbers(const RateView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Model& model = *view.model;
    if (section_head(model, Section::handling, "section/handling",
                     canvas.word(Word::section_handling), rows))
        for (const Field field :
             {Field::load_time, Field::unload_time, Field::flash_dwell, Field::pieces})
            number_row(model, 0, field, rows);
    if (section_head(model, Section::pace, "section/pace", canvas.word(Word::section_pace),
                     rows)) {
        rows.text(canvas.word(Word::rate_pace_hint), small_text, Role::soft_ink, 8.0f);
        for (const Field field :
             {Field::index_time, Field::lower_time, Field::lift_time, Field::jerk})
            number_row(model, 0, field, rows);
        rows.space(6.0f);
        flood_choice(view, rows);
    }
}

/// What the bars mean, one below the other, where the drawing had no room for it.
void legend(const RateView& view, Rows& rows) {
    constexpr float beside = 10.0f;
    Canvas& canvas = rows.canvas;
    rows.space(6.0f);
    rows.text(canvas.word(Word::rate_legend), bold_text, Role::ink, 6.0f);
    const bool both = handled_together(view.pace.plan);
    for (const StepKind kind : kinds_of(view.chart)) {
        const std::string_view words = canvas.word(legend_word(kind, both));
        const float left = swatch_width + beside;
        const float text = canvas.paragraph_height(rows.width - left, words, small_text);
        const Box box = rows.next(std::max(swatch_height, text), 6.0f);
        draw_rate_swatch(canvas.list(),
                         around({box.x0 + 0.5f * swatch_width, box.centre().y}, swatch_width,
                                swatch_height),
                         kind);
        canvas.paragraph({box.x0 + left, box.centre().y - 0.5f * text}, rows.width - left, words,
                         small_text, Role::ink, rows.on);
    }
}

void rate_contents(const RateView& view, Rows& rows) {
    const Language language = rows.canvas.language();
    headline(view, rows);
    const std::string handled = handling_text(language, view.pace);
    if (!handled.empty()) said_text("rate/handling", handled, small_text, Role::mind, 10.0f, rows);
    const SaidStation slowest = slowest_text(language, view.job(), view.pace);
    said_card("rate/slowest", slowest.title, slowest.why, Role::ink, rows);
    rate_worth_part(view, rows);
    titled_lines("rate/run", Word::rate_run, run_text(language, view.job(), view.pace), rows);
    titled_lines("rate/range", Word::rate_range, range_text(language, view.pace), rows);
    heat_cycle(view, rows);
}

} // namespace

void said_text(std::string_view name, std::string_view words, TypeStyle style, Role role,
               float gap, Rows& rows) {
    const float top = rows.y;
    rows.text(words, style, role, gap);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y - gap}, words, {});
}

void rate_panel(const RateView& view, Rows& rows) {
    if (view.pace.runs()) rate_contents(view, rows);
    else no_rate(view, rows);
    rows.space(4.0f);
    numbers(view, rows);
    if (view.pace.runs() && view.scale.legend.empty()) legend(view, rows);
    rows.space(8.0f);
    rows.text(rows.canvas.word(Word::rate_caution), small_text, Role::soft_ink, 4.0f);
    rows.text(rows.canvas.word(Word::caution), small_text, Role::soft_ink);
}

} // namespace carriageway
