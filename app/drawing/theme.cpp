#include "app/drawing/theme.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>

namespace carriageway {

namespace {

struct Tone {
    Role role;
    std::uint32_t light;
    std::uint32_t dark;
    std::uint32_t projector;
};

// In the order of Role. Blue, orange, vermillion, bluish green and reddish purple start from
// Okabe-Ito's 0072B2, E69F00, D55E00, 009E73 and CC79A7; on paper they are darkened until they are
// legible as words, on black the blue is the palette's sky blue 56B4E9.
// A projector adds the light of its room to every colour and so takes contrast away: there words
// have at least 7:1 (WCAG 2.2, 1.4.6), lines and handles 4.5:1, and grounds are white or near it.
constexpr Tone tones[] = {
    {Role::paper, 0xF6F3EC, 0x14181B, 0xFFFFFF},
    {Role::panel, 0xFFFFFF, 0x1E2327, 0xFFFFFF},
    {Role::card, 0xF6F3EC, 0x262C31, 0xFAFAFA},
    {Role::edge, 0x857F73, 0x727D85, 0x4A4A4A},
    {Role::quiet, 0xEAE7DE, 0x2A3137, 0xE6E6E6},
    {Role::ink, 0x1F2428, 0xEEF1F2, 0x000000},
    {Role::soft_ink, 0x545E66, 0xA9B3B9, 0x2E2E2E},
    {Role::strong, 0x1F2428, 0xEEF1F2, 0x000000},
    {Role::on_strong, 0xF6F3EC, 0x14181B, 0xFFFFFF},
    {Role::focus, 0x93336B, 0xE29CC4, 0x7A0050},
    {Role::frame, 0x8B949B, 0x737E86, 0x9C9C9C},
    {Role::on_frame, 0x12171A, 0x0B0E10, 0x000000},
    {Role::mesh, 0xF0EDE5, 0x1B2024, 0xFAFAFA},
    {Role::platen, 0xE6E3DA, 0x23292E, 0xE9E9E9},
    {Role::station, 0xE0DBD1, 0x2A3136, 0xDEDEDE},
    {Role::image, 0x1F2428, 0xEEF1F2, 0x000000},
    {Role::squeegee, 0x00629B, 0x56B4E9, 0x003C86},
    {Role::flood, 0x8B5300, 0xE69F00, 0x693200},
    {Role::covered, 0xCFE6DC, 0x204A40, 0xC2EBD6},
    {Role::covered_ink, 0x00664F, 0x4AD6AC, 0x003D2E},
    {Role::stop, 0xA83600, 0xFF8A4C, 0x8A0F00},
    {Role::stop_fill, 0xF8DDD2, 0x43241A, 0xFFD9CC},
    {Role::mind, 0x6B5200, 0xE8CF5A, 0x4A3A00},
    {Role::fit, 0x00664F, 0x33C79A, 0x003D2E},
    {Role::lamp_on, 0xF0E442, 0xF0E442, 0xFFF04D},
    {Role::lamp_off, 0x3D4449, 0x23292E, 0x2A2A2A},
    {Role::rail, 0xC9C3B5, 0x3D454C, 0xBDBDBD},
    {Role::allowed, 0x00735A, 0x33C79A, 0x003D2E},
    {Role::shade, 0x1F2428, 0x000000, 0x000000},
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < std::size(tones); ++i)
        if (static_cast<std::size_t>(tones[i].role) != i) return false;
    return std::size(tones) == static_cast<std::size_t>(Role::count);
}
static_assert(in_order(), "one tone for each role, in the order of Role");

/// One channel, 0 to 255, as a share of linear light (the transfer curve of sRGB, IEC 61966-2-1).
double linear(std::uint32_t channel) {
    const double share = static_cast<double>(channel & 0xFFu) / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

} // namespace

std::uint32_t colour_of(Theme theme, Role role) {
    const std::size_t index = std::min(static_cast<std::size_t>(role), std::size(tones) - 1);
    switch (theme) {
    case Theme::light: break;
    case Theme::dark: return tones[index].dark;
    case Theme::projector: return tones[index].projector;
    }
    return tones[index].light;
}

double luminance(std::uint32_t colour) {
    return 0.2126 * linear(colour >> 16) + 0.7152 * linear(colour >> 8) + 0.0722 * linear(colour);
}

double contrast(std::uint32_t a, std::uint32_t b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

} // namespace carriageway
