// A head from the side, its heights, air and mesh, worked as a person works them.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/text/sentences.h"
#include "tests/app/driver.h"

using namespace carriageway;
using Catch::Approx;

namespace {

const Head& head_of(Driver& driver, int station) { return *head_on(driver.session().job(), station); }

/// Opens a section of a head's panel and brings it into view.
void open_section(Driver& driver, const std::string& section) {
    driver.reveal("section/" + section);
    driver.tap("section/" + section);
}

bool shows(const Driver& driver, std::string_view words) {
    for (const Thing& thing : driver.list().things())
        if (thing.label.find(words) != std::string::npos || thing.value.find(words) != std::string::npos)
            return true;
    return false;
}

/// All that a panel says, a space after each line, read from its first control to its last: what is
/// out of sight isn't written.
std::string written(Driver& driver) {
    std::vector<std::string> controls;
    for (const Thing& thing : driver.list().things())
        if (thing.layer == 1 && !thing.name.starts_with("panel")) controls.push_back(thing.name);
    std::string out;
    for (const std::string& control : controls) {
        driver.reveal(control);
        for (const Mark& mark : driver.list().marks())
            if (mark.kind == MarkKind::text) (out += driver.list().words(mark)) += ' ';
    }
    return out;
}

} // namespace

TEST_CASE("A blade is tilted by its handle, and the gauge that brings its edge back is offered") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        Driver driver(size);
        driver.tap("head/5");
        open_section(driver, "side");
        driver.reveal("side/squeegee-angle");
        const double angle = head_of(driver, 5).squeegee.angle;
        const HeadAssessment before = driver.head(5);
        const double edge = before.contact.squeegee.over_garment;
        REQUIRE(angle == Approx(radians(15.0)));
        driver.picture(std::string("side-") + size.name);
        // The squeegee prints toward the operator, so its upper end leans to the left.
        const float out = before.geometry.squeegee_edge > 0.0 ? -1.0f : 1.0f;
        driver.drag("side/squeegee-angle", {30.0f * out, 0.0f});
        const Head& tilted = head_of(driver, 5);
        CHECK(tilted.squeegee.angle > angle + radians(2.0));
        // Whole degrees, and the band seen from above has moved with the edge.
        CHECK(degrees(tilted.squeegee.angle) == Approx(std::round(degrees(tilted.squeegee.angle))));
        CHECK(driver.head(5).squeegee.lo != Approx(before.squeegee.lo));
        CHECK(driver.head(5).contact.squeegee.over_garment > edge);
        driver.reveal("side/restore");
        driver.tap("side/restore");
        CHECK(head_of(driver, 5).squeegee.gauge < 1.0);
        const Gauge& gauge = driver.session().job().press.squeegee_gauge;
        CHECK(std::abs(driver.head(5).contact.squeegee.over_garment - edge) <=
              0.5 * gauge.graduation * gauge.mm_per_mark + 1e-9);
        CHECK_FALSE(driver.has("side/restore"));
        // One step of undo for the drag, one for the gauge.
        driver.tap("undo");
        driver.tap("undo");
        CHECK(head_of(driver, 5).squeegee.angle == angle);
        CHECK_FALSE(driver.session().can_undo());
    }
}

TEST_CASE("A blade's height follows its handle in the gauge's graduations and stays on its scale") {
    Driver driver(phone);
    driver.tap("head/5");
    open_section(driver, "side");
    driver.reveal("side/flood-gauge");
    const Gauge& gauge = driver.session().job().press.flood_gauge;
    driver.drag("side/flood-gauge", {0.0f, -30.0f});
    const double up = head_of(driver, 5).flood.gauge;
    CHECK(up > 1.0);
    CHECK(up / gauge.graduation == Approx(std::round(up / gauge.graduation)));
    driver.reveal("side/flood-gauge");
    driver.drag("side/flood-gauge", {0.0f, -4000.0f});
    CHECK(head_of(driver, 5).flood.gauge == gauge.highest);
    // By the keyboard and by a screen reader it is a slider.
    const Thing& slider = driver.find("side/flood-gauge");
    CHECK(slider.role == ThingRole::slider);
    CHECK(slider.now == slider.most);
    InputEvent step;
    step.kind = InputKind::step;
    step.text = "side/flood-gauge";
    step.by = {-3.0f, 0.0f};
    driver.program().handle(step);
    driver.settle();
    CHECK(head_of(driver, 5).flood.gauge == Approx(gauge.highest - 3.0 * gauge.graduation));
}

TEST_CASE("Uneven heights typed on the pad are found and said") {
    Driver driver(phone);
    driver.tap("head/5");
    open_section(driver, "off-contact");
    driver.tap("head/5/off_contact.left_mm");
    driver.pad("2.5");
    driver.tap("pad/accept");
    CHECK(head_of(driver, 5).heights.left == 2.5);
    CHECK(shows(driver, std::string(word(Language::english, Word::contact_gap))));
    bool found = false;
    for (const Finding& finding : driver.head(5).findings)
        found = found || finding.kind == FindingKind::heights_uneven;
    CHECK(found);
}

TEST_CASE("A blade on its height stop says that thrust is no line load") {
    Driver driver(desktop);
    driver.tap("head/5");
    open_section(driver, "pressure");
    CHECK(driver.has("pressure/load"));
    driver.reveal("height-stop/yes");
    driver.tap("height-stop/yes");
    CHECK_FALSE(driver.has("pressure/load"));
    CHECK(driver.has("pressure/thrust"));
}

TEST_CASE("Cylinders of a bore that isn't known say so, and not that the blade rests on its stop") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(desktop, {}, language);
        driver.tap("head/5");
        open_section(driver, "pressure");
        const std::string no_bore(word(language, Word::contact_no_bore));
        const std::string on_stop(word(language, Word::contact_on_stop));
        CHECK(written(driver).find(no_bore) == std::string::npos);
        driver.program().act(DoEdit{Edit{SetNumber{0, Field::squeegee_bore, 0.0}}});
        driver.settle();
        CHECK_FALSE(driver.has("pressure/load"));
        CHECK_FALSE(driver.has("pressure/thrust"));
        CHECK(written(driver).find(no_bore) != std::string::npos);
        CHECK(written(driver).find(on_stop) == std::string::npos);
        driver.program().act(DoEdit{Edit{SetHeightStop{head_of(driver, 5).id, true}}});
        driver.settle();
        CHECK(written(driver).find(no_bore) == std::string::npos);
        CHECK(written(driver).find(on_stop) != std::string::npos);
    }
}

TEST_CASE("A known mesh is put into a screen, and a mesh of one's own is kept with the press") {
    Driver driver(phone);
    driver.tap("head/5");
    open_section(driver, "deposit");
    driver.reveal("mesh/use/90–48");
    driver.tap("mesh/use/90–48");
    CHECK(head_of(driver, 5).screen.mesh_count == 90.0);
    CHECK(head_of(driver, 5).screen.thread_diameter == 48.0);
    CHECK(driver.head(5).deposit.mesh->row.volume == Approx(0.33 * 72.0).margin(0.5));
    CHECK_FALSE(driver.has("mesh/keep")); // it is published
    driver.program().act(DoEdit{Edit{SetNumber{head_of(driver, 5).id, Field::mesh_count, 54.0}}});
    driver.settle();
    driver.reveal("mesh/keep");
    driver.tap("mesh/keep");
    REQUIRE(driver.session().job().press.meshes.size() == 1);
    CHECK(driver.session().job().press.meshes.front().threads_per_cm == 54.0);
    CHECK(driver.has("mesh/use/54–48"));
    driver.tap("undo");
    CHECK(driver.session().job().press.meshes.empty());
}

TEST_CASE("The sections of a head are drawn in both themes and languages, for looking at") {
    for (const WindowSize& size : {phone, tablet, desktop}) {
        for (const bool second : {false, true}) {
            for (const char* section : {"side", "off-contact", "pressure", "deposit"}) {
                Driver driver(size, {}, second ? Language::spanish : Language::english, 2.0f);
                driver.set_looks(second ? Language::spanish : Language::english, 1.0f,
                                 second ? ThemeChoice::dark : ThemeChoice::light);
                driver.tap("head/5");
                open_section(driver, section);
                if (size.width < 600) driver.tap("panel/grip");
                driver.reveal(std::string("section/") + section);
                driver.settle();
                const Thing& head = driver.find(std::string("section/") + section);
                CHECK(head.chosen);
                driver.picture(std::string(section) + "-" + size.name + (second ? "-es-dark" : "-en-light"));
            }
        }
    }
}
