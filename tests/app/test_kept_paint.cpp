// Triangles that are kept from frame to frame, against those of a painter that keeps nothing: the
// same, whatever has changed in between.
#include <catch2/catch_test_macros.hpp>
#include <cstring>
#include <string>

#include "app/drawing/screen_painter.h"
#include "app/text/spare_text.h"
#include "tests/app/driver.h"
#include "tests/app/painted.h"

using namespace carriageway;
using namespace carriageway::test;

namespace {

constexpr unsigned seed = 20261127;

/// One of a drawing's parts, by what makes it.
struct DrawnPart {
    int polygon = 0, shade = 0, words = 0, layer = 0, clip = 0;
};

DrawnPart some_part(std::mt19937& random) {
    const auto one_of = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    return {one_of(5), one_of(4), one_of(6), one_of(3), one_of(3)};
}

void draw_part(const DrawnPart& part, DrawingList& list) {
    static const char* const texts[] = {"", "19 mm", "18 mm", "not flooded", "Ñandú", "not printed"};
    const Vec move{4.0f * static_cast<float>(part.polygon), 3.0f};
    const Vec corners[] = {Vec{10, 10} + move, Vec{60, 14} + move, Vec{52, 66} + move, Vec{8, 50} + move};
    list.begin_part();
    list.set_layer(part.layer);
    list.push_clip(part.clip == 0 ? list.window() : part.clip == 1 ? Box{0, 0, 40, 40} : Box{90, 90, 95, 95});
    list.fill(corners, 4, paint(part.shade == 0 ? Role::stop : Role::covered, part.shade == 2 ? 120 : 255));
    list.hatch(corners, 4, paint(Role::flood), 0.3f, 7.0f, part.shade == 3 ? 2.5f : 1.0f);
    list.text({6.0f, 20.0f}, texts[part.words], {}, Role::ink, Role::paper);
    list.pop_clip();
    list.set_layer(0);
}

struct Triangles {
    explicit Triangles(ImDrawListSharedData& shared) : draw(&shared) {}
    void paint(ScreenPainter& painter, const DrawingList& list, Theme theme, const Fonts& fonts) {
        draw._ResetForNewFrame();
        draw.PushTextureID(fonts.atlas().TexID);
        draw.PushClipRectFullScreen();
        painter.paint(list, theme, fonts, draw);
    }
    bool operator==(const Triangles& other) const {
        const auto same = [](const auto& a, const auto& b) {
            return a.Size == b.Size && std::memcmp(a.Data, b.Data, static_cast<std::size_t>(a.size_in_bytes())) == 0;
        };
        if (draw.CmdBuffer.Size != other.draw.CmdBuffer.Size) return false;
        for (int i = 0; i < draw.CmdBuffer.Size; ++i) {
            const ImDrawCmd &a = draw.CmdBuffer[i], &b = other.draw.CmdBuffer[i];
            if (a.ElemCount != b.ElemCount || a.IdxOffset != b.IdxOffset || a.VtxOffset != b.VtxOffset ||
                std::memcmp(&a.ClipRect, &b.ClipRect, sizeof a.ClipRect) != 0)
                return false;
        }
        return same(draw.VtxBuffer, other.draw.VtxBuffer) && same(draw.IdxBuffer, other.draw.IdxBuffer);
    }
    ImDrawList draw;
};

} // namespace

TEST_CASE("What was painted before is painted as a new painter would", "[painter]") {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    ImGuiContext* const before = ImGui::GetCurrentContext();
    ImGuiContext* const context = ImGui::CreateContext();
    ImGui::SetCurrentContext(context);
    {
        ImDrawListSharedData& shared = *ImGui::GetDrawListSharedData();
        Triangles kept(shared), fresh(shared);
        ScreenPainter keeps;
        DrawingList list;
        std::vector<DrawnPart> parts;
        for (int i = 0; i < 12; ++i) parts.push_back(some_part(random));
        Theme theme = Theme::light;
        float ratio = 1.0f;
        std::size_t repeated = 0;
        for (int frame = 0; frame < 400; ++frame) {
            // Most frames change one part; some the number of parts, the theme or the display.
            parts[random() % parts.size()] = some_part(random);
            if (frame % 11 == 10) parts.insert(parts.begin() + static_cast<long>(random() % parts.size()), some_part(random));
            if (frame % 13 == 12) parts.erase(parts.begin() + static_cast<long>(random() % parts.size()));
            const bool anew = frame % 50 == 49;
            if (anew && random() % 2 == 0) theme = theme == Theme::light ? Theme::dark : Theme::light;
            else if (anew) ratio = 3.0f - ratio;
            Fonts& fonts = fonts_for(ratio, 1.0f);
            list.begin({0, 0, 100, 100}, fonts);
            for (const DrawnPart& part : parts) draw_part(part, list);
            kept.paint(keeps, list, theme, fonts);
            ScreenPainter never;
            fresh.paint(never, list, theme, fonts);
            INFO("frame " << frame);
            REQUIRE(kept == fresh);
            CHECK(never.repeated() == 0);
            repeated += keeps.repeated();
        }
        CHECK(repeated > 400 * 3); // of some nine runs that something is seen of
    }
    ImGui::DestroyContext(context);
    ImGui::SetCurrentContext(before);
}

TEST_CASE("While a stop is dragged, the other heads are not painted anew", "[painter]") {
    // As the program draws it: of two frames that differ in one head, most runs are repeated.
    Driver driver(desktop);
    ImDrawListSharedData& shared = *ImGui::GetDrawListSharedData();
    Triangles triangles(shared);
    ScreenPainter painter;
    const auto painted = [&] {
        triangles.paint(painter, driver.list(), Theme::light, driver.fonts());
        return painter.repeated();
    };
    painted();
    const std::size_t all = painted();
    REQUIRE(all > driver.session().job().heads.size());
    const Head& head = driver.session().job().heads.front();
    const Stops stops{head.stops.operator_side, head.stops.machine_side - 40.0};
    driver.program().act(DoEdit{Edit{SetStops{head.id, stops}}});
    driver.settle();
    const std::size_t same = painted();
    CHECK(same < all);
    CHECK(same >= driver.session().job().heads.size());
}

TEST_CASE("A thing says nothing of the one whose storage it has", "[painter]") {
    Sheet sheet(50, 50);
    Thing& first = sheet.list.thing("first", ThingRole::slider, {0, 0, 10, 10});
    first.label = "a label that is longer than what a text holds by itself";
    first.value = first.hint = first.label;
    first.action = first.hold = first.less = first.more = 3;
    first.now = first.least = first.most = 2.0;
    first.enabled = false;
    first.chosen = first.live = true;
    sheet.list.begin({0, 0, 50, 50}, sheet.fonts);
    CHECK(sheet.list.things().empty());
    CHECK(sheet.list.find("first") == nullptr);
    const Thing& second = sheet.list.thing("second", ThingRole::text, {1, 1, 2, 2});
    CHECK((second.name == "second" && second.label.empty() && second.value.empty() && second.hint.empty()));
    CHECK((second.action == -1 && second.hold == -1 && second.less == -1 && second.more == -1));
    CHECK((second.now == 0.0 && second.least == 0.0 && second.most == 0.0));
    CHECK((second.enabled && !second.chosen && !second.live));
    CHECK(sheet.list.things().size() == 1);
}

TEST_CASE("Storage of texts that were given back is used again, and holds nothing", "[words]") {
    std::string text(100, 'x');
    const char* const storage = text.data();
    give_back(text);
    CHECK(text.empty());
    std::string next = spare_text("words that are longer than a text holds by itself");
    CHECK(next.data() == storage);
    CHECK(next == "words that are longer than a text holds by itself");
    put(text, std::move(next));
    CHECK(text.data() == storage);
    {
        const Passing passing(std::move(text));
        CHECK(std::string_view(passing).starts_with("words"));
    }
    CHECK(together({"a", "b", " and something longer than a text holds"}).data() == storage);
    // A text without storage of its own leaves nothing, and one beyond all sentences is let go.
    std::string small = "few";
    give_back(small);
    std::string large(100000, 'x');
    give_back(large);
    CHECK(spare_text().capacity() < 4097);
}
