// A text as a QR code (ISO/IEC 18004), for a phone's camera.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "app/drawing/drawing_list.h"

namespace carriageway {

/// The modules of a code, without the quiet zone round it.
struct QrCode {
    int side = 0;            ///< modules across
    std::vector<bool> dark;  ///< row by row from the top left
    bool dark_at(int x, int y) const { return dark[static_cast<std::size_t>(y * side + x)]; }
};

/// Modules of light that a code needs on each side (ISO/IEC 18004, 6.3.8: 4X).
inline constexpr int quiet_modules = 4;

/// The smallest code that holds a text, as bytes, at error correction level L or, where that costs
/// no module, better. Nothing where the text is longer than the largest code holds (2953 bytes).
std::optional<QrCode> qr_code(std::string_view text);

/// Side of the square that a code takes of a room, dp, quiet zone included: modules are whole pixels,
/// so that they are all alike.
float qr_code_side(const QrCode& code, float room, float pixels_per_dp);

/// Draws a code's dark modules in black, as large as the code with its quiet zone fits into the middle
/// of `box`, which must be white already.
void draw_qr_code(const QrCode& code, Box box, float pixels_per_dp, DrawingList& list);

} // namespace carriageway
