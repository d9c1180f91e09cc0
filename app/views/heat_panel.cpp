// The heat of a run: how platens warm up, turn by turn, and what that means for the flash.
#include "app/text/heat_sentences.h"
#include "app/text/sentences.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

/// Turns on the chart: past the one from which it is steady, and never without any.
int turns_of(const HeatOutlook& outlook) {
    const int steady = outlook.steady_turn.value_or(60);
    return std::clamp(steady + std::max(4, steady / 3), 8, 400);
}

std::string temperature(const Canvas& canvas, double value) {
    return temperature_text(canvas.language(), value);
}

/// Maps turns and temperatures to the chart's box.
struct Scale {
    Box box;
    double turns, low, high;
    Vec at(double turn, double value) const {
        return {box.x0 + static_cast<float>(turn / turns) * box.width(),
                box.y1 - static_cast<float>((value - low) / (high - low)) * box.height()};
    }
};

void draw_curve(const HeatOutlook& outlook, const Scale& scale, DrawingList& list) {
    const int turns = static_cast<int>(scale.turns);
    std::vector<Vec> points;
    for (int turn = 0; turn <= turns; ++turn)
        points.push_back(scale.at(turn, temperature_after(outlook.heat, outlook.heat.ambient, turn)));
    list.line(points.data(), static_cast<int>(points.size()), paint(Role::stop), 2.6f);
    if (turns <= 40)
        for (const Vec p : points) list.disc(p, 3.0f, paint(Role::stop));
}

/// Curve, the temperature that it nears, and the turn from which it stands there.
void chart(const HeatOutlook& outlook, Rows& rows) {
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    rows.text(canvas.word(Word::heat_chart), small_text, Role::soft_ink, 4.0f);
    const float line = canvas.type().height(small_text);
    const Box box = rows.next(std::clamp(0.5f * rows.width, 150.0f, 220.0f) + line, 4.0f);
    list.round(box, 10.0f, paint(Role::paper));
    const std::string ambient = temperature(canvas, outlook.heat.ambient);
    const std::string steady = temperature(canvas, outlook.steady);
    const float left = std::max(canvas.type().width(small_text, ambient),
                                canvas.type().width(small_text, steady)) +
                       14.0f;
    Scale scale;
    scale.box = {box.x0 + left, box.y0 + 1.2f * line + 6.0f, box.x1 - 16.0f, box.y1 - line - 12.0f};
    scale.turns = turns_of(outlook);
    scale.low = outlook.heat.ambient;
    scale.high = std::max(outlook.steady, outlook.heat.ambient + 1.0);
    const Vec axes[] = {scale.at(0.0, scale.high) + Vec{0.0f, -8.0f}, scale.at(0.0, scale.low),
                        scale.at(scale.turns, scale.low)};
    list.line(axes, 3, paint(Role::edge), 1.6f);
    const Vec level[] = {scale.at(0.0, outlook.steady), scale.at(scale.turns, outlook.steady)};
    for (float x = level[0].x; x < level[1].x; x += 9.0f) {
        const Vec dash[] = {{x, level[0].y}, {std::min(x + 5.0f, level[1].x), level[0].y}};
        list.line(dash, 2, paint(Role::soft_ink), 1.2f);
    }
    draw_curve(outlook, scale, list);
    list.text({box.x0 + 8.0f, level[0].y - 0.5f * line}, steady, small_text, Role::ink,
              Role::paper);
    const float low = scale.at(0.0, scale.low).y - 0.5f * line;
    if (low > level[0].y + 0.6f * line)
        list.text({box.x0 + 8.0f, low}, ambient, small_text, Role::soft_ink, Role::paper);
    if (outlook.steady_turn && *outlook.steady_turn > 0) {
        const double turn = *outlook.steady_turn;
        const Vec at = scale.at(turn, temperature_after(outlook.heat, outlook.heat.ambient, *outlook.steady_turn));
        const Vec drop[] = {{at.x, scale.box.y1}, at};
        list.line(drop, 2, paint(Role::fit), 1.6f);
        list.circle(at, 7.0f, paint(Role::fit), 2.4f);
        const std::string number = std::to_string(*outlook.steady_turn);
        list.text({at.x - 0.5f * canvas.type().width({TypeSize::small, true}, number), scale.box.y1 + 4.0f}, number,
                  {TypeSize::small, true}, Role::ink, Role::paper);
    }
    list.ring(box, 10.0f, paint(Role::edge), 1.0f);
    Thing& thing = list.thing("heat/chart", ThingRole::image, box);
    thing.label.assign(canvas.word(Word::heat_chart));
    const std::string_view turns = canvas.word(Word::heat_turns);
    const float words = canvas.type().width(small_text, turns);
    if (words > rows.width) return rows.text(turns, small_text, Role::soft_ink, 8.0f);
    list.text({box.x1 - words, rows.y}, turns, small_text, Role::soft_ink, rows.on);
    rows.space(line + 8.0f);
}

void outlook_line(const HeatOutlook& outlook, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string words = steady_text(canvas.language(), outlook);
    const float top = rows.y;
    rows.text(words, bold_text, Role::ink, 10.0f);
    canvas.reading("heat/steady", {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, words, {});
}

void dwell_advice(const Model& model, const HeatOutlook& outlook, Rows& rows) {
    if (!outlook.dwell) return;
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const std::string now = format_time(model.job->run.flash_dwell), then = format_time(outlook.dwell->model);
    const float top = rows.y;
    // Beyond what is usual the model has no number to work by, only a direction.
    const bool usual = !outlook.dwell->shorter && !outlook.dwell->longer;
    const std::string title = usual ? say(language, Word::heat_dwell_title, {then})
                                    : std::string(canvas.word(Word::heat_dwell_open));
    const std::string why = say(language, Word::heat_dwell,
                                {now, then, temperature(canvas, outlook.steady), temperature(canvas, gel_wanted)});
    rows.text(title, bold_text, Role::ink, 2.0f);
    rows.text(why, body_text, Role::ink, 4.0f);
    if (outlook.dwell->shorter)
        rows.text(canvas.word(Word::heat_dwell_shorter), body_text, Role::ink, 4.0f);
    if (outlook.dwell->longer)
        rows.text(canvas.word(Word::heat_dwell_longer), body_text, Role::ink, 4.0f);
    rows.text(say(language, Word::heat_dwell_usual,
                  {format_time(least_flash_dwell), format_time(most_flash_dwell)}),
              small_text, Role::soft_ink, 10.0f);
    canvas.reading("heat/dwell", {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, title, why);
}

void warnings(const HeatOutlook& outlook, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float top = rows.y;
    Rows inside = rows;
    inside.x += 16.0f;
    inside.width -= 16.0f;
    for (const HeatWarning& warning : outlook.warnings) {
        const float from = inside.y;
        const std::string words = heat_warning_text(canvas.language(), warning);
        inside.text(words, body_text, Role::mind, 6.0f);
        canvas.reading("heat/warning/" + std::to_string(&warning - outlook.warnings.data()),
                       {inside.x, from, inside.x + inside.width, inside.y - 6.0f}, words, {});
    }
    if (!outlook.warnings.empty())
        inside.text(canvas.word(Word::heat_limits_note), small_text, Role::soft_ink, 6.0f);
    const float from = inside.y;
    inside.text(canvas.word(Word::caution_hot), body_text, Role::ink, 0.0f);
    canvas.reading("heat/caution", {inside.x, from, inside.x + inside.width, inside.y}, canvas.word(Word::caution_hot),
                   {});
    canvas.list().round({rows.x, top, rows.x + 4.0f, inside.y}, 2.0f, paint(Role::mind));
    rows.y = inside.y + 14.0f;
}

} // namespace

void heat_panel(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const HeatOutlook outlook = heat_outlook(*model.job);
    if (outlook.flashes == 0) {
        rows.text(canvas.word(Word::heat_no_flash), body_text, Role::ink, 10.0f);
    } else {
        outlook_line(outlook, rows);
        chart(outlook, rows);
        dwell_advice(model, outlook, rows);
    }
    warnings(outlook, rows);
    for (const Field field : {Field::flash_dwell, Field::cycle, Field::ambient, Field::warming_rate, Field::cooling_time})
        number_row(model, 0, field, rows);
    rows.space(4.0f);
}

} // namespace carriageway
