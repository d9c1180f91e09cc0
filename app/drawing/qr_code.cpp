#include "app/drawing/qr_code.h"

#include <qrcodegen.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace carriageway {

namespace {

float modules_across(const QrCode& code) { return static_cast<float>(code.side + 2 * quiet_modules); }

/// What version 40 holds in byte mode at level L (ISO/IEC 18004, table 7).
constexpr std::size_t most_bytes = 2953;

} // namespace

std::optional<QrCode> qr_code(std::string_view text) {
    using Code = qrcodegen::QrCode;
    if (text.size() > most_bytes) return std::nullopt;
    const std::vector<std::uint8_t> bytes(text.begin(), text.end());
    const Code made = Code::encodeSegments({qrcodegen::QrSegment::makeBytes(bytes)}, Code::Ecc::LOW);
    QrCode code;
    code.side = made.getSize();
    code.dark.reserve(static_cast<std::size_t>(code.side * code.side));
    for (int y = 0; y < code.side; ++y)
        for (int x = 0; x < code.side; ++x) code.dark.push_back(made.getModule(x, y));
    return code;
}

float qr_code_side(const QrCode& code, float room, float pixels_per_dp) {
    const float pixel = 1.0f / std::max(0.1f, pixels_per_dp);
    // A little more than the room counts as the room: it came out of sums of the same sizes.
    const float pixels = std::floor(room / (modules_across(code) * pixel) + 0.001f);
    return std::max(1.0f, pixels) * pixel * modules_across(code);
}

void draw_qr_code(const QrCode& code, Box box, float pixels_per_dp, DrawingList& list) {
    const float side = qr_code_side(code, std::min(box.width(), box.height()), pixels_per_dp);
    const float module = side / modules_across(code);
    const float pixel = 1.0f / std::max(0.1f, pixels_per_dp);
    const auto on_pixel = [&](float at) { return std::round(at / pixel) * pixel; };
    const float x0 = on_pixel(box.centre().x - 0.5f * side), y0 = on_pixel(box.centre().y - 0.5f * side);
    for (int y = 0; y < code.side; ++y) {
        const float top = y0 + module * static_cast<float>(y + quiet_modules);
        for (int x = 0; x < code.side; ++x) {
            if (!code.dark_at(x, y)) continue;
            const int first = x;
            while (x < code.side && code.dark_at(x, y)) ++x;
            const float left = x0 + module * static_cast<float>(first + quiet_modules);
            const float right = x0 + module * static_cast<float>(x + quiet_modules);
            list.round({left, top, right, top + module}, 0.0f, own_colour(0x000000));
        }
    }
}

} // namespace carriageway
