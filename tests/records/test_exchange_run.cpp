// What is noted of a job and its run, written as text and read again; and the largest job.
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <fstream>
#include <iterator>
#include <limits>
#include <nlohmann/json.hpp>
#include <numbers>

#include "app/records/exchange.h"
#include "app/records/form.h"
#include "app/text/words.h"
#include "core/units.h"

using namespace carriageway;
using Json = nlohmann::json;
using Kind = ReadFault::Kind;

namespace {

std::string why(const ReadFault& fault) { return fault_sentence(Language::english, fault); }

Job one_head() {
    Job job;
    job.uses.resize(10);
    job.heads.emplace_back();
    job.heads[0].id = 1;
    job.heads[0].station = 1;
    return job;
}

/// Whether a job is accepted and read back exactly as it was written.
bool comes_back(const Job& job) {
    const ReadJob read = read_job(write_job(job));
    INFO(why(read.fault));
    CHECK(read);
    return !fault_of(job) && read && *read.job == job;
}

/// A walk, a record and lists as large as core accepts them.
void note_all_there_is_room_for(Job& job) {
    const Stamp stamp{1'760'000'000'000, std::string(longest_initials, '\x01')};
    const std::string note(longest_name, '\x01');
    for (std::size_t i = 0; i < most_walk_marks; ++i) {
        const auto head = static_cast<HeadId>(4'000'000'000u + i);
        job.walk.push_back({head, Field::tension_across, false, 12.345678901234567, stamp});
    }
    for (std::size_t i = 0; i < most_check_items; ++i) {
        const auto id = static_cast<std::uint32_t>(4'000'000'000u + i);
        job.press.checks.push_back(
            {id, CheckList::before_unloading, CheckStep::own, note, Caution::isolated_and_bled});
        job.record.ticks.push_back({id, stamp});
    }
    job.record.counts.assign(most_counts, {most_pieces_counted, most_pieces_counted, stamp});
    job.record.stoppages.assign(most_stoppages,
                                {12345.678901234567, StopReason::registration, note, stamp});
    job.record.approval = {note, note, stamp.time};
    job.record.notes = note;
}

} // namespace

TEST_CASE("nothing is written of what was not noted") {
    const std::string text = write_job(one_head());
    for (const char* key :
         {"hardness_shore_a", "edge", "wish", "notes", "pace", "rooms", "checks", "fabric",
          "flash_temperature_c", "dryer_s", "handling", "walk", "record"}) {
        INFO(key);
        CHECK(text.find("\"" + std::string(key) + "\"") == std::string::npos);
    }
}

TEST_CASE("a file from before these parts is written again byte for byte") {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json", std::ios::binary);
    const std::string today{std::istreambuf_iterator<char>(file), {}};
    // Each part from the comma before it to the end of its number or object.
    std::string before = today;
    for (const char* key : {"\"hardness_shore_a\": ", "\"wish\": {"}) {
        const std::string ends = std::string(key).back() == '{' ? "}" : "\n";
        for (std::size_t at = before.find(key); at != std::string::npos; at = before.find(key)) {
            const std::size_t comma = before.rfind(',', at);
            std::size_t end = before.find(ends, at);
            if (ends == "}") ++end;
            before.erase(comma, end - comma);
        }
    }
    REQUIRE(before.size() + 200 < today.size());
    REQUIRE(before.find("wish\"") == std::string::npos);
    for (const std::string& text : {today, before}) {
        const ReadJob read = read_job(text);
        INFO(why(read.fault));
        REQUIRE(read);
        CHECK(write_job(*read.job) == text);
    }
}

TEST_CASE("each part is written where it differs from a new job, and comes back") {
    const auto with = [](auto change) {
        Job job = one_head();
        change(job, job.heads[0]);
        return job;
    };
    const auto written = [&](auto change) {
        const Job job = with(change);
        CHECK(comes_back(job));
        return Json::parse(write_job(job));
    };
    Json job = written([](Job&, Head& h) { h.squeegee.edge = BladeEdge::single_bevel; });
    CHECK(job["heads"][0]["squeegee"]["edge"] == "single_bevel");
    CHECK_FALSE(job["heads"][0]["squeegee"].contains("hardness_shore_a"));
    job = written([](Job&, Head& h) { h.squeegee.hardness = 72.5; });
    CHECK(job["heads"][0]["squeegee"]["hardness_shore_a"] == 72.5);
    job = written([](Job&, Head& h) { h.wish.flash_after = true; });
    CHECK(job["heads"][0]["wish"] == Json{{"flash_after", true}});
    job = written([](Job&, Head& h) { h.wish = {2.0, 1.0, 4.0, false, true, false, true}; });
    CHECK(job["heads"][0]["wish"] == Json{{"order", 2},
                                          {"cool_after", 1},
                                          {"screen_on", 4},
                                          {"flash_together", true},
                                          {"wet_on_wet", false},
                                          {"pinned", true}});
    job = written([](Job&, Head& h) { h.notes.stencil = "1:1"; });
    CHECK(job["heads"][0]["notes"] == Json{{"stencil", "1:1"}});
    job = written([](Job& j, Head&) { j.garment.name = "navy"; });
    CHECK(job["garment"]["fabric"] == "navy");
    job = written([](Job& j, Head&) { j.run.dryer_time = 75.0; });
    CHECK(job["run"] ==
          Json{{"pieces", 100}, {"flash_dwell_s", 4}, {"cycle_s", 8}, {"dryer_s", 75}});
    job = written([](Job& j, Head&) { j.handling.load = 4.0; });
    CHECK(job["handling"] == Json{{"load_s", 4}, {"unload_s", 2}});
    job = written([](Job& j, Head&) { j.press.pace.floods_while_indexing = true; });
    CHECK(job["press"]["pace"]["floods_while_indexing"] == true);
    job = written([](Job& j, Head&) { j.press.rooms = {{true, false}}; });
    CHECK(job["press"]["rooms"] == Json::array({{{"print_head", true}, {"flash", false}}}));
    job = written([](Job& j, Head&) {
        j.press.checks = {{5, CheckList::tear_down, CheckStep::own, "lights", Caution::none},
                          {6, CheckList::before_run, CheckStep::guards_closed, {}, Caution::none}};
    });
    CHECK(job["press"]["checks"][0] ==
          Json{{"id", 5}, {"list", "tear_down"}, {"step", "own"}, {"text", "lights"}});
    CHECK(job["press"]["checks"][1] ==
          Json{{"id", 6}, {"list", "before_run"}, {"step", "guards_closed"}});
    job = written([](Job& j, Head&) { j.record.notes = "so"; });
    CHECK(job["record"] == Json{{"notes", "so"}});
    job = written([](Job& j, Head&) { j.record.ticks = {{9, {}}}; });
    CHECK(job["record"] == Json{{"ticks", {{{"item", 9}}}}});
}

TEST_CASE("what was really set is written in the unit of its number") {
    Job job = one_head();
    // Above 16 degrees neighbouring degrees are farther apart than neighbouring radians.
    double no_degrees = radians(20.0);
    while (number_in_file(no_degrees, rad_per_degree)) no_degrees = std::nextafter(no_degrees, 1.0);
    const Stamp stamp{1'760'000'000'000, "AB"};
    job.walk = {{1, Field::squeegee_width, true, 352.0, {}},
                {1, Field::squeegee_angle, true, radians(12.5), stamp},
                {1, Field::flood_angle, false, no_degrees, {}},
                {1, Field::print_strokes, true, std::nullopt, {}}};
    REQUIRE(comes_back(job));
    const Json walk = Json::parse(write_job(job))["walk"];
    CHECK(walk[0] == Json{{"head", 1},
                          {"field", "squeegee.width_mm"},
                          {"done", true},
                          {"real", {{"value", 352}}}});
    CHECK(walk[1]["real"] == Json{{"value_deg", 12.5}});
    CHECK(walk[1]["time_ms"] == 1'760'000'000'000);
    CHECK(walk[1]["initials"] == "AB");
    CHECK(walk[2]["real"]["value_rad"] == no_degrees);
    CHECK_FALSE(walk[3].contains("real"));
}

TEST_CASE("the largest job is written small enough to be read") {
    Job job;
    job.press.stations = most_stations;
    job.uses.resize(most_stations);
    Outline longest;
    for (int i = 0; i < most_outline_corners; ++i) {
        // Seventeen digits and an exponent: the longest there are.
        const double angle = 2.0 * std::numbers::pi * i / most_outline_corners;
        longest.push_back({-1.2345678901234567e-5 + 400.0 * std::cos(angle),
                           -1.2345678901234567e-5 + 400.0 * std::sin(angle)});
    }
    for (int station = 1; station <= most_stations; ++station) {
        Head& head = job.heads.emplace_back();
        head.id = 0xFFFFFFFFu - static_cast<HeadId>(station);
        head.station = station;
        head.colour = std::string(longest_name, 'x');
        head.image.outline = longest;
    }
    note_all_there_is_room_for(job);
    REQUIRE_FALSE(fault_of(job));
    const std::string text = write_job(job);
    CHECK(text.size() < largest_text);
    // Were every corner "-1.2345678901234567e-05, ..." twice, every mark of the walk set otherwise
    // and every note of characters that take six, there would still be room.
    const std::size_t longest_corner = 60, longest_mark = 400, longest_stoppage = 1600;
    const std::size_t corners = std::size_t{most_stations} * most_outline_corners;
    CHECK(corners * longest_corner + std::size_t{most_stations} * 6000 +
              most_walk_marks * longest_mark +
              (most_counts + most_stoppages + 2 * most_check_items) * longest_stoppage <
          largest_text);
    const ReadJob read = read_job(text);
    INFO(why(read.fault));
    REQUIRE(read);
    CHECK(*read.job == job);
}
