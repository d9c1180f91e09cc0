// The colours of the program, by what they are for.
//
// Views name a role; a painter looks it up for the light or the dark theme. Hues start from the
// Okabe-Ito palette (eight colours told apart by colour-blind readers) and are darkened or lightened
// until each pair in use reaches its contrast (WCAG 2.2, 1.4.3 and 1.4.11): a test checks them.
#pragma once

#include <cstdint>

namespace carriageway {

/// `projector`: for a class, with more contrast than a light room takes away.
enum class Theme { light, dark, projector };

/// What a colour is for.
enum class Role : std::uint8_t {
    paper,       ///< behind the diagram
    panel,       ///< behind lists and sheets
    card,        ///< behind one finding or one job
    edge,        ///< hairlines and outlines of panels
    quiet,       ///< fill of quiet buttons and of the chosen place
    ink,         ///< text
    soft_ink,    ///< text of lesser weight
    strong,      ///< fill of the button that does the thing
    on_strong,   ///< text on it
    focus,       ///< ring round what the keyboard would act on
    frame,       ///< screen frame
    on_frame,    ///< text on the frame
    mesh,        ///< inside the frame
    platen,      ///< under the screen
    station,     ///< platens without a head
    image,       ///< the image's outline
    squeegee,    ///< band, hatching and words of the squeegee
    flood,       ///< the same of the flood bar
    covered,     ///< where both pass: a calm fill
    covered_ink, ///< words on it
    stop,        ///< what must be mended: missed image, limits broken
    stop_fill,   ///< fill of missed image
    mind,        ///< what costs time or margin
    fit,         ///< what is right
    lamp_on,
    lamp_off,
    rail,        ///< the arm's rail
    allowed,     ///< where a held stop may stand
    shade,       ///< over what can't be used while something lies above it
    count,
};

/// 0xRRGGBB of a role.
std::uint32_t colour_of(Theme theme, Role role);

/// Contrast ratio of two colours 0xRRGGBB, 1 to 21 (WCAG 2.2, definition of contrast ratio).
double contrast(std::uint32_t a, std::uint32_t b);

/// Relative luminance, 0 to 1 (WCAG 2.2).
double luminance(std::uint32_t colour);

} // namespace carriageway
