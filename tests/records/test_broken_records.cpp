// Walks, records, wishes and lists broken in every way that we could think of: each is refused,
// with the place and a reason.
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

Json demo() {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json", std::ios::binary);
    return Json::parse(file);
}

/// One thing put into the demonstration.
struct Broken {
    const char* path; ///< what the message must name
    Kind kind;
    const char* pointer; ///< where the value is put
    Json value;
};

Json wish(const char* key, Json value) {
    Json made{{"order", 1},           {"cool_after", 0},         {"screen_on", 0},
              {"flash_after", false}, {"flash_together", false}, {"wet_on_wet", true},
              {"pinned", false}};
    made[key] = std::move(value);
    return made;
}

Json pace(const char* key, Json value) {
    Json made{{"index_s", 2},
              {"lower_s", 0.2},
              {"lift_s", 0.2},
              {"jerk_mm_per_s3", 0},
              {"floods_while_indexing", false}};
    made[key] = std::move(value);
    return made;
}

Json check(Json id, Json step, const char* text) {
    Json made{{"id", id}, {"list", "tear_down"}, {"step", step}, {"caution", "none"}};
    if (text) made["text"] = text;
    return made;
}

Json mark(Json head, Json field) { return {{"head", head}, {"field", field}, {"done", true}}; }

Json real(Json head, Json field, Json value) {
    Json made = mark(head, field);
    made["real"] = std::move(value);
    return made;
}

Json stamped(Json time, Json initials) {
    Json made = mark(1, "stops.operator_mm");
    made["time_ms"] = std::move(time);
    made["initials"] = std::move(initials);
    return made;
}

Json list(std::initializer_list<Json> items) { return Json(Json::array_t(items)); }

Json stoppage(Json minutes, Json reason) {
    return {{"stoppages", list({{{"minutes", minutes}, {"reason", reason}}})}};
}

const std::vector<Broken>& broken_records() {
    static const std::string long_text(201, 'n');
    static const std::vector<Broken> all = {
        // heads
        {"heads[1].wish.order", Kind::out_of_range, "/heads/1/wish", wish("order", 65)},
        {"heads[1].wish.order", Kind::wrong_type, "/heads/1/wish", wish("order", 2.5)},
        {"heads[1].wish.cool_after", Kind::out_of_range, "/heads/1/wish", wish("cool_after", -1)},
        {"heads[1].wish.screen_on", Kind::wrong_type, "/heads/1/wish", wish("screen_on", nullptr)},
        {"heads[1].wish.pinned", Kind::wrong_type, "/heads/1/wish", wish("pinned", 1)},
        {"heads[1].wish.dry", Kind::unknown_field, "/heads/1/wish", wish("dry", true)},
        {"heads[1].wish.flash_after", Kind::wrong_type, "/heads/1/wish", {{"flash_after", "yes"}}},
        {"heads[0].squeegee.hardness_shore_a", Kind::out_of_range,
         "/heads/0/squeegee/hardness_shore_a", 120},
        {"heads[0].squeegee.edge", Kind::wrong_choice, "/heads/0/squeegee/edge", "blunt"},
        {"heads[0].notes.ink", Kind::bad_text, "/heads/0/notes", {{"ink", long_text}}},
        {"heads[0].notes.stencil", Kind::wrong_type, "/heads/0/notes", {{"stencil", 2}}},
        // the job
        {"garment.fabric",
         Kind::wrong_type,
         "/garment",
         {{"kind", "fleece"}, {"compressed_mm", 1}, {"fabric", false}}},
        {"run.dryer_s",
         Kind::out_of_range,
         "/run",
         {{"pieces", 10}, {"flash_dwell_s", 4}, {"cycle_s", 8}, {"dryer_s", 3601}}},
        {"run.dryer_temperature_c",
         Kind::wrong_type,
         "/run",
         {{"pieces", 10}, {"flash_dwell_s", 4}, {"cycle_s", 8}, {"dryer_temperature_c", "160"}}},
        {"run.pieces",
         Kind::wrong_type,
         "/run",
         {{"pieces", 10.5}, {"flash_dwell_s", 4}, {"cycle_s", 8}}},
        {"handling.load_s", Kind::out_of_range, "/handling", {{"load_s", -1}, {"unload_s", 2}}},
        // the press
        {"press.pace.index_s", Kind::out_of_range, "/press/pace", pace("index_s", 0)},
        {"press.pace.jerk_mm_per_s3", Kind::out_of_range, "/press/pace",
         pace("jerk_mm_per_s3", 1e8)},
        {"press.pace.floods_while_indexing", Kind::wrong_type, "/press/pace",
         pace("floods_while_indexing", "no")},
        {"press.rooms", Kind::wrong_length, "/press/rooms",
         Json(Json::array_t(65, {{"print_head", true}, {"flash", true}}))},
        {"press.rooms[0].flash", Kind::missing_field, "/press/rooms",
         list({{{"print_head", true}}})},
        {"press.rooms", Kind::wrong_type, "/press/rooms", Json::object()},
        {"press.checks[0].step", Kind::wrong_choice, "/press/checks",
         list({check(1, "pray", nullptr)})},
        {"press.checks[0].id", Kind::out_of_range, "/press/checks",
         list({check(0, "ink_out", nullptr)})},
        {"press.checks[1].id", Kind::repeated, "/press/checks",
         list({check(4, "ink_out", nullptr), check(4, "own", "lights out")})},
        {"press.checks[0].text", Kind::own_text, "/press/checks", list({check(1, "own", nullptr)})},
        {"press.checks[0].text", Kind::own_text, "/press/checks", list({check(1, "own", "")})},
        {"press.checks[1].text", Kind::own_text, "/press/checks",
         list({check(1, "screens_out", nullptr), check(2, "ink_out", "all of it")})},
        {"press.checks[0].text", Kind::bad_text, "/press/checks",
         list({check(1, "own", long_text.c_str())})},
        // the walk
        {"walk", Kind::wrong_type, "/walk", "round the press"},
        {"walk[0].head", Kind::missing_field, "/walk", list({Json::object()})},
        {"walk[0].field", Kind::wrong_choice, "/walk", list({mark(1, "stops.operator")})},
        {"walk[0].field", Kind::wrong_choice, "/walk", list({mark(0, "pace.index_s")})},
        {"walk[0].head", Kind::out_of_range, "/walk", list({mark(0, "stops.operator_mm")})},
        {"walk[0].head", Kind::out_of_range, "/walk", list({mark(1, "run.pieces")})},
        {"walk[1]", Kind::repeated, "/walk",
         list({mark(1, "stops.machine_mm"), mark(1, "stops.machine_mm")})},
        {"walk[1]", Kind::out_of_order, "/walk",
         list({mark(1, "stops.machine_mm"), mark(1, "stops.operator_mm")})},
        {"walk[1]", Kind::out_of_order, "/walk",
         list({mark(2, "stops.operator_mm"), mark(1, "stops.machine_mm")})},
        {"walk[0].real", Kind::wrong_type, "/walk", list({real(1, "stops.operator_mm", 12)})},
        {"walk[0].real.value", Kind::missing_field, "/walk",
         list({real(1, "stops.operator_mm", Json::object())})},
        {"walk[0].real.value", Kind::out_of_range, "/walk",
         list({real(1, "stops.operator_mm", {{"value", 6000}})})},
        {"walk[0].real.value", Kind::missing_field, "/walk",
         list({real(1, "stops.operator_mm", {{"value_deg", 6}})})},
        {"walk[0].real.value_deg", Kind::missing_field, "/walk",
         list({real(1, "flood.angle_deg", {{"value", 15}})})},
        {"walk[0].real.value_deg", Kind::out_of_range, "/walk",
         list({real(1, "flood.angle_deg", {{"value_deg", 60}})})},
        {"walk[0].real.value_rad", Kind::both_given, "/walk",
         list({real(1, "flood.angle_deg", {{"value_deg", 15}, {"value_rad", 0.2}})})},
        {"walk[0].real.value", Kind::wrong_type, "/walk",
         list({real(1, "deposit.print_strokes", {{"value", 1.5}})})},
        {"walk[0].time_ms", Kind::out_of_range, "/walk", list({stamped(-1, "AB")})},
        {"walk[0].time_ms", Kind::out_of_range, "/walk", list({stamped(1e16, "AB")})},
        {"walk[0].initials", Kind::bad_text, "/walk", list({stamped(1, "seventeen letters")})},
        // the record
        {"record.note", Kind::unknown_field, "/record", {{"note", "so"}}},
        {"record.notes", Kind::bad_text, "/record", {{"notes", long_text}}},
        {"record.ticks[0].item", Kind::out_of_range, "/record", {{"ticks", list({{{"item", 0}}})}}},
        {"record.ticks[1].item",
         Kind::repeated,
         "/record",
         {{"ticks", list({{{"item", 3}}, {{"item", 3}}})}}},
        {"record.counts[0].printed",
         Kind::wrong_type,
         "/record",
         {{"counts", list({{{"printed", 1.5}, {"spoiled", 0}}})}}},
        {"record.counts[1].spoiled",
         Kind::out_of_range,
         "/record",
         {{"counts", list({{{"printed", 5}, {"spoiled", 5}}, {{"printed", 9}, {"spoiled", 10}}})}}},
        {"record.stoppages[0].minutes", Kind::out_of_range, "/record", stoppage(-1, "ink")},
        {"record.stoppages[0].reason", Kind::wrong_choice, "/record", stoppage(1, "weather")},
        {"record.approval.time_ms",
         Kind::wrong_type,
         "/record",
         {{"approval", {{"time_ms", "noon"}}}}},
        {"record.stoppages[0].minutes",
         Kind::missing_field,
         "/record",
         {{"stoppages", list({{{"reason", "ink"}}})}}},
    };
    return all;
}

ReadFault fault_with(const Broken& broken) {
    Json job = demo();
    job[Json::json_pointer(broken.pointer)] = broken.value;
    const ReadJob read = read_job(job.dump());
    CHECK_FALSE(read.job.has_value());
    return read.fault;
}

std::string english(const Broken& broken) {
    return fault_sentence(Language::english, fault_with(broken));
}

} // namespace

TEST_CASE("what is broken in a walk, a record, a wish or a list is refused with its place") {
    for (const Broken& broken : broken_records()) {
        const ReadFault fault = fault_with(broken);
        INFO(broken.path << " | path " << fault.path << " | kind " << static_cast<int>(fault.kind)
                         << " | " << fault_sentence(Language::english, fault));
        CHECK(fault.path == broken.path);
        CHECK(fault.kind == broken.kind);
        for (const Language language : {Language::english, Language::spanish}) {
            const std::string sentence = fault_sentence(language, fault);
            CHECK(sentence.find(broken.path) == 0);
            CHECK(sentence.size() > fault.path.size() + 10);
            CHECK(sentence.find("{0}") == std::string::npos);
        }
    }
}

TEST_CASE("such a refusal says what was found and what to do") {
    CHECK(english(
              {"", Kind::repeated, "/record", {{"ticks", list({{{"item", 3}}, {{"item", 3}}})}}}) ==
          "record.ticks[1].item, line 1: 3 stands here a second time. Take one of the two out.");
    CHECK(english({"", Kind::out_of_order, "/walk",
                   list({mark(2, "stops.operator_mm"), mark(1, "stops.machine_mm")})}) ==
          "walk[1], line 1: found 1 stops.machine_mm behind 2 stops.operator_mm. Put the list in "
          "order: by "
          "head, and for one head as the format lists its numbers.");
    CHECK(
        english({"", Kind::own_text, "/press/checks", list({check(2, "ink_out", "all\x1B[2J")})}) ==
        "press.checks[0].text, line 1: found \"all\\u001b[2J\". A step called \"own\" needs a "
        "text, any other "
        "has none.");
    CHECK(english({"", Kind::out_of_range, "/walk",
                   list({real(1, "flood.angle_deg", {{"value_deg", 60}})})}) ==
          "walk[0].real.value_deg, line 1: found 60°, expected 0 … 45°.");
    CHECK(english({"", Kind::wrong_type, "/walk",
                   list({real(1, "deposit.print_strokes", {{"value", 1.5}})})}) ==
          "walk[0].real.value, line 1: found 1.5, expected a whole number.");
    CHECK(english({"", Kind::out_of_range, "/press/pace", pace("jerk_mm_per_s3", 1e8)})
              .find("expected 0 … 10000000 mm/s³.") != std::string::npos);
    CHECK(english({"", Kind::out_of_range, "/heads/0/squeegee/hardness_shore_a", 120})
              .find("found 120 Shore A, expected 0 … 100 Shore A.") != std::string::npos);
    // Of many words the one that was probably meant.
    CHECK(english({"", Kind::wrong_choice, "/walk", list({mark(1, "stops.operator")})})
              .find("expected one of \"stops.operator_mm\", …") != std::string::npos);
}

TEST_CASE("a fault of a profile's lists is told in a press file as well") {
    PressProfile press;
    press.checks = {{1, CheckList::before_run, CheckStep::stops_tight, {}, Caution::none},
                    {1, CheckList::before_run, CheckStep::flash_warm, {}, Caution::none}};
    const ReadPress read = read_press(write_press(press));
    CHECK_FALSE(read);
    CHECK(read.fault.kind == Kind::repeated);
    CHECK(read.fault.path == "checks[1].id");
    CHECK(read.fault.line > 1);
}
