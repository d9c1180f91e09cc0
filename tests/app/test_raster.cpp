// The software rasteriser and PNG files.
#include <imgui.h>
#include <png.h>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>

#include "app/drawing/fonts.h"
#include "app/drawing/png_file.h"
#include "app/drawing/raster.h"
#include "tests/app/painted.h"

using namespace carriageway;
using namespace carriageway::test;

namespace {

/// Draw data made by hand, as a graphics driver would get it.
class Triangles {
public:
    Triangles() : atlas_(fonts_for(1.0f, 1.0f).atlas()), list_(nullptr) {}

    void add(Vec a, Vec b, Vec c, ImU32 ca, ImU32 cb, ImU32 cc) {
        const Vec at[] = {a, b, c};
        const ImU32 colours[] = {ca, cb, cc};
        for (int i = 0; i < 3; ++i) {
            list_.IdxBuffer.push_back(static_cast<ImDrawIdx>(list_.VtxBuffer.Size));
            ImDrawVert vertex;
            vertex.pos = {at[i].x, at[i].y};
            vertex.uv = atlas_.TexUvWhitePixel;
            vertex.col = colours[i];
            list_.VtxBuffer.push_back(vertex);
        }
    }
    void add(Vec a, Vec b, Vec c, ImU32 colour) { add(a, b, c, colour, colour, colour); }

    /// Over black, clipped to `clip`.
    Picture drawn(int width, int height, ImVec4 clip = {0.0f, 0.0f, 1e4f, 1e4f}) {
        ImDrawCmd command;
        command.ClipRect = clip;
        command.ElemCount = static_cast<unsigned>(list_.IdxBuffer.Size);
        list_.CmdBuffer.resize(0);
        list_.CmdBuffer.push_back(command);
        ImDrawData data;
        data.FramebufferScale = {1.0f, 1.0f};
        data.CmdLists.push_back(&list_);
        data.CmdListsCount = 1;
        Picture picture = blank_picture(width, height, 0x000000);
        rasterise(data, atlas_, picture);
        return picture;
    }

private:
    ImFontAtlas& atlas_;
    ImDrawList list_;
};

constexpr ImU32 white = IM_COL32(255, 255, 255, 255);

Picture decoded(const std::vector<std::uint8_t>& bytes) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    Picture picture;
    REQUIRE(png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) != 0);
    image.format = PNG_FORMAT_RGBA;
    picture.width = static_cast<int>(image.width);
    picture.height = static_cast<int>(image.height);
    picture.rgba.resize(PNG_IMAGE_SIZE(image));
    REQUIRE(png_image_finish_read(&image, nullptr, picture.rgba.data(), 0, nullptr) != 0);
    return picture;
}

} // namespace

TEST_CASE("a pixel belongs to a triangle when its centre does", "[raster]") {
    Triangles one;
    one.add({2, 2}, {10, 2}, {2, 10}, white);
    const Picture picture = one.drawn(16, 16);
    for (int y = 0; y < 16; ++y) {
        for (int x = 0; x < 16; ++x) {
            const double sum = (x + 0.5) + (y + 0.5);
            const bool inside = x >= 2 && y >= 2 && sum < 12.0;
            INFO(x << ", " << y);
            // On the slanting side, which is neither left nor top, nothing belongs to it.
            CHECK(picture.at(x, y) == (inside ? 0xFFFFFFu : 0u));
        }
    }
}

TEST_CASE("a centre on a side belongs to the triangle that has it at the left or top",
          "[raster]") {
    Triangles box;
    box.add({2.5f, 2.5f}, {6.5f, 2.5f}, {6.5f, 6.5f}, white);
    box.add({2.5f, 2.5f}, {6.5f, 6.5f}, {2.5f, 6.5f}, white);
    const Marked filled = marked(box.drawn(16, 16), 0x000000);
    CHECK((filled.x0 == 2 && filled.y0 == 2 && filled.x1 == 5 && filled.y1 == 5));
    CHECK(filled.pixels == 16);
}

TEST_CASE("triangles round a point paint each pixel once, whichever way they run", "[raster]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    std::uniform_real_distribution<float> anywhere(0.0f, 40.0f);
    std::uniform_int_distribution<int> half(0, 80);
    for (int round = 0; round < 300; ++round) {
        const auto place = [&] { // some exactly on pixels' centres and corners
            return round % 2 == 0 ? Vec{anywhere(source), anywhere(source)}
                                  : Vec{0.5f * static_cast<float>(half(source)),
                                        0.5f * static_cast<float>(half(source))};
        };
        const Vec middle = place();
        const Vec corners[] = {{0, 0}, {40, 0}, {40, 40}, {0, 40}};
        Triangles fan;
        const ImU32 glass = IM_COL32(255, 255, 255, 100);
        for (int i = 0; i < 4; ++i) {
            const Vec a = corners[i], b = corners[(i + 1) % 4];
            if (round % 3 == 0)
                fan.add(middle, a, b, glass);
            else
                fan.add(b, a, middle, glass);
        }
        const Picture picture = fan.drawn(40, 40);
        for (int y = 0; y < 40; ++y)
            for (int x = 0; x < 40; ++x) REQUIRE(picture.at(x, y) == 0x646464u);
    }
}

TEST_CASE("colours run evenly between corners", "[raster]") {
    Triangles slope;
    const ImU32 black = IM_COL32(0, 0, 0, 255);
    slope.add({0, 0}, {64, 0}, {64, 8}, black, white, white);
    slope.add({0, 0}, {64, 8}, {0, 8}, black, white, black);
    const Picture picture = slope.drawn(64, 8);
    for (int x = 0; x < 64; ++x) {
        const int wanted = static_cast<int>(255.0 * (x + 0.5) / 64.0 + 0.5);
        CHECK(std::abs(static_cast<int>(picture.at(x, 4) & 0xFFu) - wanted) <= 1);
    }
}

TEST_CASE("a picture clips, and takes corners from anywhere", "[raster]") {
    Triangles large;
    large.add({-1e9f, -1e9f}, {1e9f, -1e9f}, {0.0f, 1e9f}, white);
    const Marked filled = marked(large.drawn(40, 30, {5.0f, 6.0f, 25.0f, 16.0f}), 0x000000);
    CHECK((filled.x0 == 5 && filled.y0 == 6 && filled.x1 == 24 && filled.y1 == 15));
    CHECK(filled.pixels == 200);
    CHECK(marked(large.drawn(40, 30, {-100.0f, -100.0f, 1e6f, 1e6f}), 0x000000).pixels == 1200);
    CHECK(marked(large.drawn(40, 30, {30.0f, 0.0f, 20.0f, 30.0f}), 0x000000).pixels == 0);
    CHECK(large.drawn(0, 30).rgba.empty());
}

TEST_CASE("a PNG gives back every pixel", "[png]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    Picture picture = blank_picture(37, 23, 0x102030);
    for (std::uint8_t& channel : picture.rgba) channel = static_cast<std::uint8_t>(source());
    std::vector<std::uint8_t> bytes;
    REQUIRE_FALSE(encode_png(picture, bytes));
    CHECK(decoded(bytes) == picture);
}

TEST_CASE("a PNG file is written, replaced, or refused for a reason", "[png]") {
    const std::filesystem::path folder =
        std::filesystem::temp_directory_path() / ("carriageway-png-" + std::to_string(std::random_device{}()));
    std::filesystem::create_directories(folder);
    const std::filesystem::path path = folder / "press.png";
    CHECK_FALSE(write_png(blank_picture(90, 80, 0xFFFFFF), path));
    const Picture small = blank_picture(9, 8, 0x445566);
    CHECK_FALSE(write_png(small, path));
    std::ifstream file(path, std::ios::binary);
    const std::vector<std::uint8_t> bytes{std::istreambuf_iterator<char>(file), {}};
    CHECK(decoded(bytes) == small);

    CHECK(write_png(small, folder / "nowhere" / "press.png") ==
          std::errc::no_such_file_or_directory);
    CHECK(write_png(small, folder) == std::errc::is_a_directory);
    if (std::filesystem::exists("/dev/full"))
        CHECK(write_png(small, "/dev/full") == std::errc::no_space_on_device);
    CHECK(write_png(Picture{}, path) == std::errc::invalid_argument);
    Picture broken = small;
    broken.rgba.pop_back();
    CHECK(write_png(broken, path) == std::errc::invalid_argument);
    CHECK(std::filesystem::file_size(path) == bytes.size()); // the good one is still there
    std::filesystem::remove_all(folder);
}
