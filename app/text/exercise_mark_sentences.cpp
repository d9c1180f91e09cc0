// What a marking and a hint say.
#include <algorithm>

#include "app/text/exercise_sentences.h"
#include "app/text/sentences.h"
#include "app/text/walk_sentences.h"

namespace carriageway {

namespace {

Word part_word(Part part) {
    switch (part) {
    case Part::stops: return Word::hint_part_stops;
    case Part::squeegee: return Word::hint_part_squeegee;
    case Part::flood: return Word::hint_part_flood;
    case Part::image: return Word::hint_part_image;
    case Part::screen: return Word::hint_part_screen;
    case Part::platen: return Word::hint_part_platen;
    case Part::sensors: break;
    }
    return Word::hint_part_sensors;
}

/// One thing or several of them, in the sentence for it.
std::string counted(Language language, double count, Word one, Word more) {
    const std::string number = format_number(count, 0);
    return number == "1" ? std::string(word(language, one)) : say(language, more, {number});
}

/// What both kinds of sentences need of an exercise.
struct Teller {
    Language language;
    LengthUnit unit;
    const Exercise& exercise;

    std::string head(HeadId id) const { return exercise_head_text(language, exercise, id); }
    std::string claim(FindingKind kind) const {
        return std::string(word(language, claim_word(kind)));
    }
    std::string field(Field of) const { return std::string(word(language, walk_word(of))); }
    std::string value(Field of, double number) const {
        return walk_value(language, unit, exercise.job.press.ruler, of, number);
    }
    std::string number(double chosen) const {
        return exercise_number_text(language, unit, exercise, chosen);
    }
    std::string length(double mm) const { return format_length(mm, unit); }
    std::string adjuster(std::size_t index) const {
        const std::vector<Adjuster>& all = exercise.job.press.adjusters;
        return index < all.size() ? adjuster_text(language, all[index]) : std::string();
    }
    /// Which way an adjuster is to be turned.
    std::string way(std::size_t index) const {
        for (const DialTurn& turn : exercise.solution.turns)
            if (turn.adjuster == index)
                return std::string(word(language, turn_word(turn.clockwise)));
        return {};
    }
    std::string stop(Side side) const {
        return std::string(word(language, side == Side::machine_side ? Word::machine_stop
                                                                     : Word::operator_stop));
    }
};

std::string fault_line(const Teller& t, const MarkLine& line) {
    const Word words = line.reason == MarkReason::fault_found    ? Word::mark_fault_found
                       : line.reason == MarkReason::fault_missed ? Word::mark_fault_missed
                                                                 : Word::mark_not_a_fault;
    return say(t.language, words, {t.head(line.head), t.claim(line.finding)});
}

std::string moves_line(const Teller& t, const MarkLine& line) {
    const std::string made = format_number(line.value, 0), fewest = format_number(line.limit, 0);
    const bool one = made == "1";
    if (line.reason == MarkReason::moves_fewest)
        return counted(t.language, line.value, Word::mark_moves_fewest_one,
                       Word::mark_moves_fewest);
    if (one) return say(t.language, Word::mark_moves_more_one, {fewest});
    return say(t.language, Word::mark_moves_more, {made, fewest});
}

std::string dial_line(const Teller& t, const MarkLine& line) {
    const std::string name = t.adjuster(line.adjuster);
    switch (line.reason) {
    case MarkReason::dial_right:
        return say(t.language, Word::mark_dial_right, {name, t.way(line.adjuster)});
    case MarkReason::dial_other_way:
        return say(t.language, Word::mark_dial_other_way, {name, t.way(line.adjuster)});
    case MarkReason::dial_missed:
        return say(t.language, Word::mark_dial_missed, {name, t.way(line.adjuster)});
    default: return say(t.language, Word::mark_dial_not_needed, {name});
    }
}

std::string sheet_line(const Teller& t, const MarkLine& line) {
    const std::string head = t.head(line.head), field = t.field(line.field);
    if (line.reason == MarkReason::line_set)
        return say(t.language, Word::mark_line_set,
                   {head, field, t.value(line.field, line.value)});
    if (line.reason == MarkReason::line_not_set)
        return say(t.language, Word::mark_line_not_set,
                   {head, field, t.value(line.field, line.value), t.value(line.field, line.limit)});
    return say(t.language, Word::mark_head_disturbed, {head, field});
}

std::string number_line(const Teller& t, const MarkLine& line) {
    const std::string chosen = t.number(line.value), right = t.number(line.limit);
    if (line.reason == MarkReason::number_right)
        return say(t.language, Word::mark_number_right, {right});
    return say(t.language,
               line.reason == MarkReason::number_near ? Word::mark_number_near
                                                      : Word::mark_number_wrong,
               {chosen, right});
}

std::string how_many(const Teller& t, double count) {
    switch (t.exercise.kind) {
    case ExerciseKind::which_dial:
        return counted(t.language, count, Word::hint_dials_one, Word::hint_dials);
    case ExerciseKind::read_sheet:
        return counted(t.language, count, Word::hint_lines_one, Word::hint_lines);
    default: return counted(t.language, count, Word::hint_faults_one, Word::hint_faults);
    }
}

} // namespace

std::string mark_text(Language language, LengthUnit unit, const Exercise& exercise,
                      const MarkLine& line) {
    const Teller t{language, unit, exercise};
    const auto plain = [&](Word key) { return std::string(word(language, key)); };
    switch (line.reason) {
    case MarkReason::fault_found:
    case MarkReason::fault_missed:
    case MarkReason::not_a_fault: return fault_line(t, line);
    case MarkReason::head_fit: return say(language, Word::mark_head_fit, {t.head(line.head)});
    case MarkReason::head_not_fit:
        return say(language, Word::mark_head_not_fit, {t.head(line.head), t.claim(line.finding)});
    case MarkReason::stroke_short:
        return say(language, Word::mark_stroke_short, {t.length(line.value)});
    case MarkReason::stroke_long:
        return say(language, Word::mark_stroke_long, {t.length(line.value), t.length(line.limit)});
    case MarkReason::moves_fewest:
    case MarkReason::moves_more: return moves_line(t, line);
    case MarkReason::number_right:
    case MarkReason::number_near:
    case MarkReason::number_wrong: return number_line(t, line);
    case MarkReason::dial_right:
    case MarkReason::dial_other_way:
    case MarkReason::dial_missed:
    case MarkReason::dial_not_needed: return dial_line(t, line);
    case MarkReason::line_set:
    case MarkReason::line_not_set:
    case MarkReason::head_disturbed: return sheet_line(t, line);
    case MarkReason::wishes_met: return plain(Word::mark_wishes_met);
    case MarkReason::wishes_broken:
        return counted(language, line.value, Word::mark_wishes_broken_one,
                       Word::mark_wishes_broken);
    case MarkReason::placed_best: return plain(Word::mark_placed_best);
    case MarkReason::placed_worse:
        return say(language, Word::mark_placed_worse,
                   {format_number(line.value, 0), format_number(line.limit, 0)});
    case MarkReason::not_answered: break;
    }
    return plain(Word::mark_not_answered);
}

std::string hint_text(Language language, LengthUnit unit, const Exercise& exercise,
                      const Hint& hint) {
    const Teller t{language, unit, exercise};
    const std::string head = t.head(hint.head);
    switch (hint.kind) {
    case HintKind::how_many: return how_many(t, hint.value);
    case HintKind::where: return say(language, Word::hint_where, {head});
    case HintKind::which_part:
        return say(language, Word::hint_part, {head, word(language, part_word(hint.part))});
    case HintKind::which_end: return say(language, Word::hint_end, {head, t.stop(hint.side)});
    case HintKind::which_way:
        return say(language, Word::hint_way,
                   {head, t.stop(hint.side),
                    word(language, hint.value < 0.0 ? Word::toward_operator
                                                    : Word::toward_machine)});
    case HintKind::limit_value: return say(language, Word::hint_limit, {t.length(hint.value)});
    case HintKind::not_this: return say(language, Word::hint_not_this, {t.number(hint.value)});
    case HintKind::which_dial:
        return say(language, Word::hint_dial, {t.adjuster(hint.adjuster)});
    case HintKind::which_line: return say(language, Word::hint_line, {head, t.field(hint.field)});
    case HintKind::first_place: break;
    }
    return say(language, Word::hint_first_place, {head, format_number(hint.value, 0)});
}

} // namespace carriageway
