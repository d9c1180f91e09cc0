// The view for a class: large and with strong contrast, a trail that fades, a camera that follows;
// and everything as it was afterwards.
#include <cmath>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/drawing/diagram.h"
#include "tests/app/exercise_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Approx;

namespace {

const ClassState& class_of(Driver& driver) { return driver.program().state().class_view; }

/// The strokes of the trail: over everything, in the focus's colour.
std::vector<Mark> trail_of(Driver& driver) {
    std::vector<Mark> marks;
    for (const Mark& mark : driver.list().marks())
        if (mark.kind == MarkKind::line && mark.layer == 3 && mark.colour.role == Role::focus)
            marks.push_back(mark);
    return marks;
}

/// The pointer moves 100 dp to the right in ten sixtieths of a second.
void move_pointer(Driver& driver) {
    for (int i = 0; i <= 10; ++i) {
        driver.window().pointer(InputKind::move, {100.0f + 10.0f * static_cast<float>(i), 200.0f});
        REQUIRE(driver.loop().turn());
        driver.window().pass(1.0 / 60.0);
    }
}

void close_notice(Driver& driver) {
    if (driver.has("notice/close")) driver.tap("notice/close");
}

bool looks_at(Driver& driver, HeadId id) {
    const ViewState& state = driver.program().state();
    const Head& head = *find_head(driver.session().job(), id);
    const Box diagram = driver.program().frame().diagram;
    return state.camera == camera_for_head(driver.session().job(), head, diagram, rail_room);
}

} // namespace

TEST_CASE("Large letters and strong contrast by touch, the own settings afterwards", "[class]") {
    for (const Language language : {Language::english, Language::spanish}) {
        const ScratchFolder folder;
        Driver driver(desktop, folder.path(), language);
        driver.tap("place/jobs");
        driver.tap("theme/dark");
        driver.tap("text/80");
        const Looks own = driver.session().looks();
        const Job job = driver.session().job();
        driver.tap("class/on");
        CHECK(driver.program().state().looks.text_scale == least_class_scale);
        CHECK(driver.program().theme() == Theme::projector);
        CHECK(driver.session().looks() == own); // nothing of it is stored
        CHECK(driver.find("class/on").chosen);
        close_notice(driver);
        driver.picture(language == Language::spanish ? "class-settings-es" : "class-settings");
        driver.tap("place/press");
        CHECK(driver.list().type().scale() == Approx(least_class_scale));
        driver.picture(language == Language::spanish ? "class-press-es" : "class-press");
        driver.tap("head/7");
        driver.picture(language == Language::spanish ? "class-head-es" : "class-head");
        driver.tap("place/jobs");
        driver.tap("class/off");
        CHECK(driver.program().state().looks == own);
        CHECK(driver.session().looks() == own);
        CHECK(driver.program().theme() == Theme::dark);
        CHECK(driver.list().type().scale() == Approx(0.8f));
        CHECK_FALSE(driver.has("follow/yes"));
        CHECK(driver.session().job() == job);
    }
}

TEST_CASE("A key begins and ends it; a person's larger letters stay as large", "[class]") {
    Driver driver(phone);
    driver.set_looks(Language::english, 2.0f, ThemeChoice::light);
    const Looks own = driver.program().state().looks;
    driver.key(Key::p);
    CHECK(class_of(driver).on);
    CHECK(driver.program().state().looks.text_scale == 2.0f);
    driver.key(Key::p);
    CHECK_FALSE(class_of(driver).on);
    CHECK(driver.program().state().looks == own);
    // Not while something is typed.
    driver.tap("place/jobs");
    driver.tap("search");
    driver.key(Key::p);
    CHECK_FALSE(class_of(driver).on);
}

TEST_CASE("What is chosen meanwhile: a size is the class's, a language the person's", "[class]") {
    const ScratchFolder folder;
    {
        Driver driver(desktop, folder.path());
        driver.key(Key::p);
        close_notice(driver);
        driver.tap("place/jobs");
        driver.tap("text/200");
        CHECK(driver.list().type().scale() == Approx(2.0f));
        driver.tap("units/inch");
        CHECK(driver.list().type().scale() == Approx(2.0f));
        CHECK(driver.session().looks().text_scale == 1.0f);
        driver.tap("class/off");
        CHECK(driver.program().state().looks.text_scale == 1.0f);
        CHECK(driver.program().state().looks.units == LengthUnit::inch);
        driver.key(Key::p);
        REQUIRE(driver.session().flush());
    }
    // It is never on after a start.
    Driver driver(desktop, folder.path());
    CHECK_FALSE(class_of(driver).on);
    CHECK(driver.program().state().looks.text_scale == 1.0f);
    CHECK(driver.program().state().looks.units == LengthUnit::inch);
}

TEST_CASE("The drawing has more room than with letters of that size otherwise", "[class]") {
    for (const WindowSize& size : {phone, desktop}) {
        Driver driver(size);
        driver.set_looks(Language::english, least_class_scale);
        const Box before = driver.program().frame().diagram;
        driver.key(Key::p);
        const Box now = driver.program().frame().diagram;
        INFO(size.name);
        CHECK(now.width() * now.height() > 1.05f * before.width() * before.height());
    }
}

TEST_CASE("On a projector words keep 7:1 and lines 4.5:1", "[class]") {
    // WCAG 2.2, 1.4.6 for words; for lines half as much again as 1.4.11 asks.
    const Role backs[] = {Role::paper, Role::panel,   Role::card,  Role::quiet,
                          Role::mesh,  Role::station, Role::platen};
    const auto ratio = [](Role front, Role back) {
        return contrast(colour_of(Theme::projector, front), colour_of(Theme::projector, back));
    };
    for (const Role back : backs) {
        INFO("on " << static_cast<int>(back));
        CHECK(luminance(colour_of(Theme::projector, back)) > 0.7);
        for (const Role front : {Role::ink, Role::soft_ink, Role::squeegee, Role::flood, Role::stop,
                                 Role::mind, Role::fit})
            CHECK(ratio(front, back) >= 7.0);
        for (const Role line : {Role::image, Role::focus, Role::strong, Role::allowed, Role::edge})
            CHECK(ratio(line, back) >= 4.5);
    }
    CHECK(ratio(Role::on_strong, Role::strong) >= 7.0);
    CHECK(ratio(Role::on_frame, Role::frame) >= 7.0);
    CHECK(ratio(Role::covered_ink, Role::covered) >= 7.0);
    CHECK(ratio(Role::stop, Role::stop_fill) >= 7.0);
    CHECK(ratio(Role::lamp_on, Role::lamp_off) >= 4.5);
}

TEST_CASE("The pointer leaves a trail that fades, and then no more frames are drawn", "[class]") {
    Driver driver(desktop);
    move_pointer(driver);
    driver.settle();
    CHECK(trail_of(driver).empty()); // only before a class
    driver.key(Key::p);
    close_notice(driver);
    move_pointer(driver);
    const std::vector<Mark> trail = trail_of(driver);
    REQUIRE(trail.size() >= 5);
    for (std::size_t i = 1; i < trail.size(); ++i) { // fainter and thinner the older
        CHECK(trail[i - 1].colour.alpha <= trail[i].colour.alpha);
        CHECK(trail[i - 1].width <= trail[i].width);
    }
    CHECK(trail.front().colour.alpha < trail.back().colour.alpha);
    CHECK(driver.list().points(trail.back())[1].x == Approx(200.0f).margin(10.1));
    driver.picture("class-trail");
    int frames = 0;
    std::size_t before = trail.size();
    for (; frames < 200; ++frames) {
        const double now = driver.window().now();
        const double next = driver.program().next_frame(now);
        if (next < 0.0 || next > now) break;
        driver.window().pass(1.0 / 60.0);
        driver.window().happen(InputEvent{});
        REQUIRE(driver.loop().turn());
        CHECK(trail_of(driver).size() <= before);
        before = trail_of(driver).size();
    }
    CHECK(frames > 20);
    CHECK(frames < 60); // 0.8 s, not more
    CHECK(trail_of(driver).empty());
    driver.settle();
    CHECK(driver.program().next_frame(driver.window().now()) < 0.0);
    // Leaving it takes the trail along.
    move_pointer(driver);
    driver.key(Key::p);
    CHECK(trail_of(driver).empty());
}

TEST_CASE("The camera goes to the head of what was ticked, where it is to follow", "[class]") {
    for (const bool follow : {true, false}) {
        Driver driver(desktop);
        driver.key(Key::p);
        close_notice(driver);
        driver.tap("place/jobs");
        driver.tap(follow ? "follow/yes" : "follow/no");
        start(driver, ExerciseKind::find_fault);
        const Exercise& exercise = run_of(driver).exercise;
        CHECK(driver.program().state().head == 0); // where the fault is isn't given away
        const Camera whole = driver.program().state().camera;
        for (std::size_t i : {std::size_t{0}, exercise.choices.size() - 1}) {
            INFO(i << (follow ? ", follows" : ", stays"));
            driver.program().act(TickClaim{i});
            driver.settle();
            CHECK(looks_at(driver, exercise.choices[i].head) == follow);
            CHECK((driver.program().state().camera == whole) == !follow);
        }
        // By hand it goes anywhere, and stays there.
        driver.tap("zoom/all");
        CHECK(driver.program().state().camera == whole);
        driver.tap("exercise/leave");
    }
}

TEST_CASE("An exercise or a cycle brings back a camera that was moved by hand", "[class]") {
    Driver driver(desktop);
    driver.key(Key::p);
    start(driver, ExerciseKind::shortest_stroke);
    CHECK(looks_at(driver, run_of(driver).exercise.head));
    driver.tap("exercise/leave");
    driver.tap("place/press");
    driver.tap("head/7");
    const HeadId head = driver.program().state().head;
    for (int times = 0; times < 3; ++times) driver.tap("zoom/out");
    CHECK_FALSE(looks_at(driver, head));
    driver.tap("cycle/open");
    driver.tap("cycle/play");
    CHECK(looks_at(driver, head));
    // Without it a cycle leaves the camera where the person has it.
    driver.tap("cycle/close");
    driver.key(Key::p);
    for (int times = 0; times < 3; ++times) driver.tap("zoom/out");
    driver.tap("cycle/open");
    driver.tap("cycle/play");
    CHECK_FALSE(looks_at(driver, head));
}

TEST_CASE("The head of a question about a fault is what the press then shows", "[class]") {
    Driver driver(desktop);
    driver.key(Key::p);
    const HeadId head = head_on(driver.session().job(), 8)->id;
    driver.program().act(FindFaultAt{head});
    driver.settle();
    driver.tap("place/press");
    CHECK(driver.program().state().head == head);
    CHECK(looks_at(driver, head));
}
