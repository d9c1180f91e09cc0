// The plot of where both stops may stand: across, the operator's stop; up, the machine's. Any
// point in the filled polygon is a good setting; the nearest to the separation line is the shortest.
#include "app/text/sentences.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

/// Maps (operator stop, machine stop) in mm to the plot's box.
struct PlotScale {
    Box box;
    double x0, y0, mm_per_dp;
    Vec at(double operator_stop, double machine_stop) const {
        return {box.x0 + static_cast<float>((operator_stop - x0) / mm_per_dp),
                box.y1 - static_cast<float>((machine_stop - y0) / mm_per_dp)};
    }
};

/// A range that holds the allowed set and today's point with some room round them.
PlotScale scale_of(const HeadAssessment& head, const Stops& stops, Box box) {
    double lo_x = stops.operator_side, hi_x = lo_x, lo_y = stops.machine_side, hi_y = lo_y;
    for (int i = 0; i < head.allowed.corner_count; ++i) {
        const Point corner = head.allowed.corners[static_cast<std::size_t>(i)];
        lo_x = std::min(lo_x, corner.x);
        hi_x = std::max(hi_x, corner.x);
        lo_y = std::min(lo_y, corner.y);
        hi_y = std::max(hi_y, corner.y);
    }
    const double reach = std::max({hi_x - lo_x, hi_y - lo_y, 60.0});
    PlotScale scale;
    scale.box = box;
    scale.mm_per_dp = 1.4 * reach / box.height();
    scale.x0 = 0.5 * (lo_x + hi_x) - 0.5 * scale.mm_per_dp * box.width();
    scale.y0 = 0.5 * (lo_y + hi_y) - 0.5 * scale.mm_per_dp * box.height();
    return scale;
}

/// The line below which both sensors may be on at once.
void draw_separation(const HeadAssessment& head, const PlotScale& scale, DrawingList& list) {
    const double right = scale.x0 + scale.mm_per_dp * scale.box.width();
    const Vec ends[] = {scale.at(scale.x0, scale.x0 + head.allowed.least_gap),
                        scale.at(right, right + head.allowed.least_gap)};
    const Vec below[] = {ends[0], ends[1], {ends[1].x, scale.box.y1 + 4000.0f},
                         {ends[0].x, scale.box.y1 + 4000.0f}};
    list.hatch(below, 4, paint(Role::stop, 110), 0.785f, 9.0f, 1.0f);
    list.line(ends, 2, paint(Role::stop), 1.6f);
}

} // namespace

void allowed_plot(const Model& model, const HeadAssessment& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    const Head& set = *find_head(*model.job, head.head);
    const TypeStyle small{TypeSize::small, false};
    const float line = canvas.type().height(small);
    rows.text(*Passing(together({"↑ ", canvas.word(Word::machine_stop)})), small, Role::soft_ink, 2.0f);
    const Box box = rows.next(std::min(220.0f, rows.width * 0.6f), 2.0f);
    const PlotScale scale = scale_of(head, set.stops, box);
    list.round(box, 8.0f, paint(Role::paper));
    list.push_clip(box);
    Vec corners[6];
    for (int i = 0; i < head.allowed.corner_count; ++i) {
        const Point corner = head.allowed.corners[static_cast<std::size_t>(i)];
        corners[i] = scale.at(corner.x, corner.y);
    }
    draw_separation(head, scale, list);
    list.fill(corners, head.allowed.corner_count, paint(Role::covered));
    list.loop(corners, head.allowed.corner_count, paint(Role::fit), 1.8f);
    if (head.shortest) {
        const Vec best = scale.at(head.shortest->operator_side, head.shortest->machine_side);
        list.circle(best, 7.0f, paint(Role::fit), 2.2f);
    }
    const Vec now = scale.at(set.stops.operator_side, set.stops.machine_side);
    list.disc(now, 9.0f, paint(verdict_role(head)));
    list.circle(now, 9.0f, paint(Role::paper), 1.5f);
    list.pop_clip();
    list.ring(box, 8.0f, paint(Role::edge), 1.2f);
    // The whole plot is the handle: a point of 9 dp would be too small for a glove.
    Thing& thing = list.thing("plot/now", ThingRole::image, around(now, 60.0f, 60.0f));
    thing.label.assign(canvas.word(Word::allowed_stops));
    put(thing.value, together({format_ruler(model.job->press.ruler, set.stops.operator_side), ", ",
                               format_ruler(model.job->press.ruler, set.stops.machine_side)}));
    thing.hold = canvas.hold(HoldPlot{head.head, box, scale.mm_per_dp});
    const Passing across(together({canvas.word(Word::operator_stop), " →"}));
    list.text({box.x1 - canvas.type().width(small, across), rows.y}, across, small, Role::soft_ink, rows.on);
    rows.space(line + 6.0f);
    if (head.allowed.empty() && head.conflict) {
        rows.text(conflict_text(canvas.language(), model.state->looks.units, *head.conflict));
        if (head.change)
            rows.text(change_text(canvas.language(), model.state->looks.units, *head.change),
                       {TypeSize::body, true});
        return;
    }
    rows.text(canvas.word(Word::plot_hint), small, Role::soft_ink, 10.0f);
}

} // namespace carriageway
