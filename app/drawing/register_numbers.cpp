#include "app/drawing/register_numbers.h"

#include <algorithm>
#include <array>
#include <vector>

namespace carriageway {

namespace {

/// What lies behind a place, for words on it.
Role ground_at(const RegisterDrawing& drawing, Vec at) {
    const Rect opening = opening_of(drawing.head->screen);
    const Rect platen = rect_of(drawing.job->platen);
    const Point p = drawing.scale.from(at);
    const auto in = [&](const Rect& r) {
        return p.x > r.left && p.x < r.right && p.y > r.lo && p.y < r.hi;
    };
    if (in(opening)) return in(platen) ? Role::platen : Role::mesh;
    return in(frame_of(drawing.head->screen)) ? Role::frame : Role::paper;
}

/// Whether all of a box lies on one ground.
bool on_one_ground(const RegisterDrawing& drawing, const Box& box) {
    const Role role = ground_at(drawing, {box.x0, box.y0});
    return role != Role::frame && role == ground_at(drawing, {box.x1, box.y0}) &&
           role == ground_at(drawing, {box.x0, box.y1}) &&
           role == ground_at(drawing, {box.x1, box.y1});
}

/// A line from one point to another, dp.
struct Stroke {
    Vec from, to;
};

/// Whether a stroke passes through a box: what is left of it between the box's sides.
bool passes(const Stroke& stroke, const Box& box) {
    float first = 0.0f, last = 1.0f;
    const auto cut = [&](float from, float by, float low, float high) {
        if (by == 0.0f) {
            if (from < low || from > high) last = -1.0f;
            return;
        }
        const float a = (low - from) / by, b = (high - from) / by;
        first = std::max(first, std::min(a, b));
        last = std::min(last, std::max(a, b));
    };
    cut(stroke.from.x, stroke.to.x - stroke.from.x, box.x0, box.x1);
    cut(stroke.from.y, stroke.to.y - stroke.from.y, box.y0, box.y1);
    return first <= last;
}

/// The image's outline and the arrows of the marks.
std::vector<Stroke> strokes_of(const RegisterDrawing& drawing, double factor) {
    std::vector<Stroke> strokes;
    Outline image;
    place_image(drawing.head->image, image);
    for (std::size_t i = 0; i < image.size(); ++i)
        strokes.push_back(
            {drawing.scale.to(image[i]), drawing.scale.to(image[(i + 1) % image.size()])});
    if (drawing.result->read)
        for (const MarkReading& mark : drawing.round->marks)
            strokes.push_back(
                {drawing.scale.to(mark.nominal), tip_of(drawing, mark, error_of(mark), factor)});
    return strokes;
}

/// Boxes of a size round a mark, near ones first and of these the ones that lie outward first.
std::vector<Box> places_round(Vec at, Vec outward, float width, float height) {
    constexpr float near = 13.0f, farther = 24.0f;
    std::vector<Box> places;
    for (const float out : {near, farther}) {
        const float x = out + 0.5f * width, y = out + 0.5f * height;
        std::array<Vec, 8> ways{{{0.0f, -y}, {0.0f, y}, {x, 0.0f}, {-x, 0.0f},
                                 {x, -out}, {-x, -out}, {x, out}, {-x, out}}};
        const auto share = [&](Vec by) {
            return (by.x * outward.x + by.y * outward.y) / length(by);
        };
        std::stable_sort(ways.begin(), ways.end(),
                         [&](Vec a, Vec b) { return share(a) > share(b); });
        for (const Vec& by : ways) places.push_back(around(at + by, width, height));
    }
    return places;
}

/// Writes a mark's number beside it, away from the other marks, so that no two read as one: clear
/// of every stroke, else on a ground of its own over what lies there.
void number_mark(const RegisterDrawing& drawing, DrawingList& list, LabelPlacer& labels,
                 const std::vector<Stroke>& strokes, Vec at, Vec outward, std::string_view number) {
    constexpr float corner = 4.0f;
    const TypeMeasure& type = list.type();
    const std::vector<Box> places = places_round(
        at, outward, type.width(small_bold_text, number) + words_air, type.height(small_bold_text));
    const auto lies_outward = [&](const Box& box) {
        const Vec by = box.centre() - at;
        return by.x * outward.x + by.y * outward.y >= 0.0f;
    };
    const auto clear = [&](const Box& box) {
        return on_one_ground(drawing, box) &&
               std::none_of(strokes.begin(), strokes.end(),
                            [&](const Stroke& stroke) { return passes(stroke, box); });
    };
    for (const Box& box : places) {
        if (!lies_outward(box) || !clear(box) || !labels.place(box)) continue;
        list.text_centred(box.centre(), number, small_bold_text, Role::ink,
                          ground_at(drawing, box.centre()));
        return;
    }
    for (const bool anywhere : {false, true})
        for (const Box& box : places) {
            if (!(anywhere || lies_outward(box)) || !labels.place(box)) continue;
            list.round(box, corner, paint(Role::panel));
            list.text_centred(box.centre(), number, small_bold_text, Role::ink, Role::panel);
            return;
        }
}

/// The middle of a round's marks on the screen.
Vec middle_of(const RegisterDrawing& drawing) {
    Vec sum;
    for (const MarkReading& mark : drawing.round->marks) sum = sum + drawing.scale.to(mark.nominal);
    return sum * (1.0f / static_cast<float>(std::max<std::size_t>(drawing.round->marks.size(), 1)));
}

} // namespace

void number_marks(const RegisterDrawing& drawing, double factor, LabelPlacer& labels,
                  DrawingList& list) {
    const std::vector<Stroke> strokes = strokes_of(drawing, factor);
    const std::vector<MarkReading>& marks = drawing.round->marks;
    const Vec middle = middle_of(drawing);
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const Vec at = drawing.scale.to(marks[i].nominal);
        number_mark(drawing, list, labels, strokes, at, at - middle, std::to_string(i + 1));
    }
}

} // namespace carriageway
