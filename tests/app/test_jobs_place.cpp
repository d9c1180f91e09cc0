// The jobs place on a real library in a folder of its own: find, open, rename, duplicate, delete,
// import, export; and what the program keeps from one start to the next.
#include <filesystem>
#include <fstream>

#include <catch2/catch_test_macros.hpp>

#include "app/records/exchange.h"
#include "tests/app/driver.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
namespace fs = std::filesystem;

namespace {

void saved(Driver& driver) {
    REQUIRE(driver.session().flush());
    driver.settle();
    CHECK(driver.find("saved").label == std::string(word(Language::english, Word::saved)));
}

std::string row_name(JobId id) { return "job/" + std::to_string(id); }

} // namespace

TEST_CASE("The first start opens the demonstration, and later ones what was open last") {
    const ScratchFolder folder;
    Stops set;
    {
        Driver driver(phone, folder.path());
        CHECK(driver.session().first_start());
        CHECK(driver.session().job().name == demo_job().name);
        driver.tap("head/6");
        driver.tap("finding/6/0/fix");
        saved(driver);
        set = driver.stops(6);
        driver.tap("place/jobs");
        driver.tap("theme/dark");
        driver.tap("language/spanish");
        driver.tap("units/inch");
        driver.tap("text/130");
    }
    Driver driver(phone, folder.path());
    CHECK_FALSE(driver.session().first_start());
    CHECK(driver.stops(6) == set);
    CHECK(driver.session().looks().theme == ThemeChoice::dark);
    CHECK(driver.session().looks().language == Language::spanish);
    CHECK(driver.session().looks().units == LengthUnit::inch);
    CHECK(std::abs(driver.session().looks().text_scale - 1.3f) < 0.001f);
    CHECK(driver.session().rows().size() == 1);
}

TEST_CASE("A job is duplicated, renamed by typing, found by typing, deleted and brought back") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.tap("place/jobs");
    const JobId first = driver.session().current();
    driver.tap(row_name(first));
    driver.tap(row_name(first) + "/duplicate");
    REQUIRE(driver.session().rows().size() == 2);
    JobId copy = 0;
    for (const JobRow& row : driver.session().rows())
        if (row.id != first) copy = row.id;
    driver.tap(row_name(copy));
    driver.tap(row_name(copy) + "/rename");
    REQUIRE(driver.has("typing"));
    driver.window().press(Key::a, true); // all of it
    driver.settle();
    driver.type("Zephyr pennant");
    driver.tap("typing/done");
    bool renamed = false;
    for (const JobRow& row : driver.session().rows())
        if (row.id == copy) renamed = row.name.find("Zephyr pennant") != std::string::npos;
    CHECK(renamed);
    driver.tap("search");
    driver.type("zeph");
    REQUIRE(driver.session().rows().size() == 1);
    CHECK(driver.session().rows().front().id == copy);
    driver.key(Key::escape);
    if (!driver.has(row_name(copy) + "/delete")) driver.tap(row_name(copy));
    driver.tap(row_name(copy) + "/delete");
    CHECK(driver.session().rows().empty());
    REQUIRE(driver.has("notice/restore"));
    driver.tap("notice/restore");
    CHECK(driver.session().rows().size() == 1);
}

TEST_CASE("A new job takes heads and is the one that is open") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.tap("place/jobs");
    driver.tap("new-job");
    CHECK(driver.program().state().place == Place::press);
    CHECK(driver.session().job().heads.empty());
    driver.tap("add-head/3");
    REQUIRE(head_on(driver.session().job(), 3) != nullptr);
    CHECK(driver.program().state().head == head_on(driver.session().job(), 3)->id);
    driver.tap("undo");
    CHECK(driver.session().job().heads.empty());
    saved(driver);
    CHECK(driver.session().rows().size() == 2);
}

TEST_CASE("An exported job reads back as the same job, and a dropped file is opened") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.tap("set-every-stop");
    driver.tap("place/jobs");
    const JobId id = driver.session().current();
    driver.tap(row_name(id));
    driver.tap(row_name(id) + "/export");
    REQUIRE(driver.has("notice"));
    fs::path written;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder.file("exports"))) written = entry.path();
    std::ifstream file(written, std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    const ReadJob read = read_job(text);
    REQUIRE(read.job.has_value());
    CHECK(*read.job == driver.session().job());
    driver.drop_file(written.string());
    CHECK(driver.session().current() != id);
    CHECK(driver.session().job() == *read.job);
}

TEST_CASE("A file that can't be read changes nothing and says what is wrong") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    const Job before = driver.session().job();
    std::ofstream(folder.file("broken.json")) << R"({"carriageway_job": 1, "name": 7})";
    driver.drop_file(folder.file("broken.json"));
    REQUIRE(driver.has("notice"));
    CHECK(driver.find("notice").label.find("broken.json") != std::string::npos);
    CHECK(driver.session().job() == before);
    CHECK(driver.session().rows().size() == 1);
    driver.drop_file(folder.file("not-there.json"));
    CHECK(driver.find("notice").label.find("not-there.json") != std::string::npos);
    CHECK(driver.session().job() == before);
}

TEST_CASE("A library that can't be used is left alone, said, and the work goes on") {
    const ScratchFolder folder;
    std::ofstream(folder.file("library.db")) << std::string(4096, 'x');
    Driver driver(phone, folder.path());
    CHECK(driver.session().save_state() == SaveState::not_kept);
    CHECK_FALSE(driver.session().trouble().empty());
    CHECK(driver.session().job().name == demo_job().name);
    driver.tap("head/6");
    driver.tap("finding/6/0/fix");
    CHECK(driver.head(6).fit);
    std::ifstream file(folder.file("library.db"), std::ios::binary);
    const std::string bytes((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    CHECK(bytes == std::string(4096, 'x'));
}

TEST_CASE("The name of a colour is typed in the head's own panel") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.tap("head/9");
    driver.tap("section/head");
    driver.tap("head/rename");
    REQUIRE(driver.has("typing"));
    driver.window().press(Key::a, true);
    driver.settle();
    driver.type("Midnight");
    driver.tap("typing/done");
    CHECK(head_on(driver.session().job(), 9)->colour.find("Midnight") != std::string::npos);
    driver.tap("undo");
    CHECK(head_on(driver.session().job(), 9)->colour == "Line black");
}

TEST_CASE("A press is kept in the library and used in another job, as one edit") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.tap("section/press");
    driver.tap("press/sensors.bar_length_mm");
    driver.type("75");
    driver.key(Key::enter);
    CHECK(driver.session().job().press.sensors.bar_length == 75.0);
    driver.tap("press/keep");
    REQUIRE(driver.session().presses().size() == 1);
    driver.tap("place/jobs");
    driver.tap("new-job");
    CHECK(driver.session().job().press.sensors.bar_length == demo_job().press.sensors.bar_length);
    // The demonstration's press goes by the same name: another name makes it another press.
    PressProfile other = driver.session().job().press;
    other.name = "Second press";
    driver.program().act(DoEdit{Edit{SetPress{other, {}}}});
    driver.settle();
    driver.tap("press/use/" + std::to_string(driver.session().presses().front().id));
    CHECK(driver.session().job().press.sensors.bar_length == 75.0);
    driver.tap("undo");
    CHECK(driver.session().job().press.name == "Second press");
}
