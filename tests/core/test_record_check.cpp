// What may be kept of a walk, of a run and of a press's lists.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <limits>
#include <string>

#include "core/job_check.h"
#include "tests/core/sample_record.h"

using namespace carriageway;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

const Stamp good_stamp{1'760'000'000'000, "AB"};

WalkMark mark_of(HeadId head, Field field) { return {head, field, true, std::nullopt, good_stamp}; }

RunRecord good_record() {
    RunRecord record;
    record.ticks = {{3, good_stamp}, {1, {}}};
    record.counts = {{0.0, 0.0, good_stamp}, {120.0, 3.0, {}}};
    record.stoppages = {{12.5, StopReason::ink, "mixed more", good_stamp}};
    record.approval = {"AB", "print of last year", 1'760'000'000'000};
    record.notes = "so";
    return record;
}

/// Whether a good record is still one after a change.
template <typename Change>
bool kept_after(Change change) {
    RunRecord record = good_record();
    change(record);
    return is_record(record);
}

const std::string too_long(longest_name + 1, 'x');
const std::string no_utf8 = "\xC3";

} // namespace

TEST_CASE("A mark of a walk is about a number of its head, or of the job", "[record]") {
    CHECK(is_walk_mark(mark_of(1, Field::squeegee_angle)));
    CHECK(is_walk_mark(mark_of(0, Field::pieces)));
    CHECK_FALSE(is_walk_mark(mark_of(0, Field::squeegee_angle)));
    CHECK_FALSE(is_walk_mark(mark_of(1, Field::pieces)));
    CHECK_FALSE(is_walk_mark(mark_of(0, Field::index_time))); // the press's
    CHECK_FALSE(is_walk_mark(mark_of(1, Field::index_time)));
    CHECK_FALSE(is_walk_mark(mark_of(1, Field::count)));
    CHECK_FALSE(is_walk_mark(mark_of(1, static_cast<Field>(-1))));
    CHECK_FALSE(is_walk_mark(mark_of(1, static_cast<Field>(10'000))));
}

TEST_CASE("What was really set is a number that its field accepts", "[record]") {
    WalkMark mark = mark_of(1, Field::squeegee_angle);
    mark.real = radians(12.0);
    CHECK(is_walk_mark(mark));
    for (const double bad :
         {radians(60.0), -0.1, nan_value, std::numeric_limits<double>::infinity()}) {
        mark.real = bad;
        CHECK_FALSE(is_walk_mark(mark));
    }
    mark = mark_of(1, Field::print_strokes);
    mark.real = 2.0;
    CHECK(is_walk_mark(mark));
    mark.real = 1.5;
    CHECK_FALSE(is_walk_mark(mark));
}

TEST_CASE("A stamp has a time that is not negative and few, readable initials", "[record]") {
    WalkMark mark = mark_of(1, Field::squeegee_width);
    mark.stamp = {};
    CHECK(is_walk_mark(mark));
    mark.stamp = {0, std::string(longest_initials, 'x')};
    CHECK(is_walk_mark(mark));
    mark.stamp = {-1, "AB"};
    CHECK_FALSE(is_walk_mark(mark));
    mark.stamp = {1, std::string(longest_initials + 1, 'x')};
    CHECK_FALSE(is_walk_mark(mark));
    mark.stamp = {1, no_utf8};
    CHECK_FALSE(is_walk_mark(mark));
}

TEST_CASE("A walk is in order, each number once, and not endless", "[record]") {
    const WalkMark job = mark_of(0, Field::waste_share);
    const WalkMark first = mark_of(1, Field::screen_across),
                   second = mark_of(1, Field::image_width);
    const WalkMark other = mark_of(2, Field::screen_across);
    CHECK(is_walk({}));
    CHECK(is_walk({job, first, second, other}));
    CHECK_FALSE(is_walk({first, job}));
    CHECK_FALSE(is_walk({second, first}));
    CHECK_FALSE(is_walk({first, first}));
    WalkMark undone = first;
    undone.done = false;
    CHECK_FALSE(is_walk({first, undone})); // the same number twice, however it differs
    CHECK_FALSE(is_walk({first, mark_of(2, Field::pieces)}));

    std::vector<WalkMark> many;
    for (std::size_t i = 0; i < most_walk_marks; ++i)
        many.push_back(mark_of(static_cast<HeadId>(i + 1), Field::screen_across));
    CHECK(is_walk(many));
    many.push_back(mark_of(static_cast<HeadId>(most_walk_marks + 1), Field::screen_across));
    CHECK_FALSE(is_walk(many));
}

TEST_CASE("Marks stand by head, then by number", "[record]") {
    CHECK(walk_before(mark_of(0, Field::waste_share), mark_of(1, Field::screen_across)));
    CHECK(walk_before(mark_of(1, Field::screen_across), mark_of(1, Field::screen_along)));
    CHECK_FALSE(walk_before(mark_of(1, Field::screen_along), mark_of(1, Field::screen_across)));
    CHECK_FALSE(walk_before(mark_of(1, Field::screen_across), mark_of(1, Field::screen_across)));
    CHECK_FALSE(walk_before(mark_of(2, Field::screen_across), mark_of(1, Field::waste_share)));
}

TEST_CASE("Ticks: of a step, each once", "[record]") {
    REQUIRE(is_record(good_record()));
    CHECK(is_record(RunRecord{}));
    CHECK_FALSE(kept_after([](RunRecord& r) { r.ticks[0].item = 0; }));
    CHECK_FALSE(kept_after([](RunRecord& r) { r.ticks[0].item = r.ticks[1].item; }));
    CHECK_FALSE(kept_after([](RunRecord& r) { r.ticks[1].stamp.time = -1; }));
    const auto with = [](std::size_t ticks) {
        return kept_after([ticks](RunRecord& r) {
            r.ticks.clear();
            for (std::size_t i = 1; i <= ticks; ++i)
                r.ticks.push_back({static_cast<std::uint32_t>(i), {}});
        });
    };
    CHECK(with(most_check_items));
    CHECK_FALSE(with(most_check_items + 1));
}

TEST_CASE("Counts are whole, and no more are spoiled than printed", "[record]") {
    const auto counted = [](double printed, double spoiled) {
        return kept_after([=](RunRecord& r) { r.counts[1] = {printed, spoiled, {}}; });
    };
    CHECK(counted(120.0, 120.0));
    CHECK(counted(most_pieces_counted, 0.0));
    CHECK_FALSE(counted(120.0, 121.0));
    CHECK_FALSE(counted(120.5, 0.0));
    CHECK_FALSE(counted(120.0, 0.5));
    CHECK_FALSE(counted(-1.0, -1.0));
    CHECK_FALSE(counted(most_pieces_counted + 1.0, 0.0));
    CHECK_FALSE(counted(nan_value, 0.0));
    CHECK_FALSE(counted(120.0, nan_value));
    CHECK_FALSE(kept_after([](RunRecord& r) { r.counts[0].stamp.initials = no_utf8; }));
    CHECK(kept_after([](RunRecord& r) { r.counts.resize(most_counts); }));
    CHECK_FALSE(kept_after([](RunRecord& r) { r.counts.resize(most_counts + 1); }));
}

TEST_CASE("Stoppages have a length, a reason and a readable note", "[record]") {
    const auto stopped = [](double minutes, StopReason reason, const std::string& note) {
        return kept_after([&](RunRecord& r) {
            r.stoppages[0] = {minutes, reason, note, good_stamp};
        });
    };
    CHECK(stopped(0.0, StopReason::other, ""));
    CHECK(stopped(most_minutes, StopReason::pause, std::string(longest_name, 'x')));
    CHECK_FALSE(stopped(-0.1, StopReason::ink, ""));
    CHECK_FALSE(stopped(most_minutes + 1.0, StopReason::ink, ""));
    CHECK_FALSE(stopped(nan_value, StopReason::ink, ""));
    CHECK_FALSE(stopped(1.0, StopReason::count, ""));
    CHECK_FALSE(stopped(1.0, static_cast<StopReason>(-1), ""));
    CHECK_FALSE(stopped(1.0, StopReason::ink, too_long));
    CHECK_FALSE(stopped(1.0, StopReason::ink, no_utf8));
    CHECK_FALSE(kept_after([](RunRecord& r) { r.stoppages[0].stamp.time = -1; }));
    CHECK_FALSE(kept_after([](RunRecord& r) { r.stoppages.resize(most_stoppages + 1); }));
}

TEST_CASE("Approval and notes are readable and not endless", "[record]") {
    for (const std::string& bad : {too_long, no_utf8}) {
        CHECK_FALSE(kept_after([&](RunRecord& r) { r.approval.by = bad; }));
        CHECK_FALSE(kept_after([&](RunRecord& r) { r.approval.against = bad; }));
        CHECK_FALSE(kept_after([&](RunRecord& r) { r.notes = bad; }));
    }
    CHECK_FALSE(kept_after([](RunRecord& r) { r.approval.time = -1; }));
    CHECK(kept_after([](RunRecord& r) { r.approval = {}; }));
}

TEST_CASE("Lists of a press: ids of their own, a text for an own step and only for one",
          "[record]") {
    const CheckItem usual{4, CheckList::before_run, CheckStep::stops_tight, {}, Caution::none};
    const CheckItem own{9, CheckList::tear_down, CheckStep::own, "lights out", Caution::none};
    CHECK(are_checks({}));
    CHECK(are_checks({own, usual}));
    const auto with = [&](auto change) {
        std::vector<CheckItem> items{usual, own};
        change(items);
        return are_checks(items);
    };
    CHECK_FALSE(with([](auto& i) { i[0].id = 0; }));
    CHECK_FALSE(with([](auto& i) { i[0].id = 9; }));
    CHECK_FALSE(with([](auto& i) { i[0].text = "twice tight"; }));
    CHECK_FALSE(with([](auto& i) { i[1].text.clear(); }));
    CHECK_FALSE(with([](auto& i) { i[1].text = too_long; }));
    CHECK_FALSE(with([](auto& i) { i[1].text = no_utf8; }));
    CHECK_FALSE(with([](auto& i) { i[0].step = CheckStep::count; }));
    CHECK_FALSE(with([](auto& i) { i[0].step = static_cast<CheckStep>(-1); }));
    std::vector<CheckItem> many(most_check_items + 1, own);
    for (std::size_t i = 0; i < many.size(); ++i) many[i].id = static_cast<std::uint32_t>(i + 1);
    CHECK_FALSE(are_checks(many));
    many.pop_back();
    CHECK(are_checks(many));
}

TEST_CASE("What tests make up of walks, records and lists may be kept", "[record][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    sample::Random random(seed);
    std::size_t marks = 0, entries = 0, items = 0;
    for (int i = 0; i < 500; ++i) {
        const std::vector<WalkMark> walk = sample::walk(random, random.whole(0, 4));
        const RunRecord record = sample::record(random);
        const std::vector<CheckItem> checks = sample::checks(random);
        REQUIRE(is_walk(walk));
        REQUIRE(is_record(record));
        REQUIRE(are_checks(checks));
        marks += walk.size();
        entries += record.ticks.size() + record.counts.size() + record.stoppages.size();
        items += checks.size();
    }
    CHECK(marks > 500);
    CHECK(entries > 500);
    CHECK(items > 500);
}
