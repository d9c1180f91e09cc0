#include "core/call_questions.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

double plog(double share) { return share > 0.0 ? -share * std::log2(share) : 0.0; }

template <class Item> bool holds(std::span<const Item> all, const Item& one) {
    return std::find(all.begin(), all.end(), one) != all.end();
}

/// The head that a cause's number is asked of; nothing: there is none to ask of.
std::optional<HeadId> asked_head(const Ranking& ranking, const RankedCause& ranked, Field field) {
    if (info_of(field).owner != FieldOwner::head) return HeadId{0};
    const HeadId head = ranking.head != 0 ? ranking.head : ranked.head;
    if (head == 0) return std::nullopt;
    return head;
}

bool is_read(const CallQuestion& question, std::span<const NumberRead> read) {
    const std::vector<Field> fields = numbers_with(question.field);
    return std::all_of(fields.begin(), fields.end(), [&](Field field) {
        return holds(read, NumberRead{question.head, field});
    });
}

/// Expected drop in entropy of a reading that is right with a given chance (core/call_questions.h).
double bits_of_reading(const Ranking& ranking, const std::vector<std::size_t>& causes) {
    double now = 0.0;
    double behind = 0.0;
    for (const RankedCause& ranked : ranking.causes) now += plog(ranked.share);
    for (const bool so : {true, false}) {
        const auto joint = [&](const RankedCause& ranked) {
            const bool measured = holds<std::size_t>(causes, ranked.cause);
            return ranked.share * (measured == so ? reading_is_right : 1.0 - reading_is_right);
        };
        double chance = 0.0;
        for (const RankedCause& ranked : ranking.causes) chance += joint(ranked);
        if (!(chance > 0.0)) continue;
        for (const RankedCause& ranked : ranking.causes)
            behind += chance * plog(joint(ranked) / chance);
    }
    return now - behind;
}

/// Which ranked causes a test speaks of otherwise than of the rest, and that are decided by it.
std::vector<std::size_t> causes_of_test(const FaultBook& book, const Ranking& ranking,
                                        std::size_t test) {
    std::vector<std::size_t> causes;
    for (const RankedCause& ranked : ranking.causes)
        if (holds<std::size_t>(book.causes[ranked.cause].tests, test))
            causes.push_back(ranked.cause);
    return causes;
}

std::vector<CallQuestion> test_questions(const FaultBook& book, const Ranking& ranking,
                                         std::span<const std::size_t> skipped) {
    std::vector<CallQuestion> questions;
    for (const TestWorth& worth : best_tests(book, ranking)) {
        if (holds(skipped, worth.test)) continue;
        CallQuestion question;
        question.test = worth.test;
        question.bits = worth.bits;
        question.causes = causes_of_test(book, ranking, worth.test);
        questions.push_back(std::move(question));
    }
    return questions;
}

std::vector<CallQuestion> number_questions(const FaultBook& book, const Ranking& ranking,
                                           std::span<const NumberRead> read) {
    std::vector<CallQuestion> questions;
    for (const RankedCause& ranked : ranking.causes) {
        const Measure& measure = book.causes[ranked.cause].measure;
        const bool number = measure.kind == Measure::Kind::number ||
                            measure.kind == Measure::Kind::procedure;
        if (!number || measure.field >= Field::count) continue;
        const Field field = numbers_with(measure.field).front();
        const std::optional<HeadId> head = asked_head(ranking, ranked, field);
        if (!head) continue;
        const auto same = std::find_if(
            questions.begin(), questions.end(), [&](const CallQuestion& question) {
                return question.field == field && question.head == *head;
            });
        if (same != questions.end()) {
            same->causes.push_back(ranked.cause);
            continue;
        }
        CallQuestion question;
        question.kind = CallQuestion::Kind::number;
        question.head = *head;
        question.field = field;
        question.causes = {ranked.cause};
        if (!is_read(question, read)) questions.push_back(std::move(question));
    }
    for (CallQuestion& question : questions)
        question.bits = bits_of_reading(ranking, question.causes);
    return questions;
}

} // namespace

std::vector<Field> numbers_with(Field field) {
    static const std::vector<Field> sets[] = {
        {Field::operator_stop, Field::machine_stop},
        {Field::height_left, Field::height_right, Field::height_machine}};
    for (const std::vector<Field>& together : sets)
        if (std::find(together.begin(), together.end(), field) != together.end()) return together;
    return {field};
}

std::vector<CallQuestion> best_questions(const FaultBook& book, const Ranking& ranking,
                                         std::span<const NumberRead> read,
                                         std::span<const std::size_t> skipped) {
    std::vector<CallQuestion> questions = test_questions(book, ranking, skipped);
    for (CallQuestion& question : number_questions(book, ranking, read))
        if (question.bits >= least_bits) questions.push_back(std::move(question));
    std::stable_sort(questions.begin(), questions.end(),
                     [](const CallQuestion& one, const CallQuestion& other) {
                         return one.bits > other.bits;
                     });
    return questions;
}

} // namespace carriageway
