// One head from above for registration: frame and image to scale, the marks where they belong with
// an arrow to where they printed, and the adjusters with what to turn.
#pragma once

#include "app/drawing/drawing_list.h"
#include "app/drawing/label_placer.h"
#include "app/text/registration_sentences.h"

namespace carriageway {

/// From a head's axes (mm) to the screen (dp): upright, the machine at the top.
struct RegisterScale {
    Vec origin;            ///< of the head's axes
    float dp_per_mm = 1.0f;
    Vec to(const Point& point) const {
        return {origin.x + static_cast<float>(point.x) * dp_per_mm,
                origin.y - static_cast<float>(point.y) * dp_per_mm};
    }
    Point from(Vec at) const {
        return {static_cast<double>((at.x - origin.x) / dp_per_mm),
                static_cast<double>((origin.y - at.y) / dp_per_mm)};
    }
};

struct RegisterDrawing {
    const Job* job = nullptr;
    const Head* head = nullptr;
    const MarkRound* round = nullptr;
    const HeadRegistration* result = nullptr;
    int chosen_mark = -1;
    Language language = Language::english;
    Box view;
    RegisterScale scale;
};

/// The scale at which the frame and its adjusters fit a view.
RegisterScale register_scale(const PressProfile& press, const Head& head, Box view,
                             const TypeMeasure& type);

/// How many times larger errors are drawn than the rest, so that the largest is an arrow of some 40
/// dp: 1, 2, 5, 10, ... Without errors 1.
int exaggeration(const MarkRound& round, const RegisterScale& scale);

/// Draws all of it; adds no things.
void draw_register(const RegisterDrawing& drawing, DrawingList& list);

/// A register mark: a cross in a circle, `size` across.
void draw_register_mark(DrawingList& list, Vec centre, float size, Paint colour, float width);

/// An arrow; shorter than its head it is a dot.
void draw_arrow(DrawingList& list, Vec from, Vec to, Paint colour, float width);

} // namespace carriageway
