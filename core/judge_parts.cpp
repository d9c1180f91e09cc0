#include <algorithm>
#include <utility>

#include "core/judge.h"

namespace carriageway {
namespace {

/// Angles that differ by less, rad, are the same.
constexpr double least_turn = 1e-9;

void judge_angle(const Judged& judged, Part part, Field field, double angle) {
    const Angles& angles = judged.job.press.angles;
    if (angle >= angles.least - least_turn && angle <= angles.most + least_turn) return;
    const double nearer = angle < angles.least ? angles.least : angles.most;
    judged.add(Severity::mind, FindingKind::angle_unusual, part, Side::both, angle, nearer,
               number_remedy(field, nearer));
}

void judge_wings(const Judged& judged) {
    const FloodBar& flood = judged.head.flood;
    const double flat = judged.job.press.angles.wings_flat;
    if (!flood.winged || flood.angle <= flat + least_turn) return;
    judged.add(Severity::stop, FindingKind::wings_dig_in, Part::flood, Side::both, flood.angle,
               flat, number_remedy(Field::flood_angle, flat));
}

void judge_bead(const Judged& judged) {
    const StrokeGeometry& geometry = judged.out.geometry;
    const double least = judged.job.press.allowances.least_bead;
    const double bead =
        -sign_of(judged.head.print_stroke) * (geometry.squeegee_edge - geometry.flood_edge);
    // With the edges level or in each other's place there is nowhere for the ink to lie.
    const bool none = bead <= 0.0;
    if (!none && bead >= least - least_difference) return;
    judged.add(none ? Severity::stop : Severity::mind, FindingKind::bead_too_narrow, Part::squeegee,
               Side::both, bead, least);
}

void judge_overlap(const Judged& judged) {
    const HeadAssessment& out = judged.out;
    const double wish = judged.job.wishes.side_overlap;
    // Less than nothing left: image is missed there, and that is said already.
    if (out.side_overlap < -least_difference || out.side_overlap >= wish - least_difference) return;
    const Rect& narrower = out.flood.right < out.squeegee.right ? out.flood : out.squeegee;
    const double left = out.image_bounds.left - narrower.left;
    const double right = narrower.right - out.image_bounds.right;
    const Side side = left < right - least_difference   ? Side::left
                      : right < left - least_difference ? Side::right
                                                        : Side::both;
    judged.add(Severity::mind, FindingKind::blade_too_narrow,
               &narrower == &out.flood ? Part::flood : Part::squeegee, side, out.side_overlap,
               wish);
}

void judge_widths(const Judged& judged) {
    const Head& head = judged.head;
    const Rect platen = rect_of(judged.job.platen);
    const double widest = 2.0 * std::min(-platen.left, platen.right);
    if (head.squeegee.width > widest + least_difference) {
        judged.add(Severity::mind, FindingKind::blade_off_platen, Part::squeegee,
                   platen.right < -platen.left - least_difference   ? Side::right
                   : -platen.left < platen.right - least_difference ? Side::left
                                                                    : Side::both,
                   head.squeegee.width, widest);
    }
    if (head.flood.width < head.squeegee.width - least_difference) {
        judged.add(Severity::mind, FindingKind::flood_narrower, Part::flood, Side::both,
                   head.flood.width, head.squeegee.width);
    }
    const double clearance = judged.job.press.allowances.frame_clearance;
    const double left =
        opening_of(head.screen).right - 0.5 * std::max(head.squeegee.width, head.flood.width);
    if (left < clearance - least_difference) {
        judged.add(left < 0.0 ? Severity::stop : Severity::mind, FindingKind::side_meets_frame,
                   head.flood.width > head.squeegee.width ? Part::flood : Part::squeegee,
                   Side::both, left, clearance);
    }
}

void judge_screen(const Judged& judged) {
    const Rect opening = opening_of(judged.head.screen);
    const Rect& image = judged.out.image_bounds;
    const std::pair<Side, double> sides[] = {{Side::operator_side, opening.lo - image.lo},
                                             {Side::machine_side, image.hi - opening.hi},
                                             {Side::left, opening.left - image.left},
                                             {Side::right, image.right - opening.right}};
    for (const auto& [side, beyond] : sides) {
        if (beyond > least_difference) {
            judged.add(Severity::stop, FindingKind::image_outside_mesh, Part::image, side, beyond,
                       0.0);
        }
    }
}

void judge_speed(const Judged& judged, Part part, Field field, double speed) {
    const double fastest = judged.job.press.carriage.fastest;
    if (speed <= fastest) return;
    judged.add(Severity::mind, FindingKind::speed_beyond_press, part, Side::both, speed, fastest,
               number_remedy(field, fastest));
}

}  // namespace

void judge_parts(const Judged& judged) {
    const Head& head = judged.head;
    judge_wings(judged);
    judge_angle(judged, Part::squeegee, Field::squeegee_angle, head.squeegee.angle);
    judge_angle(judged, Part::flood, Field::flood_angle, head.flood.angle);
    judge_bead(judged);
    judge_overlap(judged);
    judge_widths(judged);
    judge_screen(judged);
    judge_speed(judged, Part::squeegee, Field::print_speed, head.print_speed);
    judge_speed(judged, Part::flood, Field::flood_speed, head.flood_speed);
}

}  // namespace carriageway
