// The share sheet: what it offers, what it hands out, and that nothing below it can be touched.
#include <fstream>
#include <iterator>

#include <catch2/catch_test_macros.hpp>

#include "app/records/exchange.h"
#include "app/records/job_link.h"
#include "tests/app/driver.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

const std::string base = "https://example.org/carriageway/#";

/// The demonstration with images of so many corners that its link is long.
Job long_job(int corners) {
    Job job = demo_job();
    job.name = "A job with long outlines";
    for (Head& head : job.heads) {
        head.image.outline.clear();
        for (int i = 0; i < corners; ++i) {
            const double angle = 2.0 * std::numbers::pi * i / corners;
            const double radius = 100.0 + 7.31 * (i % 5) + 0.37 * head.station;
            head.image.outline.push_back({radius * std::cos(angle), radius * std::sin(angle)});
        }
    }
    REQUIRE_FALSE(fault_of(job));
    return job;
}

void share(Driver& driver) { driver.tap("share"); }

std::string last(Driver& driver, ErrandKind kind) {
    REQUIRE_FALSE(driver.window().errands().empty());
    CHECK(driver.window().errands().back().kind == kind);
    return driver.window().errands().back().text;
}

} // namespace

TEST_CASE("Without a place for links or files nothing is offered that can't be done") {
    Driver driver(desktop);
    CHECK_FALSE(driver.has("share"));
    driver.tap("place/jobs");
    CHECK_FALSE(driver.has("pick-file"));
    driver.tap("job/" + std::to_string(driver.session().current()));
    CHECK(driver.has("job/" + std::to_string(driver.session().current()) + "/export"));
    CHECK_FALSE(driver.has("job/" + std::to_string(driver.session().current()) + "/share"));
}

TEST_CASE("The sheet hands out the job as a link and as a file, at phone and desktop size") {
    for (const WindowSize& size : {small_phone, phone, desktop})
        for (const Language language : {Language::english, Language::spanish}) {
            const ScratchFolder folder;
            Driver driver(size, folder.path(), language);
            driver.as_in_a_browser();
            driver.tap("set-every-stop");
            share(driver);
            INFO(size.name);
            REQUIRE(driver.has("share-sheet"));
            driver.picture(std::string("share ") + size.name + (language == Language::spanish ? " es" : ""));
            CHECK(driver.find("share/about").label == driver.session().job().name);
            CHECK(driver.find("share/about").value == std::string(word(language, Word::share_explained)));
            CHECK(driver.find("share/code").role == ThingRole::image);
            CHECK(driver.find("share/code").label == std::string(word(language, Word::share_code)));
            driver.tap("share/copy");
            const std::string link = last(driver, ErrandKind::copy_text);
            CHECK(link.substr(0, base.size()) == base);
            const ReadJob read = read_job_link(link);
            REQUIRE(read);
            CHECK(*read.job == driver.session().job());
            driver.tap("share/link");
            CHECK(last(driver, ErrandKind::share_text) == link);
            driver.tap("share/file");
            const std::string path = last(driver, ErrandKind::give_file);
            std::ifstream file(path, std::ios::binary);
            const ReadJob from_file = read_job(std::string(std::istreambuf_iterator<char>(file), {}));
            REQUIRE(from_file);
            CHECK(*from_file.job == driver.session().job());
            CHECK_FALSE(driver.has("notice"));
            driver.tap("share/close");
            CHECK_FALSE(driver.has("share-sheet"));
        }
}

TEST_CASE("While the sheet is open nothing below it can be touched, scrolled, reached or read") {
    Driver driver(desktop);
    driver.as_in_a_browser();
    share(driver);
    for (const Thing& thing : driver.list().things()) {
        INFO(thing.name);
        CHECK(thing.name.rfind("share", 0) == 0);
    }
    const Camera camera = driver.program().state().camera;
    const float scroll = driver.program().state().panel_scroll;
    for (const Vec at : {Vec{500.0f, 700.0f}, Vec{1300.0f, 450.0f}}) {
        driver.window().tap(at);
        InputEvent wheel;
        wheel.kind = InputKind::wheel;
        wheel.at = at;
        wheel.by = {0.0f, 2.0f};
        driver.window().happen(wheel);
        driver.window().drag(at, at + Vec{-80.0f, -120.0f});
        driver.settle();
    }
    CHECK(driver.has("share-sheet"));
    CHECK(driver.program().state().camera == camera);
    CHECK(driver.program().state().panel_scroll == scroll);
    driver.key(Key::z, true);
    driver.key(Key::left);
    driver.key(Key::plus);
    CHECK(driver.session().job() == demo_job());
    CHECK(driver.program().state().camera == camera);
    driver.key(Key::escape);
    CHECK_FALSE(driver.has("share-sheet"));
    CHECK(driver.has("diagram"));
}

TEST_CASE("By keys alone: open, go round, copy, close, and on from where one was") {
    Driver driver(desktop);
    driver.as_in_a_browser();
    driver.program().state().focus = "share";
    driver.program().state().show_focus = true;
    driver.settle();
    driver.key(Key::enter);
    REQUIRE(driver.has("share-sheet"));
    CHECK(driver.program().state().focus == "share/close");
    std::vector<std::string> met;
    for (int i = 0; i < 4; ++i) {
        met.push_back(driver.program().state().focus);
        driver.key(Key::tab);
    }
    CHECK(met == std::vector<std::string>{"share/close", "share/link", "share/copy", "share/file"});
    CHECK(driver.program().state().focus == "share/close");
    driver.key(Key::tab);
    driver.key(Key::tab);
    driver.key(Key::enter);
    (void)last(driver, ErrandKind::copy_text);
    driver.key(Key::escape);
    CHECK(driver.program().state().focus == "share");
}

TEST_CASE("A job of the list is shared without opening it") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    driver.as_in_a_browser();
    driver.tap("place/jobs");
    CHECK(driver.has("pick-file"));
    driver.tap("pick-file");
    (void)last(driver, ErrandKind::pick_file);
    const JobId first = driver.session().current();
    driver.tap("new-job");
    REQUIRE(driver.session().current() != first);
    const JobId open = driver.session().current();
    driver.tap("place/jobs");
    driver.tap("job/" + std::to_string(first));
    driver.picture("jobs-in-a-browser");
    driver.tap("job/" + std::to_string(first) + "/share");
    driver.tap("share/copy");
    const ReadJob read = read_job_link(last(driver, ErrandKind::copy_text));
    REQUIRE(read);
    CHECK(*read.job == demo_job());
    CHECK(driver.session().current() == open);
    driver.tap("share/close");
    driver.tap("job/" + std::to_string(first) + "/export");
    (void)last(driver, ErrandKind::give_file);
}

TEST_CASE("A visit can be passed on before it is kept") {
    Driver driver(phone);
    driver.as_in_a_browser();
    Job sent = demo_job();
    sent.name = "Passed on";
    driver.open_link(base + job_link_fragment(sent));
    driver.tap("set-every-stop");
    share(driver);
    driver.tap("share/copy");
    const ReadJob read = read_job_link(last(driver, ErrandKind::copy_text));
    REQUIRE(read);
    CHECK(*read.job == driver.session().job());
    CHECK(driver.session().visiting());
    // Another link closes the sheet: what it showed is no longer what is open.
    driver.open_link(base + job_link_fragment(demo_job()));
    CHECK_FALSE(driver.has("share-sheet"));
}

TEST_CASE("A link too long for a code on this screen says so; the link itself is still there") {
    const Job job = long_job(14);
    const std::size_t length = base.size() + job_link_fragment(job).size();
    INFO(length << " characters");
    REQUIRE(length > 1600);
    REQUIRE(length < 2900);
    for (const WindowSize& size : {small_phone, desktop}) {
        Driver driver(size);
        driver.as_in_a_browser();
        driver.open_link(base + job_link_fragment(job));
        share(driver);
        const bool code = size.width > 1000;
        CHECK(driver.has("share/code") == code);
        CHECK(driver.has("share/no-code") == !code);
        CHECK(driver.has("share/copy"));
        driver.picture(std::string("share long ") + size.name);
    }
}

TEST_CASE("A job too large for a link is offered as a file alone") {
    Job job = long_job(most_outline_corners);
    job.press.stations = most_stations;
    job.uses.assign(static_cast<std::size_t>(most_stations), StationUse::open);
    for (int station = 11; station <= 20; ++station) {
        Head head = job.heads.back();
        head.station = station;
        head.id = static_cast<HeadId>(station);
        for (Point& corner : head.image.outline) corner.x *= 1.0 + 0.001 * station;
        job.heads.push_back(head);
    }
    REQUIRE_FALSE(fault_of(job));
    REQUIRE(job_link_fragment(job).empty());
    Driver driver(phone);
    driver.as_in_a_browser();
    REQUIRE(driver.session().open_new(job));
    driver.program().act(ShareJob{driver.session().current()});
    driver.settle();
    CHECK(driver.find("share/about").value == std::string(word(Language::english, Word::share_no_link)));
    CHECK_FALSE(driver.has("share/copy"));
    CHECK_FALSE(driver.has("share/link"));
    CHECK_FALSE(driver.has("share/code"));
    CHECK(driver.has("share/file"));
    driver.picture("share-too-large");
}

TEST_CASE("A window that can only hand out files offers only that") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    Abilities abilities;
    abilities.give_file = true;
    driver.window().can_do(abilities);
    driver.settle();
    share(driver);
    CHECK(driver.find("share/about").value == std::string(word(Language::english, Word::share_file_explained)));
    CHECK_FALSE(driver.has("share/copy"));
    CHECK_FALSE(driver.has("share/code"));
    driver.picture("share-file-only");
    driver.tap("share/file");
    (void)last(driver, ErrandKind::give_file);
}
