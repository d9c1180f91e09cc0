// From what is seen or heard to its cause: causes ranked by the evidence in the job and by the
// answers to tests, and the test that would tell most.
//
// A cause's score is its weight under the symptom, times a factor for each condition that the job
// speaks to, times one for each answered test: Bayes with every condition taken as independent
// (naive Bayes). Weights and factors are judged, not counted, so shares are no probabilities of
// anything: the order is a judgement. The knowledge is data (assets/faults); texts stay there.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/caution.h"
#include "core/fault_evidence.h"
#include "core/fault_fix.h"
#include "core/source.h"

namespace carriageway {

/// How one condition speaks of a cause: by which factor it is likelier where the condition is seen
/// (above 0) and where it is known not to be. Where it isn't known: 1.
struct EvidenceFactor {
    Evidence evidence = Evidence::both_sensors_on;
    double seen = 1.0;
    double not_seen = 1.0;
};

/// What to measure, to be sure of a cause.
struct Measure {
    enum class Kind {
        none,
        number,       ///< a number of the head or the job: `field`
        procedure,    ///< a number of the press, by its procedure (procedures.h): `field`
        marks,        ///< registration marks under the head
        platen_marks, ///< the same on several platens over several turns
        heights,      ///< heights under the screens, for levelling
    } kind = Kind::none;
    Field field = Field::count;
};

/// One cause. Places are those in FaultBook's lists.
struct FaultCause {
    std::string id;
    std::vector<EvidenceFactor> evidence; ///< each condition once
    std::vector<std::size_t> tests;       ///< that decide it, the best first; at least one
    Measure measure;
    Fix fix = Fix::by_hand;
    Caution caution = Caution::none;
    std::size_t source = 0; ///< who says so
};

/// How often, beside the other answers, a test is answered so if some cause is the true one.
struct AnswerWeight {
    std::size_t cause = 0;
    double weight = 1.0; ///< above 0
};

struct FaultAnswer {
    std::string id;
    std::vector<AnswerWeight> weights; ///< of the causes it speaks of, each once
    double others = 1.0;               ///< of all the others, above 0
};

/// A question that a person answers by trying or looking.
struct FaultTest {
    std::string id;
    std::vector<FaultAnswer> answers; ///< at least two; exactly one of them is true
    Caution caution = Caution::none;
};

/// A cause of a symptom and how usual it is beside the others.
struct SymptomCause {
    std::size_t cause = 0;
    double weight = 1.0; ///< above 0
    std::size_t source = 0;
};

struct Symptom {
    std::string id;
    std::vector<SymptomCause> causes; ///< at least one, each once
};

struct FaultSource {
    std::string id;
    SourceKind kind = SourceKind::common_practice;
};

/// The knowledge, without its texts (app/records/fault_book.h has them, in the same order).
struct FaultBook {
    std::vector<Symptom> symptoms;
    std::vector<FaultCause> causes;
    std::vector<FaultTest> tests;
    std::vector<FaultSource> sources;
};

/// Places in the lists by id.
std::optional<std::size_t> find_symptom(const FaultBook& book, std::string_view id);
std::optional<std::size_t> find_cause(const FaultBook& book, std::string_view id);
std::optional<std::size_t> find_test(const FaultBook& book, std::string_view id);

/// An answered test.
struct TestAnswer {
    std::size_t test = 0;
    std::size_t answer = 0;
    bool operator==(const TestAnswer&) const = default;
};

/// One factor of a cause's score.
struct Contribution {
    enum class Kind { weight, evidence, answer } kind = Kind::weight;
    double factor = 1.0; ///< above 1 speaks for the cause, below against it; a weight is only a weight
    Evidence evidence = Evidence::count; ///< of evidence, and
    Sighting sighting;                   ///< what was seen; not known has factor 1
    TestAnswer answer;                   ///< of an answer
};

/// A cause as it stands in a ranking.
struct RankedCause {
    std::size_t cause = 0;
    double score = 0.0; ///< the product of all contributions, above 0
    double share = 0.0; ///< of all scores, 0 to 1
    HeadId head = 0;    ///< that its strongest evidence is of, else the one asked for, else 0
    std::size_t source = 0; ///< who says that it makes this symptom
    /// The weight first, then the evidence in the book's order, then the answers in theirs.
    std::vector<Contribution> contributions;
};

struct Ranking {
    std::size_t symptom = 0;
    HeadId head = 0;
    std::vector<RankedCause> causes; ///< the likeliest first; equal ones in the book's order
    std::vector<TestAnswer> answers; ///< those that counted: of each test the last
};

/// Ranks the causes of a symptom. `head` 0: any. `assessment` must be of the job. Answers to tests
/// that aren't there are left out; of two to one test the later counts. A symptom that isn't there:
/// no causes. Total on any job that fault_of() accepts.
Ranking rank_causes(const FaultBook& book, std::size_t symptom, const Job& job,
                    const Assessment& assessment, HeadId head, std::span<const TestAnswer> answers);

/// What a test is worth before it is made.
struct TestWorth {
    std::size_t test = 0;
    double bits = 0.0; ///< by how much the answer is expected to lessen the entropy of the shares
};

/// The tests of the ranked causes that aren't answered yet, the one first that splits the ranking
/// most: expected entropy less (Shannon 1948, "A Mathematical Theory of Communication"). Those that
/// tell nothing (below `least_bits`) are left out; equal ones in the book's order.
std::vector<TestWorth> best_tests(const FaultBook& book, const Ranking& ranking);
inline constexpr double least_bits = 1e-3;

/// How much likelier an answer makes a cause: its weight among the answers' weights for that cause,
/// times how many answers there are, so that a test that tells nothing gives 1.
double answer_factor(const FaultTest& test, std::size_t answer, std::size_t cause);

/// The fix of a ranked cause under its head: see fix_edit().
std::optional<Edit> fix_of(const FaultBook& book, const RankedCause& ranked, const Job& job,
                           const Assessment& assessment);

} // namespace carriageway
