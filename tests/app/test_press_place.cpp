// The press place worked as a person works it: by touch, mouse, keys and the number pad.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "tests/app/driver.h"
#include "app/text/sentences.h"

using namespace carriageway;
using Catch::Approx;

namespace {

int missed_marks(const Driver& driver) {
    int count = 0;
    for (const Mark& mark : driver.list().marks())
        if (mark.kind == MarkKind::hatch && mark.colour.role == Role::stop && mark.layer == 0) ++count;
    return count;
}

void feed(Driver& driver, InputKind kind, Vec at, int pointer = 1) {
    driver.window().pointer(kind, at, pointer);
    driver.loop().turn();
}

} // namespace

TEST_CASE("A tap on a head zooms into it and back leads out again") {
    Driver driver(phone);
    const double whole = driver.program().state().camera.scale;
    driver.tap("head/5");
    CHECK(driver.program().state().head == head_on(driver.session().job(), 5)->id);
    CHECK(driver.program().state().camera.scale > 2.0 * whole);
    CHECK(driver.has("head/5/machine-stop"));
    driver.tap("back");
    CHECK(driver.program().state().head == 0);
    CHECK(driver.program().state().camera.scale == Approx(whole));
}

TEST_CASE("Coverage, drawing and verdict change in the very frame of the drag") {
    for (const WindowSize& size : {phone, tablet, desktop}) {
        Driver driver(size);
        driver.tap("head/5");
        const double before = driver.head(5).coverage.share();
        REQUIRE(before < 1.0);
        REQUIRE(missed_marks(driver) > 0);
        const Stops stops = driver.stops(5);
        const Vec from = driver.find("head/5/machine-stop").box.centre();
        feed(driver, InputKind::down, from);
        feed(driver, InputKind::move, from + Vec{0.0f, -12.0f});
        const double moved = driver.head(5).coverage.share();
        CHECK(moved > before);
        // The list of that same frame says it too.
        CHECK(driver.find("head/5").value.find(format_share(moved)) != std::string::npos);
        feed(driver, InputKind::move, from + Vec{0.0f, -46.0f * static_cast<float>(driver.program().state().camera.scale) - 2.0f});
        CHECK(driver.head(5).coverage.share() == 1.0);
        CHECK(missed_marks(driver) == 0);
        CHECK(driver.find("head/5").value.find("100 %") != std::string::npos);
        CHECK(driver.stops(5) == stops); // the job itself changes only on letting go
        feed(driver, InputKind::up, from + Vec{0.0f, -46.0f * static_cast<float>(driver.program().state().camera.scale) - 2.0f});
        driver.settle();
        CHECK(driver.stops(5).machine_side > stops.machine_side);
        // Snapped to the ruler.
        const Ruler& ruler = driver.session().job().press.ruler;
        const double stop = driver.stops(5).machine_side;
        CHECK(nearest_graduation(ruler, stop) == Approx(stop).margin(1e-9));
        // One step of undo for the whole drag.
        driver.tap("undo");
        CHECK(driver.stops(5) == stops);
        CHECK_FALSE(driver.session().can_undo());
        driver.tap("redo");
        CHECK(driver.stops(5).machine_side == stop);
    }
}

TEST_CASE("A drag that is taken away puts the stop back and leaves nothing to undo") {
    Driver driver(phone);
    driver.tap("head/5");
    const Stops stops = driver.stops(5);
    const Vec from = driver.find("head/5/machine-stop").box.centre();
    feed(driver, InputKind::down, from);
    feed(driver, InputKind::move, from + Vec{0.0f, -30.0f});
    CHECK(driver.session().previewing());
    feed(driver, InputKind::cancel, from + Vec{0.0f, -30.0f});
    driver.settle();
    CHECK(driver.stops(5) == stops);
    CHECK_FALSE(driver.session().previewing());
    CHECK_FALSE(driver.session().can_undo());
    CHECK(driver.head(5).coverage.share() < 1.0);
}

TEST_CASE("While a stop is held, the rail says where it may stand and why") {
    Driver driver(desktop);
    driver.tap("head/5", 0);
    const Vec from = driver.find("head/5/machine-stop").box.centre();
    feed(driver, InputKind::down, from, 0);
    feed(driver, InputKind::move, from + Vec{0.0f, -20.0f}, 0);
    int reasons = 0;
    bool stretch = false;
    const HeadAssessment& head = driver.head(5);
    for (const Mark& mark : driver.list().marks()) {
        if (mark.kind == MarkKind::line && mark.colour.role == Role::allowed) stretch = true;
        if (mark.kind != MarkKind::text) continue;
        for (const LimitKind kind : {head.allowed.machine_side.lo_kind, head.allowed.machine_side.hi_kind})
            if (driver.list().words(mark) == limit_text(Language::english, LengthUnit::mm, driver.session().job(), kind))
                ++reasons;
    }
    driver.picture("held-stop");
    CHECK(stretch);
    CHECK(reasons == 2);
    feed(driver, InputKind::up, from, 0);
}

TEST_CASE("Pulling sideways slows a drag down") {
    const auto moved = [](float sideways) {
        Driver driver(desktop);
        driver.tap("head/5");
        const double before = driver.stops(5).machine_side;
        const Vec from = driver.find("head/5/machine-stop").box.centre();
        feed(driver, InputKind::down, from);
        feed(driver, InputKind::move, from + Vec{sideways, 0.0f});
        feed(driver, InputKind::move, from + Vec{sideways, -100.0f});
        feed(driver, InputKind::up, from + Vec{sideways, -100.0f});
        driver.settle();
        return driver.stops(5).machine_side - before;
    };
    const double straight = moved(0.0f), aside = moved(-260.0f);
    CHECK(straight > 60.0);
    CHECK(aside > 0.0);
    CHECK(aside < 0.35 * straight);
}

TEST_CASE("Minus and plus step by one graduation, arrow keys by 1, 0.1 and 10 mm") {
    Driver driver(desktop);
    driver.tap("head/8");
    driver.tap("stop/machine");
    const double graduation = driver.session().job().press.ruler.graduation;
    const double start = driver.stops(8).machine_side;
    driver.tap("stop/more");
    CHECK(driver.stops(8).machine_side == Approx(start + graduation));
    driver.tap("stop/less");
    CHECK(driver.stops(8).machine_side == Approx(start));
    driver.key(Key::up);
    CHECK(driver.stops(8).machine_side == Approx(start + 1.0));
    driver.key(Key::down, false, true);
    CHECK(driver.stops(8).machine_side == Approx(start - 9.0));
    driver.key(Key::up, true);
    CHECK(driver.stops(8).machine_side == Approx(start - 8.9));
    for (int i = 0; i < 5; ++i) driver.key(Key::z, true);
    CHECK(driver.stops(8).machine_side == Approx(start));
    driver.key(Key::z, true, true);
    CHECK(driver.stops(8).machine_side == Approx(start + graduation));
}

TEST_CASE("Measures are typed on the pad in mm, inches and fractions") {
    Driver driver(phone);
    driver.tap("head/2");
    const HeadId id = driver.program().state().head;
    const auto overlap = [&] { return number_of(driver.session().job(), nullptr, Field::side_overlap); };
    const auto blade = [&] { return find_head(driver.session().job(), id)->squeegee.width; };
    driver.tap("section/squeegee");
    driver.tap("head/2/squeegee.width_mm");
    REQUIRE(driver.has("pad/display"));
    driver.pad("89");
    driver.tap("pad/accept");
    CHECK(blade() == Approx(89.0));
    CHECK_FALSE(driver.has("pad/display"));
    driver.tap("head/2/squeegee.width_mm");
    driver.pad("3 1/2in");
    driver.picture("number-pad");
    driver.tap("pad/accept");
    CHECK(blade() == Approx(3.5 * 25.4));
    driver.tap("head/2/squeegee.width_mm");
    driver.type("33.5 c"); // keyboard: c is cm
    driver.key(Key::enter);
    CHECK(blade() == Approx(335.0));
    driver.tap("head/2/squeegee.width_mm");
    driver.type("99999");
    driver.key(Key::enter);
    REQUIRE(driver.has("pad/display"));
    CHECK_FALSE(driver.program().state().pad->trouble.empty());
    CHECK(blade() == Approx(335.0));
    driver.key(Key::escape);
    CHECK_FALSE(driver.has("pad/display"));
    driver.tap("head/2/squeegee.width_mm");
    driver.pad("1//2");
    driver.tap("pad/accept");
    CHECK_FALSE(driver.program().state().pad->trouble.empty());
    driver.tap("pad/cancel");
    CHECK(blade() == Approx(335.0));
    CHECK(overlap() == Approx(12.0));
}

TEST_CASE("A stop is typed as the ruler shows it") {
    Driver driver(phone);
    driver.tap("head/5");
    driver.tap("stop/machine");
    driver.tap("stop/number");
    driver.pad("723");
    driver.tap("pad/accept");
    const Ruler& ruler = driver.session().job().press.ruler;
    CHECK(ruler_reading(ruler, driver.stops(5).machine_side) == Approx(723.0));
    CHECK(driver.head(5).fit);
}

TEST_CASE("The button of a finding fixes it, and undo takes that back") {
    Driver driver(phone);
    driver.tap("head/6");
    CHECK(driver.head(6).both_on);
    driver.tap("finding/6/0/fix");
    CHECK_FALSE(driver.head(6).both_on);
    CHECK(driver.head(6).fit);
    driver.tap("undo");
    CHECK(driver.head(6).both_on);
}

TEST_CASE("One button sets every stop") {
    for (const WindowSize& size : {phone, desktop}) {
        Driver driver(size);
        REQUIRE_FALSE(driver.session().assessment().fit);
        driver.tap("set-every-stop");
        CHECK(driver.session().assessment().fit);
        CHECK_FALSE(driver.has("set-every-stop"));
        driver.tap("undo");
        CHECK_FALSE(driver.session().assessment().fit);
    }
}

TEST_CASE("Zoom by wheel, pinch, buttons and keys; pan by drag") {
    Driver driver(desktop);
    const auto scale = [&] { return driver.program().state().camera.scale; };
    const double whole = scale();
    driver.tap("zoom/in");
    CHECK(scale() == Approx(1.5 * whole));
    driver.tap("zoom/out");
    CHECK(scale() == Approx(whole));
    driver.key(Key::plus);
    CHECK(scale() == Approx(1.5 * whole));
    driver.tap("zoom/all");
    CHECK(scale() == Approx(whole));
    InputEvent wheel;
    wheel.kind = InputKind::wheel;
    wheel.at = driver.program().frame().diagram.centre();
    wheel.by = {0.0f, 2.0f};
    driver.window().happen(wheel);
    driver.settle();
    CHECK(scale() == Approx(whole * 1.15 * 1.15));
    driver.tap("zoom/all");
    const Vec centre = driver.program().frame().diagram.centre();
    feed(driver, InputKind::down, centre + Vec{-40.0f, 0.0f}, 1);
    feed(driver, InputKind::down, centre + Vec{40.0f, 0.0f}, 2);
    feed(driver, InputKind::move, centre + Vec{-80.0f, 0.0f}, 1);
    feed(driver, InputKind::move, centre + Vec{80.0f, 0.0f}, 2);
    feed(driver, InputKind::up, centre + Vec{-80.0f, 0.0f}, 1);
    feed(driver, InputKind::up, centre + Vec{80.0f, 0.0f}, 2);
    driver.settle();
    CHECK(scale() == Approx(2.0 * whole).epsilon(0.01));
    const Point before = driver.program().state().camera.centre;
    driver.window().drag(centre, centre + Vec{100.0f, 0.0f}, 5, 0);
    driver.settle();
    CHECK(driver.program().state().camera.centre.x < before.x);
}

TEST_CASE("Arrow keys move the drawing while no head is chosen") {
    Driver driver(desktop);
    const Point before = driver.program().state().camera.centre;
    driver.key(Key::right);
    driver.key(Key::up);
    CHECK(driver.program().state().camera.centre.x > before.x);
    CHECK(driver.program().state().camera.centre.y > before.y);
    driver.key(Key::zero);
    CHECK(driver.program().state().camera.centre == before);
}

TEST_CASE("Pinching from the whole press shows the heads in full, and handles once chosen") {
    Driver driver(phone);
    driver.tap("head/6");
    CHECK(driver.has("head/6/operator-stop"));
    CHECK(driver.has("head/6/machine-stop"));
    driver.key(Key::escape);
    CHECK_FALSE(driver.has("head/6/operator-stop"));
}

TEST_CASE("The plot of allowed stops moves both") {
    Driver driver(desktop);
    driver.tap("head/5");
    const Stops before = driver.stops(5);
    driver.drag("plot/now", {-20.0f, -20.0f});
    const Stops after = driver.stops(5);
    CHECK(after.operator_side < before.operator_side);
    CHECK(after.machine_side > before.machine_side);
    driver.key(Key::z, true);
    CHECK(driver.stops(5) == before);
}

TEST_CASE("Everything that acts can be reached and worked by Tab and Enter") {
    Driver driver(desktop);
    std::vector<std::string> wanted;
    for (const Thing& thing : driver.list().things())
        if (thing.enabled && (thing.action >= 0 || thing.hold >= 0)) wanted.push_back(thing.name);
    REQUIRE(wanted.size() > 20);
    std::vector<std::string> reached;
    for (std::size_t i = 0; i < wanted.size() + 2; ++i) {
        driver.key(Key::tab);
        reached.push_back(driver.program().state().focus);
    }
    for (const std::string& name : wanted) {
        INFO(name);
        CHECK(std::find(reached.begin(), reached.end(), name) != reached.end());
    }
    // Fix the sensors by keys alone.
    for (int i = 0; i < 200 && driver.program().state().focus != "finding/6/0/fix"; ++i) driver.key(Key::tab);
    REQUIRE(driver.program().state().focus == "finding/6/0/fix");
    driver.key(Key::enter);
    CHECK_FALSE(driver.head(6).both_on);
    // And a stop by arrows.
    for (int i = 0; i < 200 && driver.program().state().focus != "row/8"; ++i) driver.key(Key::tab);
    driver.key(Key::enter);
    CHECK(driver.program().state().head == head_on(driver.session().job(), 8)->id);
}

TEST_CASE("A long press explains what is under the finger") {
    Driver driver(phone);
    const Vec at = driver.find("zoom/in").box.centre();
    driver.window().pointer(InputKind::down, at, 1);
    driver.loop().turn();
    driver.window().pass(0.7);
    driver.settle();
    REQUIRE(driver.has("notice"));
    CHECK(driver.find("notice").label.find("Zoom in") != std::string::npos);
    driver.window().pointer(InputKind::up, at, 1);
    driver.settle();
}

TEST_CASE("A window left alone draws nothing; a drag keeps the display awake") {
    Driver driver(desktop);
    driver.window().pass(10.0);
    for (int i = 0; i < 4; ++i) driver.loop().turn();
    const long frames = driver.loop().frames();
    const std::size_t presented = driver.window().frames().size();
    // With nothing scripted a wait without limit ends the loop: nothing was due before.
    CHECK_FALSE(driver.loop().turn());
    CHECK(driver.loop().frames() == frames);
    CHECK(driver.window().frames().size() == presented);
}
