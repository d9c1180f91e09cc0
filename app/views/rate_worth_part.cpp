// What a change is worth, station by station, in the panel of the Rate place.
#include "app/text/rate_sentences.h"
#include "app/views/rate_view.h"

namespace carriageway {

namespace {

constexpr float pad = 12.0f, corner = 10.0f, line_gap = 3.0f, row_gap = 6.0f;

/// A station with its time and what its levers are worth; a tap leads to what can be changed.
void station_row(const RateView& view, std::size_t place, const std::vector<std::string>& lines,
                 Rows& rows) {
    Canvas& canvas = rows.canvas;
    const StationPace& station = view.pace.rate.stations[place];
    const std::string name = station_name(canvas.language(), view.job(), view.pace.plan, place);
    const std::string time = pace_time(station.seconds);
    const float inside = rows.width - 2.0f * pad;
    const float time_width = canvas.type().width(bold_text, time);
    const float beside = inside - time_width - pad;
    // Name and time share a line while every word of the name has room in it.
    const bool stacked = beside < canvas.widest_word(name, bold_text);
    const float name_width = stacked ? inside : beside;
    const float name_height = canvas.paragraph_height(name_width, name, bold_text);
    float height = 2.0f * pad + name_height;
    if (stacked) height += canvas.paragraph_height(inside, time, bold_text);
    for (const std::string& line : lines)
        height += line_gap + canvas.paragraph_height(inside, line, small_text);
    const Box box = rows.next(std::max(48.0f, height), row_gap);
    DrawingList& list = canvas.list();
    list.round(box, corner, paint(Role::quiet));
    if (station.slowest) list.ring(box, corner, paint(Role::ink), 1.8f);
    Vec at{box.x0 + pad, box.y0 + pad};
    canvas.paragraph(at, name_width, name, bold_text, Role::ink, Role::quiet);
    if (!stacked)
        list.text({box.x1 - pad - time_width, at.y}, time, bold_text, Role::ink, Role::quiet);
    at.y += name_height;
    if (stacked) at.y += canvas.paragraph(at, inside, time, bold_text, Role::ink, Role::quiet);
    for (const std::string& line : lines) {
        at.y += line_gap;
        at.y += canvas.paragraph(at, inside, line, small_text, Role::ink, Role::quiet);
    }
    const std::optional<Action> action = station_action(view, place);
    Thing& thing = list.thing("rate/worth/" + std::to_string(station.station),
                              action ? ThingRole::button : ThingRole::text, box);
    thing.label = name;
    thing.value = in_one_line({station_value(view, place, canvas.language()), in_one_line(lines)});
    if (action) thing.action = canvas.action(*action);
}

} // namespace

void rate_worth_part(const RateView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    rows.space(6.0f);
    rows.text(canvas.word(Word::rate_worth), title_text, Role::ink, 8.0f);
    for (std::size_t place = 0; place < view.pace.plan.stations.size(); ++place) {
        const std::vector<std::string> lines =
            worth_lines(language, view.units(), view.pace, place);
        if (!lines.empty()) station_row(view, place, lines, rows);
    }
    const std::string joint = joint_text(language, view.pace);
    if (!joint.empty()) said_text("rate/joint", joint, small_text, Role::ink, 6.0f, rows);
    const std::string index = index_worth_text(language, view.units(), view.pace);
    if (!index.empty()) said_text("rate/index", index, small_text, Role::ink, 6.0f, rows);
}

} // namespace carriageway
