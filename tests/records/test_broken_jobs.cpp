// Job files broken in every way that we could think of: each is refused, with the place and a
// reason, and nothing of it is used.
#include <fstream>
#include <functional>
#include <iterator>

#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include "app/records/exchange.h"
#include "app/text/words.h"

using namespace carriageway;
using Json = nlohmann::json;
using Kind = ReadFault::Kind;

namespace {

std::string demo_text() {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json", std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// One way to break the demonstration.
struct Broken {
    const char* path; ///< what the message must name
    Kind kind;
    std::function<void(Json&)> harm;
};

Json::json_pointer at(const char* pointer) { return Json::json_pointer(pointer); }

std::function<void(Json&)> put(const char* pointer, Json value) {
    return [pointer, value](Json& job) { job[at(pointer)] = value; };
}

std::function<void(Json&)> drop(const char* parent, const char* key) {
    return [parent, key](Json& job) { job[at(parent)].erase(key); };
}

Json big_outline() {
    Json corners = Json::array();
    for (int i = 0; i < 2100; ++i) corners.push_back({std::cos(i * 0.003) * 100.0, std::sin(i * 0.003) * 100.0});
    return corners;
}

const std::vector<Broken>& broken_jobs() {
    static const std::vector<Broken> list = {
        // the document
        {"carriageway_job", Kind::newer_version, put("/carriageway_job", 2)},
        {"carriageway_job", Kind::wrong_type, put("/carriageway_job", "1")},
        {"carriageway_job", Kind::wrong_document, drop("", "carriageway_job")},
        {"name", Kind::missing_field, drop("", "name")},
        {"name", Kind::wrong_type, put("/name", 7)},
        {"name", Kind::bad_text, put("/name", std::string(201, 'n'))},
        {"customer", Kind::unknown_field, put("/customer", "somebody")},
        {"press", Kind::missing_field, drop("", "press")},
        {"press", Kind::wrong_type, put("/press", Json::array())},
        {"heads", Kind::wrong_type, put("/heads", Json::object())},
        {"heads", Kind::missing_field, drop("", "heads")},
        {"stations", Kind::missing_field, drop("", "stations")},
        {"platen", Kind::missing_field, drop("", "platen")},
        {"wishes", Kind::missing_field, drop("", "wishes")},
        // the press
        {"press.name", Kind::missing_field, drop("/press", "name")},
        {"press.stations", Kind::out_of_range, put("/press/stations", 1)},
        {"press.stations", Kind::wrong_type, put("/press/stations", 9.5)},
        {"press.turning", Kind::wrong_choice, put("/press/turning", "left")},
        {"press.turning", Kind::wrong_type, put("/press/turning", true)},
        {"press.arm_radius_mm", Kind::wrong_type, put("/press/arm_radius_mm", "1450")},
        {"press.ruler.graduation_mm", Kind::out_of_range, put("/press/ruler/graduation_mm", 0)},
        {"press.ruler.counts", Kind::wrong_choice, put("/press/ruler/counts", "up")},
        {"press.ruler.inches", Kind::wrong_type, put("/press/ruler/inches", 1)},
        {"press.ruler.zero", Kind::unknown_field, put("/press/ruler/zero", 5)},
        {"press.sensors.latency_s", Kind::out_of_range, put("/press/sensors/latency_s", -0.1)},
        {"press.sensors.reach_mm", Kind::missing_field, drop("/press/sensors", "reach_mm")},
        {"press.sensors.separation_spread.value_mm", Kind::out_of_range,
         put("/press/sensors/separation_spread/value_mm", -1)},
        {"press.carriage.acceleration_mm_per_s2", Kind::out_of_range,
         put("/press/carriage/acceleration_mm_per_s2", 0)},
        {"press.carriage.fastest_mm_per_s", Kind::wrong_type,
         put("/press/carriage/fastest_mm_per_s", nullptr)},
        {"press.angles.least_deg", Kind::out_of_range, put("/press/angles/least_deg", 95)},
        {"press.squeegee_gauge.mm_per_mark", Kind::out_of_range, put("/press/squeegee_gauge/mm_per_mark", 0)},
        {"press.adjusters", Kind::wrong_type, put("/press/adjusters", "three")},
        {"press.adjusters[1].side", Kind::wrong_choice, put("/press/adjusters/1/side", "middle")},
        {"press.adjusters[0].mm_per_turn", Kind::out_of_range, put("/press/adjusters/0/mm_per_turn", 0)},
        {"press.adjusters[2].graduations", Kind::wrong_type, put("/press/adjusters/2/graduations", 1.5)},
        {"press.carriage.range_lo_mm", Kind::wrong_order, put("/press/carriage/range_lo_mm", 400)},
        {"press.angles.least_deg", Kind::wrong_order, put("/press/angles/least_deg", 40)},
        // the job's own numbers
        {"platen.width_mm", Kind::out_of_range, put("/platen/width_mm", -406)},
        {"platen.length_mm", Kind::wrong_type, put("/platen/length_mm", Json::array({559}))},
        {"wishes.run_past_mm", Kind::out_of_range, put("/wishes/run_past_mm", 1e9)},
        {"wishes.run_past", Kind::unknown_field, put("/wishes/run_past", 25)},
        {"stations", Kind::wrong_length, put("/stations", Json::array({"load"}))},
        {"stations[1]", Kind::wrong_choice, put("/stations/1", "press")},
        {"stations[3]", Kind::wrong_type, put("/stations/3", 4)},
        // heads
        {"heads[0].id", Kind::out_of_range, put("/heads/0/id", 0)},
        {"heads[0].id", Kind::wrong_type, put("/heads/0/id", -3.5)},
        {"heads[1].id", Kind::taken, put("/heads/1/id", 1)},
        {"heads[1].station", Kind::taken, put("/heads/1/station", 2)},
        {"heads[2].station", Kind::out_of_range, put("/heads/2/station", 0)},
        {"heads[5].station", Kind::wrong_order, put("/heads/5/station", 3)},
        {"heads[5].station", Kind::taken, put("/heads/5/station", 10)},
        {"heads[3].colour", Kind::wrong_type, put("/heads/3/colour", 9)},
        {"heads[3].ink", Kind::wrong_type, put("/heads/3/ink", "blue")},
        {"heads[4].print_stroke", Kind::wrong_choice, put("/heads/4/print_stroke", "toward")},
        {"heads[4].print_speed_mm_per_s", Kind::out_of_range, put("/heads/4/print_speed_mm_per_s", 0)},
        {"heads[1].image.width_mm", Kind::out_of_range, put("/heads/1/image/width_mm", 0)},
        {"heads[1].image.length_mm", Kind::missing_field, drop("/heads/1/image", "length_mm")},
        {"heads[0].image.outline_mm", Kind::both_given, put("/heads/0/image/width_mm", 200)},
        {"heads[0].image.outline_mm[0]", Kind::wrong_type, put("/heads/0/image/outline_mm/0", 1)},
        {"heads[0].image.outline_mm[1]", Kind::wrong_length, put("/heads/0/image/outline_mm/1", Json::array({1}))},
        {"heads[0].image.outline_mm", Kind::wrong_length, put("/heads/0/image/outline_mm", big_outline())},
        {"heads[0].image.outline_mm", Kind::not_an_outline,
         put("/heads/0/image/outline_mm", Json::array({{0, 0}, {100, 100}, {100, 0}, {0, 100}}))},
        {"heads[2].squeegee.angle_deg", Kind::out_of_range, put("/heads/2/squeegee/angle_deg", 80)},
        {"heads[2].squeegee.hardness", Kind::unknown_field, put("/heads/2/squeegee/hardness", 70)},
        {"heads[2].flood.winged", Kind::wrong_type, put("/heads/2/flood/winged", "yes")},
        {"heads[2].stops.operator_mm", Kind::missing_field, drop("/heads/2/stops", "operator_mm")},
        {"heads[2].stops.operator_mm", Kind::wrong_order, put("/heads/2/stops/operator_mm", 4000)},
        {"heads[5].screen.along_mm", Kind::out_of_range, put("/heads/5/screen/along_mm", 1e7)},
        {"heads[5].screen.mesh_per_cm", Kind::wrong_type, put("/heads/5/screen/mesh_per_cm", "62T")},
    };
    return list;
}

/// Texts that are no JSON, or not ours.
struct BrokenText {
    const char* name;
    Kind kind;
    std::string text;
};

std::vector<BrokenText> broken_texts() {
    const std::string demo = demo_text();
    std::string utf16 = "\xFF\xFE";
    for (const char c : std::string("{\"carriageway_job\":1}")) {
        utf16 += c;
        utf16 += '\0';
    }
    std::string deep = "{\"carriageway_job\":1,\"name\":";
    deep += std::string(100000, '[');
    std::string twice = demo;
    twice.replace(twice.find("\"platen\""), 0, "\"name\": \"again\",\n  ");
    std::string latin = demo;
    latin.replace(latin.find("Paper"), 5, "Caf\xE9 ");
    std::string nan = demo;
    nan.replace(nan.find("\"run_past_mm\": 25"), 17, "\"run_past_mm\": NaN");
    std::string infinite = demo;
    infinite.replace(infinite.find("\"run_past_mm\": 25"), 17, "\"run_past_mm\": 1e999");
    return {{"nothing", Kind::empty, ""},
            {"white space", Kind::empty, " \n\t "},
            {"cut in the middle", Kind::syntax, demo.substr(0, demo.size() / 2)},
            {"a list", Kind::wrong_type, "[1, 2]"},
            {"an empty object", Kind::wrong_document, "{}"},
            {"text after the end", Kind::trailing_text, demo + "{}"},
            {"a comma too many", Kind::syntax, "{\"carriageway_job\": 1,}"},
            {"single quotes", Kind::syntax, "{'carriageway_job': 1}"},
            {"a comment", Kind::syntax, "// job\n" + demo},
            {"UTF-16", Kind::wrong_encoding, utf16},
            {"a byte order mark", Kind::wrong_encoding, "\xEF\xBB\xBF" + demo},
            {"Latin-1", Kind::wrong_encoding, latin},
            {"a key twice", Kind::duplicate_key, twice},
            {"not a number", Kind::not_finite, nan},
            {"beyond any number", Kind::not_finite, infinite},
            {"a hundred thousand levels", Kind::too_deep, deep},
            {"over 16 MiB", Kind::too_large, demo + std::string(largest_text, ' ')}};
}

} // namespace

TEST_CASE("the demonstration itself is read") {
    const ReadJob read = read_job(demo_text());
    INFO(fault_sentence(Language::english, read.fault));
    REQUIRE(read.job.has_value());
    CHECK(read.job->heads.size() == 6);
}

TEST_CASE("at least sixty broken job files are refused, each with its place") {
    const Json demo = Json::parse(demo_text());
    REQUIRE(broken_jobs().size() >= 60);
    for (const Broken& broken : broken_jobs()) {
        Json job = demo;
        broken.harm(job);
        REQUIRE(job != demo);
        const ReadJob read = read_job(job.dump());
        INFO(broken.path << " | path " << read.fault.path << " | kind " << static_cast<int>(read.fault.kind)
                         << " | " << fault_sentence(Language::english, read.fault));
        CHECK_FALSE(read.job.has_value());
        CHECK(read.fault.kind == broken.kind);
        for (const Language language : {Language::english, Language::spanish}) {
            const std::string sentence = fault_sentence(language, read.fault);
            CHECK(sentence.find(broken.path) != std::string::npos);
            CHECK(sentence.size() > read.fault.path.size() + 10);
            CHECK(sentence.find("{0}") == std::string::npos);
        }
    }
}

TEST_CASE("texts that are no job at all are refused cleanly") {
    for (const BrokenText& broken : broken_texts()) {
        const ReadJob read = read_job(broken.text);
        INFO(broken.name << " | kind " << static_cast<int>(read.fault.kind) << " | "
                         << fault_sentence(Language::english, read.fault));
        CHECK_FALSE(read.job.has_value());
        CHECK(read.fault.kind == broken.kind);
        CHECK(fault_sentence(Language::english, read.fault).size() > 10);
        CHECK(fault_sentence(Language::spanish, read.fault) != fault_sentence(Language::english, read.fault));
    }
}

TEST_CASE("every beginning of a job file is refused without harm") {
    const std::string demo = demo_text();
    for (std::size_t length = 0; length + 2 < demo.size(); length += 7) {
        INFO("first " << length << " bytes");
        CHECK_FALSE(read_job(std::string_view(demo).substr(0, length)).job.has_value());
    }
}
