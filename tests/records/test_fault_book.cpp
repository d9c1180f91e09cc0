// Reading the knowledge of faults: the program's own is good; broken data is refused with a clear
// sentence and its place.
#include <fstream>
#include <iterator>
#include <set>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include "app/records/fault_book.h"
#include "tests/records/random_job.h"

using namespace carriageway;
using Json = nlohmann::ordered_json;

namespace {

std::string own_data() {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/faults/faults.json");
    return {std::istreambuf_iterator<char>(file), {}};
}

/// A small book that is good.
Json small() {
    return Json::parse(R"({"carriageway_faults":1,
        "sources":[{"id":"p","kind":"ours","en":"a","es":"b"}],
        "symptoms":[{"id":"s","en":"a","es":"b","causes":{"c":2},"who_says":"p"}],
        "causes":[{"id":"c","en":"a","es":"b","evidence":{"tension_low":{"seen":9}},"tests":["t"],
            "measure":{"kind":"number","field":"flood.gauge_marks"},
            "fix":{"kind":"flood_wider","en":"a","es":"b"},"caution":"solvents","who_says":"p"}],
        "tests":[{"id":"t","en":"a","es":"b","answers":[
            {"id":"y","en":"a","es":"b","for":{"c":9}},
            {"id":"n","en":"a","es":"b","for":{},"others":3}]}]})");
}

std::string what_of(const std::string& text) {
    const auto read = read_fault_book(text);
    const auto* fault = std::get_if<FaultBookFault>(&read);
    return fault == nullptr ? "" : fault->what;
}

/// The sentence about the small book with one place changed.
std::string broken(const char* pointer, const Json& value) {
    Json book = small();
    book[Json::json_pointer(pointer)] = value;
    return what_of(book.dump(2));
}

std::string without(const char* parent, const char* key) {
    Json book = small();
    book[Json::json_pointer(parent)].erase(key);
    return what_of(book.dump(2));
}

} // namespace

TEST_CASE("the program's own knowledge is read whole", "[faults]") {
    const std::string data = own_data();
    CHECK(what_of(data) == "");
    CHECK(data.size() < 40'960); // it travels with every page
    const FaultLore& lore = fault_lore();
    CHECK(lore.book.symptoms.size() >= 16);
    REQUIRE(lore.symptoms.size() == lore.book.symptoms.size());
    REQUIRE(lore.causes.size() == lore.book.causes.size());
    REQUIRE(lore.tests.size() == lore.book.tests.size());
    REQUIRE(lore.sources.size() == lore.book.sources.size());
    std::set<std::size_t> causes;
    std::set<std::size_t> tests;
    for (const Symptom& symptom : lore.book.symptoms) {
        CHECK(symptom.causes.size() >= 3);
        for (const SymptomCause& made_by : symptom.causes) causes.insert(made_by.cause);
    }
    for (const FaultCause& cause : lore.book.causes)
        for (const std::size_t test : cause.tests) tests.insert(test);
    CHECK(causes.size() == lore.book.causes.size()); // none that nothing leads to
    CHECK(tests.size() == lore.book.tests.size());
    for (std::size_t i = 0; i < lore.tests.size(); ++i)
        CHECK(lore.tests[i].answers.size() == lore.book.tests[i].answers.size());
    CHECK(text_of(Language::spanish, lore.symptoms[0]) != text_of(Language::english, lore.symptoms[0]));
    CHECK(text_of(Language::pseudo, lore.symptoms[0]).front() == '[');
}

TEST_CASE("every kind of evidence and every fix is put to use by the knowledge", "[faults]") {
    std::set<Evidence> evidence;
    std::set<Fix> fixes;
    for (const FaultCause& cause : fault_lore().book.causes) {
        for (const EvidenceFactor& speaks : cause.evidence) {
            evidence.insert(speaks.evidence);
            CHECK(speaks.seen >= 1.0);
            CHECK(speaks.not_seen <= 1.0);
        }
        fixes.insert(cause.fix);
    }
    for (int i = 0; i < evidence_kinds; ++i) {
        INFO(name_of(static_cast<Evidence>(i)));
        CHECK(evidence.count(static_cast<Evidence>(i)) == 1);
    }
    for (int i = 0; i < static_cast<int>(Fix::count); ++i) {
        INFO(name_of(static_cast<Fix>(i)));
        CHECK(fixes.count(static_cast<Fix>(i)) == 1);
    }
}

TEST_CASE("broken data is refused with its place and a sentence", "[faults]") {
    REQUIRE(what_of(small().dump()) == "");
    CHECK(broken("/carriageway_faults", 2) == "carriageway_faults: only version 1 can be read");
    CHECK(broken("/surprise", 1) == "surprise: this key is not known");
    CHECK(broken("/symptoms/0/causes/x", 1) == "symptoms[0].causes.x: there is no cause \"x\"");
    CHECK(broken("/symptoms/0/causes", Json::object()) ==
          "symptoms[0].causes: a symptom has at least one cause");
    CHECK(broken("/symptoms/0/who_says", "q") == "symptoms[0]: there is no source \"q\"");
    CHECK(broken("/causes/0/tests/0", "u") == "causes[0].tests[0]: there is no test \"u\"");
    CHECK(broken("/causes/0/tests/0", 3) == "causes[0].tests[0]: a text is wanted here");
    CHECK(broken("/causes/0/tests/1", "t") == "causes[0].tests[1]: this test is named twice");
    CHECK(broken("/causes/0/tests", Json::array()) ==
          "causes[0].tests: a cause has at least one test");
    CHECK(broken("/causes/0/evidence/ghosts", Json::object()) ==
          "causes[0].evidence.ghosts: there is no such evidence");
    CHECK(broken("/causes/0/evidence/tension_low/seen", 0) ==
          "causes[0].evidence.tension_low.seen: a number from 0.02 to 50 is wanted here");
    CHECK(broken("/causes/0/evidence/tension_low/seen", 1e9) ==
          "causes[0].evidence.tension_low.seen: a number from 0.02 to 50 is wanted here");
    CHECK(broken("/causes/0/fix/kind", "magic") == "causes[0].fix: there is no fix \"magic\"");
    CHECK(broken("/causes/0/caution", "x") == "causes[0]: \"x\" is no caution");
    CHECK(broken("/causes/0/measure/field", "x") ==
          "causes[0].measure: there is no field \"x\"");
    CHECK(broken("/causes/0/measure/kind", "procedure") ==
          "causes[0].measure: a procedure is of a press's field, a number of another");
    CHECK(broken("/causes/0/measure/kind", "marks") ==
          "causes[0].measure: a field goes with a number or a procedure, and only there");
    CHECK(broken("/causes/0/es", "") == "causes[0].es: this text is empty");
    CHECK(broken("/causes/0/es", std::string(241, 'a')) ==
          "causes[0].es: this text is longer than 240 bytes");
    CHECK(broken("/causes/0/id", "C !") ==
          "causes[0]: an id has small letters, digits and low lines only");
    CHECK(broken("/tests/0/answers/1/id", "y") == "tests[0].answers[1]: \"y\" is there twice");
    CHECK(broken("/tests/0/answers", Json::array()) == "tests[0]: a test has at least two answers");
    CHECK(broken("/tests/0", 7) == "tests[0]: \"id\" is missing");
    CHECK(broken("/causes", Json::array()) == "causes: this list is empty");
    CHECK(without("/causes/0", "who_says") == "causes[0]: \"who_says\" is missing");
    CHECK(without("/causes/0", "en") == "causes[0]: \"en\" is missing");
    CHECK(without("/tests/0/answers/0", "es") == "tests[0].answers[0]: \"es\" is missing");
    CHECK(broken("/tests/0/answers/0/id", "yes") == ""); // with texts of its own
    CHECK(without("", "tests") == "\"tests\" is missing");
    Json twice = small();
    twice["causes"].push_back(twice["causes"][0]);
    CHECK(what_of(twice.dump()) == "causes[1]: \"c\" is there twice");
}

TEST_CASE("yes and no need no texts of their own, all other answers do", "[faults]") {
    Json book = small();
    Json& answers = book["tests"][0]["answers"];
    for (Json& answer : answers) {
        answer.erase("en");
        answer.erase("es");
    }
    answers[0]["id"] = "yes";
    CHECK(what_of(book.dump(2)) == "tests[0].answers[1]: \"en\" is missing");
    answers[1]["id"] = "no";
    const auto read = read_fault_book(book.dump(2));
    const auto& lore = std::get<FaultLore>(read);
    CHECK(text_of(Language::english, lore.tests[0].answers[0]) == "Yes");
    CHECK(text_of(Language::spanish, lore.tests[0].answers[0]) == "Sí");
    CHECK(text_of(Language::spanish, lore.tests[0].answers[1]) == "No");
    answers[1]["en"] = "Not at all"; // half is not enough
    CHECK(what_of(book.dump(2)) == "tests[0].answers[1]: \"es\" is missing");
}

TEST_CASE("line and column lead to the fault", "[faults]") {
    Json book = small();
    book["causes"][0]["tests"][0] = "u";
    const std::string text = book.dump(2);
    const auto read = read_fault_book(text);
    const auto& fault = std::get<FaultBookFault>(read);
    const std::size_t at = text.find("\"u\"");
    CHECK(fault.line == 1 + static_cast<std::size_t>(
                                std::count(text.begin(), text.begin() + static_cast<long>(at), '\n')));
    CHECK(fault.column > 0);
    const auto cut = read_fault_book("{\n \"carriageway_faults\": 1,\n oops}");
    CHECK(std::get<FaultBookFault>(cut).line == 3);
}

TEST_CASE("hostile text is refused and harms nothing", "[faults]") {
    for (const std::string& text :
         {std::string(), std::string("[]"), std::string("null"), std::string("7"),
          std::string("{}"), std::string("{\"causes\":{}}"), std::string("\xff\xfe{}"),
          std::string(100'000, '['), std::string(R"({"causes":1,"causes":2})")})
        CHECK_FALSE(what_of(text).empty());

    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed());
    const std::string data = own_data();
    int refused = 0;
    for (int round = 0; round < 400; ++round) {
        std::string text = data;
        for (std::size_t change = 0; change <= random.below(3); ++change) {
            const std::size_t at = random.below(text.size());
            if (random.coin())
                text[at] = static_cast<char>(random.below(256));
            else
                text.erase(at, random.below(40));
        }
        const auto read = read_fault_book(text);
        const auto* fault = std::get_if<FaultBookFault>(&read);
        if (fault == nullptr) continue; // a letter of some text
        ++refused;
        CHECK_FALSE(fault->what.empty());
    }
    CHECK(refused > 100);
}
