// The table of a job's heads, read back by a small reader of RFC 4180 that shares nothing with the
// writer.
#include <fstream>
#include <iterator>
#include <map>
#include <set>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "app/records/exchange.h"
#include "app/records/job_table.h"
#include "app/text/paper_sentences.h"
#include "core/walk.h"
#include "tests/records/random_job.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

using Row = std::vector<std::string>;

/// RFC 4180, section 2: lines end with CR LF; a field in quotation marks may hold commas, line
/// breaks and doubled quotation marks; one without may hold none of them.
std::vector<Row> read_csv(const std::string& text) {
    std::vector<Row> rows;
    std::size_t at = 0;
    while (at < text.size()) {
        Row row;
        for (bool more = true; more;) {
            std::string field;
            if (at < text.size() && text[at] == '"') {
                for (++at;; ++at) {
                    REQUIRE(at < text.size()); // a quotation mark is not closed
                    if (text[at] != '"') field += text[at];
                    else if (at + 1 < text.size() && text[at + 1] == '"') field += text[++at];
                    else break;
                }
                ++at;
            } else {
                while (at < text.size() && text[at] != ',' && text[at] != '\r') {
                    REQUIRE((text[at] != '"' && text[at] != '\n'));
                    field += text[at++];
                }
            }
            row.push_back(field);
            REQUIRE(at < text.size()); // the last line ends with CR LF too
            more = text[at] == ',';
            if (more) ++at;
        }
        REQUIRE(text.compare(at, 2, "\r\n") == 0);
        at += 2;
        rows.push_back(row);
    }
    return rows;
}

Job demonstration() {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json", std::ios::binary);
    const ReadJob read = read_job(std::string(std::istreambuf_iterator<char>(file), {}));
    REQUIRE(read);
    return *read.job;
}

std::vector<Row> table_of(const Job& job, Language language = Language::english,
                          LengthUnit unit = LengthUnit::mm) {
    Assessment assessment;
    assess(job, assessment);
    return read_csv(job_table(job, assessment, language, unit));
}

/// A row by the names of its columns, which differ from one another.
std::map<std::string, std::string> named(const std::vector<Row>& table, std::size_t row) {
    std::map<std::string, std::string> fields;
    for (std::size_t i = 0; i < table.front().size(); ++i)
        fields[table.front()[i]] = table.at(row)[i];
    REQUIRE(fields.size() == table.front().size());
    return fields;
}

} // namespace

TEST_CASE(
    "The table has a header and a row a head, as wide as each other, in both languages and units") {
    const Job job = demonstration();
    for (const Language language : {Language::english, Language::spanish, Language::pseudo})
        for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::inch}) {
            const std::vector<Row> table = table_of(job, language, unit);
            REQUIRE(table.size() == 1 + job.heads.size());
            const std::set<std::string> names(table.front().begin(), table.front().end());
            CHECK(names.size() == table.front().size());
            CHECK_FALSE(names.contains(""));
            for (std::size_t i = 1; i < table.size(); ++i) {
                CHECK(table[i].size() == table.front().size());
                CHECK(table[i][0] == job.name);
                CHECK(table[i][2] == std::to_string(job.heads[i - 1].station));
                CHECK(table[i][3] == job.heads[i - 1].colour);
            }
            if (unit == LengthUnit::inch)
                CHECK_FALSE(names.contains("squeegee width (mm), planned"));
        }
    const Job none = [&] {
        Job empty = job;
        empty.heads.clear();
        return empty;
    }();
    CHECK(table_of(none).size() == 1);
}

TEST_CASE(
    "Every number of the walk has what is planned, and what was really set once that is known") {
    Job job = demonstration();
    const Stamp stamp{1'700'000'000'000, "AB"};
    const Head head = job.heads[1];
    REQUIRE(apply(job, Edit{really_set(job, head.id, Field::squeegee_gauge, 1.4, stamp)}));
    REQUIRE(apply(job, Edit{tick(job, head.id, Field::squeegee_width, stamp)}));
    REQUIRE(apply(job, Edit{really_set(job, head.id, Field::machine_stop,
                                       head.stops.machine_side + 7.0, stamp)}));
    REQUIRE(apply(job, Edit{really_set(job, 0, Field::flash_dwell, 5.5, stamp)}));
    const std::vector<Row> table = table_of(job);
    const auto other = named(table, 1), row = named(table, 2);
    CHECK(row.at("squeegee gauge (marks), planned") == "1");
    CHECK(row.at("squeegee gauge (marks), really set") == "1.4");
    CHECK(row.at("squeegee width (mm), planned") == "330");
    CHECK(row.at("squeegee width (mm), really set") == "330");
    CHECK(row.at("flood bar width (mm), planned") == "356");
    CHECK(row.at("flood bar width (mm), really set").empty());
    CHECK(other.at("squeegee gauge (marks), really set").empty());
    // As the arm's ruler shows it: its zero stands at -500.
    CHECK(row.at("machine stop, ruler (mm), planned") ==
          plain_ruler(job.press.ruler, head.stops.machine_side));
    CHECK(row.at("machine stop, ruler (mm), really set") ==
          plain_ruler(job.press.ruler, head.stops.machine_side + 7.0));
    for (const auto& fields : {other, row}) {
        CHECK(fields.at("flash dwell (s), planned") == "4");
        CHECK(fields.at("flash dwell (s), really set") == "5.5");
    }
    CHECK(row.at("blade hardness (Shore A)").empty()); // nobody has noted it
    CHECK(row.at("blade edge").empty());
    CHECK(row.at("verdict") == "not fit");
    CHECK(row.at("what to fix") == "stop: Heavy at the machine end");
    for (const Field field : walk_fields(job, head.id)) {
        if (field == Field::operator_stop || field == Field::machine_stop) continue;
        std::string name(word(Language::english, paper_field_word(field)));
        const std::string unit = paper_unit(Language::english, LengthUnit::mm, job, field);
        if (!unit.empty()) name += " (" + unit + ")";
        INFO(name);
        const double shown =
            number_of(job, &head, field) / shown_unit(info_of(field).quantity, LengthUnit::mm);
        CHECK_THAT(std::stod(row.at(name + ", planned")),
                   WithinAbs(shown, 5.1e-5)); // four decimals
    }
}

TEST_CASE(
    "Texts come back as they were, whatever is in them, but for what a spreadsheet would run") {
    RandomJobs random(Catch::getSeed());
    INFO("seed " << Catch::getSeed());
    Job job = demonstration();
    std::vector<std::string> texts{
        "a,b",  "say \"so\"", "two\r\nlines", " spaced ", "",     "caf\u00E9, \u5929",
        "=1+1", "+5",         "-5",           "@name",    "\t=1", "'quoted"};
    for (int i = 0; i < 200; ++i) texts.push_back(random.note());
    for (const std::string& text : texts) {
        job.heads[0].colour = text;
        job.heads[0].notes.ink = text;
        const std::vector<Row> table = table_of(job);
        REQUIRE(table.size() == 1 + job.heads.size());
        const bool formula =
            !text.empty() && std::string("=+-@\t\r\n").find(text.front()) != std::string::npos;
        CHECK(table[1][3] == (formula ? "'" + text : text));
        CHECK(named(table, 1).at("ink") == (formula ? "'" + text : text));
    }
}

TEST_CASE("Negative numbers stay numbers, and nothing else begins like a formula") {
    RandomJobs random(Catch::getSeed());
    INFO("seed " << Catch::getSeed());
    for (int i = 0; i < 60; ++i) {
        const Job job = random.job();
        if (fault_of(job)) continue;
        for (const Row& row : table_of(job, i % 2 == 0 ? Language::english : Language::spanish))
            for (const std::string& field : row) {
                if (field.empty()) continue;
                CHECK(std::string("=+@\t\r\n").find(field.front()) == std::string::npos);
                if (field.front() == '-')
                    CHECK(field.find_first_not_of("-0123456789. /") == std::string::npos);
            }
    }
}

TEST_CASE("A line of the table is written by RFC 4180") {
    CHECK(csv_line({"a", "b,c", "d\"e", "", " f"}) == "a,\"b,c\",\"d\"\"e\",,\" f\"\r\n");
    CHECK(csv_line({"one"}) == "one\r\n");
    CHECK(csv_line({""}) == "\r\n");
}
