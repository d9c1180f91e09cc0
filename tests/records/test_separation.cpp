// Separations: every kind of PNG, pictures that are damaged or lie about their size, and pictures
// that others have made.
#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <filesystem>
#include <random>
#include <vector>

#include "app/records/separation.h"
#include "app/text/measure.h"
#include "core/job_check.h"
#include "tests/records/made_png.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using Kind = PictureFault::Kind;

namespace {

constexpr double micrometre = 1e-3;

/// A frame of ink with a hole and white around it, on 64 by 48 pixels: 40 by 30 less 20 by 10.
int frame(int x, int y) {
    const bool in = x >= 10 && x < 50 && y >= 8 && y < 38;
    const bool hole = x >= 20 && x < 40 && y >= 18 && y < 28;
    return in && !hole ? 0 : 255;
}

MadePng framed(int colour_type, int depth, bool interlaced = false) {
    MadePng made;
    made.colour_type = colour_type;
    made.depth = depth;
    made.interlaced = interlaced;
    made.grey = frame;
    made.opacity = nullptr;
    if ((colour_type & PNG_COLOR_MASK_ALPHA) != 0) made.opacity = [](int, int) { return 255; };
    return made;
}

std::string english(const PictureFault& fault) {
    return fault_sentence(Language::english, LengthUnit::mm, fault);
}

/// Whatever the bytes: a separation that core accepts, or a fault with a sentence.
void check_total(const ReadSeparation& read) {
    if (read.separation) {
        CHECK(read.fault.kind == Kind::none);
        CHECK_FALSE(image_fault(read.separation->image));
        CHECK(read.separation->printed_share > 0.0);
        CHECK(read.separation->printed_share <= 1.0);
    } else {
        CHECK(read.fault.kind != Kind::none);
        CHECK_FALSE(english(read.fault).empty());
        CHECK_FALSE(fault_sentence(Language::spanish, LengthUnit::inch, read.fault).empty());
    }
}

struct Form {
    int colour_type;
    int depth;
};
/// Table 11.1 of the PNG specification (third edition): every colour type with every depth.
const std::vector<Form> every_form{
    {PNG_COLOR_TYPE_GRAY, 1},     {PNG_COLOR_TYPE_GRAY, 2},       {PNG_COLOR_TYPE_GRAY, 4},
    {PNG_COLOR_TYPE_GRAY, 8},     {PNG_COLOR_TYPE_GRAY, 16},      {PNG_COLOR_TYPE_RGB, 8},
    {PNG_COLOR_TYPE_RGB, 16},     {PNG_COLOR_TYPE_PALETTE, 1},    {PNG_COLOR_TYPE_PALETTE, 2},
    {PNG_COLOR_TYPE_PALETTE, 4},  {PNG_COLOR_TYPE_PALETTE, 8},    {PNG_COLOR_TYPE_GRAY_ALPHA, 8},
    {PNG_COLOR_TYPE_GRAY_ALPHA, 16}, {PNG_COLOR_TYPE_RGB_ALPHA, 8}, {PNG_COLOR_TYPE_RGB_ALPHA, 16}};

}  // namespace

TEST_CASE("every kind of PNG gives the same separation", "[separation]") {
    for (const Form& form : every_form) {
        for (const bool interlaced : {false, true}) {
            INFO("colour type " << form.colour_type << ", depth " << form.depth << ", interlaced "
                                << interlaced);
            const ReadSeparation read =
                read_separation(made_png(framed(form.colour_type, form.depth, interlaced)));
            INFO(english(read.fault));
            REQUIRE(read);
            const Separation& separation = *read.separation;
            // 254 dots per inch are 10 per mm. The frame: columns 10 to 50 of 64, rows 8 to 38 of
            // 48, from the centre, rows downward.
            CHECK(separation.width == 64);
            CHECK(separation.height == 48);
            CHECK_THAT(separation.across, WithinAbs(6.4, micrometre));
            CHECK_THAT(separation.along, WithinAbs(4.8, micrometre));
            CHECK_THAT(separation.extent.left, WithinAbs(-2.2, micrometre));
            CHECK_THAT(separation.extent.right, WithinAbs(1.8, micrometre));
            CHECK_THAT(separation.extent.hi, WithinAbs(1.6, micrometre));
            CHECK_THAT(separation.extent.lo, WithinAbs(-1.4, micrometre));
            CHECK_THAT(separation.ink_area, WithinAbs(10.0, micrometre));  // 12 less 2
            CHECK_THAT(separation.printed_share, WithinRel(10.0 / 12.0, 1e-9));
            CHECK(separation.image.outline.size() == 4);
            CHECK_FALSE(separation.typed_width);
        }
    }
}

TEST_CASE("what is transparent doesn't print", "[separation]") {
    for (const Form& form : every_form) {
        INFO("colour type " << form.colour_type << ", depth " << form.depth);
        MadePng made = framed(form.colour_type, form.depth);
        // All dark, and opaque to the left only. Without opacity of its own, the darkest colour is
        // the transparent one, so what prints is a shade lighter; of two colours none is.
        if (form.depth < 4) continue;
        made.grey = [](int, int) { return 40; };
        made.opacity = [](int x, int) { return x < 32 ? 255 : 0; };
        const ReadSeparation read = read_separation(made_png(made));
        INFO(english(read.fault));
        REQUIRE(read);
        CHECK_THAT(read.separation->extent.right, WithinAbs(0.0, micrometre));
        CHECK(read.separation->printed_share == 1.0);
    }
    // Half opaque black is lighter than half; a little more is ink.
    MadePng made = framed(PNG_COLOR_TYPE_GRAY_ALPHA, 8);
    made.opacity = [](int, int) { return 127; };
    CHECK(read_separation(made_png(made)).fault.kind == Kind::no_ink);
    made.opacity = [](int, int) { return 128; };
    CHECK(read_separation(made_png(made)));
}

TEST_CASE("a colour prints where its luminance is below half", "[separation]") {
    const auto darkness = [](int red, int green, int blue) {
        const std::uint8_t pixel[] = {static_cast<std::uint8_t>(red), static_cast<std::uint8_t>(green),
                                      static_cast<std::uint8_t>(blue)};
        std::uint8_t out = 0;
        to_darkness(pixel, 3, 1, &out);
        return int{out};
    };
    // Weights 0.2126, 0.7152, 0.0722 (ITU-R BT.709-6, 3.2).
    CHECK(darkness(255, 0, 0) == 255 - 54);
    CHECK(darkness(0, 255, 0) == 255 - 182);
    CHECK(darkness(0, 0, 255) == 255 - 18);
    CHECK(darkness(255, 255, 255) == 0);
    for (int grey = 0; grey < 256; ++grey) CHECK(darkness(grey, grey, grey) == 255 - grey);
}

TEST_CASE("the size is the file's own or typed", "[separation]") {
    MadePng made = framed(PNG_COLOR_TYPE_GRAY, 8);
    made.dots_per_inch = 0.0;
    const ReadSeparation without = read_separation(made_png(made));
    CHECK(without.fault.kind == Kind::no_size);
    CHECK(english(without.fault).find("64 × 48 pixels") != std::string::npos);
    SeparationOptions options;
    options.width = 320.0;  // 5 mm a pixel
    for (const double resolution : {0.0, 300.0}) {
        made.dots_per_inch = resolution;
        const ReadSeparation read = read_separation(made_png(made), options);
        REQUIRE(read);
        CHECK(read.separation->typed_width);
        CHECK_THAT(read.separation->across, WithinAbs(320.0, micrometre));
        CHECK_THAT(read.separation->along, WithinAbs(240.0, micrometre));
        CHECK_THAT(read.separation->extent.right, WithinAbs(90.0, micrometre));
    }
    for (const double width : {-1.0, 0.0, 1e9, 1e-9, static_cast<double>(NAN)}) {
        options.width = width;
        CHECK(read_separation(made_png(made), options).fault.kind == Kind::bad_size);
    }
    // One dot a metre, and a pixel twice as long as wide of unknown size.
    std::string bytes = made_png(framed(PNG_COLOR_TYPE_GRAY, 8));
    const std::size_t at = bytes.find("pHYs") - 4;
    const auto with = [&](std::uint32_t across, std::uint32_t along, char unit) {
        std::string changed = bytes;
        return changed.replace(at, 21, png_chunk("pHYs", four_bytes(across) + four_bytes(along) + unit));
    };
    const ReadSeparation huge = read_separation(with(1, 1, '\x01'));
    CHECK(huge.fault.kind == Kind::bad_size);
    CHECK(huge.fault.across == 64000.0);
    CHECK(read_separation(with(0, 0, '\x01')).fault.kind == Kind::no_size);
    CHECK(read_separation(with(2, 1, '\x00')).fault.kind == Kind::no_size);
    options.width = 64.0;
    const ReadSeparation tall = read_separation(with(2, 1, '\x00'), options);
    REQUIRE(tall);
    CHECK_THAT(tall.separation->along, WithinAbs(96.0, micrometre));
}

TEST_CASE("no ink, specks alone and too little ink are told apart", "[separation]") {
    MadePng made = framed(PNG_COLOR_TYPE_GRAY, 8);
    made.grey = [](int, int) { return 128; };
    CHECK(read_separation(made_png(made)).fault.kind == Kind::no_ink);
    made.grey = [](int x, int y) { return x == 3 && (y == 3 || y == 40) ? 0 : 255; };
    const ReadSeparation specks = read_separation(made_png(made));
    CHECK(specks.fault.kind == Kind::no_ink);
    CHECK(specks.fault.specks == 2);
    CHECK(english(specks.fault).find("2 specks") != std::string::npos);
    made.grey = [](int x, int y) { return x >= 3 && x < 12 && y >= 3 && y < 12 ? 0 : 255; };
    CHECK(read_separation(made_png(made)).fault.kind == Kind::too_little_ink);  // 0.81 mm²
}

TEST_CASE("a picture cut anywhere is refused", "[separation][damage]") {
    for (const bool interlaced : {false, true}) {
        const std::string whole = made_png(framed(PNG_COLOR_TYPE_RGB_ALPHA, 8, interlaced));
        REQUIRE(read_separation(whole));
        for (std::size_t part = 0; part < 20; ++part) {
            INFO("part " << part << ", interlaced " << interlaced);
            const ReadSeparation cut =
                read_separation(std::string_view(whole).substr(0, whole.size() * part / 20));
            check_total(cut);
            const bool starts = part > 0;
            CHECK(cut.fault.kind == (starts ? Kind::cut_short : Kind::not_a_picture));
        }
        // Every length of the last hundred bytes: behind the pixels, too.
        for (std::size_t less = 1; less <= 100; ++less) {
            CHECK_FALSE(read_separation(std::string_view(whole).substr(0, whole.size() - less)));
        }
    }
}

TEST_CASE("a flipped byte is found or changes nothing that counts", "[separation][damage]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    std::mt19937_64 random(seed);
    int refused = 0;
    for (const Form& form : every_form) {
        const std::string whole = made_png(framed(form.colour_type, form.depth, random() % 2 == 0));
        for (int round = 0; round < 60; ++round) {
            std::string changed = whole;
            const std::size_t at = random() % changed.size();
            changed[at] = static_cast<char>(changed[at] ^ static_cast<char>(1 + random() % 255));
            INFO("colour type " << form.colour_type << ", depth " << form.depth << ", byte " << at);
            const ReadSeparation read = read_separation(changed);
            check_total(read);
            refused += !read;
        }
    }
    // Check sums cover all but the chunks that say nothing about pixels.
    CHECK(refused > 600);
}

TEST_CASE("random bytes behind a signature are refused", "[separation][damage]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    std::mt19937_64 random(seed);
    for (int round = 0; round < 300; ++round) {
        std::string bytes = round % 2 == 0 ? std::string("\x89PNG\r\n\x1A\n", 8) : "II*" + std::string(1, '\0');
        const std::size_t more = random() % 400;
        for (std::size_t i = 0; i < more; ++i) bytes += static_cast<char>(random());
        const ReadSeparation read = read_separation(bytes);
        CHECK_FALSE(read);
        check_total(read);
    }
    CHECK(read_separation("").fault.kind == Kind::not_a_picture);
    CHECK(read_separation("GIF89a").fault.kind == Kind::not_a_picture);
}

TEST_CASE("sizes that nothing stands behind are refused before memory is taken",
          "[separation][damage]") {
    const ReadSeparation wide = read_separation(hollow_png(0x7FFFFFFF, 0x7FFFFFFF, 16, 6));
    CHECK(wide.fault.kind == Kind::too_many_pixels);
    CHECK(english(wide.fault).find("2147483647 × 2147483647") != std::string::npos);
    CHECK(english(wide.fault).find("60000") != std::string::npos);
    CHECK(read_separation(hollow_png(60'001, 1, 1, 0)).fault.kind == Kind::too_many_pixels);
    CHECK(read_separation(hollow_png(1, 60'001, 1, 0)).fault.kind == Kind::too_many_pixels);
    CHECK(read_separation(hollow_png(20'000, 20'001, 1, 0)).fault.kind == Kind::too_many_pixels);
    // Within the limits but empty.
    const ReadSeparation hollow = read_separation(hollow_png(20'000, 20'000, 16, 6));
    CHECK(hollow.fault.kind == Kind::damaged);
    for (const auto& [width, height] : {std::pair<std::uint32_t, std::uint32_t>{0, 10},
                                        {10, 0}, {0x80000000u, 1}, {0xFFFFFFFFu, 0xFFFFFFFFu}}) {
        CHECK_FALSE(read_separation(hollow_png(width, height, 8, 0)));
    }
    CHECK_FALSE(read_separation(hollow_png(10, 10, 3, 0)));
    CHECK_FALSE(read_separation(hollow_png(10, 10, 8, 5)));
}

TEST_CASE("wrong lengths and check sums of chunks are refused", "[separation][damage]") {
    const std::string whole = made_png(framed(PNG_COLOR_TYPE_GRAY, 8));
    for (const char* type : {"IHDR", "pHYs", "IDAT", "IEND"}) {
        const std::size_t at = whole.find(type) - 4;
        for (const std::uint32_t length : {0u, 1u, 12u, 14u, 0xFFFFu, 0x7FFFFFFFu, 0xFFFFFFFFu}) {
            INFO(type << " " << length);
            std::string changed = whole;
            changed.replace(at, 4, four_bytes(length));
            if (changed == whole) continue;
            check_total(read_separation(changed));
            CHECK_FALSE(read_separation(changed));
        }
        // The check sum behind the type's own length.
        std::string changed = whole;
        std::uint32_t length = 0;
        for (std::size_t i = 0; i < 4; ++i) {
            length = length * 256 + static_cast<unsigned char>(whole[at + i]);
        }
        changed[at + 8 + length] = static_cast<char>(changed[at + 8 + length] ^ 0x10);
        CHECK(read_separation(changed).fault.kind == Kind::damaged);
    }
}

TEST_CASE("reading goes on in pieces, tells how far it is and can be stopped", "[separation]") {
    const std::string bytes = made_png(framed(PNG_COLOR_TYPE_GRAY, 8));
    SeparationReading reading(picture_in(bytes));
    double before = 0.0;
    int steps = 0;
    while (reading.step(64)) {
        CHECK(reading.progress() > before);
        CHECK_FALSE(reading.separation());
        before = reading.progress();
        ++steps;
    }
    CHECK(steps == 48);
    REQUIRE(reading.separation());
    CHECK(reading.separation()->image == read_separation(bytes).separation->image);
    CHECK_FALSE(reading.step(64));

    MadePng large = framed(PNG_COLOR_TYPE_GRAY, 1);
    large.width = 2000;
    large.height = 2000;
    int told = 0;
    const ReadSeparation stopped = read_separation(made_png(large), {}, [&told](double share) {
        CHECK(share > 0.0);
        return ++told < 3;
    });
    CHECK(stopped.fault.kind == Kind::cancelled);
    CHECK(told == 3);
}

TEST_CASE("a file is read as its bytes are, and what is none is told", "[separation]") {
    ScratchFolder folder;
    const std::string bytes = made_png(framed(PNG_COLOR_TYPE_RGB, 8, true));
    write_bytes(folder.file("film.png"), bytes);
    const ReadSeparation read = read_separation_file(folder.file("film.png"));
    REQUIRE(read);
    CHECK(read.separation->image == read_separation(bytes).separation->image);
    CHECK(english(read_separation_file(folder.file("none.png")).fault) == "no such file");
    CHECK(read_separation_file(folder.path()).fault.kind == Kind::is_folder);
    Image place;
    place.offset_x = 3.0;
    place.offset_y = -4.0;
    place.rotation = 0.5;
    const Image image = image_in_place(*read.separation, place);
    CHECK(image.outline == read.separation->image.outline);
    CHECK(image.offset_x == 3.0);
    CHECK(image.offset_y == -4.0);
    CHECK(image.rotation == 0.5);
}

// Pictures that others have made, from Debian's packages; each file's package stands beside it
// (platform/dependencies.txt). One that is missing fails the test.
TEST_CASE("real pictures give separations that hold together", "[separation]") {
    struct Real {
        const char* package;
        const char* path;
        int width, height;
    };
    const Real pictures[] = {
        {"desktop-base", "/usr/share/desktop-base/softwaves-theme/grub/grub-16x9.png", 1920, 1080},
        {"desktop-base", "/usr/share/desktop-base/futureprototype-theme/grub/grub-4x3.png", 640, 480},
        {"desktop-base", "/usr/share/plymouth/themes/spacefun/swirlaxy.png", 495, 450},
        {"python-matplotlib-data", "/usr/share/matplotlib/mpl-data/sample_data/logo2.png", 560, 120},
        {"python-matplotlib-data",
         "/usr/share/matplotlib/mpl-data/sample_data/Minduka_Present_Blue_Pack.png", 128, 128},
        {"tango-icon-theme", "/usr/share/icons/Tango/32x32/emotes/face-glasses.png", 32, 32},
        {"tango-icon-theme", "/usr/share/icons/Tango/32x32/actions/edit-find.png", 32, 32},
        {"python-matplotlib-data", "/usr/share/matplotlib/mpl-data/images/move_large.png", 48, 48},
        {"glmark2-data", "/usr/share/glmark2/textures/crate-base.png", 512, 512}, // a photograph
    };
    SeparationOptions options;
    options.width = 300.0;
    for (const Real& real : pictures) {
        INFO(real.package << ": " << real.path);
        REQUIRE(std::filesystem::exists(real.path));
        const ReadSeparation read = read_separation_file(real.path, options);
        INFO(english(read.fault));
        REQUIRE(read);
        const Separation& separation = *read.separation;
        check_total(read);
        CHECK(separation.width == real.width);
        CHECK(separation.height == real.height);
        CHECK(bounds_of(separation.image.outline) == separation.extent);
        CHECK_THAT(separation.ink_area / signed_area(separation.image.outline),
                   WithinRel(separation.printed_share, 1e-9));
        CHECK(separation.extent.width() <= 300.0 + micrometre);
        // libpng's own simplified reader counts the same ink: white behind the transparent.
        png_image image{};
        image.version = PNG_IMAGE_VERSION;
        REQUIRE(png_image_begin_read_from_file(&image, real.path) != 0);
        image.format = PNG_FORMAT_RGBA;
        std::vector<std::uint8_t> pixels(PNG_IMAGE_SIZE(image));
        REQUIRE(png_image_finish_read(&image, nullptr, pixels.data(), 0, nullptr) != 0);
        double ink = 0.0;
        double unsure = 0.0;
        for (std::size_t i = 0; i < pixels.size(); i += 4) {
            const double luminance =
                0.2126 * pixels[i] + 0.7152 * pixels[i + 1] + 0.0722 * pixels[i + 2];
            const double darkness = (255.0 - luminance) * pixels[i + 3] / 255.0;
            ink += darkness >= 127.5;
            unsure += std::abs(darkness - 127.5) <= 1.0;
        }
        const double mm = 300.0 / real.width;
        // Both round to 8 bits, each in its own way: pixels within one step of the threshold may
        // differ, of which a photograph has many. Specks are below half a millimetre, and but for
        // the widest a pixel is larger: a thousandth is left for them.
        CHECK_THAT(separation.ink_area, WithinAbs(ink * mm * mm, (unsure + 1e-3 * ink) * mm * mm));
    }
}
