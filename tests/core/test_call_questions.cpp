// Which question comes next in a call: worked by hand on a small book.
#include <algorithm>
#include <cmath>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <random>

#include "core/call_questions.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Approx;

namespace {

constexpr std::size_t stop_cause = 0, air_cause = 1, cure_cause = 2;

/// Three causes, equally usual: one by the stops, one told by a test alone, one by a number of the
/// job.
FaultBook small_book() {
    FaultBook book;
    book.sources = {{"practice", SourceKind::common_practice}};
    FaultCause stop;
    stop.id = "stop";
    stop.measure = {Measure::Kind::number, Field::machine_stop};
    FaultCause air;
    air.id = "air";
    air.tests = {0};
    FaultCause cure;
    cure.id = "cure";
    cure.measure = {Measure::Kind::number, Field::dryer_temperature};
    book.causes = {stop, air, cure};
    book.tests = {{"gauge",
                   {{"drops", {{air_cause, 9.0}}, 1.0}, {"holds", {{air_cause, 1.0}}, 9.0}},
                   Caution::none}};
    book.symptoms = {{"weak", {{stop_cause, 1.0, 0}, {air_cause, 1.0, 0}, {cure_cause, 1.0, 0}}}};
    return book;
}

Ranking ranking_of(const FaultBook& book, const Job& job, HeadId head) {
    Assessment assessment;
    assess(job, assessment);
    return rank_causes(book, 0, job, assessment, head, {});
}

double plog(double share) { return -share * std::log2(share); }

const CallQuestion* question_for(const std::vector<CallQuestion>& all, Field field) {
    for (const CallQuestion& one : all)
        if (one.kind == CallQuestion::Kind::number && one.field == field) return &one;
    return nullptr;
}

} // namespace

TEST_CASE("Stops and heights are read out together, other numbers alone") {
    for (const Field field : {Field::operator_stop, Field::machine_stop})
        CHECK(numbers_with(field) ==
              std::vector<Field>{Field::operator_stop, Field::machine_stop});
    CHECK(numbers_with(Field::height_machine).size() == 3);
    CHECK(numbers_with(Field::print_speed) == std::vector<Field>{Field::print_speed});
}

TEST_CASE("A question is worth the entropy that its answer is expected to take away") {
    const FaultBook book = small_book();
    const Job job = sample::one_head();
    const HeadId head = job.heads.front().id;
    const Ranking ranking = ranking_of(book, job, head);
    const std::vector<CallQuestion> all = best_questions(book, ranking, {}, {});
    REQUIRE(all.size() == 3);
    // Three causes of a third each. The gauge is right 9 times of 10, a number 4 of 5: "so" comes
    // with 1/3·r + 2/3·(1 − r), and so on (Bayes).
    const auto left = [](double right) {
        const double so = right / 3.0 + 2.0 * (1.0 - right) / 3.0, not_so = 1.0 - so;
        const double hit = right / 3.0 / so, other = (1.0 - right) / 3.0 / so;
        const double miss = (1.0 - right) / 3.0 / not_so, rest = right / 3.0 / not_so;
        return so * (plog(hit) + 2.0 * plog(other)) + not_so * (plog(miss) + 2.0 * plog(rest));
    };
    CHECK(all[0].kind == CallQuestion::Kind::test);
    CHECK(all[0].bits == Approx(std::log2(3.0) - left(0.9)));
    CHECK(all[0].causes == std::vector<std::size_t>{air_cause});
    CHECK(all[1].kind == CallQuestion::Kind::number);
    CHECK(all[1].bits == Approx(std::log2(3.0) - left(reading_is_right)));
    CHECK(all[2].bits == Approx(all[1].bits));
}

TEST_CASE("What was read, answered or skipped isn't asked again") {
    const FaultBook book = small_book();
    const Job job = sample::one_head();
    const HeadId head = job.heads.front().id;
    const Ranking ranking = ranking_of(book, job, head);
    std::vector<NumberRead> read{{head, Field::machine_stop}};
    CHECK(question_for(best_questions(book, ranking, read, {}), Field::operator_stop));
    read.push_back({head, Field::operator_stop}); // now both
    CHECK_FALSE(question_for(best_questions(book, ranking, read, {}), Field::operator_stop));
    CHECK(question_for(best_questions(book, ranking, read, {}), Field::dryer_temperature));
    read.push_back({0, Field::dryer_temperature});
    const std::vector<std::size_t> skipped{0};
    CHECK(best_questions(book, ranking, read, skipped).empty());
    // The same stops of another head are another question.
    read = {{head + 1, Field::operator_stop}, {head + 1, Field::machine_stop}};
    CHECK(question_for(best_questions(book, ranking, read, {}), Field::operator_stop));
}

TEST_CASE("Numbers of a head are not asked while nobody knows of which") {
    const FaultBook book = small_book();
    const Ranking ranking = ranking_of(book, sample::one_head(), 0);
    const std::vector<CallQuestion> all = best_questions(book, ranking, {}, {});
    CHECK_FALSE(question_for(all, Field::operator_stop));
    const CallQuestion* cure = question_for(all, Field::dryer_temperature);
    REQUIRE(cure);
    CHECK(cure->head == 0);
}

TEST_CASE("A question never adds to what isn't known, and the order is that of its worth") {
    std::mt19937 random(Catch::getSeed());
    INFO("seed " << Catch::getSeed());
    std::uniform_real_distribution<double> weight(0.05, 40.0);
    const Job job = sample::one_head();
    for (int round = 0; round < 200; ++round) {
        FaultBook book = small_book();
        for (SymptomCause& cause : book.symptoms[0].causes) cause.weight = weight(random);
        for (FaultAnswer& answer : book.tests[0].answers) {
            answer.others = weight(random);
            for (AnswerWeight& one : answer.weights) one.weight = weight(random);
        }
        const Ranking ranking = ranking_of(book, job, job.heads.front().id);
        double now = 0.0;
        for (const RankedCause& ranked : ranking.causes) now += plog(ranked.share);
        const std::vector<CallQuestion> all = best_questions(book, ranking, {}, {});
        for (const CallQuestion& one : all) {
            CHECK(one.bits >= least_bits);
            CHECK(one.bits <= now + 1e-9);
            CHECK_FALSE(one.causes.empty());
        }
        CHECK(std::is_sorted(all.begin(), all.end(),
                             [](const CallQuestion& a, const CallQuestion& b) {
                                 return a.bits > b.bits;
                             }));
    }
}
