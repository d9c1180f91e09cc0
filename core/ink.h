// Ink for a print and for a run.
//
// A film in µm is the same as cm³ per m². Areas mm², volumes cm³.
#pragma once

#include <optional>

namespace carriageway {

/// Wet film, µm: what the mesh holds (theoretical ink volume, cm³/m²) and what the stencil's
/// build-up (µm above the mesh on the garment's side, not negative) adds (thick-film handbook). Bad
/// numbers: 0.
double wet_film(double mesh_volume, double stencil_build_up);

/// What one head prints, and how.
struct InkUse {
    double film = 0.0;          ///< wet film, µm, as from wet_film
    double image_area = 0.0;    ///< mm²
    double printed_share = 1.0; ///< of the image's area that is open in the stencil, 0 to 1
    int strokes = 1;            ///< print strokes a piece, at least 1
    double later_stroke = 0.6;  ///< what each stroke after the first gives of it, 0 to 1; ours
    double transfer = 1.0;      ///< share of the mesh's ink that goes onto the garment, 0 to 1;
                                ///< ours: all of it, so that ink is not bought short
    long pieces = 0;            ///< not negative
    double screen_load = 150.0; ///< cm³ that must lie in the screen to print at all; ours: weigh it
    double waste = 0.05;        ///< share of the printed ink that is lost besides; ours
};

/// Ink for a run, cm³.
struct InkNeed {
    double per_piece = 0.0;
    double printed = 0.0;   ///< per_piece times pieces
    double in_screen = 0.0; ///< mostly left over at the end
    double wasted = 0.0;
    double total() const { return printed + in_screen + wasted; }
};

/// Works out the ink. Nothing for negative or not finite numbers, shares above 1 (waste may be
/// more), or no stroke. A run of no pieces needs no ink, in the screen neither.
std::optional<InkNeed> ink_need(const InkUse& use);

} // namespace carriageway
