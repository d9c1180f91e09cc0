// Running a cycle on the screen: it plays, stands, goes from event to event and is moved by hand.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "app/views/cycle_view.h"
#include "tests/app/driver.h"

using namespace carriageway;
using Catch::Approx;
using Catch::Matchers::ContainsSubstring;

namespace {

/// Opens the cycle of a station's head, standing at its beginning.
void open_cycle(Driver& driver, int station) {
    if (station != 0) driver.tap("head/" + std::to_string(station));
    driver.tap("cycle/open");
    REQUIRE(driver.program().state().cycle.open);
    driver.tap("cycle/play"); // it began by itself
    REQUIRE_FALSE(driver.program().state().cycle.playing);
    driver.program().state().cycle.time = 0.0;
    driver.settle();
}

CycleView shown(Driver& driver) {
    const ViewState& state = driver.program().state();
    return cycle_view(driver.session().job(), driver.session().assessment(), state.head,
                      state.cycle.time);
}

double time_of(Driver& driver) { return driver.program().state().cycle.time; }

/// How many pixels of a picture have nearly this colour.
int pixels_like(const Picture& picture, std::uint32_t rgb) {
    int count = 0;
    for (std::size_t i = 0; i + 3 < picture.rgba.size(); i += 4) {
        const int r = picture.rgba[i] - static_cast<int>(rgb >> 16 & 255u);
        const int g = picture.rgba[i + 1] - static_cast<int>(rgb >> 8 & 255u);
        const int b = picture.rgba[i + 2] - static_cast<int>(rgb & 255u);
        if (r * r + g * g + b * b < 300) ++count;
    }
    return count;
}

} // namespace

TEST_CASE("A cycle plays in real time or slower, and rests when it is told to") {
    Driver driver(phone);
    driver.tap("head/5");
    driver.tap("cycle/open");
    const double before = time_of(driver), clock = driver.window().now();
    driver.settle();
    CHECK(time_of(driver) - before == Approx(driver.window().now() - clock).margin(0.05));
    CHECK(driver.program().next_frame(driver.window().now()) <= driver.window().now());

    driver.tap("cycle/speed/10");
    const double slow = time_of(driver), then = driver.window().now();
    driver.settle();
    CHECK(time_of(driver) - slow == Approx(0.1 * (driver.window().now() - then)).margin(0.01));

    driver.tap("cycle/play");
    driver.settle();
    const double stands = time_of(driver);
    driver.settle();
    CHECK(time_of(driver) == stands);
    CHECK(driver.program().next_frame(driver.window().now()) < 0.0);
    driver.tap("cycle/close");
    CHECK_FALSE(driver.has("cycle/play"));
    CHECK(driver.has("head/5/machine-stop")); // the handles are back
}

TEST_CASE("Event after event is said, by touch and by keyboard alone, in both languages") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(desktop, {}, language);
        open_cycle(driver, 5);
        const std::vector<double> events = shown(driver).events;
        REQUIRE(events.size() > 6);
        std::string said;
        for (std::size_t i = 1; i < events.size(); ++i) {
            if (i % 2 == 0) {
                driver.program().state().focus = "cycle/next";
                driver.key(Key::enter);
            } else {
                driver.tap("cycle/next");
            }
            CHECK(time_of(driver) == Approx(events[i]));
            said += driver.find("cycle/now").label + "\n";
        }
        const bool english = language == Language::english;
        CHECK_THAT(said, ContainsSubstring(english ? "Print stroke" : "Carrera de impresión"));
        CHECK_THAT(said, ContainsSubstring(english ? "Flood stroke" : "Carrera de entintado"));
        driver.tap("cycle/next"); // round
        CHECK(time_of(driver) == 0.0);
        driver.tap("cycle/previous");
        CHECK(time_of(driver) == Approx(events.back()));
    }
}

TEST_CASE("A finger moves the time, and it stays within the cycle") {
    Driver driver(tablet);
    open_cycle(driver, 5);
    driver.drag("cycle/time", {120.0f, 0.0f});
    const double there = time_of(driver);
    CHECK(there > 0.3);
    driver.drag("cycle/time", {-2000.0f, 0.0f});
    CHECK(time_of(driver) == 0.0);
    driver.drag("cycle/time", {4000.0f, 0.0f});
    CHECK(time_of(driver) == Approx(shown(driver).seconds));
    CHECK_FALSE(driver.program().state().cycle.playing);
}

TEST_CASE("With both sensors on the carriage stays while the head goes up and down") {
    Driver driver(phone);
    const Head& head = *head_on(driver.session().job(), 5);
    const HeadId id = head.id;
    driver.program().act(DoEdit{Edit{SetStops{id, {-30.0, 30.0}}}});
    driver.settle();
    open_cycle(driver, 5);
    std::string said;
    const std::size_t events = shown(driver).events.size();
    for (std::size_t i = 1; i < events; ++i) {
        driver.tap("cycle/next");
        const CycleView now = shown(driver);
        REQUIRE(now.heads.size() == 1);
        CHECK(now.heads[0].pose.carriage == now.heads[0].cycle.middle);
        CHECK(now.heads[0].pose.lamps == Lamps{true, true});
        said += driver.find("cycle/now").label + "\n";
    }
    CHECK_THAT(said, ContainsSubstring("the carriage stays"));
    CHECK_THAT(said, ContainsSubstring("The head comes down"));
}

TEST_CASE("Ink comes onto the garment with the squeegee, and what is missed stays bare") {
    Driver driver(desktop);
    const HeadId id = head_on(driver.session().job(), 5)->id;
    constexpr std::uint32_t ink = 0x117733;
    driver.program().act(DoEdit{Edit{SetInk{id, ink}}});
    driver.settle();
    open_cycle(driver, 5);
    const HeadCycle cycle = shown(driver).heads[0].cycle;
    double start = 0.0, length = 0.0;
    for (const RateStep& step : cycle.steps)
        if (step.kind == StepKind::print) start = step.start, length = step.length;
    REQUIRE(length > 0.0);
    const auto inked = [&](double share) {
        driver.program().state().cycle.time = start + share * length;
        driver.settle();
        return pixels_like(driver.painted(), ink);
    };
    const int none = inked(0.0), half = inked(0.5), all = inked(1.0);
    CHECK(half > none + 1000);
    CHECK(all > half + 1000);
    // The stroke ends too early now: part of the image stays bare.
    Stops stops = find_head(driver.session().job(), id)->stops;
    stops.operator_side += 150.0;
    driver.program().act(DoEdit{Edit{SetStops{id, stops}}});
    driver.settle();
    const HeadCycle shorter = shown(driver).heads[0].cycle;
    for (const RateStep& step : shorter.steps)
        if (step.kind == StepKind::print) start = step.start, length = step.length;
    CHECK(inked(1.0) < all - 1000);
}

TEST_CASE("From the side, ink lies on the mesh first and on the garment then") {
    Driver driver(desktop);
    const HeadId id = head_on(driver.session().job(), 5)->id;
    constexpr std::uint32_t ink = 0x117733;
    driver.program().act(DoEdit{Edit{SetInk{id, ink}}});
    driver.settle();
    open_cycle(driver, 5);
    REQUIRE(driver.has("cycle/side"));
    const HeadCycle cycle = shown(driver).heads[0].cycle;
    // Lowest and highest y of this ink in the side view, and how much there is of it.
    struct Seen { int count = 0; float top = 1e9f, bottom = 0.0f; };
    const auto seen = [&](double time) {
        driver.program().state().cycle.time = time;
        driver.settle();
        const Box box = driver.find("cycle/side").box.inset(-1.0f); // its edge belongs to it
        Seen out;
        for (const Mark& mark : driver.list().marks()) {
            if (!mark.colour.own || mark.colour.rgb != ink) continue;
            for (std::uint32_t i = 0; i < mark.count; ++i) {
                const Vec at = driver.list().points(mark)[i];
                if (!box.contains(at)) continue;
                ++out.count;
                out.top = std::min(out.top, at.y);
                out.bottom = std::max(out.bottom, at.y);
            }
        }
        return out;
    };
    const auto middle = [&](StepKind kind) {
        for (const RateStep& step : cycle.steps)
            if (step.kind == kind) return step.start + 0.5 * step.length;
        return -1.0;
    };
    CHECK(seen(0.5 * cycle.index).count == 0);
    const Seen flooding = seen(middle(StepKind::flood));
    const Seen printing = seen(middle(StepKind::print));
    const Seen lifted = seen(middle(StepKind::lift));
    REQUIRE(flooding.count > 0);
    REQUIRE(printing.count > 0);
    REQUIRE(lifted.count > 0);
    CHECK(printing.bottom > flooding.bottom + 5.0f); // down on the garment
    CHECK(printing.top < lifted.top - 5.0f);         // and some still over the mesh
    CHECK(lifted.bottom == Approx(printing.bottom));
    CHECK_THAT(driver.find("cycle/side").value, ContainsSubstring("The head lifts"));
}

TEST_CASE("A garment keeps the colours that it has passed, until it is taken off") {
    Driver driver(desktop);
    constexpr std::uint32_t ink = 0x117733;
    driver.program().act(DoEdit{Edit{SetInk{head_on(driver.session().job(), 5)->id, ink}}});
    driver.settle();
    open_cycle(driver, 0);
    const double index = driver.session().job().press.pace.index;
    const auto inked = [&](double time) {
        driver.program().state().cycle.time = time;
        driver.settle();
        return pixels_like(driver.painted(), ink);
    };
    // Head 5 has printed nothing yet: what is seen lies on garments farther on.
    const int before = inked(index);
    CHECK(before > 300);
    // A head with both sensors on leaves no print, so no garment brings one.
    driver.program().act(
        DoEdit{Edit{SetStops{head_on(driver.session().job(), 5)->id, {-30.0, 30.0}}}});
    driver.settle();
    CHECK(inked(index) < 50);
}

TEST_CASE("The strip lies below the drawing, and leaves it room at every size") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop})
        for (const float text : {1.0f, 2.0f}) {
            INFO(size.name << " " << text);
            Driver driver(size);
            driver.set_looks(Language::spanish, text);
            driver.program().act(ChooseHead{head_on(driver.session().job(), 6)->id});
            driver.program().act(OpenCycle{true});
            driver.program().act(PlayCycle{false});
            driver.settle();
            const Box strip = driver.find("cycle").box, drawing = driver.program().frame().diagram;
            CHECK(strip.y0 >= drawing.y1);
            CHECK(drawing.height() > 0.14f * static_cast<float>(size.height));
            CHECK(driver.find("cycle/speed/10").box.y1 <= strip.y1);
            CHECK(driver.find("cycle/now").label == word(Language::spanish, Word::cycle_index));
        }
}

TEST_CASE("The whole press runs at its real pace") {
    Driver driver(desktop);
    open_cycle(driver, 0);
    const CycleView view = shown(driver);
    CHECK(view.heads.size() == driver.session().job().heads.size());
    for (const RunningHead& head : view.heads) CHECK(head.cycle.seconds <= view.seconds + 1e-9);
    driver.program().state().cycle.time = 0.5 * driver.session().job().press.pace.index;
    driver.settle();
    CHECK(driver.find("cycle/now").label == word(Language::english, Word::cycle_index));
}
