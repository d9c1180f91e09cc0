// The Register place worked as a person works it: marks, advice, rounds, prints and heights.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/text/sentences.h"
#include "tests/app/driver.h"

using namespace carriageway;
using Catch::Approx;

namespace {

const Head& head_of(Driver& driver, int station) { return *head_on(driver.session().job(), station); }

void go_to_register(Driver& driver, int station) {
    driver.program().choose_head(head_of(driver, station).id);
    driver.settle();
    driver.tap("place/register");
}

/// Puts marks on the corners that print 1 mm to the right and turned by a quarter of a degree.
void read_marks_of(Driver& driver, int station) {
    const Head& head = head_of(driver, station);
    std::vector<MarkRound> rounds = head.rounds;
    REQUIRE_FALSE(rounds.empty());
    for (MarkReading& mark : rounds.back().marks) {
        const double turn = radians(0.25);
        mark.measured = {mark.nominal.x * std::cos(turn) - mark.nominal.y * std::sin(turn) + 1.0,
                         mark.nominal.x * std::sin(turn) + mark.nominal.y * std::cos(turn)};
    }
    driver.program().act(DoEdit{Edit{SetRounds{head.id, rounds}}});
    driver.settle();
}

} // namespace

TEST_CASE("Marks at the corners, their errors typed, say what to turn; the next round converges") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        Driver driver(size);
        go_to_register(driver, 5);
        driver.tap("register/corners");
        REQUIRE(head_of(driver, 5).rounds.size() == 1);
        REQUIRE(head_of(driver, 5).rounds.front().marks.size() == 4);
        // One error by the pad: across, and then along follows by itself.
        driver.tap("register/mark/1");
        driver.tap("register/mark/1/error-x");
        driver.pad("0.4");
        driver.tap("pad/accept");
        driver.pad("0.3");
        driver.tap("pad/accept");
        const MarkReading& first = head_of(driver, 5).rounds.front().marks.front();
        CHECK(first.measured.x - first.nominal.x == Approx(0.4));
        CHECK(first.measured.y - first.nominal.y == Approx(0.3));
        read_marks_of(driver, 5);
        driver.picture(std::string("register-advice-") + size.name);
        CHECK(driver.find("register/verdict").label.find("Turn") != std::string::npos);
        for (const char* adjuster : {"register/adjuster/1", "register/adjuster/2", "register/adjuster/3"})
            CHECK(driver.has(adjuster));
        driver.reveal("register/next-round");
        driver.tap("register/next-round");
        const std::vector<MarkRound>& rounds = head_of(driver, 5).rounds;
        REQUIRE(rounds.size() == 2);
        REQUIRE(rounds.front().turned.size() == 3);
        CHECK(rounds.front().turned[2] != 0.0);
        CHECK(driver.has("register/chart"));
        // Undo takes the round back as one step.
        driver.program().act(Undo{});
        driver.settle();
        CHECK(head_of(driver, 5).rounds.size() == 1);
    }
}

TEST_CASE("A tap on the drawing adds a mark where it was tapped, and a drag moves it") {
    Driver driver(desktop);
    go_to_register(driver, 5);
    const Box drawing = driver.find("register/drawing").box;
    driver.window().tap({drawing.centre().x + 30.0f, drawing.centre().y - 40.0f}, 1);
    driver.settle();
    REQUIRE(head_of(driver, 5).rounds.size() == 1);
    REQUIRE(head_of(driver, 5).rounds.front().marks.size() == 1);
    const Point at = head_of(driver, 5).rounds.front().marks.front().nominal;
    CHECK(at.x > 0.0);
    CHECK(at.y == Approx(std::round(at.y)));
    driver.drag("register/cross/1", {40.0f, 0.0f});
    const Point to = head_of(driver, 5).rounds.front().marks.front().nominal;
    CHECK(to.x > at.x);
    CHECK(to.y == at.y);
}

TEST_CASE("Marks that can't be right are refused in words") {
    Driver driver(phone);
    go_to_register(driver, 5);
    driver.tap("register/corners");
    std::vector<MarkRound> rounds = head_of(driver, 5).rounds;
    for (MarkReading& mark : rounds.front().marks) mark.measured = {-mark.nominal.x, mark.nominal.y};
    driver.program().act(DoEdit{Edit{SetRounds{head_of(driver, 5).id, rounds}}});
    driver.settle();
    const Thing& verdict = driver.find("register/verdict");
    CHECK(verdict.value.find("mirror") != std::string::npos);
    CHECK_FALSE(driver.has("register/next-round"));
}

TEST_CASE("Prints by platen and turn name the platen that is off") {
    Driver driver(phone);
    go_to_register(driver, 5);
    std::vector<MarkRound> rounds;
    for (int turn = 1; turn <= 3; ++turn)
        for (int platen = 1; platen <= 4; ++platen) {
            const double wobble = 0.01 * ((turn * 5 + platen * 3) % 5 - 2);
            const double off = (platen == 2 ? 1.2 : 0.0) + wobble;
            rounds.push_back({platen, turn, {{{-100.0, 0.0}, {-100.0 + wobble, off}}, {{100.0, 0.0}, {100.0 + wobble, off}}}, {}});
        }
    driver.program().act(DoEdit{Edit{SetRounds{head_of(driver, 5).id, rounds}}});
    driver.tap("register/platens");
    driver.picture("register-platens");
    CHECK(driver.find("register/scatter").value.find("Platen 2") != std::string::npos);
    CHECK(driver.has("register/scatter/platen/2"));
    const std::size_t before = rounds.size();
    driver.tap("register/add-print");
    CHECK(head_of(driver, 5).rounds.size() == before + 1);
}

TEST_CASE("Heights typed at points name the platen that is low, and what to turn") {
    Driver driver(phone);
    go_to_register(driver, 5);
    driver.tap("register/heights");
    driver.tap("register/type-gap");
    driver.pad("3.2");
    driver.tap("pad/accept");
    REQUIRE(driver.session().job().height_readings.size() == 1);
    CHECK(driver.session().job().height_readings.front().height == 3.2);
    // The next point is offered.
    CHECK(driver.program().state().registering.point == HeightPoint::operator_right);
    std::vector<HeightReading> readings;
    const HeightPoints points = driver.session().job().press.height_points;
    for (const int station : {2, 5, 6})
        for (std::uint32_t platen = 1; platen <= 5; ++platen)
            for (const HeightPoint point : {HeightPoint::operator_left, HeightPoint::operator_right, HeightPoint::machine}) {
                const double x = point == HeightPoint::operator_left ? -points.across : point == HeightPoint::machine ? 0.0 : points.across;
                const double y = point == HeightPoint::machine ? points.machine_y : points.operator_y;
                const double wobble = 0.004 * static_cast<double>((platen * 3 + static_cast<std::uint32_t>(station)) % 5) - 0.008;
                readings.push_back({platen, head_of(driver, station).id, x, y, 3.0 + wobble + (platen == 4 ? 0.9 : 0.0)});
            }
    driver.program().act(DoEdit{Edit{SetHeightReadings{readings}}});
    driver.settle();
    driver.picture("register-heights");
    CHECK(driver.has("register/level/platen/4"));
    CHECK(driver.find("register/level").label.find("out") != std::string::npos);
    CHECK(driver.find("register/level/platen/4").value.find("too low") != std::string::npos);
    driver.tap("register/reading/" + std::to_string(readings.size() - 30 + 1));
    CHECK(driver.session().job().height_readings.size() == readings.size() - 1);
}
