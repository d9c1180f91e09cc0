// The Register place worked as a person works it: marks, advice, rounds, prints and heights.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/text/sentences.h"
#include "app/views/register_view.h"
#include "tests/app/driver.h"

using namespace carriageway;
using Catch::Approx;

namespace {

const Head& head_of(Driver& driver, int station) {
    return *head_on(driver.session().job(), station);
}

/// Without what the demonstration brings of marks and heights: a test reads its own.
void go_to_register(Driver& driver, int station) {
    driver.program().act(DoEdit{Edit{SetRounds{head_of(driver, station).id, {}}}});
    driver.program().act(DoEdit{Edit{SetHeightReadings{{}}}});
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

/// Whether a straight line from a to b has a point in a box, as near as a thousand points tell.
bool line_in(const Box& box, Vec a, Vec b) {
    for (int i = 0; i <= 1000; ++i)
        if (box.contains(a + (b - a) * (0.001f * static_cast<float>(i)))) return true;
    return false;
}

/// Whether the image's outline runs through a box.
bool outline_in(const DrawingList& list, const Box& box) {
    for (const Mark& mark : list.marks()) {
        if (mark.kind != MarkKind::loop || mark.colour.role != Role::image) continue;
        const Vec* points = list.points(mark);
        for (std::uint32_t i = 0; i < mark.count; ++i)
            if (line_in(box, points[i], points[(i + 1) % mark.count])) return true;
    }
    return false;
}

Box box_of(const DrawingList& list, const Mark& text) {
    const Vec at = list.points(text)[0];
    return {at.x, at.y, at.x + text.extent.x, at.y + text.extent.y};
}

/// Numbers written within a box, outside panels, each once for each time it stands there.
std::vector<const Mark*> numbers_in(const DrawingList& list, const Box& box) {
    std::vector<const Mark*> numbers;
    for (const Mark& mark : list.marks()) {
        if (mark.kind != MarkKind::text || mark.layer != 0) continue;
        const std::string_view words = list.words(mark);
        const bool number = words.find_first_not_of("0123456789") == std::string_view::npos;
        if (number && box.contains(list.points(mark)[0])) numbers.push_back(&mark);
    }
    return numbers;
}

/// Heights under three heads on five platens, of which one lies low by as much.
std::vector<HeightReading> readings_with_a_low_platen(Driver& driver, std::uint32_t low,
                                                      double by) {
    std::vector<HeightReading> readings;
    const HeightPoints points = driver.session().job().press.height_points;
    for (const int station : {2, 5, 6})
        for (std::uint32_t platen = 1; platen <= 5; ++platen)
            for (const HeightPoint point :
                 {HeightPoint::operator_left, HeightPoint::operator_right, HeightPoint::machine}) {
                const Point at = place_of(points, point);
                const double wobble =
                    0.004 * static_cast<double>((platen * 3 + static_cast<std::uint32_t>(station)) %
                                                5) -
                    0.008;
                readings.push_back({platen, head_of(driver, station).id, at.x, at.y,
                                    3.0 + wobble + (platen == low ? by : 0.0)});
            }
    return readings;
}

} // namespace

TEST_CASE(
    "The image's outline runs through no mark's number; what lies under one has its own ground") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        Driver driver(size);
        go_to_register(driver, 5);
        driver.tap("register/corners");
        read_marks_of(driver, 5);
        const DrawingList& list = driver.list();
        const std::vector<const Mark*> numbers =
            numbers_in(list, driver.find("register/drawing").box);
        CHECK(numbers.size() == 4);
        for (const Mark* number : numbers) {
            INFO(list.words(*number));
            CHECK((number->on == Role::panel || !outline_in(list, box_of(list, *number))));
        }
        // Where there is room, none needs a ground of its own.
        if (size.width >= desktop.width)
            for (const Mark* number : numbers) CHECK(number->on != Role::panel);
    }
}

TEST_CASE("What to look at stands side by side on a phone, in both languages") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(phone, {}, language);
        go_to_register(driver, 5);
        const Box marks = driver.find("register/marks").box;
        for (const char* other : {"register/platens", "register/heights"}) {
            CHECK(driver.find(other).box.y0 == marks.y0);
            CHECK(driver.find(other).box.y1 == marks.y1);
        }
    }
}

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
        for (const char* adjuster :
             {"register/adjuster/1", "register/adjuster/2", "register/adjuster/3"})
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

TEST_CASE("A print with every mark on its place is read when somebody says so") {
    Driver driver(phone);
    go_to_register(driver, 8);
    driver.tap("register/corners");
    const std::string within(word(Language::english, Word::reg_within));
    CHECK(driver.find("register/verdict").label != within);
    driver.tap("register/all-on-place");
    CHECK(driver.find("register/verdict").label == within);
    CHECK_FALSE(driver.has("register/all-on-place"));
    CHECK(head_of(driver, 8).rounds.back().read);
    driver.tap("undo");
    CHECK(driver.find("register/verdict").label != within);
    // A zero that was typed counts as well.
    driver.tap("register/mark/1");
    driver.tap("register/mark/1/error-x");
    driver.type("0");
    driver.key(Key::enter);
    driver.key(Key::escape);
    CHECK(driver.find("register/verdict").label == within);
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
    for (MarkReading& mark : rounds.front().marks)
        mark.measured = {-mark.nominal.x, mark.nominal.y};
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
            rounds.push_back(
                {platen,
                 turn,
                 {{{-100.0, 0.0}, {-100.0 + wobble, off}}, {{100.0, 0.0}, {100.0 + wobble, off}}},
                 {}});
        }
    driver.program().act(DoEdit{Edit{SetRounds{head_of(driver, 5).id, rounds}}});
    driver.tap("register/platens");
    driver.picture("register-platens");
    CHECK(driver.find("register/scatter").label == "Something stands out of the scatter");
    CHECK(driver.find("register/scatter").value.find("Platen 2") != std::string::npos);
    CHECK(driver.has("register/scatter/platen/2"));
    const std::size_t before = rounds.size();
    driver.tap("register/add-print");
    CHECK(head_of(driver, 5).rounds.size() == before + 1);
}

TEST_CASE("Platen and turn of a print are counted up and down, and end at the press's platens") {
    Driver driver(phone);
    go_to_register(driver, 5);
    driver.tap("register/platens");
    driver.tap("register/add-print");
    driver.picture("register-print");
    const auto print = [&]() -> const MarkRound& { return head_of(driver, 5).rounds.back(); };
    REQUIRE(print().platen == 1);
    REQUIRE(print().turn == 1);
    // 0 would be no print by platen any more.
    CHECK_FALSE(driver.find("register/platen/less").enabled);
    CHECK_FALSE(driver.find("register/turn/less").enabled);
    driver.reveal("register/turn/more");
    const float scrolled = driver.program().state().panel_scroll;
    driver.tap("register/turn/more");
    CHECK(print().turn == 2);
    CHECK(driver.program().state().panel_scroll == scrolled);
    driver.tap("register/turn/less");
    CHECK(print().turn == 1);
    const int stations = driver.session().job().press.stations;
    for (int platen = 2; platen <= stations; ++platen) driver.tap("register/platen/more");
    CHECK(print().platen == stations);
    CHECK_FALSE(driver.find("register/platen/more").enabled);
    CHECK(driver.find("register/platen").label == "Platen " + std::to_string(stations));
    // Its marks are typed next, where the print need not be one of a platen.
    driver.tap("register/read-print");
    CHECK(driver.program().state().registering.mode == RegisterMode::marks);
    driver.reveal("register/turn/less");
    driver.tap("register/turn/less");
    CHECK(print().turn == 0);
    CHECK(driver.find("register/turn").label == "Turn not noted");
}

TEST_CASE("High and low are told by a tip on the disc as well as by its shade") {
    for (const WindowSize& size : {phone, desktop}) {
        INFO(size.name);
        Driver driver(size);
        go_to_register(driver, 5);
        driver.tap("register/heights");
        std::vector<HeightReading> readings = readings_with_a_low_platen(driver, 4, 0.15);
        for (HeightReading& reading : readings)
            if (reading.platen == 2) reading.height -= 0.1;
        driver.program().act(DoEdit{Edit{SetHeightReadings{std::move(readings)}}});
        driver.settle();
        driver.picture(std::string("register-within-") + size.name);
        const JobLevelling level = job_levelling(driver.session().job());
        CHECK(level.out == 0);
        // A gap that is too wide is a high head, but a low platen; below half of what is written
        // (0.01 mm) it is neither.
        int up = 0, down = 0;
        const auto count = [&](double high) {
            up += high >= 0.005 ? 1 : 0;
            down += high <= -0.005 ? 1 : 0;
        };
        for (const PartOff& part : level.heads) count(part.worst);
        for (const PartOff& part : level.platens) count(-part.worst);
        REQUIRE(up > 0);
        REQUIRE(down > 0);
        for (const Mark& mark : driver.list().marks()) {
            if (mark.kind != MarkKind::fill || mark.layer != 0 || mark.count != 3 ||
                mark.colour != paint(Role::ink))
                continue;
            const Vec* points = driver.list().points(mark);
            if (!driver.find("register/plan").box.contains(points[0])) continue;
            (points[0].y < points[1].y ? up : down) -= 1;
        }
        CHECK(up == 0);
        CHECK(down == 0);
    }
}

TEST_CASE("A height without tilts is said of the whole part; signs follow what is written") {
    PartOff part;
    part.known = LevelTerms::offset;
    part.out = part.surely_out = true;
    part.operator_left = part.operator_right = part.machine_side = part.worst = 0.9;
    const auto said = [&](Language language, bool head) {
        return off_text(language, LengthUnit::mm, part, head, 0.2);
    };
    CHECK(said(Language::english, false) ==
          std::vector<std::string>{"0.9 mm too low: raise the platen"});
    CHECK(said(Language::english, true) ==
          std::vector<std::string>{"0.9 mm too high: lower the head"});
    CHECK(said(Language::spanish, false) ==
          std::vector<std::string>{"0.9 mm de menos: suba el palet"});
    part.surely_out = false;
    CHECK(said(Language::english, false).size() == 2);
    CHECK(signed_length(-0.7, LengthUnit::mm) == "−0.7 mm");
    CHECK(signed_length(0.004, LengthUnit::mm) == "0 mm");
    // 0.006 mm is 0.0002 in, which is written as none.
    CHECK(signed_length(0.006, LengthUnit::inch) == "0 in");
    CHECK(signed_length(0.05, LengthUnit::inch, false) == "+0.002");
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
    const std::vector<HeightReading> readings = readings_with_a_low_platen(driver, 4, 0.9);
    driver.program().act(DoEdit{Edit{SetHeightReadings{readings}}});
    driver.settle();
    driver.picture("register-heights");
    CHECK(driver.has("register/level/platen/4"));
    const Thing& verdict = driver.find("register/level");
    CHECK(verdict.label == "Platen 4 is out");
    // Four platens lie alike but for the wobble, the fifth 0.9 mm low.
    const JobLevelling level = job_levelling(driver.session().job());
    REQUIRE(level.worst);
    CHECK(level.worst->off.number == 4);
    CHECK(level.worst->off.worst == Approx(0.9).margin(0.02));
    CHECK(verdict.value.find("Worst: Platen 4, " +
                             format_fine_length(level.worst->off.worst, LengthUnit::mm)) == 0);
    CHECK(verdict.value.find("too low at the ") != std::string::npos);
    CHECK(driver.find("register/level/platen/4").value.find("too low") != std::string::npos);
    driver.tap("register/reading/" + std::to_string(readings.size() - 30 + 1));
    CHECK(driver.session().job().height_readings.size() == readings.size() - 1);
}
