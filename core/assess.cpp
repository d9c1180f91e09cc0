#include "core/assess.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/jerk_motion.h"
#include "core/judge.h"

namespace carriageway {
namespace {

void work_out_bands(const Job& job, const Head& head, HeadAssessment& out) {
    out.head = head.id;
    out.geometry = stroke_geometry(job.press, head);
    out.ends = ends_of(out.geometry, head.stops);
    out.squeegee = squeegee_band(out.geometry, head, head.stops);
    out.flood = flood_band(out.geometry, head, head.stops);
    out.separation = separation(head.stops);
    out.least_separation = least_separation(job.press.sensors);
    out.both_on = both_on(job.press.sensors, head.stops);
    const double travel = out.ends.travel();
    const double acceleration = job.press.carriage.acceleration, jerk = job.press.pace.jerk;
    out.print_time = stroke_time(travel, {head.print_speed, acceleration, jerk});
    out.flood_time = stroke_time(travel, {head.flood_speed, acceleration, jerk});
}

/// Tiles for which room is made ahead. Ours: outlines of up to some hundred corners never need
/// more; for larger ones storage grows a few times while they are dragged, instead of megabytes
/// being held for what hardly ever happens.
constexpr std::size_t most_tiles_ahead = 4096;

/// Makes room for what covering can need wherever the bands lie. A column is cut into parts where
/// one of four band edges or of four levels crosses it: four edges meet at most half as many
/// columns as there are corners, and each edge of the outline crosses a level once. A part holds
/// at most four tiles of missed image.
void make_room(std::size_t columns, std::size_t corners, CoverScratch& scratch, Coverage& out) {
    const std::size_t tiles = std::min(4 * (columns + 6 * corners), most_tiles_ahead);
    scratch.tiles.reserve(tiles);
    scratch.kinds.reserve(tiles);
    for (auto* list :
         {&scratch.root, &scratch.piece, &scratch.before, &scratch.left, &scratch.right}) {
        list->reserve(tiles);
    }
    out.tiles.reserve(tiles);
    out.pieces.reserve(tiles);
}

/// Cuts the image into columns, unless it lies where it lay last time.
void work_out_image(const Job& job, const Head& head, Assessment& all, HeadAssessment& out) {
    place_image(head.image, all.placed);
    const double run_past = job.wishes.run_past;
    const bool moved = out.image != all.placed;
    if (moved) {
        out.image = all.placed;
        out.image_bounds = bounds_of(out.image);
        cut_into_columns(out.image, all.column_scratch, out.columns);
    }
    if (moved || out.grown_by != run_past) {
        grow_columns(out.columns, run_past, all.column_scratch, out.grown_columns);
        out.grown_by = run_past;
        const std::size_t corners = out.image.size();
        make_room(out.columns.size(), corners, all.cover_scratch, out.coverage);
        make_room(out.grown_columns.size(), corners, all.cover_scratch, all.grown);
    }
}

void work_out_coverage(const Head& head, Assessment& all, HeadAssessment& out) {
    const Bands bands{out.squeegee, out.flood, flood_finish(head), !out.both_on};
    cover(out.columns, bands, all.cover_scratch, out.coverage);
    cover(out.grown_columns, bands, all.cover_scratch, all.grown);
    out.grown_coverage = {all.grown.image_area, all.grown.covered_area};
    const Rect& image = out.image_bounds;
    out.operator_run_past = image.lo - std::max(out.squeegee.lo, out.flood.lo);
    out.machine_run_past = std::min(out.squeegee.hi, out.flood.hi) - image.hi;
    const double left = image.left - std::max(out.squeegee.left, out.flood.left);
    const double right = std::min(out.squeegee.right, out.flood.right) - image.right;
    out.side_overlap = std::min(left, right);
}

/// Advice must be something that can be carried out: on a press whose overtravel is out of all
/// proportion a stop would have to stand where no job can put it.
bool can_be_set(const Stops& stops) {
    return accepts(Field::operator_stop, stops.operator_side) &&
           accepts(Field::machine_stop, stops.machine_side) &&
           stops.operator_side < stops.machine_side;
}

void work_out_limits(const Job& job, const Head& head, HeadAssessment& out) {
    const ImageSpan image{out.image_bounds.lo, out.image_bounds.hi};
    out.allowed = allowed_set(job, head, out.geometry, image);
    out.shortest = shortest_stroke(out.allowed, out.geometry, head, image);
    out.advised.reset();
    out.conflict.reset();
    out.change.reset();
    if (out.shortest) {
        const Stops advised = on_graduations(job.press.ruler, out.allowed, *out.shortest);
        if (can_be_set(advised)) out.advised = advised;
    } else {
        out.conflict = conflict_of(out.allowed);
        out.change = smallest_change(job, head, image);
    }
}

/// Deviations that act on the distance between an edge and the image on its screen.
Stack image_deviations(const Allowances& allowances) {
    Stack stack;
    stack.add(allowances.stop);
    stack.add(allowances.overtravel);
    stack.add(allowances.screen);
    stack.add(allowances.image);
    return stack;
}

/// Deviations that act on a limit of one stop.
Stack deviations(LimitKind kind, const PressProfile& press) {
    const Allowances& allowances = press.allowances;
    Stack stack;
    stack.add(allowances.stop);
    switch (kind) {
        case LimitKind::squeegee_run_past:
        case LimitKind::flood_run_past:
            return image_deviations(allowances);
        case LimitKind::platen:
        case LimitKind::carriage_range:
            stack.add(allowances.overtravel);
            break;
        case LimitKind::frame_squeegee:
        case LimitKind::frame_flood:
            stack.add(allowances.overtravel);
            stack.add(allowances.screen);
            break;
        case LimitKind::separation:  // both stops, and how well the least separation is known
            stack.add(allowances.stop);
            stack.add(press.sensors.separation_spread);
            break;
    }
    return stack;
}

Margin margin(const PressProfile& press, LimitKind kind, End end, double left) {
    const Stack stack = deviations(kind, press);
    return {kind, end, left, left - worst_case(stack), left - root_sum_square(stack)};
}

bool is_innermost(LimitKind kind) {
    return kind == LimitKind::squeegee_run_past || kind == LimitKind::flood_run_past;
}

void work_out_margins(const PressProfile& press, const Stops& stops, HeadAssessment& out) {
    std::size_t next = 0;
    for (const StopLimit& limit : out.allowed.operator_limits) {
        const double beyond = stops.operator_side - limit.at;
        out.margins[next++] = margin(press, limit.kind, End::operator_side,
                                     is_innermost(limit.kind) ? -beyond : beyond);
    }
    for (const StopLimit& limit : out.allowed.machine_limits) {
        const double beyond = limit.at - stops.machine_side;
        out.margins[next++] = margin(press, limit.kind, End::machine_side,
                                     is_innermost(limit.kind) ? -beyond : beyond);
    }
    out.margins[next] = margin(press, LimitKind::separation, End::operator_side,
                               out.separation - out.allowed.least_gap);
}

/// Image is missed at one end or the other. The two chances add, because a deviation that misses
/// image at one end gives room at the other (screen and image move as a whole); where both could
/// happen at once the sum is a little too high, never too low.
double chance_missed(const PressProfile& press, const HeadAssessment& out) {
    if (out.both_on) return 1.0;
    const Stack stack = image_deviations(press.allowances);
    return std::min(1.0, chance_beyond(stack, out.operator_run_past) +
                             chance_beyond(stack, out.machine_run_past));
}

void work_out(const Job& job, std::size_t index, Assessment& all) {
    const Head& head = job.heads[index];
    HeadAssessment& out = all.heads[index];
    work_out_bands(job, head, out);
    work_out_image(job, head, all, out);
    work_out_coverage(head, all, out);
    work_out_limits(job, head, out);
    work_out_margins(job.press, head.stops, out);
    out.chance_missed = chance_missed(job.press, out);
    out.contact = head_contact(job, head, out.image_bounds, out.squeegee);
    out.deposit = head_deposit(job, head, std::abs(signed_area(out.image)));
    judge(job, head, out);
}

void count_fit(Assessment& all) {
    const auto fit = std::count_if(all.heads.begin(), all.heads.end(),
                                   [](const HeadAssessment& head) { return head.fit; });
    all.fit_heads = static_cast<int>(fit);
    all.fit = static_cast<std::size_t>(fit) == all.heads.size();
}

bool elsewhere(const Stops& stops, const Stops& advised) {
    return std::abs(stops.operator_side - advised.operator_side) > least_difference ||
           std::abs(stops.machine_side - advised.machine_side) > least_difference;
}

}  // namespace

void assess(const Job& job, Assessment& reuse) {
    reuse.heads.resize(job.heads.size());
    for (std::size_t i = 0; i < job.heads.size(); ++i)
        work_out(job, i, reuse);
    count_fit(reuse);
}

void assess_head(const Job& job, std::size_t index, Assessment& reuse) {
    work_out(job, index, reuse);
    count_fit(reuse);
}

const HeadAssessment* find_head(const Assessment& assessment, HeadId id) {
    const auto found = std::find_if(assessment.heads.begin(), assessment.heads.end(),
                                    [id](const HeadAssessment& head) { return head.head == id; });
    return found == assessment.heads.end() ? nullptr : &*found;
}

std::optional<Edit> set_every_stop(const Job& job, const Assessment& assessment) {
    Together together;
    for (const Head& head : job.heads) {
        const HeadAssessment* found = find_head(assessment, head.id);
        if (found == nullptr || !found->advised || !elsewhere(head.stops, *found->advised))
            continue;
        together.edits.push_back({SetStops{head.id, *found->advised}});
    }
    if (together.edits.empty()) return std::nullopt;
    if (together.edits.size() == 1) return std::move(together.edits.front());
    return Edit{std::move(together)};
}

}  // namespace carriageway
