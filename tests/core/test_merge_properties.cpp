// Two halves of a walk put together at random: nothing is lost, whoever begins, however often.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <algorithm>
#include <iterator>

#include "core/walk.h"
#include "core/walk_merge.h"
#include "tests/core/walk_samples.h"
#include "tests/samples.h"

using namespace carriageway;
using sample::Random;

namespace {

constexpr int cases = sample_count(2000);

/// A job that people take copies of: heads with names, some of it noted already.
Job common_job(Random& random) {
    Job job = sample::likely_job(random, random.whole(2, 5));
    job.walk.clear();
    job.record = {};
    for (std::size_t i = 0; i < job.heads.size(); ++i)
        job.heads[i].colour = "colour " + std::to_string(i);
    sample::change_plan(random, job, 10);
    sample::note_on_walk(random, job, 10);
    sample::note_in_run(random, job);
    return job;
}

/// What somebody makes of a copy.
Job worked_on(Random& random, Job job) {
    sample::note_on_walk(random, job, random.whole(0, 60));
    if (random.chance(0.7)) sample::change_plan(random, job, random.whole(0, 8));
    if (random.chance(0.5)) sample::note_in_run(random, job);
    if (random.chance(0.15)) sample::change_heads(random, job);
    return job;
}

std::vector<bool> choices_for(Random& random, const WalkMerge& merge, double theirs) {
    std::vector<bool> choices;
    for (std::size_t i = 0; i < merge.conflicts.size(); ++i)
        choices.push_back(random.chance(theirs));
    return choices;
}

/// Mine with the choices; that the edit applies and can be undone is required.
Job resolved(const WalkMerge& merge, const std::vector<bool>& choices) {
    Job job = merge.mine;
    if (const auto edit = resolve(merge, choices)) {
        const Applied applied = apply(job, *edit);
        REQUIRE(applied);
        Job back = job;
        REQUIRE(apply(back, *applied.inverse));
        REQUIRE(back == merge.mine);
    }
    REQUIRE_FALSE(fault_of(job));
    return job;
}

Job resolved(const Job& mine, const Job& theirs, double take_theirs) {
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.refusal == MergeRefusal::none);
    return resolved(merge, std::vector<bool>(merge.conflicts.size(), take_theirs > 0.5));
}

/// What a mark of one side says is set: nothing where it is neither ticked nor typed.
std::optional<double> says(const Job& side, const Job& other, const WalkMark& mark) {
    if (mark.real || !mark.done) return mark.real;
    const bool plans = mark.head == 0 || find_head(side, mark.head) != nullptr;
    return planned_value(plans ? side : other, mark.head, mark.field);
}

/// Whether a mark of one side says in the joined job what it said before.
bool is_kept(const Job& side, const Job& other, const WalkMark& mark, const Job& both,
             const WalkMark& joined) {
    const auto said = says(side, other, mark);
    // Ticked as planned where nobody has the plan any more: nothing of a value to keep.
    return joined.done == mark.done && ((mark.done && !said) || says(both, both, joined) == said);
}

/// No mark of either side disappears, and none says what neither side said.
void check_marks(const Job& mine, const Job& theirs, const Job& both) {
    std::size_t found = 0;
    for (const WalkMark& joined : both.walk) {
        const WalkMark* my = mark_of(mine, joined.head, joined.field);
        const WalkMark* their = mark_of(theirs, joined.head, joined.field);
        REQUIRE((my != nullptr || their != nullptr));
        const bool as_mine = my != nullptr && is_kept(mine, theirs, *my, both, joined);
        const bool as_theirs = their != nullptr && is_kept(theirs, mine, *their, both, joined);
        REQUIRE((as_mine || as_theirs));
        found += (my != nullptr ? 1U : 0U) + (their != nullptr ? 1U : 0U);
    }
    REQUIRE(found == mine.walk.size() + theirs.walk.size());
}

/// Marks that were chosen say what their side said.
void check_choices(const WalkMerge& merge, const std::vector<bool>& choices, const Job& both) {
    for (std::size_t i = 0; i < merge.conflicts.size(); ++i) {
        const MergeConflict& conflict = merge.conflicts[i];
        if (conflict.kind != MergeKind::mark) continue;
        const WalkMark* joined = mark_of(both, conflict.head, conflict.field);
        REQUIRE(joined != nullptr);
        REQUIRE(joined->done == (choices[i] ? conflict.theirs_done : conflict.mine_done));
        REQUIRE(joined->stamp == (choices[i] ? conflict.theirs_stamp : conflict.mine_stamp));
        REQUIRE(says(both, both, *joined) == (choices[i] ? conflict.theirs : conflict.mine));
    }
}

/// Ticks, and counts and stoppages up to those that were chosen against.
void check_record(const WalkMerge& merge, const Job& both) {
    const auto chosen = [&](MergeKind kind) {
        return static_cast<std::size_t>(
            std::count_if(merge.conflicts.begin(), merge.conflicts.end(),
                          [&](const MergeConflict& one) { return one.kind == kind; }));
    };
    for (const Job* side : {&merge.mine, &merge.theirs}) {
        for (const CheckTick& tick : side->record.ticks) {
            REQUIRE(std::any_of(both.record.ticks.begin(), both.record.ticks.end(),
                                [&](const CheckTick& other) { return other.item == tick.item; }));
        }
        std::size_t missing = 0;
        for (const PieceCount& count : side->record.counts) {
            const auto& in = both.record.counts;
            missing += std::find(in.begin(), in.end(), count) == in.end() ? 1U : 0U;
        }
        REQUIRE(missing <= chosen(MergeKind::count));
        missing = 0;
        for (const Stoppage& stop : side->record.stoppages) {
            const auto& in = both.record.stoppages;
            missing += std::find(in.begin(), in.end(), stop) == in.end() ? 1U : 0U;
        }
        REQUIRE(missing <= chosen(MergeKind::stoppage));
    }
}

/// Somebody's third: every third head, and moments that are nobody else's.
Job third_of(Random& random, Job job, int which) {
    for (std::size_t i = static_cast<std::size_t>(which); i < job.heads.size(); i += 3) {
        for (const Field field : walk_fields(job, job.heads[i].id)) {
            const Stamp stamp = sample::likely_stamp(random);
            const HeadId head = job.heads[i].id;
            if (random.chance(0.3)) {
                const double value = sample::one_of_three(random, field);
                REQUIRE(apply(job, {really_set(job, head, field, value, stamp)}));
            } else if (random.chance(0.6)) {
                REQUIRE(apply(job, {tick(job, head, field, stamp)}));
            }
        }
    }
    const Stamp own{10'000 + which, "cy"};
    job.record.counts.push_back({10.0 * which, 0.0, own});
    job.record.ticks.push_back({static_cast<std::uint32_t>(100 + random.whole(0, 3)), own});
    job.height_readings.push_back({1, job.heads.front().id, 0.0, 0.0, 1.0 + which});
    return job;
}

} // namespace

TEST_CASE("No mark of either side is lost, whatever is chosen", "[walk_merge]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int tried = 0;
    int merged = 0;
    int kinds[6] = {};
    // Of few cases a rare kind of conflict may be missing: then on, until each has been met.
    const auto all_met = [&kinds] {
        return std::find(std::begin(kinds), std::end(kinds), 0) == std::end(kinds);
    };
    for (; tried < cases || (tried < 20 * cases && !all_met()); ++tried) {
        CAPTURE(tried);
        const Job common = common_job(random);
        const Job mine = worked_on(random, common);
        const Job theirs = worked_on(random, common);
        const WalkMerge merge = merge_walks(mine, theirs);
        if (merge.refusal != MergeRefusal::none) {
            // Only heads that came or went can stand in the way.
            REQUIRE((merge.refusal == MergeRefusal::station_taken ||
                     merge.refusal == MergeRefusal::other_station ||
                     merge.refusal == MergeRefusal::no_common_heads));
            continue;
        }
        ++merged;
        for (const MergeConflict& conflict : merge.conflicts)
            ++kinds[static_cast<std::size_t>(conflict.kind)];
        REQUIRE(merge.edit == resolve(merge, {}));
        for (const double theirs_share : {0.0, 0.5, 1.0}) {
            const std::vector<bool> choices = choices_for(random, merge, theirs_share);
            const Job both = resolved(merge, choices);
            check_marks(mine, theirs, both);
            check_choices(merge, choices, both);
            check_record(merge, both);
        }
    }
    CHECK(merged > tried / 2);
    for (const int kind : kinds)
        CHECK(kind > 0);
}

TEST_CASE("It doesn't matter who begins: all of theirs is all of mine the other way round",
          "[walk_merge]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int without_conflict = 0;
    for (int i = 0; i < cases; ++i) {
        CAPTURE(i);
        const Job common = common_job(random);
        const Job mine = worked_on(random, common);
        const Job theirs = random.chance(0.8) ? worked_on(random, common) : common;
        const WalkMerge merge = merge_walks(mine, theirs);
        const WalkMerge back = merge_walks(theirs, mine);
        REQUIRE((merge.refusal == MergeRefusal::none) == (back.refusal == MergeRefusal::none));
        if (merge.refusal != MergeRefusal::none) continue;
        REQUIRE(merge.conflicts.size() == back.conflicts.size());
        REQUIRE(resolved(mine, theirs, 1.0) == resolved(theirs, mine, 0.0));
        REQUIRE(resolved(mine, theirs, 0.0) == resolved(theirs, mine, 1.0));
        if (!merge.conflicts.empty()) continue;
        ++without_conflict;
        REQUIRE(resolved(mine, theirs, 0.0) == resolved(theirs, mine, 0.0));
    }
    CHECK(without_conflict > 0);
}

TEST_CASE("Put together twice is put together once", "[walk_merge]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    for (int i = 0; i < cases; ++i) {
        CAPTURE(i);
        const Job common = common_job(random);
        const Job mine = worked_on(random, common);
        const Job theirs = worked_on(random, common);
        const WalkMerge merge = merge_walks(mine, theirs);
        if (merge.refusal != MergeRefusal::none) continue;
        const WalkMerge again = merge_walks(resolved(mine, theirs, 0.0), theirs);
        REQUIRE(again.conflicts.size() == merge.conflicts.size());
        REQUIRE_FALSE(again.edit);
        const WalkMerge settled = merge_walks(resolved(mine, theirs, 1.0), theirs);
        REQUIRE(settled.conflicts.empty());
        REQUIRE_FALSE(settled.edit);
        const WalkMerge alike = merge_walks(mine, mine);
        REQUIRE(alike.conflicts.empty());
        REQUIRE_FALSE(alike.edit);
    }
}

TEST_CASE("Three people's thirds come together in any order", "[walk_merge]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    for (int i = 0; i < cases; ++i) {
        CAPTURE(i);
        Job common = common_job(random);
        common.walk.clear();
        common.record.ticks.clear();
        const Job a = third_of(random, common, 0);
        const Job b = third_of(random, common, 1);
        const Job c = third_of(random, common, 2);
        const WalkMerge first = merge_walks(a, b);
        REQUIRE(first.conflicts.empty());
        const Job ab_c = resolved(resolved(a, b, 0.0), c, 0.0);
        REQUIRE(resolved(a, resolved(b, c, 0.0), 0.0) == ab_c);
        REQUIRE(resolved(c, resolved(b, a, 0.0), 0.0) == ab_c);
        REQUIRE(ab_c.walk.size() == a.walk.size() + b.walk.size() + c.walk.size());
        for (const Job* one : {&a, &b, &c}) {
            for (const WalkMark& mark : one->walk) {
                const WalkMark* kept = mark_of(ab_c, mark.head, mark.field);
                REQUIRE(kept != nullptr);
                REQUIRE(*kept == mark);
            }
        }
    }
}

TEST_CASE("Three people at odds: no mark disappears", "[walk_merge]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int merged = 0;
    for (int i = 0; i < cases; ++i) {
        CAPTURE(i);
        const Job common = common_job(random);
        const Job sides[] = {worked_on(random, common), worked_on(random, common),
                             worked_on(random, common)};
        const WalkMerge two = merge_walks(sides[0], sides[1]);
        if (two.refusal != MergeRefusal::none) continue;
        const WalkMerge three =
            merge_walks(resolved(two, choices_for(random, two, 0.5)), sides[2]);
        if (three.refusal != MergeRefusal::none) continue;
        ++merged;
        const Job all = resolved(three, choices_for(random, three, 0.5));
        check_marks(three.mine, three.theirs, all);
        for (const Job& side : sides) {
            for (const WalkMark& mark : side.walk)
                REQUIRE(mark_of(all, mark.head, mark.field) != nullptr);
        }
    }
    CHECK(merged > cases / 2);
}

TEST_CASE("Any two jobs of the same heads can be put together, whatever is chosen",
          "[walk_merge]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    for (int i = 0; i < 200; ++i) {
        CAPTURE(i);
        const Job mine = sample::wild_job(random, 3);
        const Job theirs = sample::wild_job(random, 3);
        const WalkMerge merge = merge_walks(mine, theirs);
        REQUIRE(merge.refusal == MergeRefusal::none);
        REQUIRE(merge.conflicts.size() > 50);
        const Job both = resolved(merge, choices_for(random, merge, 0.5));
        check_marks(mine, theirs, both);
        REQUIRE(resolved(mine, theirs, 1.0) == resolved(theirs, mine, 0.0));
    }
}
