// What leaves the device of the people who practise: one person's data, and the group's table.
#include <nlohmann/json.hpp>

#include <catch2/catch_test_macros.hpp>

#include "app/records/trainees.h"
#include "app/text/practice_sentences.h"

using namespace carriageway;

namespace {

struct Group {
    Library library = Library::in_memory();
    TraineeId robin = *add_trainee(library, "Robin, \"the quick\"", 1'764'000'000'000);
    TraineeId formula = *add_trainee(library, "=1+1", 2);
    Group() {
        Attempt made;
        made.topic = PracticeTopic::which_dial;
        made.level = 2;
        made.seed = 18446744073709551615u;
        made.score = 0.75;
        made.seconds = 90.0;
        made.hints = 1;
        made.time = 1'764'000'001'000;
        made.mistakes = {{MarkReason::fault_missed, FindingKind::starved, {}}};
        REQUIRE(add_attempt(library, robin, made));
        REQUIRE_FALSE(sign_topic(library, robin, PracticeTopic::which_dial, SignState::helped,
                                 SignOff{"MK", 1'764'000'002'000}));
    }
};

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = text.find("\r\n", at);
        REQUIRE(end != std::string::npos); // the last line ends with CR LF too
        lines.push_back(text.substr(at, end - at));
        at = end + 2;
    }
    return lines;
}

} // namespace

TEST_CASE("one person's data is written whole, and nobody else's", "[trainees]") {
    const Group group;
    const LibraryResult<std::string> text = export_trainee(group.library, group.robin);
    REQUIRE(text);
    const nlohmann::json all = nlohmann::json::parse(*text); // another reader than ours
    CHECK(all["carriageway_trainee"] == 1);
    CHECK(all["name"] == "Robin, \"the quick\"");
    CHECK(all["created"] == "2025-11-24T16:00:00Z");
    REQUIRE(all["attempts"].size() == 1);
    const nlohmann::json& made = all["attempts"][0];
    CHECK(made["topic"] == "which_dial");
    CHECK(made["level"] == 2);
    CHECK(made["seed"] == "18446744073709551615");
    CHECK(made["score"] == 0.75);
    CHECK(made["seconds"] == 90.0);
    CHECK(made["hints"] == 1);
    CHECK(made["time"] == "2025-11-24T16:00:01Z");
    CHECK(made["mistakes"] == nlohmann::json{"fault_missed starved"});
    CHECK(all["signed"] == nlohmann::json::parse(
                               R"([{"topic":"which_dial","state":"helped","by":"MK",
                                    "time":"2025-11-24T16:00:02Z"}])"));
    const std::string other = *export_trainee(group.library, group.formula);
    CHECK(other.find("Robin") == std::string::npos);
    CHECK(nlohmann::json::parse(other)["attempts"].empty());
    CHECK(export_trainee(group.library, 99).fault().kind == LibraryFault::Kind::no_such_trainee);
}

TEST_CASE("the group's table has a row a person and topic, in either language", "[trainees]") {
    const Group group;
    const LibraryResult<std::vector<TraineeSummary>> all = group_summary(group.library);
    REQUIRE(all);
    for (const Language language : {Language::english, Language::spanish}) {
        const std::vector<std::string> lines = lines_of(group_table(*all, language));
        REQUIRE(lines.size() == 1 + 2 * topic_count);
        CHECK(lines[1].starts_with("'=1+1,")); // no formula to a spreadsheet
        const std::string topic = topic_text(language, PracticeTopic::which_dial);
        const std::string start =
            "\"Robin, \"\"the quick\"\"\"," + topic + ",1,1,75,1.5,2025-11-24T16:00:01Z,,,MK,"
                                                      "2025-11-24T16:00:02Z,,,";
        int found = 0;
        for (const std::string& line : lines) found += line.starts_with(start);
        CHECK(found == 1);
    }
}
