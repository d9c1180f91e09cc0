// The drawing list: clips, text boxes, things and which of them a point meets.
#include "app/drawing/drawing_list.h"

#include <catch2/catch_test_macros.hpp>

using namespace carriageway;

namespace {

/// Every letter is half an em wide, a line 1.2 em high.
class SquareType : public TypeMeasure {
  public:
    float width(TypeStyle style, std::string_view text) const override {
        return 0.5f * em_of(style.size) * static_cast<float>(text.size());
    }
    float height(TypeStyle style) const override { return 1.2f * em_of(style.size); }
    float scale() const override { return 1.0f; }
};

const SquareType type;
constexpr Box window{0.0f, 0.0f, 300.0f, 200.0f};

DrawingList blank() {
    DrawingList list;
    list.begin(window, type);
    return list;
}

Thing& button(DrawingList& list, const char* name, Box box, int action = 0) {
    Thing& thing = list.thing(name, ThingRole::button, box);
    thing.action = action;
    return thing;
}

std::string name_at(const DrawingList& list, Vec point) {
    const int index = thing_at(list, point);
    return index < 0 ? "" : list.things()[static_cast<std::size_t>(index)].name;
}

}  // namespace

TEST_CASE("a drawing list keeps marks in order, with their points, clip and layer", "[drawing]") {
    DrawingList list = blank();
    const Vec corners[] = {{1, 2}, {3, 4}, {5, 6}};
    list.fill(corners, 3, paint(Role::covered));
    list.set_layer(2);
    list.push_clip({10, 10, 50, 50});
    list.hatch(corners, 3, own_colour(0x123456), 0.5f, 6.0f, 2.0f, 1.5f);
    REQUIRE(list.marks().size() == 2);
    const Mark& fill = list.marks()[0];
    CHECK(fill.kind == MarkKind::fill);
    CHECK(fill.layer == 0);
    CHECK(list.clip_box(fill.clip) == window);
    CHECK(list.points(fill)[2] == Vec{5, 6});
    const Mark& hatch = list.marks()[1];
    CHECK(hatch.kind == MarkKind::hatch);
    CHECK(hatch.layer == 2);
    CHECK(list.clip_box(hatch.clip) == Box{10, 10, 50, 50});
    CHECK((hatch.angle == 0.5f && hatch.spacing == 6.0f && hatch.width == 2.0f));
    CHECK(hatch.phase == 1.5f);
    CHECK((hatch.colour.own && hatch.colour.rgb == 0x123456u));
}

TEST_CASE("marks with too few points are left out", "[drawing]") {
    DrawingList list = blank();
    const Vec points[] = {{1, 2}, {3, 4}};
    list.fill(points, 2, paint(Role::ink));
    list.loop(points, 2, paint(Role::ink), 1.0f);
    list.hatch(points, 2, paint(Role::ink), 0.0f, 4.0f, 1.0f);
    list.line(points, 1, paint(Role::ink), 1.0f);
    list.text({0, 0}, "", {}, Role::ink, Role::paper);
    CHECK(list.marks().empty());
}

TEST_CASE("a clip lies within the one before it, and the window's stays", "[drawing]") {
    DrawingList list = blank();
    list.push_clip({-50, 20, 100, 500});
    CHECK(list.clip() == Box{0, 20, 100, 200});
    list.push_clip({90, 0, 400, 40});
    CHECK(list.clip() == Box{90, 20, 100, 40});
    list.pop_clip();
    CHECK(list.clip() == Box{0, 20, 100, 200});
    list.pop_clip();
    list.pop_clip();  // one too many
    CHECK(list.clip() == window);
}

TEST_CASE("text knows its box, its words and what it stands on", "[drawing]") {
    DrawingList list = blank();
    const TypeStyle title{TypeSize::title, true};
    const Box box = list.text({10, 20}, "232 mm", title, Role::ink, Role::card);
    CHECK(box == Box{10, 20, 70, 44});
    const Box centred = list.text_centred({100, 100}, "ab", title, Role::stop, Role::panel);
    CHECK(centred == Box{90, 88, 110, 112});
    REQUIRE(list.marks().size() == 2);
    CHECK(list.words(list.marks()[0]) == "232 mm");
    CHECK(list.words(list.marks()[1]) == "ab");
    CHECK(list.marks()[0].on == Role::card);
    CHECK(list.marks()[0].style == title);
    CHECK(list.marks()[1].colour == paint(Role::stop));
}

TEST_CASE("beginning again empties a list", "[drawing]") {
    DrawingList list = blank();
    list.set_layer(2);
    list.push_clip({0, 0, 1, 1});
    list.text({0, 0}, "x", {}, Role::ink, Role::paper);
    button(list, "a", {0, 0, 9, 9});
    list.begin({0, 0, 10, 10}, type);
    CHECK(list.marks().empty());
    CHECK(list.things().empty());
    CHECK(list.layer() == 0);
    CHECK(list.clip() == Box{0, 0, 10, 10});
    CHECK(list.find("a") == nullptr);
}

TEST_CASE("things are found by name and take the clip and layer of their place", "[drawing]") {
    DrawingList list = blank();
    list.push_clip({0, 0, 100, 100});
    list.set_layer(1);
    button(list, "head/6/machine-stop", {10, 10, 30, 30});
    const Thing* thing = list.find("head/6/machine-stop");
    REQUIRE(thing != nullptr);
    CHECK(thing->layer == 1);
    CHECK(list.clip_box(thing->clip) == Box{0, 0, 100, 100});
    CHECK(thing->target == Box{10, 10, 30, 30});
    CHECK(list.find("head/7/machine-stop") == nullptr);
}

TEST_CASE("a point meets the thing whose drawn box is nearest, then the smaller", "[drawing]") {
    DrawingList list = blank();
    button(list, "left", {50, 50, 60, 60}).target = {20, 20, 90, 90};
    button(list, "right", {80, 50, 90, 60}).target = {50, 20, 120, 90};
    CHECK(name_at(list, {64, 55}) == "left");
    CHECK(name_at(list, {76, 55}) == "right");
    button(list, "all", {0, 0, 300, 200});
    CHECK(name_at(list, {55, 55}) == "left");
    CHECK(name_at(list, {200, 150}) == "all");
    CHECK(name_at(list, {300, 150}).empty());
}

TEST_CASE("what does nothing, is switched off or is clipped away is not met", "[drawing]") {
    DrawingList list = blank();
    button(list, "under", {0, 0, 100, 100});
    list.thing("words", ThingRole::text, {0, 0, 50, 50});
    button(list, "off", {0, 0, 50, 50}).enabled = false;
    list.push_clip({60, 60, 100, 100});
    button(list, "clipped", {0, 0, 70, 70});
    list.pop_clip();
    CHECK(name_at(list, {20, 20}) == "under");
    CHECK(name_at(list, {65, 65}) == "clipped");
    list.thing("drag", ThingRole::slider, {0, 0, 10, 10}).hold = 3;
    CHECK(name_at(list, {5, 5}) == "drag");
}

TEST_CASE("upper layers are met first and their regions hide what is below", "[drawing]") {
    DrawingList list = blank();
    button(list, "below", {0, 0, 100, 100});
    list.set_layer(2);
    button(list, "above", {20, 20, 90, 90});
    CHECK(name_at(list, {50, 50}) == "above");
    CHECK(name_at(list, {5, 5}) == "below");
    list.thing("sheet", ThingRole::region, {0, 0, 40, 100});
    CHECK(name_at(list, {5, 5}).empty());
    CHECK(name_at(list, {30, 50}) == "above");
    CHECK(name_at(list, {95, 50}) == "below");
}
