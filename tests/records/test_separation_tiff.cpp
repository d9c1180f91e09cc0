// Separations from TIFF, written by libtiff.
#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <random>
#include <vector>

#include "app/records/separation.h"
#include "app/text/measure.h"
#include "core/job_check.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = PictureFault::Kind;

#ifdef CARRIAGEWAY_TIFF

#include <tiffio.h>

using Catch::Matchers::WithinAbs;

namespace {

constexpr double micrometre = 1e-3;

struct MadeTiff {
    std::uint16_t photometric = PHOTOMETRIC_MINISBLACK;
    std::uint16_t bits = 8;
    std::uint16_t samples = 1;
    std::uint16_t compression = COMPRESSION_NONE;
    std::uint16_t unit = RESUNIT_INCH;
    float resolution = 254.0f;  ///< 0: none is written
    std::uint16_t extra = EXTRASAMPLE_UNSPECIFIED;  ///< what the last sample is, if it is no colour
    std::uint32_t rows_per_strip = 7;
    std::uint16_t orientation = ORIENTATION_TOPLEFT;
    bool transparent_right = false;  ///< the last sample is 0 from column 32 on
};

/// The frame of test_separation.cpp: 40 by 30 at (10, 8) less 20 by 10, on 64 by 48.
bool is_ink(int x, int y) {
    const bool in = x >= 10 && x < 50 && y >= 8 && y < 38;
    return in && !(x >= 20 && x < 40 && y >= 18 && y < 28);
}

bool has_extra(const MadeTiff& made) {
    return made.samples == 2 || made.samples == 4;
}

unsigned value_at(const MadeTiff& made, int x, int y, int sample) {
    const unsigned most = (1u << made.bits) - 1u;
    const bool clear = made.transparent_right && x >= 32;
    if (has_extra(made) && sample == made.samples - 1) return clear ? 0 : most;
    if (made.photometric == PHOTOMETRIC_MINISWHITE) return is_ink(x, y) ? most : 0;
    // Times an opacity of nothing, every colour is nothing.
    if (clear && made.extra == EXTRASAMPLE_ASSOCALPHA) return 0;
    return is_ink(x, y) ? 0 : most;
}

std::vector<std::uint8_t> row_of(const MadeTiff& made, int y) {
    const std::size_t values = 64u * made.samples;
    std::vector<std::uint8_t> row(values * made.bits / 8);
    for (std::size_t at = 0; at < values; ++at) {
        const int x = static_cast<int>(at / made.samples);
        const unsigned value = value_at(made, x, y, static_cast<int>(at % made.samples));
        if (made.bits == 16) {
            row[2 * at] = row[2 * at + 1] = static_cast<std::uint8_t>(value & 0xFFu);
        } else {
            const std::size_t bit = at * made.bits;
            row[bit / 8] = static_cast<std::uint8_t>(row[bit / 8] |
                                                     value << (8u - made.bits - bit % 8));
        }
    }
    return row;
}

std::string made_tiff(const MadeTiff& made) {
    ScratchFolder folder;
    const std::string path = folder.file("film.tif");
    TIFF* tiff = TIFFOpen(path.c_str(), "w");
    REQUIRE(tiff != nullptr);
    TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, 64u);
    TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, 48u);
    TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, made.bits);
    TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, made.samples);
    TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, made.photometric);
    TIFFSetField(tiff, TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG);
    TIFFSetField(tiff, TIFFTAG_COMPRESSION, made.compression);
    TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, made.rows_per_strip);
    TIFFSetField(tiff, TIFFTAG_ORIENTATION, made.orientation);
    if (has_extra(made)) TIFFSetField(tiff, TIFFTAG_EXTRASAMPLES, 1, &made.extra);
    if (made.resolution > 0.0f) {
        TIFFSetField(tiff, TIFFTAG_RESOLUTIONUNIT, made.unit);
        TIFFSetField(tiff, TIFFTAG_XRESOLUTION, static_cast<double>(made.resolution));
        TIFFSetField(tiff, TIFFTAG_YRESOLUTION, static_cast<double>(made.resolution));
    }
    std::vector<std::uint16_t> greys;
    for (int i = 0; i < 1 << std::min<int>(made.bits, 8); ++i) {
        greys.push_back(static_cast<std::uint16_t>(i * 65535 / ((1 << made.bits) - 1)));
    }
    if (made.photometric == PHOTOMETRIC_PALETTE) {
        TIFFSetField(tiff, TIFFTAG_COLORMAP, greys.data(), greys.data(), greys.data());
    }
    for (int y = 0; y < 48; ++y) {
        std::vector<std::uint8_t> row = row_of(made, y);
        REQUIRE(TIFFWriteScanline(tiff, row.data(), static_cast<std::uint32_t>(y), 0) == 1);
    }
    TIFFClose(tiff);
    return bytes_of(path);
}

void check_frame(const ReadSeparation& read) {
    INFO(fault_sentence(Language::english, LengthUnit::mm, read.fault));
    REQUIRE(read);
    const Separation& separation = *read.separation;
    CHECK(separation.width == 64);
    CHECK(separation.height == 48);
    CHECK_THAT(separation.across, WithinAbs(6.4, micrometre));
    CHECK_THAT(separation.extent.left, WithinAbs(-2.2, micrometre));
    CHECK_THAT(separation.extent.right, WithinAbs(1.8, micrometre));
    CHECK_THAT(separation.extent.hi, WithinAbs(1.6, micrometre));
    CHECK_THAT(separation.extent.lo, WithinAbs(-1.4, micrometre));
    CHECK_THAT(separation.ink_area, WithinAbs(10.0, micrometre));
}

void check_total(const ReadSeparation& read) {
    if (read) {
        CHECK_FALSE(image_fault(read.separation->image));
    } else {
        CHECK(read.fault.kind != Kind::none);
        CHECK_FALSE(fault_sentence(Language::english, LengthUnit::mm, read.fault).empty());
    }
}

}  // namespace

TEST_CASE("every kind of TIFF that is read gives the same separation", "[separation][tiff]") {
    const std::vector<MadeTiff> kinds{
        {PHOTOMETRIC_MINISBLACK, 1},     {PHOTOMETRIC_MINISWHITE, 1},
        {PHOTOMETRIC_MINISBLACK, 2},     {PHOTOMETRIC_MINISBLACK, 4},
        {PHOTOMETRIC_MINISBLACK, 8},     {PHOTOMETRIC_MINISWHITE, 8},
        {PHOTOMETRIC_MINISBLACK, 16},    {PHOTOMETRIC_MINISWHITE, 16},
        {PHOTOMETRIC_PALETTE, 1},        {PHOTOMETRIC_PALETTE, 4},
        {PHOTOMETRIC_PALETTE, 8},        {PHOTOMETRIC_RGB, 8, 3},
        {PHOTOMETRIC_RGB, 16, 3},        {PHOTOMETRIC_RGB, 8, 4},
        {PHOTOMETRIC_MINISBLACK, 8, 2},
    };
    for (MadeTiff made : kinds) {
        for (const int compression :
             {COMPRESSION_NONE, COMPRESSION_LZW, COMPRESSION_ADOBE_DEFLATE, COMPRESSION_PACKBITS}) {
            for (const std::uint32_t rows : {1u, 7u, 48u}) {
                INFO("photometric " << made.photometric << ", bits " << made.bits << ", samples "
                                    << made.samples << ", compression " << compression << ", rows "
                                    << rows);
                made.compression = static_cast<std::uint16_t>(compression);
                made.rows_per_strip = rows;
                check_frame(read_separation(made_tiff(made)));
            }
        }
    }
    // What films are mostly sent as.
    MadeTiff fax{PHOTOMETRIC_MINISWHITE, 1};
    fax.compression = COMPRESSION_CCITTFAX4;
    check_frame(read_separation(made_tiff(fax)));
}

TEST_CASE("a TIFF's transparent part doesn't print", "[separation][tiff]") {
    for (const int extra : {EXTRASAMPLE_ASSOCALPHA, EXTRASAMPLE_UNASSALPHA}) {
        for (const int samples : {2, 4}) {
            MadeTiff made;
            made.photometric = samples == 4 ? PHOTOMETRIC_RGB : PHOTOMETRIC_MINISBLACK;
            made.samples = static_cast<std::uint16_t>(samples);
            made.extra = static_cast<std::uint16_t>(extra);
            made.transparent_right = true;
            INFO("extra " << extra << ", samples " << samples);
            const ReadSeparation read = read_separation(made_tiff(made));
            REQUIRE(read);
            CHECK_THAT(read.separation->extent.left, WithinAbs(-2.2, micrometre));
            CHECK_THAT(read.separation->extent.right, WithinAbs(0.0, micrometre));
        }
    }
}

TEST_CASE("a TIFF's resolution is per inch, per centimetre or unknown", "[separation][tiff]") {
    MadeTiff made;
    made.unit = RESUNIT_CENTIMETER;
    made.resolution = 100.0f;
    check_frame(read_separation(made_tiff(made)));
    made.unit = RESUNIT_NONE;
    CHECK(read_separation(made_tiff(made)).fault.kind == Kind::no_size);
    made.resolution = 0.0f;
    CHECK(read_separation(made_tiff(made)).fault.kind == Kind::no_size);
    SeparationOptions options;
    options.width = 6.4;
    check_frame(read_separation(made_tiff(made), options));
}

TEST_CASE("what of TIFF isn't read is named", "[separation][tiff]") {
    MadeTiff made;
    made.orientation = ORIENTATION_BOTLEFT;
    const ReadSeparation turned = read_separation(made_tiff(made));
    CHECK(turned.fault.kind == Kind::not_supported);
    CHECK(turned.fault.found == "Orientation 4");
    MadeTiff four;
    four.photometric = PHOTOMETRIC_SEPARATED;
    four.samples = 4;
    const ReadSeparation inks = read_separation(made_tiff(four));
    CHECK(inks.fault.kind == Kind::not_supported);
    CHECK(inks.fault.found == "PhotometricInterpretation 5");
}

TEST_CASE("a damaged TIFF is refused or holds together", "[separation][tiff][damage]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    std::mt19937_64 random(seed);
    int cut_short = 0, refused = 0;
    for (const int compression : {COMPRESSION_NONE, COMPRESSION_LZW,
                                            COMPRESSION_ADOBE_DEFLATE, COMPRESSION_PACKBITS,
                                            COMPRESSION_CCITTFAX4}) {
        MadeTiff made;
        made.compression = static_cast<std::uint16_t>(compression);
        made.bits = compression == COMPRESSION_CCITTFAX4 ? 1 : 8;
        made.photometric = PHOTOMETRIC_MINISWHITE;
        const std::string whole = made_tiff(made);
        check_frame(read_separation(whole));
        for (std::size_t part = 0; part < 20; ++part) {
            INFO("compression " << compression << ", part " << part);
            const ReadSeparation cut =
                read_separation(std::string_view(whole).substr(0, whole.size() * part / 20));
            // The directory stands at the end, so that no part of it is a picture.
            CHECK_FALSE(cut);
            check_total(cut);
            cut_short += cut.fault.kind == Kind::cut_short;
        }
        for (int round = 0; round < 300; ++round) {
            std::string changed = whole;
            for (int bytes = 0; bytes <= round % 4; ++bytes) {
                changed[random() % changed.size()] = static_cast<char>(random());
            }
            const ReadSeparation read = read_separation(changed);
            check_total(read);
            refused += !read;
        }
        // The directory alone, where sizes and lengths stand.
        for (int round = 0; round < 300; ++round) {
            std::string changed = whole;
            const std::size_t last = std::min<std::size_t>(200, changed.size());
            changed[changed.size() - 1 - random() % last] = static_cast<char>(random());
            check_total(read_separation(changed));
        }
    }
    CHECK(cut_short > 0);
    CHECK(refused > 200);
}

TEST_CASE("a TIFF that says it is huge is refused before memory is taken",
          "[separation][tiff][damage]") {
    const std::string whole = made_tiff({});
    // ImageWidth is tag 256, ImageLength 257, both LONG or SHORT here (TIFF 6.0, section 8).
    const auto with = [&whole](int tag, std::uint32_t value) {
        std::string changed = whole;
        for (std::size_t at = 8; at + 12 <= changed.size(); at += 2) {
            const bool here = changed[at] == static_cast<char>(tag) && changed[at + 1] == 1 &&
                              changed[at + 4] == 1 && changed[at + 5] == 0;
            if (!here) continue;
            changed[at + 2] = 4;  // LONG
            for (std::size_t i = 0; i < 4; ++i) {
                changed[at + 8 + i] = static_cast<char>((value >> 8 * i) & 0xFFu);
            }
            return changed;
        }
        FAIL("no such tag");
        return changed;
    };
    CHECK(read_separation(with(0, 2'000'000'000u)).fault.kind == Kind::too_many_pixels);
    CHECK(read_separation(with(1, 60'001u)).fault.kind == Kind::too_many_pixels);
    // libtiff itself refuses what can't be counted in strips.
    CHECK_FALSE(read_separation(with(1, 0xFFFFFFFFu)));
    const ReadSeparation long_one = read_separation(with(1, 60'000u));
    CHECK_FALSE(long_one);
    check_total(long_one);
}

#else

TEST_CASE("built without libtiff, a TIFF is no picture", "[separation][tiff]") {
    CHECK(read_separation(std::string_view("II*\0\0\0\0\0", 8)).fault.kind == Kind::not_a_picture);
}

#endif
