#include "app/drawing/register_layer.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "app/drawing/register_numbers.h"

namespace carriageway {

namespace {

constexpr float longest_arrow = 40.0f; ///< dp
constexpr float dial_radius = 13.0f;         ///< of the arrow round an adjuster
constexpr float adjuster_radius = dial_radius + 6.0f;
constexpr float adjuster_room = 2.0f * adjuster_radius + 2.0f; ///< that words keep clear of
constexpr float adjuster_words = 3.0f;                         ///< from an adjuster to its words

void fill(DrawingList& list, const RegisterScale& scale, const Rect& rect, Paint colour) {
    if (rect.empty()) return;
    const Vec corners[] = {scale.to({rect.left, rect.lo}), scale.to({rect.right, rect.lo}),
                           scale.to({rect.right, rect.hi}), scale.to({rect.left, rect.hi})};
    list.fill(corners, 4, colour);
}

Box box_of(const RegisterScale& scale, const Rect& rect) {
    const Vec a = scale.to({rect.left, rect.hi}), b = scale.to({rect.right, rect.lo});
    return {a.x, a.y, b.x, b.y};
}

void draw_screen(const RegisterDrawing& drawing, DrawingList& list) {
    const Screen& screen = drawing.head->screen;
    list.round(box_of(drawing.scale, frame_of(screen)), 4.0f, paint(Role::frame));
    const Rect opening = opening_of(screen), platen = rect_of(drawing.job->platen);
    fill(list, drawing.scale, opening, paint(Role::mesh));
    fill(list, drawing.scale,
         {std::max(platen.left, opening.left), std::min(platen.right, opening.right),
          std::max(platen.lo, opening.lo), std::min(platen.hi, opening.hi)},
         paint(Role::platen));
    Outline image;
    place_image(drawing.head->image, image);
    std::vector<Vec> corners;
    for (const Point& corner : image) corners.push_back(drawing.scale.to(corner));
    list.loop(corners.data(), static_cast<int>(corners.size()), paint(Role::image), 1.6f);
}

void draw_mark(const RegisterDrawing& drawing, DrawingList& list, std::size_t index,
               double factor) {
    constexpr float size = 20.0f, chosen_disc = 15.0f, thin = 1.6f, thick = 2.4f;
    constexpr float arrow_width = 2.6f, predicted_radius = 4.5f, predicted_width = 2.0f;
    const MarkReading& mark = drawing.round->marks[index];
    const Vec at = drawing.scale.to(mark.nominal);
    const bool chosen = static_cast<int>(index) == drawing.chosen_mark;
    if (chosen) list.disc(at, chosen_disc, paint(Role::focus, 60));
    draw_register_mark(list, at, size, paint(Role::ink), chosen ? thick : thin);
    if (!drawing.result->read) return;
    draw_arrow(list, at, tip_of(drawing, mark, error_of(mark), factor), paint(Role::stop),
               arrow_width);
    const Advice* advice =
        drawing.result->advice ? std::get_if<Advice>(&*drawing.result->advice) : nullptr;
    if (advice && !advice->settled && index < advice->predicted.size())
        list.circle(tip_of(drawing, mark, advice->predicted[index], factor), predicted_radius,
                    paint(Role::fit), predicted_width);
}

void draw_marks(const RegisterDrawing& drawing, DrawingList& list, LabelPlacer& labels) {
    constexpr float mark_room = 22.0f, tip_room = 12.0f;
    const std::vector<MarkReading>& marks = drawing.round->marks;
    const double factor = exaggeration(*drawing.round, drawing.scale);
    for (const MarkReading& mark : marks) {
        labels.take(around(drawing.scale.to(mark.nominal), mark_room, mark_room));
        labels.take(around(tip_of(drawing, mark, error_of(mark), factor), tip_room, tip_room));
    }
    for (std::size_t i = 0; i < marks.size(); ++i) draw_mark(drawing, list, i, factor);
    number_marks(drawing, factor, labels, list);
}

/// A curved arrow round a screw: the way to turn it as seen from above.
void draw_turn(DrawingList& list, Vec centre, bool clockwise, Paint colour) {
    // Screen angles grow clockwise, as y grows downward.
    const float from = clockwise ? -2.4f : -0.75f, by = clockwise ? 4.3f : -4.3f;
    std::array<Vec, 25> points;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const float a = from + by * static_cast<float>(i) / static_cast<float>(points.size() - 1);
        points[i] = {centre.x + dial_radius * std::cos(a), centre.y + dial_radius * std::sin(a)};
    }
    list.line(points.data(), static_cast<int>(points.size()), colour, 2.6f);
    const float end = from + by, turn = clockwise ? 1.0f : -1.0f;
    const Vec out{std::cos(end), std::sin(end)}, on{-turn * out.y, turn * out.x};
    const Vec tip = points.back() + on * 6.0f;
    const Vec head[] = {tip, points.back() + out * 5.5f, points.back() - out * 5.5f};
    list.fill(head, 3, colour);
}

void draw_adjusters(const RegisterDrawing& drawing, DrawingList& list, LabelPlacer& labels) {
    const Advice* advice = nullptr;
    if (drawing.result->read && drawing.result->advice)
        advice = std::get_if<Advice>(&*drawing.result->advice);
    const std::vector<Adjuster>& adjusters = drawing.job->press.adjusters;
    for (const Adjuster& adjuster : adjusters)
        labels.take(
            around(drawing.scale.to({adjuster.x, adjuster.y}), adjuster_room, adjuster_room));
    for (std::size_t i = 0; i < adjusters.size(); ++i) {
        const Adjuster& adjuster = adjusters[i];
        const Vec at = drawing.scale.to({adjuster.x, adjuster.y});
        const int marks = advice && i < advice->screws.size() ? advice->screws[i].graduations : 0;
        list.disc(at, adjuster_radius, paint(Role::panel));
        list.circle(at, adjuster_radius, paint(Role::edge), 1.2f);
        list.disc(at, 4.0f, paint(Role::ink));
        if (marks != 0) draw_turn(list, at, marks > 0, paint(Role::squeegee));
        const std::string turns = turns_fraction(marks, adjuster.graduations);
        const std::string words = advice ? adjuster.name + " " + turns : adjuster.name;
        // Above a screw at the machine's side, below one at the operator's.
        const float h = list.type().height(small_bold_text);
        const float out =
            (adjuster.y >= 0.0 ? -1.0f : 1.0f) * (adjuster_radius + adjuster_words + 0.5f * h);
        for (const std::string& text : {words, turns}) {
            const float w = list.type().width(small_bold_text, text) + words_air;
            const float room = drawing.view.x1 - 0.5f * w - 2.0f;
            const float x =
                std::clamp(at.x, std::min(room, drawing.view.x0 + 0.5f * w + 2.0f), room);
            const Box box = around({x, at.y + out}, w, h);
            if (!labels.place(box)) continue;
            list.text_centred(box.centre(), text, small_bold_text, Role::ink, Role::paper);
            break;
        }
    }
}

} // namespace

RegisterScale register_scale(const PressProfile& press, const Head& head, Box view,
                             const TypeMeasure& type) {
    Rect all = frame_of(head.screen);
    for (const Adjuster& adjuster : press.adjusters) {
        all.left = std::min(all.left, adjuster.x);
        all.right = std::max(all.right, adjuster.x);
        all.lo = std::min(all.lo, adjuster.y);
        all.hi = std::max(all.hi, adjuster.y);
    }
    const float room = dial_radius + 10.0f,
                words = press.adjusters.empty() ? 0.0f : type.height(small_bold_text);
    const Box inside{view.x0 + room, view.y0 + room + words, view.x1 - room,
                     view.y1 - room - words};
    RegisterScale scale;
    scale.dp_per_mm = std::max(0.02f, std::min(inside.width() / static_cast<float>(all.width()),
                                               inside.height() / static_cast<float>(all.length())));
    const Vec middle = inside.centre();
    scale.origin = {middle.x - 0.5f * scale.dp_per_mm * static_cast<float>(all.left + all.right),
                    middle.y + 0.5f * scale.dp_per_mm * static_cast<float>(all.lo + all.hi)};
    return scale;
}

int exaggeration(const MarkRound& round, const RegisterScale& scale) {
    double largest = 0.0;
    for (const MarkReading& mark : round.marks)
        largest = std::max(largest, std::hypot(error_of(mark).x, error_of(mark).y));
    int best = 1;
    if (!(largest > 0.0)) return best;
    for (const int factor : {1, 2, 5, 10, 20, 50, 100, 200})
        if (factor * largest * static_cast<double>(scale.dp_per_mm) <=
            static_cast<double>(longest_arrow))
            best = factor;
    return best;
}

void draw_register_mark(DrawingList& list, Vec centre, float size, Paint colour, float width) {
    const float arm = 0.5f * size;
    const Vec across[] = {{centre.x - arm, centre.y}, {centre.x + arm, centre.y}};
    const Vec along[] = {{centre.x, centre.y - arm}, {centre.x, centre.y + arm}};
    list.line(across, 2, colour, width);
    list.line(along, 2, colour, width);
    list.circle(centre, 0.62f * arm, colour, width);
}

void draw_arrow(DrawingList& list, Vec from, Vec to, Paint colour, float width) {
    const Vec by = to - from;
    const float all = length(by), head = 9.0f;
    if (all < head) return list.disc(to, 3.0f, colour);
    const Vec on = by * (1.0f / all), side{-on.y, on.x};
    const Vec neck = to - on * head;
    const Vec shaft[] = {from, neck};
    list.line(shaft, 2, colour, width);
    const Vec tip[] = {to, neck + side * 5.0f, neck - side * 5.0f};
    list.fill(tip, 3, colour);
}

void draw_register(const RegisterDrawing& drawing, DrawingList& list) {
    list.push_clip(drawing.view);
    LabelPlacer labels(drawing.view);
    draw_screen(drawing, list);
    draw_adjusters(drawing, list, labels);
    draw_marks(drawing, list, labels);
    const Rect frame = frame_of(drawing.head->screen);
    const float h = list.type().height(small_text);
    const auto side = [&](double y, float by, Word key) {
        const std::string words(word(drawing.language, key));
        const Vec at = drawing.scale.to({0.0, y}) + Vec{0.0f, by};
        const Box box = around(at, list.type().width(small_text, words) + 8.0f, h);
        if (labels.place(box))
            list.text_centred(at, words, small_text, Role::soft_ink, Role::paper);
    };
    side(frame.hi, -0.5f * h - 4.0f, Word::reg_toward_machine);
    side(frame.lo, 0.5f * h + 4.0f, Word::reg_toward_operator);
    list.pop_clip();
}

} // namespace carriageway
