// The side view of a head in its panel: the drawing, what to take hold of in it, and what it says in
// numbers.
#include "app/drawing/side_layer.h"
#include "app/text/sentences.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

/// Steps of an angle, rad: what a holder's scale shows (common practice, no source).
constexpr double angle_step = radians(1.0);

/// The thing that tilts a blade: a slider in steps of a degree.
void attach_angle(const Model& model, const Head& head, const SideBlade& blade, bool flood,
                  Canvas& canvas) {
    Thing& thing = canvas.list().thing(flood ? "side/flood-angle" : "side/squeegee-angle",
                                       ThingRole::slider, blade.angle_handle);
    const double value = number_of(*model.job, &head, blade.angle);
    thing.label.assign(canvas.word(field_word(blade.angle)));
    thing.value = format_angle(value);
    thing.hint.assign(canvas.word(Word::side_angle_hint));
    thing.action = canvas.action(OpenPad{head.id, blade.angle});
    thing.hold = canvas.hold(HoldTilt{head.id, blade.angle, blade.lean});
    const auto step = [&](double by) {
        const FieldInfo& info = info_of(blade.angle);
        return canvas.action(StepNumber{head.id, blade.angle, 0.0, angle_step, info.least, info.most, by});
    };
    thing.less = step(-1.0);
    thing.more = step(1.0);
    thing.now = std::round(value / angle_step);
    thing.least = 0.0;
    thing.most = std::round(info_of(blade.angle).most / angle_step);
}

/// The thing that raises a blade: a slider in the gauge's graduations.
void attach_gauge(const Model& model, const Head& head, const SideBlade& blade, bool flood,
                  Canvas& canvas) {
    const Gauge& gauge = flood ? model.job->press.flood_gauge : model.job->press.squeegee_gauge;
    Thing& thing = canvas.list().thing(flood ? "side/flood-gauge" : "side/squeegee-gauge",
                                       ThingRole::slider, blade.gauge_handle);
    const double value = number_of(*model.job, &head, blade.gauge);
    thing.label.assign(canvas.word(field_word(blade.gauge)));
    thing.value = field_value(model, head.id, blade.gauge);
    thing.hint.assign(canvas.word(Word::side_gauge_hint));
    thing.action = canvas.action(OpenPad{head.id, blade.gauge});
    thing.hold = canvas.hold(HoldGauge{head.id, blade.gauge, blade.dp_per_mark});
    const double steps = std::round((value - gauge.lowest) / gauge.graduation);
    const auto step = [&](double by) {
        return canvas.action(StepNumber{head.id, blade.gauge, gauge.lowest, gauge.graduation, gauge.lowest,
                                        gauge.highest, by});
    };
    thing.less = step(-1.0);
    thing.more = step(1.0);
    thing.now = steps;
    thing.least = 0.0;
    thing.most = std::round((gauge.highest - gauge.lowest) / gauge.graduation);
}

/// A line that is read as well as shown.
void line(Rows& rows, std::string_view name, const std::string& words, Role role = Role::ink) {
    const float top = rows.y;
    rows.text(words, {TypeSize::body, false}, role, 6.0f);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y}, words, {});
}

void edge_lines(const Model& model, const HeadAssessment& head, const Head& set, Rows& rows) {
    const Language language = rows.canvas.language();
    const LengthUnit units = model.state->looks.units;
    const auto fine = [&](double mm) { return format_fine_length(std::abs(mm), units); };
    const EdgeContact& squeegee = head.contact.squeegee;
    line(rows, "side/squeegee",
         say(language,
             squeegee.reaches_garment() ? Word::side_squeegee_reaches : Word::side_squeegee_above,
             {fine(squeegee.over_garment)}),
         squeegee.reaches_garment() ? Role::ink : Role::mind);
    const EdgeContact& flood = head.contact.flood;
    line(rows, "side/flood",
         say(language, flood.touches_mesh() ? Word::side_flood_presses : Word::side_flood_above,
             {fine(flood.over_mesh)}));
    if (!set.flood.winged) return;
    const double wing = head.contact.wing_clearance;
    line(rows, "side/wings",
         say(language, wing >= 0.0 ? Word::side_wings_clear : Word::side_wings_dig, {fine(wing)}),
         wing >= 0.0 ? Role::ink : Role::stop);
}

/// After an angle has been changed: the gauge setting that brings the edge back where it was.
void restore_row(const Model& model, const Head& set, Rows& rows) {
    const std::optional<TiltNote>& note = model.state->tilted;
    if (!note || note->head != set.id) return;
    Canvas& canvas = rows.canvas;
    const PressProfile& press = model.job->press;
    const bool flood = note->flood;
    const double angle = flood ? set.flood.angle : set.squeegee.angle;
    const double marks = flood ? set.flood.gauge : set.squeegee.gauge;
    const Field field = flood ? Field::flood_gauge : Field::squeegee_gauge;
    const auto fix = restore_edge_height(flood ? press.flood_holder : press.squeegee_holder,
                                         flood ? press.flood_gauge : press.squeegee_gauge,
                                         note->gauge, note->angle, angle);
    if (!fix || std::abs(angle - note->angle) < 1e-9) return;
    const LengthUnit units = model.state->looks.units;
    const Language language = canvas.language();
    line(rows, "side/tilted",
         say(language, fix->lift >= 0.0 ? Word::side_tilt_lifts : Word::side_tilt_lowers,
             {capitalised(canvas.word(flood ? Word::flood_bar : Word::squeegee)),
              format_angle(note->angle), format_angle(angle),
              format_fine_length(std::abs(fix->lift), units)}));
    if (!fix->on_scale) line(rows, "side/off-scale", std::string(canvas.word(Word::side_off_scale)), Role::mind);
    if (std::abs(marks - fix->setting) < 1e-9) return;
    const std::string to =
        format_quantity(language, fix->setting, Quantity::marks, units);
    const std::string words = say(language, Word::remedy_number, {canvas.word(field_word(field)), to});
    const std::string rest = say(language, Word::side_rest, {format_fine_length(std::abs(fix->rest), units)});
    const float height = canvas.button_height(words, rest, rows.width, 60.0f);
    canvas.button("side/restore", rows.next(height, 10.0f), words, ButtonLook::strong,
                  canvas.action(DoEdit{Edit{SetNumber{set.id, field, fix->setting}}}), rest);
}

/// What five degrees more or less would do to gauge and bands, seen from above.
void what_if(const Model& model, const Head& set, bool flood, Rows& rows) {
    const PressProfile& press = model.job->press;
    const Holder& holder = flood ? press.flood_holder : press.squeegee_holder;
    const Gauge& gauge = flood ? press.flood_gauge : press.squeegee_gauge;
    const double angle = flood ? set.flood.angle : set.squeegee.angle;
    const double marks = flood ? set.flood.gauge : set.squeegee.gauge;
    // The edge trails its own stroke: steeper, it moves against it.
    const Direction stroke = flood ? opposite(set.print_stroke) : set.print_stroke;
    const Language language = rows.canvas.language();
    const LengthUnit units = model.state->looks.units;
    for (const double by : {-radians(5.0), radians(5.0)}) {
        const double to = angle + by;
        if (to < press.angles.least - 1e-9 || to > press.angles.most + 1e-9) continue;
        const auto fix = restore_edge_height(holder, gauge, marks, angle, to);
        if (!fix) continue;
        const double moved = edge_shift(holder, to) - edge_shift(holder, angle);
        const Direction way = moved > 0.0 ? opposite(stroke) : stroke;
        line(rows, std::string("side/what-if/") + (flood ? "flood" : "squeegee") + (by < 0.0 ? "/less" : "/more"),
             say(language, Word::side_what_if,
                 {capitalised(rows.canvas.word(flood ? Word::flood_bar : Word::squeegee)), format_angle(to),
                  format_quantity(language, fix->setting, Quantity::marks, units),
                  format_length(std::abs(moved), units),
                  rows.canvas.word(way == Direction::toward_machine ? Word::toward_machine
                                                                    : Word::toward_operator)}),
             Role::soft_ink);
    }
}

} // namespace

void side_panel(const Model& model, const HeadAssessment& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Head& set = *find_head(*model.job, head.head);
    SideInput input;
    input.job = model.job;
    input.head = &set;
    input.assessed = &head;
    input.language = canvas.language();
    input.units = model.state->looks.units;
    input.box = rows.next(side_view_height(rows.width), 4.0f);
    canvas.list().thing("side", ThingRole::image, input.box).label.assign(canvas.word(Word::section_side));
    SideThings things;
    draw_side_view(input, canvas.list(), things);
    attach_angle(model, set, things.squeegee, false, canvas);
    attach_angle(model, set, things.flood, true, canvas);
    attach_gauge(model, set, things.squeegee, false, canvas);
    attach_gauge(model, set, things.flood, true, canvas);
    rows.text(say(canvas.language(), Word::side_exaggerated, {std::to_string(things.exaggeration)}),
              {TypeSize::small, false}, Role::soft_ink, 8.0f);
    edge_lines(model, head, set, rows);
    restore_row(model, set, rows);
    for (const bool flood : {false, true}) what_if(model, set, flood, rows);
    rows.space(6.0f);
}

} // namespace carriageway
