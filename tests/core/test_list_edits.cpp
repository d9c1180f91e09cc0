// The lists of a run worked with: ticks, own steps, steps taken out, the usual ones back.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>

#include "core/job_check.h"
#include "core/list_edits.h"
#include "tests/core/edited.h"
#include "tests/core/sample_record.h"

using namespace carriageway;

namespace {

const Stamp by_ab{1'700'000'000'000, "AB"};

const CheckItem* find_item(const Job& job, std::uint32_t id) {
    for (const CheckItem& item : checks_of(job.press))
        if (item.id == id) return &item;
    return nullptr;
}

/// The own step with this text; fails where there is none.
const CheckItem& own_step(const Job& job, const std::string& text) {
    for (const CheckItem& item : checks_of(job.press))
        if (item.text == text) return item;
    FAIL("no step \"" << text << "\"");
    return checks_of(job.press).front();
}

void add(Job& job, CheckList list, const std::string& text) {
    const std::optional<Edit> edit = add_step(job, list, text);
    REQUIRE(edit);
    sample::accept(job, *edit);
}

std::vector<CheckStep> steps_of(const Job& job) {
    std::vector<CheckStep> steps;
    for (const CheckItem& item : checks_of(job.press)) steps.push_back(item.step);
    return steps;
}

} // namespace

TEST_CASE("A tick is kept with who gave it and when, counted, and taken back", "[list_edits]") {
    Job job = sample::one_head();
    // Usual steps: 12 before the run, 5 each of the first piece and the night, 3 and 6.
    CHECK(list_progress(job, CheckList::before_run) == ListProgress{0, 12});
    CHECK(list_progress(job, CheckList::before_unloading) == ListProgress{0, 3});
    CHECK(list_progress(job) == ListProgress{0, 31});
    sample::accept(job, tick_step(job, 3, true, by_ab));
    sample::accept(job, tick_step(job, 1, true, {by_ab.time + 5, "CD"}));
    CHECK(list_progress(job, CheckList::before_run) == ListProgress{2, 12});
    CHECK(list_progress(job) == ListProgress{2, 31});
    REQUIRE(tick_of(job.record, 3));
    CHECK(tick_of(job.record, 3)->stamp == by_ab);
    // A second tick of the same step leaves the first as it was.
    sample::accept(job, tick_step(job, 3, true, {by_ab.time + 9, "EF"}));
    CHECK(tick_of(job.record, 3)->stamp == by_ab);
    sample::accept(job, tick_step(job, 3, false, {}));
    CHECK_FALSE(tick_of(job.record, 3));
    CHECK(job.record.ticks == std::vector<CheckTick>{{1, {by_ab.time + 5, "CD"}}});
}

TEST_CASE("What the press doesn't have is neither ticked nor counted", "[list_edits]") {
    Job job = sample::one_head();
    const Job before = job;
    sample::accept(job, tick_step(job, 32, true, by_ab));
    sample::accept(job, tick_step(job, 0, true, by_ab));
    CHECK(job == before);
    job.record.ticks = {{77, by_ab}}; // of a step that has gone since
    CHECK(list_progress(job) == ListProgress{0, 31});
}

TEST_CASE("An own step stands last in its list, on every press under the same id", "[list_edits]") {
    Job job = sample::one_head();
    add(job, CheckList::first_piece, "label of the garment inside");
    add(job, CheckList::before_run, "label of the garment inside");
    add(job, CheckList::first_piece, "hem straight");
    CHECK(list_progress(job, CheckList::first_piece) == ListProgress{0, 7});
    CHECK(list_progress(job, CheckList::before_run) == ListProgress{0, 13});
    CHECK(checks_of(job.press).back().text == "hem straight");
    CHECK(are_checks(job.press.checks));
    const std::uint32_t hem = own_step(job, "hem straight").id;
    CHECK(hem > usual_checks().size());

    Job other = sample::two_heads();
    add(other, CheckList::first_piece, "hem straight");
    CHECK(own_step(other, "hem straight").id == hem);
    // The same text twice is two steps, each with its own tick.
    add(other, CheckList::first_piece, "hem straight");
    const std::uint32_t second = checks_of(other.press).back().id;
    CHECK(second != hem);
    sample::accept(other, tick_step(other, second, true, by_ab));
    CHECK(list_progress(other, CheckList::first_piece) == ListProgress{1, 7});
}

TEST_CASE("A step that is added never finds itself ticked", "[list_edits]") {
    Job job = sample::one_head();
    add(job, CheckList::tear_down, "rinse the trays");
    const std::uint32_t id = own_step(job, "rinse the trays").id;
    Job other = sample::one_head();
    other.record.ticks = {{id, by_ab}}; // left by a press that had it
    add(other, CheckList::tear_down, "rinse the trays");
    CHECK(own_step(other, "rinse the trays").id != id);
    CHECK(list_progress(other, CheckList::tear_down) == ListProgress{0, 7});
}

TEST_CASE("A text that is no step, and a step too many, are refused", "[list_edits]") {
    Job job = sample::one_head();
    CHECK_FALSE(add_step(job, CheckList::before_run, ""));
    CHECK_FALSE(add_step(job, CheckList::before_run, std::string(201, 'a')));
    CHECK_FALSE(add_step(job, CheckList::before_run, "\xC3"));
    CHECK_FALSE(add_step(job, static_cast<CheckList>(check_lists), "hem straight"));
    CHECK_FALSE(add_step(job, static_cast<CheckList>(-1), "hem straight"));
    add(job, CheckList::before_run, std::string(200, 'a'));
    for (std::size_t i = checks_of(job.press).size(); i < most_check_items; ++i)
        REQUIRE(apply(job, *add_step(job, CheckList::before_run, "step " + std::to_string(i))));
    CHECK(checks_of(job.press).size() == most_check_items);
    CHECK_FALSE(add_step(job, CheckList::before_run, "one more"));
    CHECK_FALSE(fault_of(job));
}

TEST_CASE("A step that is taken out takes its tick along; undo brings both back", "[list_edits]") {
    Job job = sample::one_head();
    REQUIRE(apply(job, tick_step(job, 5, true, by_ab)));
    REQUIRE(apply(job, tick_step(job, 6, true, by_ab)));
    const std::optional<Edit> edit = remove_step(job, 5);
    REQUIRE(edit);
    sample::accept(job, *edit); // and back, and done again
    CHECK_FALSE(find_item(job, 5));
    CHECK(job.record.ticks == std::vector<CheckTick>{{6, by_ab}});
    CHECK(list_progress(job, CheckList::before_run) == ListProgress{1, 11});
    CHECK_FALSE(remove_step(job, 5));
    CHECK_FALSE(remove_step(job, 999));
}

TEST_CASE("The last step of a press stays: with none it would have the usual ones",
          "[list_edits]") {
    Job job = sample::one_head();
    for (std::uint32_t id = 1; id <= 30; ++id) {
        const std::optional<Edit> edit = remove_step(job, id);
        REQUIRE(edit);
        REQUIRE(apply(job, *edit));
    }
    REQUIRE(checks_of(job.press).size() == 1);
    CHECK(checks_of(job.press).front().step == CheckStep::platens_cleaned);
    CHECK_FALSE(remove_step(job, 31));
}

TEST_CASE("The usual steps come back where they belong, own ones stay", "[list_edits]") {
    Job job = sample::one_head();
    CHECK_FALSE(bring_usual_steps_back(job));
    for (const std::uint32_t id : {1u, 4u, 13u, 31u}) REQUIRE(apply(job, *remove_step(job, id)));
    const std::optional<Edit> usual = bring_usual_steps_back(job);
    REQUIRE(usual);
    Job without_own = job;
    sample::accept(without_own, *usual);
    CHECK(without_own.press.checks.empty()); // none of its own: the usual ones
    add(job, CheckList::before_run, "hem straight");
    const std::optional<Edit> back = bring_usual_steps_back(job);
    REQUIRE(back);
    sample::accept(job, *back);
    std::vector<CheckStep> expected;
    for (const CheckItem& item : usual_checks()) expected.push_back(item.step);
    std::vector<CheckStep> steps = steps_of(job);
    CHECK(std::count(steps.begin(), steps.end(), CheckStep::own) == 1);
    std::erase(steps, CheckStep::own);
    CHECK(steps == expected);
    CHECK(own_step(job, "hem straight").list == CheckList::before_run);
    CHECK_FALSE(bring_usual_steps_back(job));
}

TEST_CASE("A usual step whose id an own step of a file has comes back under another",
          "[list_edits]") {
    Job job = sample::one_head();
    job.press.checks = {{4, CheckList::tear_down, CheckStep::own, "rinse the trays", {}},
                        {9, CheckList::before_run, CheckStep::table_clear, "", {}}};
    REQUIRE_FALSE(fault_of(job));
    const std::optional<Edit> back = bring_usual_steps_back(job);
    REQUIRE(back);
    sample::accept(job, *back);
    CHECK(are_checks(job.press.checks));
    CHECK(checks_of(job.press).size() == usual_checks().size() + 1);
    CHECK(find_item(job, 4)->text == "rinse the trays");
    CHECK(find_item(job, 9)->step == CheckStep::table_clear);
}

TEST_CASE("Whatever is done to lists, the job stays one that may be kept", "[list_edits]") {
    const std::uint32_t seed = Catch::getSeed();
    INFO("seed " << seed);
    sample::Random random(seed);
    Job job = sample::one_head();
    int done = 0;
    for (int round = 0; round < 400; ++round) {
        INFO("round " << round);
        if (random.chance(0.02)) job.press.checks = sample::checks(random);
        const std::vector<CheckItem>& items = checks_of(job.press);
        const CheckItem item =
            items[static_cast<std::size_t>(random.whole(0, static_cast<int>(items.size()) - 1))];
        const auto list = static_cast<CheckList>(random.whole(0, check_lists - 1));
        std::optional<Edit> edit;
        switch (random.whole(0, 4)) {
        case 0: edit = add_step(job, list, "step " + std::to_string(random.whole(0, 9))); break;
        case 1: edit = remove_step(job, item.id); break;
        case 2: edit = tick_step(job, item.id, true, by_ab); break;
        case 3: edit = tick_step(job, item.id, false, by_ab); break;
        case 4: edit = random.chance(0.1) ? bring_usual_steps_back(job) : std::nullopt; break;
        }
        if (!edit) continue;
        ++done;
        sample::accept(job, *edit);
        REQUIRE_FALSE(fault_of(job));
        const ListProgress all = list_progress(job);
        CHECK(all.steps == static_cast<int>(checks_of(job.press).size()));
        CHECK(all.ticked <= static_cast<int>(job.record.ticks.size()));
    }
    CHECK(done > 200);
}
