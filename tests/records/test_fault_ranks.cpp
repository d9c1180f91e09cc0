// The program's own knowledge of faults: with its evidence in the job a cause ranks first, without
// it the typical one stays in sight, and the test that decides a cause brings it first.
#include <algorithm>
#include <cmath>
#include <iomanip>
#include <iostream>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/records/fault_book.h"
#include "app/text/fault_sentences.h"
#include "tests/core/fault_samples.h"
#include "tests/records/random_job.h"

using namespace carriageway;

namespace {

Ranking ranked(std::size_t symptom, const Job& job, std::span<const TestAnswer> answers = {}) {
    Assessment assessment;
    assess(job, assessment);
    return rank_causes(fault_lore().book, symptom, job, assessment, 0, answers);
}

/// From 1; 0: it isn't among them.
std::size_t rank_of(const Ranking& ranking, std::size_t cause) {
    for (std::size_t i = 0; i < ranking.causes.size(); ++i)
        if (ranking.causes[i].cause == cause) return i + 1;
    return 0;
}

/// The condition that speaks loudest for a cause; none: nothing in a job does.
std::optional<Evidence> loudest_of(const FaultCause& cause) {
    std::optional<Evidence> loudest;
    double most = 1.0;
    for (const EvidenceFactor& speaks : cause.evidence) {
        if (speaks.seen <= most) continue;
        most = speaks.seen;
        loudest = speaks.evidence;
    }
    return loudest;
}

/// The answer of a test that speaks most for a cause.
TestAnswer answer_for(const FaultBook& book, std::size_t test, std::size_t cause) {
    TestAnswer best{test, 0};
    for (std::size_t a = 1; a < book.tests[test].answers.size(); ++a)
        if (answer_factor(book.tests[test], a, cause) >
            answer_factor(book.tests[test], best.answer, cause))
            best.answer = a;
    return best;
}

} // namespace

TEST_CASE("each cause ranks first with its evidence, the typical one in sight without", "[faults]") {
    const FaultBook& book = fault_lore().book;
    std::cout << "\nsymptom            cause               evidence                 with  without\n";
    for (std::size_t s = 0; s < book.symptoms.size(); ++s) {
        const Symptom& symptom = book.symptoms[s];
        const Ranking without = ranked(s, sample::faultless_job());
        const Ranking unknown = ranked(s, Job{}); // no head: nothing is known of anything
        bool typical = true; // the first that a job can speak of
        for (const SymptomCause& made_by : symptom.causes) {
            const FaultCause& cause = book.causes[made_by.cause];
            const std::optional<Evidence> evidence = loudest_of(cause);
            const std::size_t before = rank_of(without, made_by.cause);
            const std::size_t with =
                evidence ? rank_of(ranked(s, sample::job_with(*evidence)), made_by.cause) : 0;
            std::cout << std::left << std::setw(19) << symptom.id << std::setw(20) << cause.id
                      << std::setw(25) << (evidence ? name_of(*evidence) : "(tests only)")
                      << std::setw(6) << (with == 0 ? "-" : std::to_string(with)) << before << '\n';
            INFO(symptom.id << ": " << cause.id);
            CHECK(before > 0);
            if (!evidence) continue;
            CHECK(with == 1);
            CHECK(with <= before);
            if (typical) {
                CHECK(before <= 3);
                CHECK(rank_of(unknown, made_by.cause) <= 3);
            }
            typical = false;
        }
        INFO(symptom.id);
        CHECK_FALSE(typical); // a job can speak of one at least
    }
    std::cout << std::flush;
}

TEST_CASE("the deciding test's answer brings its cause first", "[faults]") {
    const FaultBook& book = fault_lore().book;
    const Job job = sample::faultless_job();
    for (std::size_t s = 0; s < book.symptoms.size(); ++s)
        for (const SymptomCause& made_by : book.symptoms[s].causes) {
            const FaultCause& cause = book.causes[made_by.cause];
            INFO(book.symptoms[s].id << ": " << cause.id);
            const TestAnswer answer = answer_for(book, cause.tests.front(), made_by.cause);
            CHECK(answer_factor(book.tests[answer.test], answer.answer, made_by.cause) > 1.5);
            const Ranking after = ranked(s, job, std::span(&answer, 1));
            CHECK(rank_of(after, made_by.cause) == 1);
        }
}

TEST_CASE("following the best test finds any cause", "[faults]") {
    // Whoever answers as the true cause would have it gets there, whatever it is.
    const FaultBook& book = fault_lore().book;
    const Job job = sample::faultless_job();
    std::size_t most = 0;
    for (std::size_t s = 0; s < book.symptoms.size(); ++s)
        for (const SymptomCause& made_by : book.symptoms[s].causes) {
            std::vector<TestAnswer> answers;
            Ranking ranking = ranked(s, job);
            while (true) {
                const std::vector<TestWorth> tests = best_tests(book, ranking);
                const bool sure = ranking.causes.front().share > 0.75;
                if (tests.empty() || (sure && ranking.causes.front().cause == made_by.cause)) break;
                answers.push_back(answer_for(book, tests.front().test, made_by.cause));
                ranking = ranked(s, job, answers);
            }
            INFO(book.symptoms[s].id << ": " << book.causes[made_by.cause].id << ", "
                                     << answers.size() << " tests");
            CHECK(ranking.causes.front().cause == made_by.cause);
            most = std::max(most, answers.size());
        }
    CHECK(most <= 6);
}

TEST_CASE("the whole book ranks any job, any answers", "[faults]") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed());
    const FaultBook& book = fault_lore().book;
    for (int round = 0; round < 60; ++round) {
        Job job = random.job();
        REQUIRE_FALSE(fault_of(job));
        // A colour may be called "{0}"; what is looked for is a place of ours that stayed empty.
        for (Head& head : job.heads) std::replace(head.colour.begin(), head.colour.end(), '{', '(');
        std::vector<TestAnswer> answers;
        for (std::size_t t = 0; t < book.tests.size(); ++t)
            if (random.coin()) answers.push_back({t, random.below(5)});
        const std::size_t symptom = random.below(book.symptoms.size());
        const Ranking ranking = ranked(symptom, job, answers);
        REQUIRE(ranking.causes.size() == book.symptoms[symptom].causes.size());
        double shares = 0.0;
        for (const RankedCause& cause : ranking.causes) {
            double product = 1.0;
            for (const Contribution& by : cause.contributions) {
                product *= by.factor;
                for (const Language language : {Language::english, Language::spanish}) {
                    const std::string text = evidence_text(language, LengthUnit::mm, job, by);
                    CHECK(text.empty() == (by.kind != Contribution::Kind::evidence));
                    CHECK(text.find('{') == text.npos);
                    CHECK_FALSE(factor_text(language, by).empty());
                }
            }
            CHECK(cause.score == Catch::Approx(product));
            shares += cause.share;
        }
        CHECK(shares == Catch::Approx(1.0));
    }
}

TEST_CASE("evidence in words", "[faults]") {
    const auto text = [](Evidence evidence, Language language, LengthUnit unit = LengthUnit::mm) {
        const Job job = sample::job_with(evidence);
        Assessment assessment;
        assess(job, assessment);
        Contribution by{Contribution::Kind::evidence, 9.0, evidence, {}, {}};
        by.sighting = sighting_of(evidence, job, assessment, 0);
        return evidence_text(language, unit, job, by);
    };
    CHECK(text(Evidence::tension_low, Language::english) ==
          "Head 2 · white. Mesh slack: 12 N/cm, and 20 N/cm is the limit.");
    CHECK(text(Evidence::tension_low, Language::spanish) ==
          "Cabezal 2 · white. Malla floja: 12 N/cm, y 20 N/cm es el límite.");
    CHECK(text(Evidence::flood_unwinged, Language::english) ==
          "Head 2 · white. Flood bar without wings.");
    Job named = sample::job_with(Evidence::tension_low);
    named.heads[0].colour = "{1} {0}"; // stays as it was typed
    Assessment of_named;
    assess(named, of_named);
    Contribution slack{Contribution::Kind::evidence, 9.0, Evidence::tension_low, {}, {}};
    slack.sighting = sighting_of(Evidence::tension_low, named, of_named, 0);
    CHECK(evidence_text(Language::english, LengthUnit::mm, named, slack).starts_with(
        "Head 2 · {1} {0}. Mesh slack: "));
    CHECK(text(Evidence::air_noted, Language::english) == "Press stood still for air: 12 min.");
    CHECK(text(Evidence::prints_on_wet, Language::english) ==
          "Head 5 · navy. Prints after others without a flash between: one head.");
    CHECK(text(Evidence::set_otherwise, Language::spanish) ==
          "Números anotados en la ronda con otro ajuste: un número.");
    CHECK(text(Evidence::flood_narrower, Language::english, LengthUnit::inch) ==
          "Head 2 · white. Flood bar narrower than the squeegee: 13.39 in, and 14.02 in is the "
          "limit.");
    for (int i = 0; i < evidence_kinds; ++i)
        for (const Language language : {Language::english, Language::spanish}) {
            const std::string said = text(static_cast<Evidence>(i), language);
            INFO(said);
            CHECK(said.find('{') == said.npos);
            CHECK(said.find('?') == said.npos);
            CHECK(said.size() > 10);
        }
    Contribution by{Contribution::Kind::evidence, 1.0, Evidence::cure_low, {}, {}};
    CHECK(evidence_text(Language::english, LengthUnit::mm, {}, by) ==
          "Not known: Dryer noted below where ink cures.");
    CHECK(factor_text(Language::english, by) == "× 1: says nothing");
    by.factor = 0.4;
    CHECK(factor_text(Language::spanish, by) == "× 0.4: habla en contra");
    CHECK(cause_share_text(0.9718) == "97 %");
    CHECK(cause_share_text(0.29) == "29 %");
    CHECK(cause_share_text(0.0123) == "1.2 %");
}
