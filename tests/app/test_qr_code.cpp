// The code to photograph: of the right form, and read back by a scanner that isn't ours.
#include <catch2/catch_test_macros.hpp>

#include "app/drawing/qr_code.h"
#include "app/records/job_link.h"
#include "tests/app/driver.h"

#if CARRIAGEWAY_SCANNER
#include <zbar.h>
#endif

using namespace carriageway;

TEST_CASE("A code has the form of ISO/IEC 18004: sizes, finders and timing", "[qr]") {
    // Table 1: version v has 17 + 4·v modules across. Table 7, level L, bytes: 17, 32, 53, ... 2953.
    const struct {
        std::size_t bytes;
        int version;
    } rows[] = {{1, 1}, {17, 1}, {18, 2}, {32, 2}, {33, 3}, {53, 3}, {54, 4}, {230, 9}, {231, 10}, {858, 20},
                {859, 21}, {2809, 39}, {2810, 40}, {2953, 40}};
    for (const auto& row : rows) {
        INFO(row.bytes << " bytes");
        const std::optional<QrCode> code = qr_code(std::string(row.bytes, 'x'));
        REQUIRE(code);
        CHECK(code->side == 17 + 4 * row.version);
        REQUIRE(code->dark.size() == static_cast<std::size_t>(code->side * code->side));
        for (const auto& [x0, y0] : {std::pair{0, 0}, std::pair{code->side - 7, 0}, std::pair{0, code->side - 7}})
            for (int y = 0; y < 7; ++y)
                for (int x = 0; x < 7; ++x) {
                    const int ring = std::max(std::abs(x - 3), std::abs(y - 3));
                    CHECK(code->dark_at(x0 + x, y0 + y) == (ring != 2));
                }
        for (int i = 8; i < code->side - 8; ++i) CHECK(code->dark_at(i, 6) == (i % 2 == 0));
    }
    CHECK_FALSE(qr_code(std::string(2954, 'x')));
    CHECK(qr_code(""));
}

#if CARRIAGEWAY_SCANNER

namespace {

/// What zbar reads in a picture.
std::vector<std::string> scanned(const Picture& picture) {
    std::vector<unsigned char> grey;
    for (std::size_t i = 0; i < picture.rgba.size(); i += 4)
        grey.push_back(static_cast<unsigned char>(
            (2 * picture.rgba[i] + 5 * picture.rgba[i + 1] + picture.rgba[i + 2]) / 8));
    zbar::ImageScanner scanner;
    scanner.set_config(zbar::ZBAR_NONE, zbar::ZBAR_CFG_ENABLE, 0);
    scanner.set_config(zbar::ZBAR_QRCODE, zbar::ZBAR_CFG_ENABLE, 1);
    zbar::Image image(static_cast<unsigned>(picture.width), static_cast<unsigned>(picture.height), "Y800",
                      grey.data(), grey.size());
    scanner.scan(image);
    std::vector<std::string> found;
    for (auto symbol = image.symbol_begin(); symbol != image.symbol_end(); ++symbol) found.push_back(symbol->get_data());
    return found;
}

} // namespace

TEST_CASE("The code on the sheet is read back by zbar as the link, at every size and in both themes", "[qr]") {
    const struct {
        WindowSize size;
        float pixels_per_dp;
    } screens[] = {{small_phone, 2.0f}, {small_phone, 3.0f}, {phone, 2.75f}, {{"landscape", 740, 360}, 2.75f},
                   {tablet, 2.0f},      {desktop, 1.0f},     {desktop, 1.5f}};
    for (const auto& screen : screens)
        for (const ThemeChoice theme : {ThemeChoice::light, ThemeChoice::dark}) {
            Driver driver(screen.size, {}, Language::english, screen.pixels_per_dp);
            driver.set_looks(Language::english, 1.0f, theme);
            driver.as_in_a_browser();
            driver.tap("share");
            driver.reveal("share/code");
            driver.picture(std::string("code ") + screen.size.name + " " +
                           std::to_string(static_cast<int>(screen.pixels_per_dp * 100)) +
                           (theme == ThemeChoice::dark ? " dark" : ""));
            const std::vector<std::string> found = scanned(driver.painted());
            INFO(screen.size.name << " at " << screen.pixels_per_dp);
            REQUIRE(found.size() == 1);
            CHECK(found.front() == "https://example.org/carriageway/#" + job_link_fragment(driver.session().job()));
            const ReadJob read = read_job_link(found.front());
            REQUIRE(read);
            CHECK(*read.job == demo_job());
        }
}

#endif
