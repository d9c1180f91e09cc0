#include "app/text/practice_sentences.h"

#include "app/text/exercise_sentences.h"
#include "app/text/walk_sentences.h"

namespace carriageway {

namespace {

Word reason_word(MarkReason reason) {
    switch (reason) {
    case MarkReason::fault_missed: return Word::mistake_fault_missed;
    case MarkReason::not_a_fault: return Word::mistake_not_a_fault;
    case MarkReason::head_not_fit: return Word::mistake_head_not_fit;
    case MarkReason::stroke_long: return Word::mistake_stroke_long;
    case MarkReason::moves_more: return Word::mistake_moves_more;
    case MarkReason::number_near: return Word::mistake_number_near;
    case MarkReason::number_wrong: return Word::mistake_number_wrong;
    case MarkReason::dial_other_way: return Word::mistake_dial_other_way;
    case MarkReason::dial_missed: return Word::mistake_dial_missed;
    case MarkReason::dial_not_needed: return Word::mistake_dial_not_needed;
    case MarkReason::line_not_set: return Word::mistake_line_not_set;
    case MarkReason::head_disturbed: return Word::mistake_head_disturbed;
    case MarkReason::wishes_broken: return Word::mistake_wishes_broken;
    case MarkReason::placed_worse: return Word::mistake_placed_worse;
    default: break; // what went right is no mistake
    }
    return Word::mistake_not_answered;
}

} // namespace

std::string topic_text(Language language, PracticeTopic topic) {
    if (has_exercises(topic)) return exercise_kind_text(language, kind_of(topic)).title;
    return std::string(word(language, topic == PracticeTopic::call ? Word::topic_call
                                                                   : Word::topic_fault_tests));
}

std::string mistake_text(Language language, const Mistake& mistake) {
    const Word key = reason_word(mistake.reason);
    if (mistake.finding) return say(language, key, {word(language, claim_word(*mistake.finding))});
    if (mistake.field)
        return say(language, key, {capitalised(word(language, walk_word(*mistake.field)))});
    return std::string(word(language, key));
}

std::string next_reason_text(Language language, const NextTopic& next, const TopicDone& done) {
    switch (next.reason) {
    case NextReason::never_tried: return std::string(word(language, Word::next_never_tried));
    case NextReason::not_managed:
        return say(language, Word::next_not_managed,
                   {std::to_string(points_of(done.mean_of_last))});
    case NextReason::long_ago:
        return say(language, Word::next_long_ago, {std::to_string(next.days)});
    case NextReason::low_level: break;
    }
    return say(language, Word::next_low_level, {std::to_string(done.level)});
}

} // namespace carriageway
