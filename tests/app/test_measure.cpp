// Measuring the press as a person does it: by the sheet, the number pad, the keyboard; and the heat
// of a run. Expected values are worked out beside each test.
#include <cmath>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/text/sentences.h"
#include "app/views/measure_words.h"
#include "core/job_heat.h"
#include "tests/app/driver.h"

using namespace carriageway;
using Catch::Approx;

namespace {

const std::string separation_row = "measure/sensors.measured_separation_mm";

std::string english(Word key) { return std::string(word(Language::english, key)); }

void open_list(Driver& driver) {
    driver.tap("section/press");
    driver.tap("measure");
    REQUIRE(driver.has("measure-sheet"));
}

void enter(Driver& driver, const std::string& number) {
    REQUIRE(driver.has("pad/display"));
    driver.pad(number);
    driver.tap("pad/accept");
}

std::string result(Driver& driver) { return driver.find("measure/result").value; }

} // namespace

TEST_CASE("The least separation from five readings, one of which is taken again") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        Driver driver(size);
        const Job before = driver.session().job();
        REQUIRE_FALSE(before.press.sensors.separation_measured);
        open_list(driver);
        driver.picture(std::string("measure list ") + size.name);
        driver.tap(separation_row);
        driver.picture(std::string("measure separation empty ") + size.name);
        CHECK(driver.find("measure/cautions").value.find(english(Word::caution_lamps)) != std::string::npos);
        CHECK(driver.find("measure/scheme").label == english(Word::scheme_bars));
        driver.tap("measure/add/0");
        driver.picture(std::string("measure typing ") + size.name);
        // One of each in turn: the pad goes from one bar to the other by itself.
        for (const char* number : {"465", "535", "465", "536", "464", "535"}) enter(driver, number);
        CHECK_FALSE(driver.has("pad"));
        for (const char* number : {"466", "535", "465", "553"}) {
            if (!driver.has("pad")) driver.tap("measure/add/0");
            enter(driver, number);
        }
        // The fifth of the machine's bar is 18 from the others.
        CHECK(driver.find("measure/off/1").label ==
              say(Language::english, Word::measure_stands_off, {"5", "553 mm"}));
        driver.picture(std::string("measure stands off ") + size.name);
        driver.tap("measure/again/1");
        CHECK_FALSE(driver.has("measure/off/1"));
        enter(driver, "465");
        enter(driver, "535");
        CHECK_FALSE(driver.has("measure/off/1"));
        // Means 465 and 535.2: 70.2 apart. Scatter of the means sqrt(0.5/5) and sqrt(0.2/5), and of
        // the ruler's marks 1/sqrt(12) for each: together 0.554.
        CHECK(result(driver) == "70.2 mm ± 0.6 mm");
        driver.picture(std::string("measure result ") + size.name);
        CHECK(driver.session().job() == before); // until the person says so
        CHECK(driver.find("measure/use").label == "Use 70.2 mm ± 0.6 mm");
        driver.tap("measure/use");
        CHECK(driver.find("notice").label.find("70.2 mm ± 0.6 mm") != std::string::npos);
        const Sensors& sensors = driver.session().job().press.sensors;
        CHECK(sensors.separation_measured);
        CHECK(sensors.measured_separation == Approx(70.2));
        CHECK(sensors.separation_spread.measured);
        CHECK(sensors.separation_spread.value == Approx(std::sqrt(0.1 + 0.04 + 2.0 / 12.0)));
        driver.tap("measure/close");
        driver.tap("undo");
        CHECK(driver.session().job() == before);
        CHECK_FALSE(driver.session().can_undo());
        driver.tap("redo");
        CHECK(driver.session().job().press.sensors.separation_measured);
    }
}

TEST_CASE("A gauge, straight from its number") {
    Driver driver(phone);
    const Job before = driver.session().job();
    driver.tap("section/press");
    driver.tap("press/squeegee_gauge.mm_per_mark");
    driver.picture("measure from the pad");
    driver.tap("pad/measure");
    CHECK(driver.find("measure/title").label == "Squeegee gauge, height a mark");
    CHECK_FALSE(driver.has("measure/back"));
    driver.tap("measure/add/0");
    // Mark 0 at 2 mm, mark 2 at 13: 5.5 a mark. A caliper's 0.1 mm: 0.0289·sqrt(2)/2 = 0.020; the
    // gauge set to a mark within its graduation of 0.1: 0.0289·5.5·sqrt(2)/2 = 0.112.
    for (const char* number : {"0", "2", "2", "2", "2", "13", "13", "13"}) enter(driver, number);
    CHECK_FALSE(driver.has("pad"));
    CHECK(result(driver) == "5.50 mm ± 0.11 mm");
    driver.picture("measure gauge");
    driver.tap("measure/use");
    CHECK_FALSE(driver.has("measure-sheet"));
    CHECK(driver.session().job().press.squeegee_gauge.mm_per_mark == Approx(5.5));
    driver.tap("undo");
    CHECK(driver.session().job() == before);
}

TEST_CASE("An adjuster's travel a turn") {
    Driver driver(desktop);
    open_list(driver);
    driver.tap("measure/adjuster/1");
    driver.tap("measure/add/0");
    for (const char* number : {"5.2", "5.3", "5.1", "4"}) enter(driver, number);
    CHECK(result(driver).substr(0, 4) == "1.30");
    driver.picture("measure screw desktop");
    driver.tap("measure/use");
    CHECK(driver.session().job().press.adjusters[1].mm_per_turn == Approx(1.3));
    CHECK(driver.session().job().press.adjusters[0] == demo_job().press.adjusters[0]);
}

TEST_CASE("What can't be worked out says why, and loses nothing") {
    Driver driver(desktop);
    const Job before = driver.session().job();
    open_list(driver);
    driver.tap("measure/arm_radius_mm");
    CHECK(result(driver) == say(Language::english, Word::measure_refused_missing, {"distance measured", "3"}));
    CHECK_FALSE(driver.has("measure/use"));
    driver.tap("measure/add/0");
    driver.pad("1/0");
    driver.tap("pad/accept");
    CHECK(driver.has("pad")); // still there, with what is wrong
    CHECK(driver.program().state().pad->trouble.find("1/0") != std::string::npos);
    for (int i = 0; i < 3; ++i) driver.key(Key::backspace);
    for (const char* number : {"3", "3", "3"}) enter(driver, number);
    CHECK(result(driver).find("takes 100 mm to 20000 mm") != std::string::npos);
    CHECK_FALSE(driver.has("measure/use"));
    driver.picture("measure refused");
    // Readings stay through the list and through closing the sheet.
    driver.tap("measure/back");
    CHECK(driver.find("measure/arm_radius_mm").value.find("readings: 3") != std::string::npos);
    driver.tap("measure/close");
    driver.tap("measure");
    driver.tap("measure/arm_radius_mm");
    CHECK(driver.has("measure/reading/0/2"));
    driver.tap("measure/reading/0/2");
    CHECK_FALSE(driver.has("measure/reading/0/2"));
    CHECK(driver.has("measure/reading/0/1"));
    // Two marks that are one: nothing to divide by.
    driver.tap("measure/back");
    driver.tap("measure/flood_gauge.mm_per_mark");
    driver.tap("measure/add/0");
    for (const char* number : {"1", "2", "2", "2", "1", "13", "13", "13"}) enter(driver, number);
    CHECK(result(driver) == english(Word::measure_refused_alike));
    CHECK(driver.session().job() == before);
    CHECK_FALSE(driver.session().can_undo());
}

TEST_CASE("How finely one reads is the person's to say") {
    Driver driver(desktop);
    open_list(driver);
    driver.tap("measure/sensors.bar_length_mm");
    CHECK(driver.find("measure/step/0").label.find("1 mm") != std::string::npos);
    driver.tap("measure/step/0");
    enter(driver, "0.5");
    CHECK(driver.find("measure/step/0").label.find("0.5 mm") != std::string::npos);
    driver.tap("measure/add/0");
    for (const char* number : {"60", "60", "60"}) enter(driver, number);
    // All alike: what is left is 0.5/sqrt(12) = 0.144.
    CHECK(result(driver) == "60.00 mm ± 0.14 mm");
}

TEST_CASE("While one measures nothing below can be touched, and keys reach all of the sheet") {
    Driver driver(desktop);
    driver.tap("section/press");
    driver.reveal("measure");
    driver.program().state().focus = "measure";
    driver.program().state().show_focus = true;
    driver.settle();
    driver.key(Key::enter);
    REQUIRE(driver.has("measure-sheet"));
    CHECK(driver.program().state().focus == "measure/close");
    for (const Thing& thing : driver.list().things()) {
        INFO(thing.name);
        CHECK(thing.name.rfind("measure", 0) == 0);
    }
    const Camera camera = driver.program().state().camera;
    driver.key(Key::tab);
    CHECK(driver.program().state().focus == separation_row);
    driver.key(Key::enter);
    REQUIRE(driver.has("measure/add/0"));
    CHECK(driver.program().state().focus == "measure/back");
    std::vector<std::string> met;
    for (int i = 0; i < 6; ++i) {
        met.push_back(driver.program().state().focus);
        driver.key(Key::tab);
    }
    CHECK(met == std::vector<std::string>{"measure/back", "measure/close", "measure/add/0", "measure/step/0",
                                          "measure/add/1", "measure/step/1"});
    driver.program().state().focus = "measure/add/0";
    driver.key(Key::enter);
    REQUIRE(driver.has("pad"));
    driver.type("465");
    driver.program().state().show_focus = false;
    driver.key(Key::enter);
    driver.key(Key::escape); // the pad
    CHECK_FALSE(driver.has("pad"));
    CHECK(driver.has("measure/reading/0/0"));
    driver.key(Key::z, true);
    driver.key(Key::left);
    CHECK(driver.program().state().camera == camera);
    driver.key(Key::escape); // the number
    CHECK_FALSE(driver.has("measure/add/0"));
    CHECK(driver.has("measure-sheet"));
    driver.key(Key::escape); // the sheet
    CHECK_FALSE(driver.has("measure-sheet"));
    CHECK(driver.has("diagram"));
    CHECK(driver.program().state().focus == "measure");
    CHECK(driver.session().job() == demo_job());
}

TEST_CASE("Every number of a press has steps, words for its readings and cautions, and a drawing") {
    Driver driver(tablet);
    PressProfile with_screws = demo_job().press;
    with_screws.level_screws = {{"Front", 0.0, -200.0, 1.25, true}, {"Back", 0.0, 200.0, 1.25, true}};
    driver.program().act(DoEdit{Edit{SetPress{with_screws, {}}}});
    driver.program().act(OpenMeasuring{Field::count});
    const std::vector<MeasureRow> rows = measure_rows(driver.session().job().press);
    CHECK(rows.size() == procedures().size() - 1 + with_screws.adjusters.size() + 2);
    for (const MeasureRow& row : rows) {
        const Procedure& procedure = procedure_of(row.target);
        driver.program().act(ShowProcedure{row.target});
        driver.settle();
        INFO(driver.find("measure/title").label);
        CHECK_FALSE(driver.find("measure/title").label.empty());
        CHECK(driver.find("measure/steps").value.size() > 20);
        CHECK(driver.has("measure/cautions") == (procedure.caution_count > 0));
        for (int i = 0; i < procedure.needed_count; ++i)
            CHECK_FALSE(driver.find("measure/kind/" + std::to_string(i)).label.empty());
        if (scheme_of(row.target) == Scheme::none) continue;
        // Each letter beside readings stands in the drawing too.
        const Box box = driver.find("measure/scheme").box;
        int letters = 0;
        for (const Mark& mark : driver.list().marks())
            if (mark.kind == MarkKind::text && mark.on == Role::strong &&
                box.contains(driver.list().points(mark)[0]))
                ++letters;
        CHECK(letters == procedure.needed_count);
        driver.picture("scheme " + std::string(row.target.screw ? "screw" : info_of(row.target.field).key));
    }
}

TEST_CASE("The heat of a run, its advice and its cautions") {
    for (const WindowSize& size : {phone, desktop}) {
        Driver driver(size);
        driver.tap("section/heat");
        driver.reveal("heat/chart");
        driver.picture(std::string("heat ") + size.name);
        const HeatOutlook outlook = heat_outlook(driver.session().job());
        REQUIRE(outlook.steady_turn.has_value());
        CHECK(driver.find("heat/steady").label.find("turn " + std::to_string(*outlook.steady_turn)) !=
              std::string::npos);
        // The model wants less than is usual: a direction, no number to set.
        REQUIRE(outlook.dwell->shorter);
        CHECK(driver.find("heat/dwell").label == english(Word::heat_dwell_open));
        CHECK(driver.find("heat/caution").label == english(Word::caution_hot));
        CHECK_FALSE(driver.has("heat/warning/0"));
        driver.tap("job/run.flash_dwell_s");
        enter(driver, "5");
        const HeatOutlook longer = heat_outlook(driver.session().job());
        REQUIRE_FALSE(longer.dwell->shorter);
        REQUIRE_FALSE(longer.dwell->longer);
        CHECK(driver.find("heat/dwell").label ==
              say(Language::english, Word::heat_dwell_title, {format_time(longer.dwell->model)}));
        driver.tap("undo");
        driver.tap("job/run.flash_dwell_s");
        enter(driver, "12");
        REQUIRE(heat_outlook(driver.session().job()).warnings.size() == 3);
        CHECK(driver.has("heat/warning/2"));
        driver.reveal("heat/warning/1");
        driver.picture(std::string("heat hot ") + size.name);
        driver.tap("undo");
        CHECK_FALSE(driver.has("heat/warning/0"));
    }
}

TEST_CASE("Garment, run and assumptions are set in their sections") {
    Driver driver(phone);
    driver.tap("section/garment");
    CHECK(driver.find("garment/t-shirt").chosen);
    driver.tap("garment/fleece");
    CHECK(driver.session().job().garment.kind == GarmentKind::fleece);
    CHECK(driver.find("garment/fleece").chosen);
    driver.picture("garment");
    driver.tap("job/run.pieces");
    enter(driver, "250");
    CHECK(driver.session().job().run.pieces == 250.0);
    CHECK(driver.find("job/run.pieces").value == "250");
    driver.tap("section/assumed");
    driver.tap("job/assumed.waste_share");
    enter(driver, "8");
    CHECK(driver.session().job().assumed.waste_share == Approx(0.08));
    driver.picture("assumed");
}
