#include "app/drawing/paper_look.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>

namespace carriageway {

namespace {

constexpr std::uint32_t white = 0xFFFFFF, black = 0x000000;

struct Grey {
    Role role;
    std::uint32_t rgb;
};

// In the order of Role. Fills are light, so that little toner is laid and words on them can be
// read; missed image is left white under its hatching, the calm grey is where both bars pass.
constexpr Grey greys[] = {
    {Role::paper, white},       {Role::panel, white},       {Role::card, white},
    {Role::edge, 0x606060},     {Role::quiet, 0xECECEC},    {Role::ink, black},
    {Role::soft_ink, 0x383838}, {Role::strong, black},      {Role::on_strong, white},
    {Role::focus, black},       {Role::frame, 0xC4C4C4},    {Role::on_frame, black},
    {Role::mesh, white},        {Role::platen, 0xF2F2F2},   {Role::station, 0xE8E8E8},
    {Role::image, black},       {Role::squeegee, black},    {Role::flood, black},
    {Role::covered, 0xDCDCDC},  {Role::covered_ink, black}, {Role::stop, black},
    {Role::stop_fill, white},   {Role::mind, black},        {Role::fit, black},
    {Role::lamp_on, white},     {Role::lamp_off, 0x404040}, {Role::rail, 0xCFCFCF},
    {Role::allowed, black},     {Role::shade, black},
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < std::size(greys); ++i)
        if (static_cast<std::size_t>(greys[i].role) != i) return false;
    return std::size(greys) == static_cast<std::size_t>(Role::count);
}
static_assert(in_order(), "one grey for each role, in the order of Role");

/// The grey of a luminance, 0 to 1 (the transfer curve of sRGB, IEC 61966-2-1).
std::uint32_t grey_of(double luminance) {
    const double share =
        luminance <= 0.0031308 ? 12.92 * luminance : 1.055 * std::pow(luminance, 1.0 / 2.4) - 0.055;
    return static_cast<std::uint32_t>(std::lround(255.0 * std::clamp(share, 0.0, 1.0))) * 0x010101u;
}

} // namespace

std::uint32_t paper_colour(PaperLook look, Role role) {
    const std::size_t index = std::min(static_cast<std::size_t>(role), std::size(greys) - 1);
    if (look == PaperLook::black) return greys[index].rgb;
    switch (role) {
        case Role::paper:
        case Role::panel:
        case Role::card:
        case Role::on_strong: return white;
        case Role::ink:
        case Role::strong:
        case Role::image: return black;
        default: return colour_of(Theme::light, role);
    }
}

std::uint32_t paper_colour(PaperLook look, const Paint& paint) {
    if (!paint.own) return paper_colour(look, paint.role);
    const std::uint32_t rgb = paint.rgb & 0xFFFFFFu;
    return look == PaperLook::black ? grey_of(luminance(rgb)) : rgb;
}

} // namespace carriageway
