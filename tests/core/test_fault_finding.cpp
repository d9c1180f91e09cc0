// Fault finding without its data: conditions looked up in jobs made to have them, and the
// arithmetic of a small book worked by hand.
#include <cmath>
#include <string>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/fault_finding.h"
#include "tests/core/fault_samples.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Approx;

namespace {

Assessment worked(const Job& job) {
    Assessment assessment;
    assess(job, assessment);
    return assessment;
}

/// Three causes of one symptom; a test between the first and the others, one that tells nothing.
FaultBook small_book() {
    FaultBook book;
    book.sources = {{"practice", SourceKind::common_practice}};
    FaultCause slack;
    slack.id = "slack";
    slack.evidence = {{Evidence::tension_low, 8.0, 0.5}};
    slack.tests = {0};
    FaultCause narrow;
    narrow.id = "narrow";
    narrow.evidence = {{Evidence::flood_narrower, 4.0, 0.25}, {Evidence::air_noted, 3.0, 1.0}};
    narrow.tests = {1};
    narrow.fix = Fix::flood_wider;
    FaultCause other;
    other.id = "other";
    other.tests = {0};
    book.causes = {slack, narrow, other};
    book.tests = {{"meter", {{"yes", {{0, 9.0}}, 1.0}, {"no", {{0, 1.0}}, 9.0}}, Caution::none},
                  {"coin", {{"heads", {}, 2.0}, {"tails", {}, 2.0}}, Caution::none}};
    book.symptoms = {{"weak", {{0, 4.0, 0}, {1, 3.0, 0}, {2, 2.0, 0}}}};
    return book;
}

Ranking ranked(const Job& job, std::initializer_list<TestAnswer> answers = {}, HeadId head = 0) {
    const std::vector<TestAnswer> given(answers);
    return rank_causes(small_book(), 0, job, worked(job), head, given);
}

std::string first_of(const Ranking& ranking) {
    return small_book().causes[ranking.causes.front().cause].id;
}

void check_sums(const Ranking& ranking) {
    double shares = 0.0;
    for (std::size_t i = 0; i < ranking.causes.size(); ++i) {
        const RankedCause& cause = ranking.causes[i];
        double product = 1.0;
        for (const Contribution& by : cause.contributions) product *= by.factor;
        CHECK(cause.score == Approx(product).epsilon(1e-12));
        CHECK(cause.score > 0.0);
        CHECK(std::isfinite(cause.score));
        shares += cause.share;
        if (i > 0) CHECK(ranking.causes[i - 1].score >= cause.score);
    }
    CHECK(shares == Approx(1.0).epsilon(1e-9));
}

} // namespace

TEST_CASE("a faultless job shows no condition, and each condition is seen where it is made",
          "[faults]") {
    const Job good = sample::faultless_job();
    REQUIRE_FALSE(fault_of(good));
    const Assessment assessment = worked(good);
    for (int i = 0; i < evidence_kinds; ++i) {
        const auto evidence = static_cast<Evidence>(i);
        INFO(name_of(evidence));
        CHECK(sighting_of(evidence, good, assessment, 0).sight != Sight::seen);
        const Job job = sample::job_with(evidence);
        REQUIRE_FALSE(fault_of(job));
        const Sighting seen = sighting_of(evidence, job, worked(job), 0);
        CHECK(seen.sight == Sight::seen);
        if (quantity_of(evidence)) CHECK(seen.value != seen.limit);
        CHECK(evidence_named(name_of(evidence)) == evidence);
    }
    CHECK_FALSE(evidence_named("no such thing"));
    CHECK_FALSE(evidence_named(""));
}

TEST_CASE("values and limits are those of the job", "[faults]") {
    Job job = sample::job_with(Evidence::tension_low);
    Sighting sighting = sighting_of(Evidence::tension_low, job, worked(job), 0);
    CHECK(sighting.value == 12.0);
    CHECK(sighting.limit == 20.0);
    CHECK(sighting.head == 1);
    // Under the other head alone it is known not to be.
    sighting = sighting_of(Evidence::tension_low, job, worked(job), 2);
    CHECK(sighting.sight == Sight::not_seen);
    CHECK(sighting.value == 25.0);
    CHECK(sighting_of(Evidence::tension_low, job, worked(job), 77).sight == Sight::not_known);

    job = sample::job_with(Evidence::both_sensors_on);
    sighting = sighting_of(Evidence::both_sensors_on, job, worked(job), 0);
    CHECK(sighting.value == 40.0);
    CHECK(sighting.limit == 70.0); // 2·4 + 2 + 60
    // A head that stays put tells nothing of what it would cover.
    CHECK(sighting_of(Evidence::unprinted, job, worked(job), 1).sight == Sight::not_known);

    job = sample::job_with(Evidence::platen_off);
    CHECK(sighting_of(Evidence::platen_off, job, worked(job), 0).platen == 3);
    job = sample::job_with(Evidence::level_out);
    CHECK(sighting_of(Evidence::level_out, job, worked(job), 0).platen == 3);
    job = sample::job_with(Evidence::prints_on_wet);
    sighting = sighting_of(Evidence::prints_on_wet, job, worked(job), 0);
    CHECK(sighting.head == 2);
    CHECK(sighting.value == 1.0);
}

TEST_CASE("what nobody noted is not known", "[faults]") {
    Job job = sample::faultless_job();
    job.heads[1].squeegee.hardness = 0.0; // of one of two heads: of any head it isn't known
    for (Head& head : job.heads) head.squeegee.edge = BladeEdge::not_noted;
    job.heads[0].pressure.on_height_stop = true;
    job.run.dryer_temperature = 0.0;
    job.uses[2] = StationUse::open;
    const Assessment assessment = worked(job);
    for (const Evidence evidence :
         {Evidence::blade_soft, Evidence::edge_rounded, Evidence::pressure_low,
          Evidence::pressure_high, Evidence::mesh_not_held, Evidence::cure_low,
          Evidence::dwell_short, Evidence::air_noted, Evidence::set_otherwise,
          Evidence::left_unsecured, Evidence::index_scatters, Evidence::head_off,
          Evidence::level_out}) {
        INFO(name_of(evidence));
        CHECK(sighting_of(evidence, job, assessment, 0).sight == Sight::not_known);
    }
    CHECK(sighting_of(Evidence::blade_soft, job, assessment, 1).sight == Sight::not_seen);
    CHECK(sighting_of(Evidence::pressure_low, job, assessment, 2).sight == Sight::not_seen);
}

TEST_CASE("scores by hand", "[faults]") {
    // Nothing seen: 4 x 0.5, 3 x 0.25, 2.
    const Ranking good = ranked(sample::faultless_job());
    REQUIRE(good.causes.size() == 3);
    CHECK(good.causes[0].cause == 0); // as likely as "other", and earlier in the book
    CHECK(good.causes[0].score == Approx(2.0));
    CHECK(good.causes[1].cause == 2);
    CHECK(good.causes[2].score == Approx(0.75));
    CHECK(good.causes[0].share == Approx(2.0 / 4.75));
    check_sums(good);

    // Flood bar narrower: 3 x 4.
    const Ranking narrow = ranked(sample::job_with(Evidence::flood_narrower));
    CHECK(first_of(narrow) == "narrow");
    CHECK(narrow.causes[0].score == Approx(12.0));
    CHECK(narrow.causes[0].head == 1);
    const auto& contributions = narrow.causes[0].contributions;
    REQUIRE(contributions.size() == 3);
    CHECK(contributions[0].kind == Contribution::Kind::weight);
    CHECK(contributions[1].sighting.value == 340.0);
    CHECK(contributions[1].sighting.limit == 356.0);
    CHECK(contributions[2].sighting.sight == Sight::not_known);
    CHECK(contributions[2].factor == 1.0);

    // Answered yes: 2 x 9/10 for the one, 2 x 1/10 for the others.
    const Ranking yes = ranked(sample::faultless_job(), {{0, 0}});
    CHECK(yes.causes[0].score == Approx(3.6));
    CHECK(yes.causes[1].score == Approx(0.4));
    check_sums(yes);
    const Ranking no = ranked(sample::faultless_job(), {{0, 1}});
    CHECK(first_of(no) == "other");
}

TEST_CASE("answers that contradict or name nothing do no harm", "[faults]") {
    const Ranking twice = ranked(sample::faultless_job(), {{0, 0}, {0, 1}, {9, 0}, {0, 7}, {1, 1}});
    REQUIRE(twice.answers.size() == 2);
    CHECK(twice.answers[0] == TestAnswer{0, 1}); // the later counts
    CHECK(first_of(twice) == "other");
    check_sums(twice);
    const Job job = sample::faultless_job();
    CHECK(rank_causes(small_book(), 5, job, worked(job), 0, {}).causes.empty());
    CHECK(rank_causes({}, 0, job, worked(job), 0, {}).causes.empty());
    CHECK(best_tests({}, {}).empty());
}

TEST_CASE("the best test is the one that splits the ranking, by hand", "[faults]") {
    const Ranking good = ranked(sample::faultless_job());
    const std::vector<TestWorth> tests = best_tests(small_book(), good);
    // The coin tells nothing and is left out. p = 2/4.75 for the first cause.
    REQUIRE(tests.size() == 1);
    CHECK(tests[0].test == 0);
    const double p = 2.0 / 4.75;
    const double yes = 0.9 * p + 0.1 * (1.0 - p);
    const auto bits = [](double x) { return -x * std::log2(x) - (1 - x) * std::log2(1 - x); };
    // What the answer tells is its own entropy less that which the truth leaves it.
    CHECK(tests[0].bits == Approx(bits(yes) - bits(0.9)));
    CHECK(best_tests(small_book(), ranked(sample::faultless_job(), {{0, 0}})).empty());
}

TEST_CASE("fixes are accepted and do away with the condition", "[faults]") {
    const std::pair<Evidence, Fix> mended[] = {
        {Evidence::both_sensors_on, Fix::stops_advised},
        {Evidence::unprinted, Fix::stops_advised},
        {Evidence::heavy, Fix::stops_advised},
        {Evidence::wings_dig_in, Fix::wings_flat},
        {Evidence::angle_unusual, Fix::angle_usual},
        {Evidence::heights_uneven, Fix::heights_level},
        {Evidence::gap_large, Fix::gap_advised},
        {Evidence::gap_small, Fix::gap_advised},
        {Evidence::squeegee_high, Fix::pressure_holds},
        {Evidence::flood_high, Fix::flood_reaches},
        {Evidence::pressure_low, Fix::pressure_usual},
        {Evidence::pressure_high, Fix::pressure_usual},
        {Evidence::mesh_not_held, Fix::pressure_holds},
        {Evidence::flood_pressure_high, Fix::flood_pressure_usual},
        {Evidence::print_fast, Fix::print_slower},
        {Evidence::position_lost, Fix::speed_holds},
        {Evidence::blade_off_platen, Fix::blade_on_platen},
        {Evidence::flood_narrower, Fix::flood_wider},
        {Evidence::dwell_short, Fix::dwell_usual},
        {Evidence::dwell_long, Fix::dwell_usual},
        {Evidence::platen_hot, Fix::dwell_for_heat},
        {Evidence::cure_low, Fix::cure_usual},
        {Evidence::cure_high, Fix::cure_usual},
    };
    for (const auto& [evidence, fix] : mended) {
        INFO(name_of(evidence) << " by " << name_of(fix));
        Job job = sample::job_with(evidence);
        const Sighting before = sighting_of(evidence, job, worked(job), 0);
        REQUIRE(before.sight == Sight::seen);
        const std::optional<Edit> edit = fix_edit(fix, job, worked(job), before.head);
        // Hot platens are mended by the dwell only as far as the usual range goes.
        REQUIRE(edit.has_value() != (fix == Fix::dwell_for_heat && job.run.flash_dwell <= 3.0));
        if (!edit) continue;
        REQUIRE(apply(job, *edit));
        const Sighting after = sighting_of(evidence, job, worked(job), before.head);
        if (fix == Fix::dwell_for_heat)
            CHECK(after.value < before.value);
        else
            CHECK(after.sight == Sight::not_seen);
        CHECK(fix_named(name_of(fix)) == fix);
    }
    const Job good = sample::faultless_job();
    CHECK_FALSE(fix_edit(Fix::by_hand, good, worked(good), 1));
    CHECK_FALSE(fix_edit(Fix::pressure_usual, good, worked(good), 1)); // stands so already
    CHECK_FALSE(fix_edit(Fix::pressure_usual, good, worked(good), 0));
    CHECK_FALSE(fix_edit(Fix::stops_advised, good, worked(good), 77));
    CHECK_FALSE(fix_edit(Fix::count, good, worked(good), 1));
}

TEST_CASE("conditions, ranking and fixes are total on any job", "[faults]") {
    INFO("seed " << Catch::getSeed());
    sample::Random random(Catch::getSeed());
    FaultBook book = small_book();
    // One cause that every condition speaks of.
    for (int i = 0; i < evidence_kinds; ++i)
        book.causes[2].evidence.push_back({static_cast<Evidence>(i), 3.0, 0.4});
    int edits = 0;
    for (int round = 0; round < 300; ++round) {
        const bool wild = round % 2 == 0;
        const int heads = random.whole(0, 5);
        const Job job =
            wild ? sample::wild_job(random, heads) : sample::likely_job(random, heads);
        REQUIRE_FALSE(fault_of(job));
        const Assessment assessment = worked(job);
        const HeadId head = job.heads.empty() || random.chance(0.5) ? 0 : job.heads.back().id;
        const TestAnswer answers[] = {{static_cast<std::size_t>(random.whole(0, 2)),
                                       static_cast<std::size_t>(random.whole(0, 2))}};
        const Ranking ranking = rank_causes(book, 0, job, assessment, head, answers);
        REQUIRE(ranking.causes.size() == 3);
        check_sums(ranking);
        for (const TestWorth& worth : best_tests(book, ranking)) CHECK(std::isfinite(worth.bits));
        for (int fix = 0; fix < static_cast<int>(Fix::count); ++fix)
            for (const Head& each : job.heads) {
                const auto edit = fix_edit(static_cast<Fix>(fix), job, assessment, each.id);
                if (!edit) continue;
                Job after = job;
                ++edits;
                INFO(name_of(static_cast<Fix>(fix)));
                REQUIRE(apply(after, *edit));
                CHECK(after != job);
            }
    }
    CHECK(edits > 1000);
}
