#include "core/fault_finding.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace carriageway {
namespace {

template <typename Entry>
std::optional<std::size_t> place_of(const std::vector<Entry>& entries, std::string_view id) {
    for (std::size_t i = 0; i < entries.size(); ++i)
        if (entries[i].id == id) return i;
    return std::nullopt;
}

/// Each condition looked up once, however many causes ask for it.
class Lookups {
  public:
    Lookups(const Job& job, const Assessment& assessment, HeadId head)
        : job_(job), assessment_(assessment), head_(head) {}

    const Sighting& of(Evidence evidence) {
        std::optional<Sighting>& kept = kept_[static_cast<std::size_t>(evidence)];
        if (!kept) kept = sighting_of(evidence, job_, assessment_, head_);
        return *kept;
    }

  private:
    const Job& job_;
    const Assessment& assessment_;
    HeadId head_;
    std::array<std::optional<Sighting>, static_cast<std::size_t>(evidence_kinds)> kept_;
};

double factor_of(const EvidenceFactor& speaks, Sight sight) {
    if (sight == Sight::seen) return speaks.seen;
    return sight == Sight::not_seen ? speaks.not_seen : 1.0;
}

/// Those to tests that are there, of two to one test the later.
std::vector<TestAnswer> answers_that_count(const FaultBook& book,
                                           std::span<const TestAnswer> answers) {
    std::vector<TestAnswer> counted;
    for (const TestAnswer& answer : answers) {
        if (answer.test >= book.tests.size()) continue;
        if (answer.answer >= book.tests[answer.test].answers.size()) continue;
        const auto before =
            std::find_if(counted.begin(), counted.end(),
                         [&](const TestAnswer& other) { return other.test == answer.test; });
        if (before == counted.end())
            counted.push_back(answer);
        else
            before->answer = answer.answer;
    }
    return counted;
}

/// How far from saying nothing, for or against.
double loudness(double factor) { return std::abs(std::log(factor)); }

RankedCause ranked_cause(const FaultBook& book, const SymptomCause& made_by, Lookups& lookups,
                         const Ranking& ranking) {
    RankedCause ranked;
    ranked.cause = made_by.cause;
    ranked.source = made_by.source;
    ranked.head = ranking.head;
    ranked.contributions.push_back({Contribution::Kind::weight, made_by.weight, {}, {}, {}});
    double strongest = 0.0;
    for (const EvidenceFactor& speaks : book.causes[made_by.cause].evidence) {
        if (speaks.evidence >= Evidence::count) continue;
        Contribution by{Contribution::Kind::evidence, 1.0, speaks.evidence,
                        lookups.of(speaks.evidence), {}};
        by.factor = factor_of(speaks, by.sighting.sight);
        const bool points = by.sighting.sight == Sight::seen && by.sighting.head != 0;
        if (points && loudness(by.factor) > strongest) {
            strongest = loudness(by.factor);
            ranked.head = by.sighting.head;
        }
        ranked.contributions.push_back(by);
    }
    for (const TestAnswer& answer : ranking.answers)
        ranked.contributions.push_back(
            {Contribution::Kind::answer,
             answer_factor(book.tests[answer.test], answer.answer, made_by.cause),
             Evidence::count,
             {},
             answer});
    ranked.score = 1.0;
    for (const Contribution& by : ranked.contributions) ranked.score *= by.factor;
    return ranked;
}

double weight_of(const FaultAnswer& answer, std::size_t cause) {
    for (const AnswerWeight& weight : answer.weights)
        if (weight.cause == cause) return weight.weight;
    return answer.others;
}

/// Chance of an answer if this cause is the true one.
double chance_of(const FaultTest& test, std::size_t answer, std::size_t cause) {
    double all = 0.0;
    for (const FaultAnswer& each : test.answers) all += weight_of(each, cause);
    return weight_of(test.answers[answer], cause) / all;
}

double plog(double share) { return share > 0.0 ? -share * std::log2(share) : 0.0; }

double entropy(const Ranking& ranking) {
    double bits = 0.0;
    for (const RankedCause& ranked : ranking.causes) bits += plog(ranked.share);
    return bits;
}

/// What is expected to be left once the test is answered.
double entropy_behind(const FaultTest& test, const Ranking& ranking) {
    double bits = 0.0;
    for (std::size_t answer = 0; answer < test.answers.size(); ++answer) {
        double chance = 0.0;
        for (const RankedCause& ranked : ranking.causes)
            chance += ranked.share * chance_of(test, answer, ranked.cause);
        if (!(chance > 0.0)) continue;
        for (const RankedCause& ranked : ranking.causes)
            bits += chance * plog(ranked.share * chance_of(test, answer, ranked.cause) / chance);
    }
    return bits;
}

bool is_answered(const Ranking& ranking, std::size_t test) {
    return std::any_of(ranking.answers.begin(), ranking.answers.end(),
                       [&](const TestAnswer& answer) { return answer.test == test; });
}

/// Whether a ranked cause is decided by it: others of the book would only distract.
bool belongs(const FaultBook& book, const Ranking& ranking, std::size_t test) {
    return std::any_of(ranking.causes.begin(), ranking.causes.end(), [&](const RankedCause& of) {
        const std::vector<std::size_t>& tests = book.causes[of.cause].tests;
        return std::find(tests.begin(), tests.end(), test) != tests.end();
    });
}

} // namespace

std::optional<std::size_t> find_symptom(const FaultBook& book, std::string_view id) {
    return place_of(book.symptoms, id);
}
std::optional<std::size_t> find_cause(const FaultBook& book, std::string_view id) {
    return place_of(book.causes, id);
}
std::optional<std::size_t> find_test(const FaultBook& book, std::string_view id) {
    return place_of(book.tests, id);
}

double answer_factor(const FaultTest& test, std::size_t answer, std::size_t cause) {
    if (answer >= test.answers.size()) return 1.0;
    return chance_of(test, answer, cause) * static_cast<double>(test.answers.size());
}

Ranking rank_causes(const FaultBook& book, std::size_t symptom, const Job& job,
                    const Assessment& assessment, HeadId head,
                    std::span<const TestAnswer> answers) {
    Ranking ranking;
    ranking.symptom = symptom;
    ranking.head = head;
    ranking.answers = answers_that_count(book, answers);
    if (symptom >= book.symptoms.size()) return ranking;
    Lookups lookups(job, assessment, head);
    double all = 0.0;
    for (const SymptomCause& made_by : book.symptoms[symptom].causes) {
        if (made_by.cause >= book.causes.size()) continue;
        ranking.causes.push_back(ranked_cause(book, made_by, lookups, ranking));
        all += ranking.causes.back().score;
    }
    for (RankedCause& ranked : ranking.causes) ranked.share = ranked.score / all;
    std::stable_sort(
        ranking.causes.begin(), ranking.causes.end(),
        [](const RankedCause& one, const RankedCause& other) { return one.score > other.score; });
    return ranking;
}

std::vector<TestWorth> best_tests(const FaultBook& book, const Ranking& ranking) {
    std::vector<TestWorth> worth;
    const double now = entropy(ranking);
    for (std::size_t test = 0; test < book.tests.size(); ++test) {
        if (is_answered(ranking, test) || !belongs(book, ranking, test)) continue;
        const double bits = now - entropy_behind(book.tests[test], ranking);
        if (bits >= least_bits) worth.push_back({test, bits});
    }
    std::stable_sort(worth.begin(), worth.end(), [](const TestWorth& one, const TestWorth& other) {
        return one.bits > other.bits;
    });
    return worth;
}

std::optional<Edit> fix_of(const FaultBook& book, const RankedCause& ranked, const Job& job,
                           const Assessment& assessment) {
    if (ranked.cause >= book.causes.size()) return std::nullopt;
    return fix_edit(book.causes[ranked.cause].fix, job, assessment, ranked.head);
}

} // namespace carriageway
