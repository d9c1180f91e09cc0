#include "app/drawing/side_running.h"

#include <array>

#include "app/text/words.h"

namespace carriageway {

namespace {

/// Parts of the drawing that are no number of the press, in mm: what a blade looks like.
constexpr double squeegee_thickness = 9.0;
constexpr double flood_thickness = 3.0;
constexpr double holder_thickness = 16.0;
constexpr double above_pivot = 22.0; ///< up to the handle of the angle
constexpr double room_beside = 34.0;

/// A blade as it stands: its edge, its pivot and the way it leans.
struct Stance {
    double edge = 0.0;   ///< along the arm, from the carriage reference
    double pivot = 0.0;
    double height = 0.0; ///< of the edge over the platen as angle and gauge set it
    double angle = 0.0;
    double length = 0.0; ///< from pivot to edge
    double up = 0.0;     ///< 0 at work, 1 lifted clear of the mesh
};

Stance squeegee_of(const SideInput& input) {
    const PressProfile& press = input.job->press;
    const Head& head = *input.head;
    const double side = -sign_of(head.print_stroke);
    const BladePose pose =
        blade_pose(press.squeegee_holder, press.squeegee_gauge, head.squeegee.angle, head.squeegee.gauge);
    return {input.assessed->geometry.squeegee_edge, side * press.squeegee_holder.pivot_offset,
            press.edge_heights.squeegee + pose.height, head.squeegee.angle,
            press.squeegee_holder.pivot_height};
}

Stance flood_of(const SideInput& input) {
    const PressProfile& press = input.job->press;
    const Head& head = *input.head;
    const double side = sign_of(head.print_stroke);
    const BladePose pose =
        blade_pose(press.flood_holder, press.flood_gauge, head.flood.angle, head.flood.gauge);
    return {input.assessed->geometry.flood_edge, side * press.flood_holder.pivot_offset,
            press.edge_heights.flood + pose.height, head.flood.angle,
            press.flood_holder.pivot_height};
}

/// The exaggeration that makes the mesh stand clear of the platen, from factors that can be said.
int exaggeration_for(double mesh_height, double dp) {
    constexpr std::array<int, 6> factors{1, 2, 3, 5, 8, 10};
    constexpr double wanted = 34.0;
    for (const int factor : factors)
        if (mesh_height * dp * factor >= wanted) return factor;
    return factors.back();
}

SideScale scale_of(const SideInput& input, const Stance& squeegee, const Stance& flood) {
    // Room for the steepest angle, so that nothing moves under a finger but the blade.
    const double steep = std::sin(radians(30.0));
    const auto reach = [&](const Stance& stance) { return steep * std::max(stance.length, above_pivot); };
    SideScale scale;
    scale.box = input.box;
    scale.lo = std::min(squeegee.pivot - reach(squeegee), flood.pivot - reach(flood)) - room_beside;
    const double hi =
        std::max(squeegee.pivot + reach(squeegee), flood.pivot + reach(flood)) + room_beside;
    const double tall = std::max(squeegee.length, flood.length) + above_pivot;
    // A running one has no handles, but room to lift.
    const double room = input.running ? 56.0 : 96.0;
    const double most = input.running ? tall - 0.5 * above_pivot + blade_lift + head_lift : tall;
    scale.dp = std::min(input.box.width() / (hi - scale.lo), (input.box.height() - room) / most);
    scale.lo -= 0.5 * (input.box.width() / scale.dp - (hi - scale.lo));
    const double mesh = input.assessed->contact.plane.height;
    scale.exaggeration = exaggeration_for(std::max(mesh, 0.5), scale.dp);
    scale.ground = input.box.y1 - 26.0f;
    return scale;
}

/// Where a blade's edge is drawn: no lower than the garment's top, where it comes to rest.
double edge_height(const SideInput& input, const Stance& stance) {
    return std::max(stance.height, input.job->garment.compressed);
}

/// How much higher all of a running head stands than on its platen, dp.
float lifted(const SideInput& input, const SideScale& scale) {
    if (!input.running) return 0.0f;
    return static_cast<float>(head_lift * (1.0 - input.running->pose.down) * scale.dp);
}

/// Where the mesh hangs, free of blades. A view at rest stands in the middle of the stroke; the
/// plane's slope along the arm is as set.
float free_mesh_y(const SideInput& input, const SideScale& scale, double along) {
    const Ends& ends = input.assessed->ends;
    const double carriage = input.running ? input.running->pose.carriage
                                          : 0.5 * (ends.operator_end + ends.machine_end);
    const double height = input.assessed->contact.plane.height_at({0.0, carriage + along});
    return scale.height(height) - lifted(input, scale);
}

float edge_y(const SideInput& input, const SideScale& scale, const Stance& stance) {
    const float at_work = scale.height(edge_height(input, stance)) - lifted(input, scale);
    const float clear =
        free_mesh_y(input, scale, stance.edge) - static_cast<float>(blade_lift * scale.dp);
    return at_work + static_cast<float>(stance.up) * (std::min(at_work, clear) - at_work);
}

/// A straight bar along a blade, from `from` to `to` mm above its edge.
void bar(DrawingList& list, Vec edge, Vec up, double from, double to, double thickness, double dp,
         Paint colour) {
    const float half = static_cast<float>(0.5 * thickness * dp);
    const Vec across{-up.y * half, up.x * half};
    const Vec a = edge + up * static_cast<float>(from * dp), b = edge + up * static_cast<float>(to * dp);
    const Vec corners[] = {a + across, b + across, b - across, a - across};
    list.fill(corners, 4, colour);
}

void draw_wing(const SideScale& scale, const PressProfile& press, const Stance& stance, Vec edge,
               DrawingList& list) {
    // The wing trails the bar on the side away from its lean and lies flat at its own angle.
    const double lift = wing_clearance(press.angles, stance.angle);
    const double way = stance.edge > stance.pivot ? 1.0 : -1.0;
    const Vec tip{edge.x + static_cast<float>(way * press.angles.wing_length * scale.dp),
                  edge.y - static_cast<float>(lift * scale.dp)};
    const Vec line[] = {edge, tip};
    list.line(line, 2, paint(Role::flood), 3.0f);
}

void draw_blade(const SideInput& input, const SideScale& scale, const Stance& stance, bool flood,
                SideBlade& made, DrawingList& list) {
    const Vec edge{scale.x(stance.edge), edge_y(input, scale, stance)};
    const double lean = stance.edge > stance.pivot ? -1.0 : 1.0;
    const Vec up{static_cast<float>(lean * std::sin(stance.angle)),
                 static_cast<float>(-std::cos(stance.angle))};
    const Paint colour = paint(flood ? Role::flood : Role::squeegee);
    const double blade = flood ? flood_thickness : squeegee_thickness;
    if (flood && input.head->flood.winged) draw_wing(scale, input.job->press, stance, edge, list);
    bar(list, edge, up, 0.0, 0.5 * stance.length, blade, scale.dp, colour);
    bar(list, edge, up, 0.42 * stance.length, stance.length + 0.3 * above_pivot, holder_thickness,
        scale.dp, paint(Role::frame));
    made.pivot = edge + up * static_cast<float>(stance.length * scale.dp);
    made.lean = static_cast<float>(lean);
    list.disc(made.pivot, 4.0f, paint(Role::on_frame));
    if (input.running) return;
    // The angle's handle stands on the holder; the height's beside the edge, outward.
    const Vec top = made.pivot + up * static_cast<float>(above_pivot * scale.dp);
    const Vec stem[] = {made.pivot, top};
    list.line(stem, 2, colour, 2.0f);
    list.disc(top, 11.0f, colour);
    list.circle(top, 11.0f, paint(Role::paper), 1.6f);
    made.angle_handle = around(top, 44.0f, 44.0f);
    const float outward = stance.edge > 0.5 * (stance.edge + stance.pivot) ? 1.0f : -1.0f;
    const Vec grip{edge.x + outward * 44.0f, edge.y - 22.0f};
    const Vec shaft[] = {{grip.x, grip.y - 13.0f}, {grip.x, grip.y + 13.0f}};
    list.line(shaft, 2, colour, 2.4f);
    for (const float way : {-1.0f, 1.0f}) {
        const Vec point{grip.x, grip.y + way * 18.0f};
        const Vec arrow[] = {point, {point.x - 5.0f, point.y - way * 8.0f}, {point.x + 5.0f, point.y - way * 8.0f}};
        list.fill(arrow, 3, colour);
    }
    made.gauge_handle = around(grip, 44.0f, 48.0f);
    const Gauge& gauge = flood ? input.job->press.flood_gauge : input.job->press.squeegee_gauge;
    made.dp_per_mark = gauge.mm_per_mark * scale.dp * scale.exaggeration;
}

/// Platen, garment and the mesh, which hangs in its plane and is pressed down where an edge stands.
void draw_layers(const SideInput& input, const SideScale& scale, const Stance& squeegee,
                 const Stance& flood, DrawingList& list) {
    const Box box = input.box;
    list.round({box.x0, scale.ground, box.x1, box.y1}, 0.0f, paint(Role::platen));
    const float garment = scale.height(input.job->garment.compressed);
    list.round({box.x0, garment, box.x1, scale.ground}, 0.0f, paint(Role::station));
    std::array<std::pair<double, float>, 2> edges{
        {{squeegee.edge, edge_y(input, scale, squeegee)},
         {flood.edge, edge_y(input, scale, flood)}}};
    std::sort(edges.begin(), edges.end());
    MeshLine line;
    std::size_t count = 0;
    const double left = scale.lo, right = scale.lo + box.width() / scale.dp;
    line[count++] = {box.x0, free_mesh_y(input, scale, left)};
    for (const auto& [along, y] : edges)
        line[count++] = {scale.x(along), std::max(y, free_mesh_y(input, scale, along))};
    line[count++] = {box.x1, free_mesh_y(input, scale, right)};
    if (input.running) {
        draw_print(input, scale, list);
        draw_ink(input, scale, line, list);
    }
    list.line(line.data(), static_cast<int>(count), paint(Role::ink), 2.2f);
}

} // namespace

float side_view_height(float width) {
    return std::clamp(0.72f * width, 220.0f, 330.0f);
}

float running_side_height(float width) { return std::clamp(0.44f * width, 124.0f, 180.0f); }

void draw_side_view(const SideInput& input, DrawingList& list, SideThings& things) {
    Stance squeegee = squeegee_of(input), flood = flood_of(input);
    if (input.running) {
        const CyclePose& now = input.running->pose;
        squeegee.up = 1.0 - now.squeegee;
        flood.up = 1.0 - now.flood;
    }
    const SideScale scale = scale_of(input, squeegee, flood);
    things.exaggeration = static_cast<int>(scale.exaggeration);
    things.squeegee.angle = Field::squeegee_angle;
    things.squeegee.gauge = Field::squeegee_gauge;
    things.flood.angle = Field::flood_angle;
    things.flood.gauge = Field::flood_gauge;
    list.round(input.box, 8.0f, paint(Role::paper));
    list.push_clip(input.box);
    draw_layers(input, scale, squeegee, flood, list);
    draw_blade(input, scale, flood, true, things.flood, list);
    draw_blade(input, scale, squeegee, false, things.squeegee, list);
    list.pop_clip();
    list.ring(input.box, 8.0f, paint(Role::edge), 1.2f);
    const TypeStyle small{TypeSize::small, false};
    const float line = list.type().height(small);
    // One in each upper corner, on the side where its edge stands, so that no handle lies under it.
    const bool squeegee_right = squeegee.edge > flood.edge;
    const auto label = [&](Word word_key, double angle, Role role, bool right, float row) {
        const std::string words = std::string(word(input.language, word_key)) + " " + format_angle(angle);
        const float width = list.type().width(small, words);
        list.text({right ? input.box.x1 - 8.0f - width : input.box.x0 + 8.0f, input.box.y0 + 6.0f + row * line}, words,
                  small, role, Role::paper);
    };
    label(Word::squeegee, squeegee.angle, Role::squeegee, squeegee_right, 0.0f);
    // Where the two don't fit side by side, one stands below the other.
    const auto width_of = [&](Word word_key) { return list.type().width(small, word(input.language, word_key)); };
    const bool stacked = width_of(Word::squeegee) + width_of(Word::flood_bar) + 8.0f * line > input.box.width();
    label(Word::flood_bar, flood.angle, Role::flood, !squeegee_right, stacked ? 1.0f : 0.0f);
}

} // namespace carriageway
