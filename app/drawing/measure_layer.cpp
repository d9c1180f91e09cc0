#include "app/drawing/measure_layer.h"

#include <numbers>

#include "app/drawing/measure_sketch.h"
#include "core/sensor.h"

namespace carriageway {

namespace {

/// Bars, carriage and sensors with both lamps on, as the press's numbers have them.
void sketch_bars(const Sketch& s) {
    const Sensors& sensors = s.input.press->sensors;
    const double apart = std::max(1.0, least_separation(sensors));
    const double all = apart + 2.0 * sensors.bar_length;
    const float scale = 0.84f * s.box.width() / static_cast<float>(std::max(1.0, all));
    const float middle = s.box.centre().x;
    const auto x = [&](double mm) { return middle + static_cast<float>(mm) * scale; };
    const float rail = s.at(0, 0.62f).y, thick = 0.09f * s.box.height();
    const float lo = x(-0.5 * apart), hi = x(0.5 * apart);
    // The rail with the ruler below it.
    s.block({s.at(0.03f, 0).x, rail + thick}, {s.at(0.97f, 0).x, rail + 1.5f * thick}, Role::rail);
    s.ruler(rail + 1.6f * thick, s.at(0.04f, 0).x, s.at(0.96f, 0).x, 10.0f * scale);
    // Each sensor sees its own bar: the carriage stands where both do.
    const double centre = -0.5 * (sensors.operator_offset + sensors.machine_offset);
    const float op = x(centre + sensors.operator_offset), ma = x(centre + sensors.machine_offset);
    const float top = s.at(0, 0.3f).y, under = rail - 0.5f * thick;
    const float side = std::max(5.0f, 5.0f * scale);
    s.block({std::min(op, ma) - 2.0f * side, top}, {std::max(op, ma) + 2.0f * side, top + 1.3f * thick}, Role::frame);
    for (const float sensor : {op, ma}) {
        s.block({sensor - side, top + 1.3f * thick}, {sensor + side, under - 4.0f}, Role::lamp_off, 2.0f);
        s.line({{sensor, top}, {sensor, s.at(0, 0.2f).y}}, Role::edge, 1.6f);
        s.lamp({sensor, s.at(0, 0.16f).y}, true);
    }
    const auto bar = [&](float from, float to) {
        s.block({std::min(from, to), rail}, {std::max(from, to), rail + thick}, Role::squeegee);
    };
    bar(lo, x(-0.5 * apart - sensors.bar_length));
    bar(hi, x(0.5 * apart + sensors.bar_length));
    // A and B far enough apart for large letters.
    const float low = s.box.y1 - s.radius() - 5.0f;
    s.pointer({std::min(lo, middle - 1.6f * s.radius()), low}, {lo, rail + thick}, 0);
    s.pointer({std::max(hi, middle + 1.6f * s.radius()), low}, {hi, rail + thick}, 1);
}

/// One row a letter: the gap as the lamp comes on, and the wider one as it goes out.
void sketch_gap(const Sketch& s) {
    const int rows = std::max(1, s.input.badges);
    for (int row = 0; row < rows; ++row) {
        const float y = (static_cast<float>(row) + 0.5f) / static_cast<float>(rows);
        const bool on = row == 0;
        const float gap = on ? 0.16f : 0.28f;
        const float thick = 0.045f + 0.03f / static_cast<float>(rows);
        const float bar = 0.62f;
        s.block(s.at(bar, y - thick), s.at(0.97f, y + thick), Role::squeegee);
        const float sensor = bar - gap;
        s.block(s.at(sensor - 0.16f, y - 2.4f * thick), s.at(sensor + 0.06f, y - 1.2f * thick), Role::frame);
        s.block(s.at(sensor - 0.02f, y - 1.2f * thick), s.at(sensor + 0.02f, y + 1.2f * thick), Role::lamp_off, 2.0f);
        s.lamp(s.at(sensor - 0.22f, y - 1.6f * thick), on);
        const Vec from = s.at(sensor, y + 1.9f * thick), to = s.at(bar, y + 1.9f * thick);
        s.line({s.at(bar, y), to + Vec{0.0f, 3.0f}}, Role::soft_ink, 1.2f);
        s.line({s.at(sensor, y + 1.2f * thick), from + Vec{0.0f, 3.0f}}, Role::soft_ink, 1.2f);
        s.dimension(from, to, -1);
        s.letter({std::max(s.box.x0 + s.radius() + 4.0f, from.x - s.radius() - 10.0f), from.y - 2.0f}, row);
    }
}

/// One stroke: where the carriage was, where its lamp comes on, and where it stands.
void stroke_at(const Sketch& s, float y, float h, float end, bool past) {
    constexpr float lamp = 0.6f;
    s.block(s.at(0.03f, y + h), s.at(0.97f, y + h + 0.05f), Role::rail);
    s.list.ring({s.at(0.08f, 0).x, s.at(0, y - h).y, s.at(0.2f, 0).x, s.at(0, y + h).y}, 4.0f,
                paint(Role::frame), 1.6f);
    s.block(s.at(end - 0.06f, y - h), s.at(end + 0.06f, y + h), Role::frame);
    s.arrow(s.at(0.24f, y), s.at(end - 0.09f, y), Role::squeegee);
    if (!past) return;
    s.dashed(s.at(lamp, y - 1.7f * h), s.at(lamp, y + 2.3f * h), Role::soft_ink);
    s.lamp(s.at(lamp, y - 2.1f * h), true);
}

/// A stroke with its distance, time and speed; with places, where the lamp comes on and where the
/// carriage stands; at two speeds, one below the other.
void sketch_stroke(const Sketch& s) {
    if (s.input.badges > 3) {
        for (int row = 0; row < 2; ++row) {
            const float y = 0.26f + 0.46f * static_cast<float>(row), h = 0.065f;
            const float end = row == 0 ? 0.71f : 0.82f;
            stroke_at(s, y, h, end, true);
            s.letter(s.at(0.34f, y - 0.02f), 2 * row);
            s.dimension(s.at(0.6f, y + 2.2f * h), s.at(end, y + 2.2f * h), -1);
            s.letter({s.at(end, 0).x + s.radius() + 8.0f, s.at(0, y + 2.2f * h).y}, 2 * row + 1);
        }
        return;
    }
    stroke_at(s, 0.42f, 0.1f, 0.84f, s.input.places);
    const float low = s.box.y1 - s.radius() - 6.0f;
    if (s.input.places) {
        const float under = s.at(0, 0.57f).y;
        s.pointer({s.at(0.6f, 0).x - 0.6f * s.radius(), low}, {s.at(0.6f, 0).x, under}, 0);
        s.pointer({s.at(0.84f, 0).x, low}, {s.at(0.84f, 0).x, under}, 1);
        return;
    }
    s.dimension({s.at(0.14f, 0).x, low}, {s.at(0.84f, 0).x, low}, 0);
    s.letter(s.at(0.36f, 0.18f), 1);
    s.letter(s.at(0.56f, 0.18f), 2);
}

/// A rule; places: two of them on it. Otherwise a distance, and how many steps it holds.
void sketch_rule(const Sketch& s) {
    const float y = s.at(0, 0.56f).y;
    s.block({s.at(0.04f, 0).x, y}, {s.at(0.96f, 0).x, s.at(0, 0.84f).y}, Role::quiet);
    s.list.ring({s.at(0.04f, 0).x, y, s.at(0.96f, 0).x, s.at(0, 0.84f).y}, 3.0f, paint(Role::edge), 1.2f);
    s.ruler(y, s.at(0.08f, 0).x, s.at(0.92f, 0).x, 0.021f * s.box.width());
    const float top = s.at(0, 0.24f).y;
    const Vec from{s.at(0.2f, 0).x, y}, to{s.at(0.78f, 0).x, y};
    if (s.input.places) {
        s.pointer({from.x, top}, from, 0);
        s.pointer({to.x, top}, to, 1);
        return;
    }
    s.dashed({from.x, top - 8.0f}, from, Role::soft_ink);
    s.dashed({to.x, top - 8.0f}, to, Role::soft_ink);
    s.dimension({from.x, s.at(0, 0.34f).y}, {to.x, s.at(0, 0.34f).y}, 0);
    s.letter(s.at(0.49f, 0.7f), 1);
}

/// One blade in its holder, tilted about its pivot; returns where its edge is.
Vec blade(const Sketch& s, Vec pivot, float reach, float angle, Role role) {
    const Vec along{std::sin(angle), std::cos(angle)}, across{along.y, -along.x};
    const auto quad = [&](float from, float to, float half, Role fill) {
        const Vec corners[] = {pivot + along * from - across * half, pivot + along * from + across * half,
                               pivot + along * to + across * half, pivot + along * to - across * half};
        s.list.fill(corners, 4, paint(fill));
    };
    quad(0.3f * reach, reach, 0.05f * reach, role);
    quad(-0.06f * reach, 0.62f * reach, 0.11f * reach, Role::frame);
    s.list.disc(pivot, 4.0f, paint(Role::on_frame));
    return pivot + along * reach;
}

/// A holder at the least and the most angle, to scale, its edge measured from the reference.
void sketch_holder(const Sketch& s) {
    const Angles& angles = s.input.press->angles;
    const float reach = 0.5f * s.box.height();
    for (int side = 0; side < 2; ++side) {
        const float angle = static_cast<float>(side == 0 ? angles.least : angles.most);
        const Vec pivot = s.at(side == 0 ? 0.24f : 0.72f, 0.17f);
        const float reference = pivot.x - 0.06f * s.box.width();
        s.dashed({reference, s.box.y0 + 6.0f}, {reference, s.at(0, 0.84f).y}, Role::soft_ink);
        s.dashed(pivot, pivot + Vec{0.0f, 0.9f * reach}, Role::edge);
        const Vec edge = blade(s, pivot, reach, angle, s.input.flood ? Role::flood : Role::squeegee);
        s.arc(pivot, 0.82f * reach, 0.5f * std::numbers::pi_v<float> - angle, 0.5f * std::numbers::pi_v<float>,
              Role::ink, 1.6f);
        s.letter(pivot + Vec{0.13f * s.box.width() + s.radius(), 0.2f * reach}, 2 * side);
        const float low = s.at(0, 0.8f).y;
        s.line({edge, {edge.x, low + 4.0f}}, Role::soft_ink, 1.2f);
        s.dimension({reference, low}, {edge.x, low}, -1);
        s.letter({edge.x + s.radius() + 10.0f, low}, 2 * side + 1);
    }
}

void sketch_angle(const Sketch& s) {
    const float reach = 0.66f * s.box.height();
    const float angle = static_cast<float>(s.input.press->angles.most);
    const Vec pivot = s.at(0.45f, 0.2f);
    s.dashed(pivot, pivot + Vec{0.0f, reach}, Role::soft_ink);
    blade(s, pivot, reach, angle, Role::squeegee);
    s.arc(pivot, 0.94f * reach, 0.5f * std::numbers::pi_v<float> - angle, 0.5f * std::numbers::pi_v<float>,
          Role::ink);
    s.letter(pivot + Vec{-s.radius() - 10.0f, 0.86f * reach}, 0);
    s.line({s.at(0.2f, 0.93f), s.at(0.8f, 0.93f)}, Role::edge, 2.0f);
}

} // namespace

void Sketch::dimension(Vec from, Vec to, int index, Vec off) const {
    line({from, to}, Role::ink, 1.6f);
    const Vec way = (to - from) * (1.0f / std::max(1e-3f, length(to - from)));
    const Vec across{-way.y, way.x};
    for (const Vec end : {from, to}) line({end - across * 5.0f, end + across * 5.0f}, Role::ink, 1.6f);
    if (index >= 0) letter((from + to) * 0.5f + off, index);
}

void Sketch::arrow(Vec from, Vec to, Role role, float width) const {
    line({from, to}, role, width);
    const Vec way = (to - from) * (1.0f / std::max(1e-3f, length(to - from)));
    const Vec across{-way.y, way.x};
    line({to - way * 8.0f + across * 6.0f, to, to - way * 8.0f - across * 6.0f}, role, width);
}

void Sketch::arc(Vec centre, float radius, float from, float to, Role role, float width) const {
    Vec points[25];
    for (int i = 0; i <= 24; ++i) {
        const float a = from + (to - from) * static_cast<float>(i) / 24.0f;
        points[i] = centre + Vec{radius * std::cos(a), radius * std::sin(a)};
    }
    list.line(points, 25, paint(role), width);
}

void Sketch::lamp(Vec centre, bool on) const {
    if (on) list.disc(centre, 12.0f, paint(Role::lamp_on, 70));
    list.disc(centre, 7.0f, paint(on ? Role::lamp_on : Role::lamp_off));
    list.circle(centre, 7.0f, paint(Role::ink), 1.4f);
}

void Sketch::ruler(float y, float x0, float x1, float step, bool below) const {
    if (!(step > 0.5f)) return;
    while (step < 5.0f) step *= 2.0f;
    int i = 0;
    for (float x = x0; x <= x1; x += step, ++i) {
        const float tall = i % 5 == 0 ? 9.0f : 5.0f;
        line({{x, y}, {x, below ? y + tall : y - tall}}, Role::soft_ink, 1.0f);
    }
}

float badge_radius(const TypeMeasure& type) { return 0.5f * type.height(small_bold_text) + 2.0f; }

void draw_badge(DrawingList& list, Vec centre, int index) {
    const char face[] = {static_cast<char>('A' + index), 0};
    list.disc(centre, badge_radius(list.type()), paint(Role::strong));
    list.text_centred(centre, face, small_bold_text, Role::on_strong, Role::strong);
}

void draw_scheme(const SchemeInput& input, Box box, DrawingList& list) {
    if (!input.press || input.scheme == Scheme::none) return;
    list.round(box, 12.0f, paint(Role::paper));
    const Sketch s{list, box.inset(6.0f), input};
    switch (input.scheme) {
    case Scheme::none: break;
    case Scheme::bars: sketch_bars(s); break;
    case Scheme::gap: sketch_gap(s); break;
    case Scheme::stroke: sketch_stroke(s); break;
    case Scheme::rule: sketch_rule(s); break;
    case Scheme::holder: sketch_holder(s); break;
    case Scheme::angle: sketch_angle(s); break;
    case Scheme::gauge: sketch_gauge(s); break;
    case Scheme::drop: sketch_drop(s); break;
    case Scheme::screw: sketch_screw(s); break;
    case Scheme::scatter: sketch_scatter(s); break;
    case Scheme::heat: sketch_heat(s); break;
    case Scheme::cooling: sketch_cooling(s); break;
    case Scheme::heights: sketch_heights(s); break;
    case Scheme::cylinder: sketch_cylinder(s); break;
    }
    list.ring(box, 12.0f, paint(Role::edge), 1.0f);
}

} // namespace carriageway
