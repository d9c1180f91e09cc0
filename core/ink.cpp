#include "core/ink.h"

#include <cmath>

namespace carriageway {

namespace {

/// µm times mm² in cm³.
constexpr double cubic_cm = 1e-6;

bool not_negative(double value) { return std::isfinite(value) && value >= 0.0; }
bool is_share(double value) { return value >= 0.0 && value <= 1.0; }

bool usable(const InkUse& use) {
    return not_negative(use.film) && not_negative(use.image_area) && is_share(use.printed_share) &&
           use.strokes >= 1 && is_share(use.later_stroke) && is_share(use.transfer) &&
           use.pieces >= 0 && not_negative(use.screen_load) && not_negative(use.waste);
}

} // namespace

double wet_film(double mesh_volume, double stencil_build_up) {
    if (!not_negative(mesh_volume) || !not_negative(stencil_build_up)) return 0.0;
    return mesh_volume + stencil_build_up;
}

std::optional<InkNeed> ink_need(const InkUse& use) {
    if (!usable(use)) return std::nullopt;
    const double strokes = 1.0 + (use.strokes - 1) * use.later_stroke;
    InkNeed need;
    need.per_piece =
        cubic_cm * use.film * use.image_area * use.printed_share * strokes * use.transfer;
    if (use.pieces == 0) return need;
    need.printed = need.per_piece * static_cast<double>(use.pieces);
    need.in_screen = use.screen_load;
    need.wasted = need.printed * use.waste;
    return need;
}

} // namespace carriageway
