// Drawings of how a press is measured: clear schemes, to scale where the profile's numbers can be
// shown to scale. A letter stands at each thing that is read, and beside its readings.
#pragma once

#include "app/drawing/drawing_list.h"
#include "core/press.h"

namespace carriageway {

enum class Scheme {
    none,
    bars,     ///< two bars slid together with both lamps: to scale
    gap,      ///< sensor, lamp and the gap to a bar
    stroke,   ///< a carriage and where it comes to stand
    rule,     ///< a distance, or places, along a rule
    holder,   ///< a holder at two angles: to scale
    angle,    ///< a holder and its angle
    gauge,    ///< a gauge at two marks with two heights
    drop,     ///< a blade coming down
    screw,    ///< a dial with turns and a travel
    scatter,  ///< one place read again and again
    heat,     ///< platen, flash unit, thermometer
    cooling,  ///< temperature over time
    heights,  ///< height points of a frame from above
    cylinder, ///< an air cylinder
};

struct SchemeInput {
    Scheme scheme = Scheme::none;
    const PressProfile* press = nullptr;
    bool flood = false; ///< of holders: the flood bar's
    bool places = false; ///< what is read are places on the arm's ruler, not distances
    bool machine = false; ///< of height points: the machine's side
    int badges = 1;     ///< letters to show, A first
};

/// Draws a scheme into a box, on its own ground. Without a press nothing.
void draw_scheme(const SchemeInput& input, Box box, DrawingList& list);

/// Radius of a letter's disc at this text size, dp.
float badge_radius(const TypeMeasure& type);

/// The letter A for 0, B for 1 and so on, on a disc.
void draw_badge(DrawingList& list, Vec centre, int index);

} // namespace carriageway
