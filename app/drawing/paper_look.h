// The theme on paper: white paper, black ink.
//
// In colour a sheet has the light theme's hues. In black nothing but greys is left, so what hues
// say on the screen has to be said by hatching, shape and word as well, which everything drawn
// does.
#pragma once

#include <cstdint>

#include "app/drawing/drawing_list.h"

namespace carriageway {

enum class PaperLook : std::uint8_t { colour, black };

/// 0xRRGGBB of a role on paper. In black: a grey.
std::uint32_t paper_colour(PaperLook look, Role role);

/// The same of what a mark is painted with. An ink of the job keeps its colour; in black it becomes
/// the grey of the same luminance.
std::uint32_t paper_colour(PaperLook look, const Paint& paint);

} // namespace carriageway
