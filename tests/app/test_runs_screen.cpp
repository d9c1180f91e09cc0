// The history of a job on the screen: runs finished, compared, deleted and brought back, set up
// again, and the job on another press.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "tests/app/driver.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Matchers::ContainsSubstring;

namespace {

void open_runs(Driver& driver) {
    driver.reveal("day");
    driver.tap("day");
    driver.tap("day/runs");
}

std::string run_thing(Driver& driver, const std::string& what = {}) {
    return "runs/" + std::to_string(driver.session().runs().front().id) + what;
}

} // namespace

TEST_CASE("A run is finished by a tap, and compared with the job as it is set later") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    const Head head = driver.session().job().heads.front();
    open_runs(driver);
    driver.tap("runs/finish");
    REQUIRE(driver.session().runs().size() == 1);
    driver.program().act(DoEdit{Edit{SetNumber{head.id, Field::squeegee_angle, radians(22.0)}}});
    driver.settle();
    driver.tap(run_thing(driver));
    driver.reveal(run_thing(driver, "/compare"));
    driver.tap(run_thing(driver, "/compare"));
    REQUIRE(driver.has("compare/row/0"));
    CHECK_FALSE(driver.has("compare/row/1"));
    const Thing& row = driver.find("compare/row/0");
    CHECK_THAT(row.value, ContainsSubstring("22°"));
    CHECK_THAT(driver.find("compare/press").label, ContainsSubstring("1"));
    // Back leads to everything of the run, and from there out.
    driver.tap("day/back");
    CHECK(driver.has("day/runs"));
    driver.tap("day/close");
    CHECK_FALSE(driver.has("day/close"));
}

TEST_CASE("A deleted run can be brought back from the notice") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    open_runs(driver);
    driver.tap("runs/finish");
    driver.tap(run_thing(driver));
    driver.reveal(run_thing(driver, "/delete"));
    driver.tap(run_thing(driver, "/delete"));
    CHECK(driver.session().runs().empty());
    driver.tap("notice/restore-run");
    CHECK(driver.session().runs().size() == 1);
}

TEST_CASE("A run is set up again as it was really set") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    const HeadId head = driver.session().job().heads.front().id;
    const JobId first = driver.session().current();
    driver.program().act(DoEdit{Edit{
        SetWalkMark{WalkMark{head, Field::squeegee_pressure, true, 233.0, {1'700'000'000'000, "MK"}}, true}}});
    driver.settle();
    open_runs(driver);
    driver.tap("runs/finish");
    driver.tap(run_thing(driver));
    driver.reveal(run_thing(driver, "/again"));
    driver.tap(run_thing(driver, "/again"));
    CHECK(driver.session().current() != first);
    CHECK(find_head(driver.session().job(), head)->pressure.squeegee == 233.0);
    CHECK(driver.session().job().walk.empty());
}

TEST_CASE("A job is set up on another press of the library, and what changed is told") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path(), Language::spanish);
    PressProfile other = driver.session().job().press;
    other.name = "Press two";
    other.carriage.fastest = 400.0;
    Job on_other = driver.session().job();
    driver.program().act(DoEdit{Edit{SetPress{other, {}}}});
    REQUIRE(driver.session().keep_press());
    driver.program().act(Undo{});
    driver.settle();
    open_runs(driver);
    const PressId press = driver.session().presses().front().id;
    driver.reveal("runs/carry/" + std::to_string(press));
    driver.tap("runs/carry/" + std::to_string(press));
    CHECK(driver.session().job().press.name == "Press two");
    for (const Head& head : driver.session().job().heads) CHECK(head.print_speed <= 400.0);
    CHECK_THAT(driver.find("notice").label, ContainsSubstring("Press two"));
    CHECK(driver.session().job().heads.size() == on_other.heads.size());
}
