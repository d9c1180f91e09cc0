// Contrast of every pair of colours in use, and the contrast formula itself.
#include "app/drawing/theme.h"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <iterator>
#include <string>

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr Theme themes[] = {Theme::light, Theme::dark, Theme::projector};

// WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (parts of controls and graphics).
constexpr double least_for_text = 4.5;
constexpr double least_for_marks = 3.0;

constexpr Role backgrounds[] = {Role::paper, Role::panel,   Role::card,  Role::quiet,
                                Role::mesh,  Role::station, Role::platen};

std::string named(Theme theme, Role role) {
    const char* name = theme == Theme::light ? "light " : theme == Theme::dark ? "dark " : "projector ";
    return name + std::to_string(static_cast<int>(role));
}

void require_contrast(Theme theme, Role front, Role back, double least) {
    INFO(named(theme, front) << " on " << named(theme, back));
    CHECK(contrast(colour_of(theme, front), colour_of(theme, back)) >= least);
}

struct Pair {
    Role front, back;
};

} // namespace

TEST_CASE("luminance and contrast agree with published values", "[theme]") {
    // WCAG 2.2, definitions of relative luminance and contrast ratio: black on white is 21:1.
    CHECK_THAT(contrast(0x000000, 0xFFFFFF), WithinAbs(21.0, 1e-9));
    CHECK_THAT(luminance(0xFFFFFF), WithinAbs(1.0, 1e-9));
    CHECK_THAT(luminance(0x000000), WithinAbs(0.0, 1e-12));
    // The coefficients of WCAG 2.2's relative luminance, one channel at a time.
    CHECK_THAT(luminance(0xFF0000), WithinAbs(0.2126, 1e-9));
    CHECK_THAT(luminance(0x00FF00), WithinAbs(0.7152, 1e-9));
    CHECK_THAT(luminance(0x0000FF), WithinAbs(0.0722, 1e-9));
    // Ratios computed from that formula and quoted with WCAG: blue on white, blue on red, and the
    // lightest grey that passes 4.5:1 on white next to the first that fails.
    CHECK_THAT(contrast(0x0000FF, 0xFFFFFF), WithinAbs(8.5925, 5e-4));
    CHECK_THAT(contrast(0x0000FF, 0xFF0000), WithinAbs(2.1489, 5e-4));
    CHECK_THAT(contrast(0x767676, 0xFFFFFF), WithinAbs(4.5422, 5e-4));
    CHECK_THAT(contrast(0x777777, 0xFFFFFF), WithinAbs(4.4781, 5e-4));
    CHECK(contrast(0x777777, 0xFFFFFF) < least_for_text);
    // The order of the two colours does not matter.
    CHECK(contrast(0x123456, 0xFEDCBA) == contrast(0xFEDCBA, 0x123456));
}

TEST_CASE("the Okabe-Ito palette has its known contrasts on white", "[theme]") {
    // Colours: M. Okabe and K. Ito, "Color Universal Design", 2002; ratios by WCAG's formula.
    const std::uint32_t palette[] = {0x000000, 0xE69F00, 0x56B4E9, 0x009E73,
                                     0xF0E442, 0x0072B2, 0xD55E00, 0xCC79A7};
    const double on_white[] = {21.00, 2.252, 2.307, 3.421, 1.322, 5.185, 3.867, 3.061};
    for (std::size_t i = 0; i < std::size(palette); ++i) {
        INFO(i);
        CHECK_THAT(contrast(palette[i], 0xFFFFFF), WithinAbs(on_white[i], 5e-4 + 1e-9));
    }
}

TEST_CASE("words can be read on everything that they may stand on", "[theme]") {
    const Role words[] = {Role::ink,  Role::soft_ink, Role::squeegee, Role::flood,
                          Role::stop, Role::mind,     Role::fit};
    const Pair others[] = {
        {Role::on_frame, Role::frame},      {Role::on_strong, Role::strong},
        {Role::covered_ink, Role::covered}, {Role::ink, Role::covered},
        {Role::soft_ink, Role::covered},    {Role::stop, Role::stop_fill},
        {Role::ink, Role::stop_fill},
    };
    for (const Theme theme : themes) {
        for (const Role word : words)
            for (const Role back : backgrounds) require_contrast(theme, word, back, least_for_text);
        for (const Pair& pair : others)
            require_contrast(theme, pair.front, pair.back, least_for_text);
    }
}

TEST_CASE("lines and handles stand out from what is behind them", "[theme]") {
    const Role lines[] = {Role::squeegee, Role::flood,  Role::stop,  Role::image, Role::focus,
                          Role::mind,     Role::strong, Role::allowed, Role::edge};
    const Role under[] = {Role::paper, Role::panel, Role::card, Role::quiet, Role::mesh,
                          Role::platen};
    const Pair others[] = {
        {Role::squeegee, Role::covered}, {Role::squeegee, Role::stop_fill},
        {Role::flood, Role::covered},    {Role::flood, Role::stop_fill},
        {Role::stop, Role::covered},     {Role::stop, Role::rail},
        {Role::image, Role::covered},    {Role::image, Role::stop_fill},
        {Role::focus, Role::covered},    {Role::focus, Role::station},
        {Role::ink, Role::rail},         {Role::allowed, Role::rail},
        {Role::lamp_on, Role::lamp_off}, {Role::lamp_off, Role::frame},
        {Role::on_frame, Role::lamp_on}, {Role::strong, Role::rail},
    };
    for (const Theme theme : themes) {
        for (const Role line : lines)
            for (const Role back : under) require_contrast(theme, line, back, least_for_marks);
        for (const Pair& pair : others)
            require_contrast(theme, pair.front, pair.back, least_for_marks);
    }
}

TEST_CASE("a light theme is light and a dark one dark", "[theme]") {
    for (const Role back : backgrounds) {
        CHECK(luminance(colour_of(Theme::light, back)) > 0.6);
        CHECK(luminance(colour_of(Theme::dark, back)) < 0.05);
    }
}

TEST_CASE("the themes differ where a role's meaning has to be seen on its own ground", "[theme]") {
    for (int role = 0; role < static_cast<int>(Role::count); ++role) {
        const Role each = static_cast<Role>(role);
        for (const Theme theme : themes) CHECK(colour_of(theme, each) <= 0xFFFFFFu);
        if (each != Role::lamp_on)
            CHECK(colour_of(Theme::light, each) != colour_of(Theme::dark, each));
    }
}
