// The recipe as a person fills it: gaps that show themselves and force nothing, numbers by the pad,
// notes, the blade's edge, by touch and by keys, in both languages.
#include <set>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/text/recipe_sentences.h"
#include "app/text/sentences.h"
#include "core/walk.h"
#include "tests/app/list_steps.h"

using namespace carriageway;
using namespace carriageway::listing;
using Catch::Approx;

namespace {

const Head& head_at(Driver& driver, int station) {
    const Head* head = head_on(driver.session().job(), station);
    REQUIRE(head != nullptr);
    return *head;
}

std::string head_row(int station, std::string_view what) {
    return "recipe/head/" + std::to_string(station) + "/" + std::string(what);
}

std::string number_row(int station, Field field) { return head_row(station, info_of(field).key); }
std::string job_row(Field field) { return std::string("recipe/job/") + info_of(field).key; }

/// Takes from every head and from the job what a recipe can lack.
void forget_everything(Driver& driver) {
    const auto edit = [&](auto what) { driver.program().act(DoEdit{Edit{std::move(what)}}); };
    const std::vector<Head> heads = driver.session().job().heads;
    for (const Head& head : heads) {
        edit(SetNumber{head.id, Field::squeegee_hardness, 0.0});
        edit(SetBladeEdge{head.id, BladeEdge::not_noted});
        edit(SetNote{head.id, Note::ink, ""});
        edit(SetNote{head.id, Note::stencil, ""});
    }
    edit(SetNote{0, Note::garment, ""});
    for (const Field field :
         {Field::flash_temperature, Field::dryer_temperature, Field::dryer_time})
        edit(SetNumber{0, field, 0.0});
    driver.settle();
}

/// "24 of 35 known, 11 not noted".
std::string status(Driver& driver, Language language = Language::english) {
    const std::size_t all = recipe_of(driver.session().job()).size();
    const std::size_t gaps = recipe_gaps(driver.session().job()).size();
    std::string text =
        say(language, Word::recipe_progress, {std::to_string(all - gaps), std::to_string(all)});
    if (gaps > 0) text += ", " + say(language, Word::recipe_gap_count, {std::to_string(gaps)});
    return text;
}

} // namespace

TEST_CASE("A gap says that it is one, and is filled by the pad, at every size") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        Driver driver(size);
        forget_everything(driver);
        // Four of each of six heads; garment, flash and dryer of the job.
        REQUIRE(driver.session().job().heads.size() == 6);
        CHECK(recipe_gaps(driver.session().job()).size() == 27);
        driver.tap("day");
        CHECK(driver.find("day/recipe").value == status(driver));
        driver.tap("day/recipe");
        CHECK(driver.find("recipe/progress").label == status(driver));
        driver.picture(std::string("recipe ") + size.name);
        const std::string hardness = number_row(5, Field::squeegee_hardness);
        CHECK(driver.find(hardness).value == words_of(Word::recipe_not_noted));
        CHECK(driver.find(head_row(5, "ink")).value.empty());
        CHECK(driver.find(head_row(5, "ink")).hint == words_of(Word::recipe_not_noted));
        const std::string missing = driver.find("recipe/head/5").value;
        CHECK(missing.find(words_of(Word::item_blade_hardness)) != std::string::npos);
        driver.tap(hardness);
        type_number(driver, "70");
        CHECK(head_at(driver, 5).squeegee.hardness == 70.0);
        CHECK(driver.find(hardness).value ==
              format_quantity(Language::english, 70.0, Quantity::hardness, LengthUnit::mm));
        CHECK(recipe_gaps(driver.session().job()).size() == 26);
        CHECK(driver.find("recipe/progress").label == status(driver));
        CHECK(driver.find("recipe/head/5").value.find(words_of(Word::item_blade_hardness)) ==
              std::string::npos);
        undo(driver);
        CHECK(driver.find(hardness).value == words_of(Word::recipe_not_noted));
    }
}

TEST_CASE("Notes on ink, stencil and garment are typed, and stand where they were typed") {
    for (const WindowSize& size : {small_phone, desktop}) {
        INFO(size.name);
        Driver driver(size);
        forget_everything(driver);
        open_part(driver, "recipe");
        type_into(driver, head_row(6, "ink"), "opaque red, 5 % softener");
        type_into(driver, head_row(6, "stencil"), "emulsion, two coats a side");
        type_into(driver, head_row(7, "ink"), "process blue");
        type_into(driver, "recipe/garment", "cotton 180 g/m², black");
        CHECK(head_at(driver, 6).notes ==
              ColourNotes{"opaque red, 5 % softener", "emulsion, two coats a side"});
        CHECK(head_at(driver, 7).notes == ColourNotes{"process blue", ""});
        CHECK(driver.session().job().garment.name == "cotton 180 g/m², black");
        CHECK(driver.find(head_row(6, "ink")).value == "opaque red, 5 % softener");
        CHECK(driver.find("recipe/garment").value == "cotton 180 g/m², black");
        undo(driver);
        CHECK(driver.session().job().garment.name.empty());
    }
}

TEST_CASE("The blade's edge is chosen, and can be left open again") {
    Driver driver(phone);
    forget_everything(driver);
    open_part(driver, "recipe");
    const auto row = [](const char* name) { return head_row(8, std::string("edge/") + name); };
    const std::pair<const char*, BladeEdge> edges[] = {
        {"square", BladeEdge::square},
        {"rounded", BladeEdge::rounded},
        {"single-bevel", BladeEdge::single_bevel},
        {"double-bevel", BladeEdge::double_bevel},
        {"not-noted", BladeEdge::not_noted}};
    CHECK(driver.find(row("not-noted")).chosen);
    for (const auto& [name, edge] : edges) {
        INFO(name);
        driver.tap(row(name));
        CHECK(head_at(driver, 8).squeegee.edge == edge);
        for (const auto& other : edges)
            CHECK(driver.find(row(other.first)).chosen == (other.second == edge));
    }
}

TEST_CASE("Only the gaps: what is noted goes, and when nothing is missing it says so") {
    Driver driver(phone);
    forget_everything(driver);
    open_part(driver, "recipe");
    const std::string mesh = number_row(2, Field::mesh_count);
    CHECK(driver.has(mesh));
    driver.tap("recipe/gaps");
    CHECK_FALSE(driver.has(mesh));
    CHECK(driver.has(number_row(2, Field::squeegee_hardness)));
    CHECK(driver.has("recipe/job"));
    // The dryer is known by its temperature and its time together.
    driver.tap(job_row(Field::dryer_temperature));
    type_number(driver, "160");
    CHECK(driver.has(job_row(Field::dryer_temperature)));
    driver.tap(job_row(Field::dryer_time));
    type_number(driver, "90");
    CHECK_FALSE(driver.has(job_row(Field::dryer_temperature)));
    CHECK_FALSE(driver.has(job_row(Field::dryer_time)));
    driver.tap(job_row(Field::flash_temperature));
    type_number(driver, "110");
    type_into(driver, "recipe/garment", "cotton");
    CHECK_FALSE(driver.has("recipe/job"));
    const std::vector<Head> heads = driver.session().job().heads;
    for (const Head& head : heads) {
        driver.tap(number_row(head.station, Field::squeegee_hardness));
        type_number(driver, "65");
        driver.tap(head_row(head.station, "edge/square"));
        type_into(driver, head_row(head.station, "ink"), "as on the pail");
        CHECK(driver.has("recipe/head/" + std::to_string(head.station)));
        type_into(driver, head_row(head.station, "stencil"), "film");
        CHECK_FALSE(driver.has("recipe/head/" + std::to_string(head.station)));
    }
    CHECK(recipe_gaps(driver.session().job()).empty());
    CHECK(driver.find("recipe/progress").label == status(driver));
    driver.picture("recipe complete");
    driver.tap("recipe/all");
    CHECK(driver.has(mesh));
}

TEST_CASE("A number that is known is tapped and typed anew, lengths in inches as well") {
    Driver driver(desktop);
    open_part(driver, "recipe");
    const std::string left = number_row(6, Field::height_left);
    CHECK(driver.find(left).value ==
          format_length(head_at(driver, 6).heights.left, LengthUnit::mm));
    driver.tap(left);
    type_number(driver, "1/8in");
    CHECK(head_at(driver, 6).heights.left == Approx(3.175));
    driver.tap(left);
    driver.pad("12000");
    driver.tap("pad/accept");
    CHECK_FALSE(driver.program().state().pad->trouble.empty());
    driver.key(Key::escape); // the pad alone
    CHECK_FALSE(driver.has("pad"));
    CHECK(driver.has(left));
    CHECK(head_at(driver, 6).heights.left == Approx(3.175));
}

TEST_CASE("What was really set on the walk stands beside what is planned") {
    Driver driver(phone);
    forget_everything(driver);
    const HeadId id = head_at(driver, 5).id;
    const Stamp by{1'700'000'000'000, "AB"};
    const double planned = head_at(driver, 5).pressure.squeegee;
    REQUIRE(planned != 231.0);
    for (const auto& [head, field, value] :
         {std::tuple{id, Field::squeegee_pressure, 231.0},
          std::tuple{HeadId{0}, Field::flash_temperature, 112.0}})
        driver.program().act(
            DoEdit{Edit{really_set(driver.session().job(), head, field, value, by)}});
    open_part(driver, "recipe");
    const std::string row = number_row(5, Field::squeegee_pressure);
    const auto words = [](double value, Quantity quantity) {
        return format_quantity(Language::english, value, quantity, LengthUnit::mm);
    };
    CHECK(driver.find(row).value == words(planned, Quantity::pressure));
    CHECK(driver.find(row + "/really").label ==
          say(Language::english, Word::recipe_really_set, {words(231.0, Quantity::pressure)}));
    CHECK_FALSE(driver.has(number_row(6, Field::squeegee_pressure) + "/really"));
    // Where nothing else is known it stands for it, and is no gap.
    CHECK(driver.find(job_row(Field::flash_temperature)).value ==
          words(112.0, Quantity::temperature));
}

TEST_CASE("The recipe by keys alone, in Spanish") {
    Driver driver(desktop, {}, Language::spanish);
    forget_everything(driver);
    enter_on(driver, "day");
    enter_on(driver, "day/recipe");
    CHECK(driver.find("recipe/progress").label == status(driver, Language::spanish));
    enter_on(driver, "recipe/gaps");
    const std::string hardness = number_row(2, Field::squeegee_hardness);
    CHECK(driver.find(hardness).value == "sin anotar");
    enter_on(driver, hardness);
    driver.type("75");
    enter_on(driver, "pad/accept");
    CHECK(head_at(driver, 2).squeegee.hardness == 75.0);
    enter_on(driver, head_row(2, "edge/rounded"));
    CHECK(head_at(driver, 2).squeegee.edge == BladeEdge::rounded);
    enter_on(driver, head_row(2, "ink"));
    driver.type("blanco opaco");
    driver.key(Key::enter);
    CHECK(head_at(driver, 2).notes.ink == "blanco opaco");
    CHECK(driver.find("recipe/head/2").value == "Sin anotar: esténcil");
    driver.key(Key::escape);
    CHECK(driver.find("day/recipe").value == status(driver, Language::spanish));
}

TEST_CASE("Every entry and every edge has its word, in each language one of its own") {
    for (const Language language : {Language::english, Language::spanish, Language::pseudo}) {
        std::set<std::string> items, edges;
        for (int i = 0; i < static_cast<int>(RecipeItem::count); ++i)
            items.insert(words_of(recipe_word(static_cast<RecipeItem>(i)), language));
        for (int i = 0; i <= static_cast<int>(BladeEdge::double_bevel); ++i)
            edges.insert(words_of(edge_word(static_cast<BladeEdge>(i)), language));
        CHECK(items.size() == static_cast<std::size_t>(RecipeItem::count));
        CHECK(edges.size() == 5);
        CHECK(items.count("") + edges.count("") == 0);
    }
    CHECK(recipe_word(RecipeItem::count) == Word::count);
    CHECK(recipe_value(Language::english, LengthUnit::mm, Field::squeegee_hardness, 0.0) ==
          "not noted");
}
