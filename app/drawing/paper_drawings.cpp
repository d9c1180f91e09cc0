// The diagram on paper: drawn by the layers that draw it on the screen, then put down in black and
// greys.
#include <cmath>

#include "app/drawing/diagram.h"
#include "app/drawing/paper_look.h"
#include "app/drawing/paper_parts.h"

namespace carriageway {

namespace {

constexpr float dimension_room = 76.0f; ///< left of a frame, for the image's length
constexpr float dimension_line = 13.0f; ///< from the frame to a dimension line

/// Hatching of the two bands crosses: the flood's is lighter, so that one can be followed.
std::uint32_t grey_of(Role role) {
    return role == Role::flood ? 0x767676u : paper_colour(PaperLook::black, role);
}

Paint on_paper(const Paint& from) {
    if (from.own) return from;
    Paint to = own_colour(grey_of(from.role));
    to.alpha = from.alpha;
    return to;
}

void put_mark(const DrawingList& drawing, const Mark& mark, DrawingList& list) {
    const Vec* points = drawing.points(mark);
    const int count = static_cast<int>(mark.count);
    const Paint colour = on_paper(mark.colour);
    switch (mark.kind) {
    case MarkKind::fill: return list.fill(points, count, colour);
    case MarkKind::line: return list.line(points, count, colour, mark.width);
    case MarkKind::loop: return list.loop(points, count, colour, mark.width);
    case MarkKind::hatch:
        return list.hatch(points, count, colour, mark.angle, mark.spacing, mark.width, mark.phase);
    case MarkKind::round:
        return list.round({points[0].x, points[0].y, points[1].x, points[1].y}, mark.radius,
                          colour);
    case MarkKind::ring:
        return list.ring({points[0].x, points[0].y, points[1].x, points[1].y}, mark.radius, colour,
                         mark.width);
    case MarkKind::disc: return list.disc(points[0], mark.radius, colour);
    case MarkKind::circle: return list.circle(points[0], mark.radius, colour, mark.width);
    case MarkKind::text:
        list.text(points[0], drawing.words(mark), mark.style,
                  mark.colour.role == Role::soft_ink ? Role::soft_ink : Role::ink, Role::paper);
    }
}

DiagramInput input_of(const PaperJob& sheet, Box view) {
    DiagramInput input;
    input.job = &sheet.job;
    input.assessment = sheet.request.assessment;
    input.projection.view = view;
    input.with_handles = false;
    input.language = sheet.language;
    input.units = sheet.units;
    return input;
}

/// A line with a bar at each end, between two points that lie across or along the page.
void dimension(Vec from, Vec to, DrawingList& list) {
    const Vec ends[] = {from, to};
    list.line(ends, 2, paint(Role::ink), 1.0f);
    const Vec tick = from.x == to.x ? Vec{5.0f, 0.0f} : Vec{0.0f, 5.0f};
    for (const Vec end : ends) {
        const Vec bar[] = {end - tick, end + tick};
        list.line(bar, 2, paint(Role::ink), 1.0f);
    }
}

/// The image's size outside the frame: its width below, its length at the left.
void draw_dimensions(const PaperJob& sheet, const HeadView& view, DrawingList& list) {
    const Rect& image = view.assessed->image_bounds;
    const Screen& screen = view.head->screen;
    const Vec corner = view.to(-0.5 * screen.across, -0.5 * screen.along);
    const float height = list.type().height(small_text);
    const float below = corner.y + dimension_line, beside = corner.x - dimension_line;
    const Vec left = view.to(image.left, image.lo), right = view.to(image.right, image.hi);
    dimension({left.x, below}, {right.x, below}, list);
    list.text_centred({0.5f * (left.x + right.x), below + 6.0f + 0.5f * height},
                      format_length(image.width(), sheet.units), small_text, Role::ink,
                      Role::paper);
    dimension({beside, right.y}, {beside, left.y}, list);
    const std::string length = format_length(image.hi - image.lo, sheet.units);
    list.text({beside - 8.0f - list.type().width(small_text, length),
               0.5f * (left.y + right.y) - 0.5f * height},
              length, small_text, Role::ink, Role::paper);
}

/// How many times smaller than it is a head is drawn so that it fits: whole, so that a rule can be
/// laid on it.
double times_smaller(double scale) {
    return std::max(1.0, std::ceil(1.0 / (paper_mm_per_dp * scale)));
}

} // namespace

void put_on_paper(const DrawingList& drawing, PaperPages& pages) {
    DrawingList& list = pages.list();
    int clip = -1;
    for (const Mark& mark : drawing.marks()) {
        if (mark.clip != clip) {
            if (clip >= 0) list.pop_clip();
            clip = mark.clip;
            list.push_clip(drawing.clip_box(clip));
        }
        put_mark(drawing, mark, list);
    }
    if (clip >= 0) list.pop_clip();
}

void press_drawing(const PaperJob& sheet, Box box, PaperPages& pages) {
    constexpr float label_room = 58.0f;
    const PaperScale labels(pages.type(), 0.92f);
    DiagramInput input = input_of(sheet, box);
    input.projection.camera = camera_for_press(sheet.job.press, box, label_room);
    DrawingList drawing;
    drawing.begin(pages.list().window(), pages.type());
    DiagramThings things;
    draw_diagram(input, drawing, things);
    put_on_paper(drawing, pages);
}

HeadDrawing head_drawing(const PaperJob& sheet, const Head& head, Box box, PaperPages& pages) {
    const float below = dimension_line + 10.0f + pages.type().height(small_text);
    const Box room{box.x0 + dimension_room, box.y0, box.x1, box.y1 - below};
    DiagramInput input = input_of(sheet, room);
    Camera& camera = input.projection.camera;
    camera = camera_for_head(sheet.job, head, room, rail_room);
    const double times = times_smaller(camera.scale);
    camera.scale = 1.0 / (paper_mm_per_dp * times);
    const HeadPlace place = place_of_station(sheet.job.press, head.station);
    camera.centre = place.to_press({0.5 * rail_room / camera.scale, 0.0});
    // Only as high as the frame.
    input.projection.view.y1 =
        std::min(room.y1, room.y0 + input.projection.size(head.screen.along) + 12.0f);
    input.chosen = head.id;
    HeadView view;
    view.head = &head;
    view.assessed = &sheet.assessed(head);
    view.aim(input.projection, place);

    DrawingList drawing;
    drawing.begin(pages.list().window(), pages.type());
    drawing.push_clip(input.projection.view);
    LabelPlacer labels(input.projection.view.inset(2.0f));
    DiagramThings things;
    draw_head(input, view, drawing);
    draw_carriage(input, view, drawing);
    draw_rail(input, view, drawing, labels, things);
    draw_head_labels(input, view, drawing, labels);
    drawing.pop_clip();
    draw_dimensions(sheet, view, drawing);
    put_on_paper(drawing, pages);
    return {times, input.projection.view.y1 + below};
}

void code_drawing(const QrCode& code, Box box, PaperPages& pages) {
    const float module = std::min(box.width(), box.height()) /
                         static_cast<float>(code.side + 2 * quiet_modules);
    const auto at = [&](int modules) {
        return module * static_cast<float>(modules + quiet_modules);
    };
    for (int y = 0; y < code.side; ++y)
        for (int x = 0; x < code.side; ++x) {
            if (!code.dark_at(x, y)) continue;
            const int first = x;
            while (x < code.side && code.dark_at(x, y)) ++x;
            const float top = box.y0 + at(y), bottom = box.y0 + at(y + 1);
            const Vec corners[] = {{box.x0 + at(first), top}, {box.x0 + at(x), top},
                                   {box.x0 + at(x), bottom}, {box.x0 + at(first), bottom}};
            pages.list().fill(corners, 4, own_colour(0x000000));
        }
}

} // namespace carriageway
