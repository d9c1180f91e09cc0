// The arm's rail beside a head: both limit bars, their handles, sensors, lamps and the ruler; and
// the carriage at rest.
#include "app/drawing/cycle_layer.h"
#include "app/text/sentences.h"

namespace carriageway {

namespace {

constexpr float rail_offset = 38.0f;   ///< dp from the frame's edge to the rail
constexpr float handle_radius = 30.0f; ///< dp: 60 across, for a gloved finger
constexpr float bar_half = 9.0f;       ///< dp: half the width of a bar

/// Points on the rail: `y` along the arm in mm.
struct Rail {
    const HeadView& view;
    Vec at(double y, float across = 0.0f) const {
        const Vec edge = view.to(0.5 * view.head->screen.across, y);
        return edge + view.across() * (rail_offset + across);
    }
};

bool is_machine(End end) { return end == End::machine_side; }

/// Whether a stop finding is about this end's stop: then its bar is drawn as what must be mended.
Role role_of_end(const HeadAssessment& head, End end) {
    Role role = Role::ink;
    for (const Finding& finding : head.findings) {
        if (finding.severity == Severity::note) continue;
        const bool about = finding.kind == FindingKind::both_sensors_on ||
                           finding.side == (is_machine(end) ? Side::machine_side
                                                            : Side::operator_side);
        if (!about) continue;
        if (finding.severity == Severity::stop) return Role::stop;
        role = Role::mind;
    }
    return role;
}

void draw_ruler(const HeadView& view, const Rail& rail, double lo, double hi, DrawingList& list,
                const Ruler& ruler) {
    const Vec ends[] = {rail.at(lo), rail.at(hi)};
    list.line(ends, 2, paint(Role::rail), 8.0f);
    // Marks no closer than 5 dp: each graduation, or every 5th, 10th, 50th, 100th.
    double step = ruler.graduation;
    for (const double times : {5.0, 2.0, 5.0, 2.0, 5.0})
        if (view.size(step) < 5.0f) step *= times;
    if (view.size(step) < 5.0f) return;
    const double first = ruler.zero + std::ceil((lo - ruler.zero) / step) * step;
    for (int i = 0; i < 400; ++i) {
        const double y = first + i * step;
        if (y > hi) break;
        const bool tenth = std::abs(std::remainder((y - ruler.zero) / step, 5.0)) < 0.01;
        const Vec mark[] = {rail.at(y, 5.0f), rail.at(y, tenth ? 12.0f : 8.5f)};
        list.line(mark, 2, paint(Role::soft_ink), 1.0f);
    }
}

/// The stretch that the held stop may stand in, with the reasons at its ends.
void draw_allowed(const DiagramInput& input, const HeadView& view, const Rail& rail,
                  DrawingList& list, LabelPlacer& labels) {
    const AllowedSet& set = view.assessed->allowed;
    const bool machine = is_machine(input.chosen_stop);
    StopInterval stretch = machine ? set.machine_side : set.operator_side;
    const double other = stop_of(view.head->stops, machine ? End::operator_side : End::machine_side);
    if (machine && other + set.least_gap > stretch.lo) {
        stretch.lo = other + set.least_gap;
        stretch.lo_kind = LimitKind::separation;
    }
    if (!machine && other - set.least_gap < stretch.hi) {
        stretch.hi = other - set.least_gap;
        stretch.hi_kind = LimitKind::separation;
    }
    if (!stretch.empty()) {
        const Vec ends[] = {rail.at(stretch.lo), rail.at(stretch.hi)};
        list.line(ends, 2, paint(Role::allowed), 14.0f);
    }
    const TypeStyle style{TypeSize::small, false};
    for (const bool at_lo : {true, false}) {
        const LimitKind kind = at_lo ? stretch.lo_kind : stretch.hi_kind;
        const double y = at_lo ? stretch.lo : stretch.hi;
        const Passing words(limit_text(input.language, input.units, *input.job, kind));
        const float width = list.type().width(style, words) + 12.0f;
        const float height = list.type().height(style) + 6.0f;
        const Vec end = rail.at(y);
        for (const float lines : {0.0f, 1.2f, -1.2f, 2.4f, -2.4f, 3.6f, -3.6f, 4.8f, -4.8f}) {
            const float shift = lines * height;
            Box box{end.x - 26.0f - width, end.y - 0.5f * height + shift, end.x - 26.0f,
                    end.y + 0.5f * height + shift};
            const float dx = std::max(0.0f, labels.within().x0 + 4.0f - box.x0);
            box.x0 += dx;
            box.x1 += dx;
            if (!labels.place(box)) continue;
            list.round(box, 6.0f, paint(Role::panel, 240));
            list.text({box.x0 + 6.0f, box.y0 + 3.0f}, words, style, Role::ink, Role::panel);
            const Vec lead[] = {{box.x1, box.centre().y}, end};
            list.line(lead, 2, paint(Role::ink), 1.0f);
            break;
        }
    }
}

void draw_chevrons(DrawingList& list, Vec centre, Vec along, Paint colour) {
    const Vec across{-along.y, along.x};
    for (const float sense : {1.0f, -1.0f}) {
        const Vec tip = centre + along * (13.0f * sense);
        const Vec arrow[] = {tip + across * 8.0f - along * (8.0f * sense), tip,
                             tip - across * 8.0f - along * (8.0f * sense)};
        list.line(arrow, 3, colour, 2.5f);
    }
}

void draw_bar(const HeadView& view, const Rail& rail, End end, double length, DrawingList& list) {
    const double inner = stop_of(view.head->stops, end);
    const double outer = is_machine(end) ? inner + length : inner - length;
    const Vec corners[] = {rail.at(inner, -bar_half), rail.at(inner, bar_half),
                           rail.at(outer, bar_half), rail.at(outer, -bar_half)};
    list.fill(corners, 4, paint(role_of_end(*view.assessed, end)));
}

/// The handle stands outboard of its bar, so that the two don't meet on a short stroke; where the
/// view ends it waits at the edge, still on the rail.
void draw_handle(const DiagramInput& input, const HeadView& view, const Rail& rail, End end,
                 double length, DrawingList& list, LabelPlacer& labels, DiagramThings& things) {
    const double inner = stop_of(view.head->stops, end);
    const double outer = is_machine(end) ? inner + length : inner - length;
    const Vec outward = view.along() * (is_machine(end) ? 1.0f : -1.0f);
    Vec centre = rail.at(outer) + outward * (handle_radius + 2.0f);
    const Box room = input.projection.view.inset(handle_radius + 2.0f);
    centre = {std::clamp(centre.x, room.x0, std::max(room.x0, room.x1)),
              std::clamp(centre.y, room.y0, std::max(room.y0, room.y1))};
    const Role role = role_of_end(*view.assessed, end);
    const bool chosen = view.head->id == input.chosen && end == input.chosen_stop;
    list.disc(centre, handle_radius, paint(Role::panel));
    list.circle(centre, handle_radius - 1.5f, paint(role), chosen ? 4.0f : 2.0f);
    draw_chevrons(list, centre, view.along(), paint(Role::ink));
    const Passing name(together({"head/", std::to_string(view.head->station),
                                 is_machine(end) ? "/machine-stop" : "/operator-stop"}));
    list.thing(name, ThingRole::slider, around(centre, 2.0f * handle_radius, 2.0f * handle_radius));
    things.handles.push_back({view.head->id, end, list.things().size() - 1});
    labels.take(around(centre, 2.0f * handle_radius, 2.0f * handle_radius));
}

/// What the ruler shows at the bar's inner end, beside the ruler's marks; where the view ends too
/// soon, between frame and rail.
void label_reading(const DiagramInput& input, const HeadView& view, const Rail& rail, End end,
                   DrawingList& list, LabelPlacer& labels) {
    const double inner = stop_of(view.head->stops, end);
    const std::string words = format_ruler(input.job->press.ruler, inner);
    const TypeStyle style{TypeSize::small, true};
    const float width = list.type().width(style, words), height = list.type().height(style);
    const Vec inward = view.along() * (is_machine(end) ? -1.0f : 1.0f);
    const Vec across = view.across();
    const float beside = 0.5f * (std::abs(across.x) * width + std::abs(across.y) * height);
    for (const float sense : {1.0f, -1.0f})
        for (const float along : {0.2f * height, 0.6f * height, 1.2f * height, -0.6f * height}) {
            const Vec centre = rail.at(inner) + inward * along + across * (sense * (15.0f + beside));
            const Box box = around(centre, width, height);
            if (!labels.place(box)) continue;
            list.text({box.x0, box.y0}, words, style, Role::ink, Role::paper);
            return;
        }
}

/// The lamp of an end on the frame, with its state in words where they fit.
void draw_lamp(const DiagramInput& input, const HeadView& view, End end, bool on,
               DrawingList& list, LabelPlacer& labels) {
    const Screen& screen = view.head->screen;
    const double y = 0.5 * (screen.along - screen.profile_width) * (is_machine(end) ? 1.0 : -1.0);
    const float radius = std::clamp(0.36f * view.size(screen.profile_width), 4.0f, 9.0f);
    const Vec centre = view.to(0.5 * screen.across, y) - view.across() * (radius + 7.0f);
    list.disc(centre, radius, paint(on ? Role::lamp_on : Role::lamp_off));
    list.circle(centre, radius, paint(Role::on_frame), 1.6f);
    labels.take(around(centre, 2.0f * radius, 2.0f * radius));
    if (std::abs(view.across().x) < 0.999f) return;
    const TypeStyle style{TypeSize::small, true};
    const std::string_view words = word(input.language, on ? Word::sensor_on : Word::sensor_off);
    const float width = list.type().width(style, words), height = list.type().height(style);
    // On the frame where its profile is wide enough, else just inside it.
    const bool on_frame = view.size(screen.profile_width) >= height;
    const float inward = (0.5f * view.size(screen.profile_width) + 0.5f * height + 2.0f) *
                         (is_machine(end) ? 1.0f : -1.0f);
    const float middle = on_frame ? centre.y : centre.y + inward;
    const float right = on_frame ? centre.x - radius - 6.0f
                                 : view.to(0.5 * screen.across - screen.profile_width, 0.0).x - 8.0f;
    const Box box{right - width, middle - 0.5f * height, right, middle + 0.5f * height};
    if (width < 0.45f * view.size(screen.across) && labels.place(box))
        list.text({box.x0, box.y0}, words, style, on_frame ? Role::on_frame : Role::soft_ink,
                  on_frame ? Role::frame : Role::mesh);
}

/// The carriage rests at the end of the chosen stop; with both sensors on it stands where it is.
double carriage_position(const DiagramInput& input, const HeadView& view) {
    if (const RunningHead* running = running_head(input, view.head->id))
        return running->pose.carriage;
    const Ends& ends = view.assessed->ends;
    if (view.assessed->both_on) return 0.5 * (ends.operator_end + ends.machine_end);
    const bool machine = view.head->id != input.chosen || is_machine(input.chosen_stop);
    return machine ? ends.machine_end : ends.operator_end;
}

} // namespace

void draw_carriage(const DiagramInput& input, const HeadView& view, DrawingList& list) {
    const double c = carriage_position(input, view);
    const StrokeGeometry& geometry = view.assessed->geometry;
    const double half_x = 0.5 * view.head->screen.across;
    // The carriage's beam spans the frame; the two blades hang from it where their edges stand.
    const Vec beam[] = {view.to(-half_x, c), view.to(half_x, c)};
    list.line(beam, 2, paint(Role::soft_ink, 90), std::max(3.0f, view.size(14.0)));
    const Vec rail_end[] = {view.to(half_x, c), view.to(half_x, c) + view.across() * rail_offset};
    list.line(rail_end, 2, paint(Role::soft_ink, 90), 2.0f);
    const float thick = std::clamp(view.size(10.0), 3.0f, 7.0f);
    const double s = c + geometry.squeegee_edge, f = c + geometry.flood_edge;
    const double half_s = 0.5 * view.head->squeegee.width, half_f = 0.5 * view.head->flood.width;
    const Vec flood[] = {view.to(-half_f, f), view.to(half_f, f)};
    const Vec squeegee[] = {view.to(-half_s, s), view.to(half_s, s)};
    list.line(flood, 2, paint(Role::flood), thick);
    list.line(squeegee, 2, paint(Role::squeegee), thick);
}

void draw_rail(const DiagramInput& input, const HeadView& view, DrawingList& list,
               LabelPlacer& labels, DiagramThings& things) {
    const PressProfile& press = input.job->press;
    const Rail rail{view};
    const double bar = press.sensors.bar_length;
    const double end = 0.5 * view.head->screen.along;
    const double lo = std::max(-end, press.carriage.range_lo + press.sensors.operator_offset - bar);
    const double hi = std::min(end, press.carriage.range_hi + press.sensors.machine_offset + bar);
    draw_ruler(view, rail, lo, hi, list, press.ruler);
    const bool chosen = view.head->id == input.chosen;
    const double c = carriage_position(input, view);
    const RunningHead* running = running_head(input, view.head->id);
    const Lamps lamps = running ? running->pose.lamps
                                : lamps_at(press.sensors, view.head->stops, c,
                                           {view.assessed->both_on, view.assessed->both_on});
    for (const End side : {End::machine_side, End::operator_side}) {
        const bool on = is_machine(side) ? lamps.machine_on : lamps.operator_on;
        draw_bar(view, rail, side, bar, list);
        draw_lamp(input, view, side, on, list, labels);
    }
    for (const End side : {End::machine_side, End::operator_side}) {
        // The sensors ride with the carriage; each is drawn at its bar's side of the rail.
        const double offset = is_machine(side) ? press.sensors.machine_offset
                                               : press.sensors.operator_offset;
        list.disc(rail.at(c + offset, -bar_half - 3.0f), 3.5f,
                  paint((is_machine(side) ? lamps.machine_on : lamps.operator_on) ? Role::lamp_on
                                                                                  : Role::lamp_off));
        if (input.with_handles && chosen) draw_handle(input, view, rail, side, bar, list, labels, things);
    }
    for (const End side : {End::machine_side, End::operator_side})
        label_reading(input, view, rail, side, list, labels);
    if (chosen && input.held) draw_allowed(input, view, rail, list, labels);
}

} // namespace carriageway
