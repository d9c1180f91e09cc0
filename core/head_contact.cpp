#include "core/head_contact.h"

#include <algorithm>
#include <cmath>

namespace carriageway {
namespace {

Point middle_of(const Rect& rect) {
    return {0.5 * (rect.left + rect.right), 0.5 * (rect.lo + rect.hi)};
}

double garment_of(const Job& job) {
    return job.garment.compressed;
}

Cylinders squeegee_cylinders(const PressProfile& press) {
    // Thrust needs no rod.
    return {press.cylinders.squeegee_bore, 0.0,
            static_cast<int>(std::lround(press.cylinders.squeegee_count))};
}

MeshSpan span_of(const Screen& screen) {
    const Rect opening = opening_of(screen);
    return {opening.lo, opening.hi, screen.tension_along};
}

std::optional<double> load_of(const Job& job, const Head& head) {
    return line_load(squeegee_cylinders(job.press), head.pressure.squeegee, head.squeegee.width,
                     head.pressure.on_height_stop ? BladeRest::on_height_stop : BladeRest::on_mesh);
}

void set_edges(const Job& job, const Head& head, Point at, HeadContact& out) {
    const PressProfile& press = job.press;
    const double mesh = out.plane.height_at(at);
    const BladePose squeegee = blade_pose(press.squeegee_holder, press.squeegee_gauge,
                                          head.squeegee.angle, head.squeegee.gauge);
    const BladePose flood =
        blade_pose(press.flood_holder, press.flood_gauge, head.flood.angle, head.flood.gauge);
    out.squeegee = edge_contact(squeegee, {press.edge_heights.squeegee, mesh, garment_of(job)});
    out.flood = edge_contact(flood, {press.edge_heights.flood, mesh, garment_of(job)});
    out.wing_clearance = wing_clearance(press.angles, head.flood.angle);
}

void set_forces(const Job& job, const Head& head, const Rect& swept, HeadContact& out) {
    // The widest gap of the image's is the hardest to close.
    out.worst = worst_point(span_of(head.screen), out.gap.most, swept.lo, swept.hi);
    out.thrust = thrust(squeegee_cylinders(job.press), head.pressure.squeegee);
    out.line_load = load_of(job, head);
    if (out.worst) out.hold = hold_down(out.line_load, out.worst->line_force);
}

/// Gap in the middle of an image, over the garment.
double gap_in_middle(const Job& job, const Head& head, const Rect& image) {
    return gap_at(plane_of(head.heights, job.press.height_points), garment_of(job),
                  middle_of(image));
}

void set_shifts(const Job& job, const Head& head, const Rect& image, HeadContact& out) {
    const MeshContact contact = mesh_contact(job, head, out.middle_gap);
    out.operator_shift = mesh_shift(contact, image.lo);
    out.machine_shift = mesh_shift(contact, image.hi);
    out.growth = print_growth(contact, image.lo, image.hi);
    const Head* base = base_head(job);
    if (base == nullptr || base->id == head.id) return;
    // A blade on its height stop drags by nobody knows how much.
    if (head.pressure.on_height_stop || base->pressure.on_height_stop) return;
    out.beside_base = length_difference(
        contact, mesh_contact(job, *base, gap_in_middle(job, *base, image)), image.lo, image.hi);
}

} // namespace

OffContactPlane plane_of(const ScreenHeights& heights, const HeightPoints& points) {
    OffContactPlane plane;
    const double operator_height = 0.5 * (heights.left + heights.right);
    const double length = points.machine_y - points.operator_y;
    plane.slope_x = (heights.right - heights.left) / (2.0 * points.across);
    plane.slope_y = (heights.machine - operator_height) / length;
    plane.height = operator_height - plane.slope_y * points.operator_y;
    return plane;
}

MeshContact mesh_contact(const Job& job, const Head& head, double gap) {
    return {span_of(head.screen), gap, load_of(job, head).value_or(0.0), head.print_stroke,
            {job.assumed.friction, job.assumed.mesh_stiffness}};
}

const Head* base_head(const Job& job) {
    if (const Head* chosen = find_head(job, job.registration.base)) return chosen;
    return job.heads.empty() ? nullptr : &job.heads.front();
}

HeadContact head_contact(const Job& job, const Head& head, const Rect& image, const Rect& swept) {
    HeadContact out;
    out.plane = plane_of(head.heights, job.press.height_points);
    if (const auto range = gap_range(out.plane, garment_of(job), image)) out.gap = *range;
    const Point middle = middle_of(image);
    out.middle_gap = gap_at(out.plane, garment_of(job), middle);
    out.uneven = head.heights.right - head.heights.left;
    set_edges(job, head, middle, out);
    set_forces(job, head, swept, out);
    set_shifts(job, head, image, out);
    return out;
}

HeadDeposit head_deposit(const Job& job, const Head& head, double area) {
    const Deposit& set = head.deposit;
    HeadDeposit out;
    out.image_area = area;
    out.finest = finest_line(head.screen.mesh_count);
    if (set.finest_detail > 0.0) {
        constexpr double um_per_mm = 1000.0;
        out.detail = detail_fit(head.screen.mesh_count, set.finest_detail * um_per_mm);
    }
    out.mesh = mesh_data(head.screen.mesh_count, head.screen.thread_diameter, job.press.meshes);
    if (!out.mesh) return out;
    if (set.fabric_thickness > 0.0) {
        out.mesh->row.thickness = set.fabric_thickness;
        out.mesh->row.volume = ink_volume(out.mesh->row.share, set.fabric_thickness);
        out.mesh->thickness_assumed = false;
    }
    out.film = wet_film(out.mesh->row.volume, set.stencil);
    InkUse use;
    use.film = out.film;
    use.image_area = area;
    use.printed_share = set.printed_share;
    use.strokes = static_cast<int>(std::lround(set.strokes));
    use.later_stroke = job.assumed.second_stroke_share;
    use.transfer = job.assumed.transfer_share;
    use.pieces = std::lround(job.run.pieces);
    use.screen_load = job.assumed.ink_in_screen;
    use.waste = job.assumed.waste_share;
    out.ink = ink_need(use);
    return out;
}

} // namespace carriageway
