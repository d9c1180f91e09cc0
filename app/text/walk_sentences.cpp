#include "app/text/walk_sentences.h"

#include "app/text/sentences.h"

namespace carriageway {

namespace {

Word trouble_word(MarkTrouble trouble) {
    switch (trouble) {
    case MarkTrouble::no_such_head: return Word::walk_mark_no_head;
    case MarkTrouble::out_of_range: return Word::walk_mark_out_of_range;
    case MarkTrouble::image_has_outline: return Word::walk_mark_outline;
    case MarkTrouble::stops_crossed: return Word::walk_mark_crossed;
    }
    return Word::count;
}

} // namespace

std::string walk_value(Language language, LengthUnit unit, const Ruler& ruler, Field field,
                       double value) {
    if (is_stop(field)) return format_ruler(ruler, value);
    return format_quantity(language, value, info_of(field).quantity, unit);
}

Word walk_word(Field field) {
    if (field == Field::operator_stop) return Word::operator_stop_ruler;
    if (field == Field::machine_stop) return Word::machine_stop_ruler;
    return field_word(field);
}

std::string walk_place(Language language, const Job& job, HeadId head) {
    if (const Head* found = find_head(job, head)) return head_title(language, *found);
    if (head != 0) return {};
    const bool cycle_alone = walk_fields(job, 0).size() == 1;
    return std::string(word(language, cycle_alone ? Word::walk_job_cycle : Word::walk_job));
}

std::string really_set_text(Language language, LengthUnit unit, const Job& job, HeadId head,
                            Field field) {
    const WalkMark* mark = mark_of(job, head, field);
    const std::optional<double> planned = planned_value(job, head, field);
    if (mark == nullptr || !mark->real || !planned) return {};
    const Ruler& ruler = job.press.ruler;
    return say(language, Word::walk_really_set,
               {walk_value(language, unit, ruler, field, *mark->real),
                walk_value(language, unit, ruler, field, *planned)});
}

std::string unusable_text(Language language, LengthUnit unit, const Job& job,
                          const UnusableMark& unusable) {
    const WalkMark* mark = mark_of(job, unusable.head, unusable.field);
    if (mark == nullptr || !mark->real) return {};
    return say(language, trouble_word(unusable.trouble),
               {capitalised(word(language, walk_word(unusable.field))),
                walk_value(language, unit, job.press.ruler, unusable.field, *mark->real)});
}

std::string walk_progress_text(Language language, const Job& job) {
    const WalkProgress all = progress_of(job);
    const std::string done = std::to_string(all.done), of = std::to_string(all.of);
    if (all.finished()) return say(language, Word::walk_finished, {of});
    if (all.done == 0) return std::string(word(language, Word::walk_none));
    const HeadId next = next_unfinished(job).value_or(0);
    return say(language, Word::walk_progress_next, {done, of, walk_place(language, job, next)});
}

} // namespace carriageway
