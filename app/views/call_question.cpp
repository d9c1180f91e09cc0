// The question that tells most now, large, with why it is asked; and the causes as they stand.
#include <algorithm>

#include "app/text/fault_sentences.h"
#include "app/text/sentences.h"
#include "app/views/call_view.h"
#include "app/views/chip_grid.h"
#include "app/views/day_view.h"
#include "app/views/exercise_parts.h"
#include "app/views/measure_words.h"

namespace carriageway {

namespace {

constexpr std::size_t most_named = 3;   ///< causes in why a question is asked
constexpr std::size_t most_causes = 4;  ///< that are shown: a caller waits

std::string cause_name(const CallView& view, std::size_t cause) {
    return view.text(view.lore.causes[cause].name);
}

std::string why_text(const CallView& view, const CallQuestion& question) {
    std::string names;
    const std::size_t count = std::min(question.causes.size(), most_named);
    for (std::size_t i = 0; i < count; ++i)
        names += (i == 0 ? "" : "; ") + cause_name(view, question.causes[i]);
    return say(view.language(), count == 1 ? Word::call_why_one : Word::call_why_more, {names});
}

void why_row(const CallView& view, const CallQuestion& question, Rows& rows) {
    if (question.causes.empty()) return;
    exercise_text("call/why", why_text(view, question), small_text, Role::soft_ink, 10.0f, rows);
}

void say_first(Caution caution, Rows& rows) {
    if (caution == Caution::none) return;
    rows.text(rows.canvas.word(Word::call_say_first), small_text, Role::soft_ink, 4.0f);
    caution_row(rows.canvas.word(caution_word(caution)), rows);
}

bool is_given(const CallView& view, const TestAnswer& answer) {
    const std::vector<TestAnswer>& given = view.call.notes.answers;
    return std::find(given.begin(), given.end(), answer) != given.end();
}

void answers(const CallView& view, std::size_t test, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const FaultTest& asked = view.lore.book.tests[test];
    const TestTexts& texts = view.lore.tests[test];
    const std::string name = "call/test/" + asked.id;
    std::vector<Chip> chips;
    for (std::size_t i = 0; i < asked.answers.size(); ++i)
        chips.push_back({name + "/" + asked.answers[i].id, view.text(texts.answers[i]), {},
                         is_given(view, {test, i}), AnswerCall{{test, i}}});
    chip_grid(name + "/answers", view.text(texts.question), chips,
              chip_columns(chips, 2, rows.width, canvas), rows);
}

void skip_button(std::string_view name, Word words, const CallQuestion& question, Rows& rows) {
    exercise_button(name, rows.canvas.word(words), {}, ButtonLook::bare, SkipQuestion{question},
                    rows);
}

void ask_test(const CallView& view, const CallQuestion& question, Rows& rows) {
    const FaultTest& asked = view.lore.book.tests[question.test];
    exercise_text("call/question", view.text(view.lore.tests[question.test].question),
                  {TypeSize::title, false}, Role::ink, 6.0f, rows);
    why_row(view, question, rows);
    say_first(asked.caution, rows);
    answers(view, question.test, rows);
    skip_button("call/skip", Word::call_cannot_say, question, rows);
}

void ask_number(const CallView& view, const CallQuestion& question, Rows& rows) {
    Canvas& canvas = rows.canvas;
    std::string names;
    const std::vector<Field> fields = numbers_with(question.field);
    for (const Field field : fields)
        names += (names.empty() ? "" : "; ") + std::string(canvas.word(field_word(field)));
    exercise_text("call/question", say(view.language(), Word::call_read_out, {names}),
                  {TypeSize::title, false}, Role::ink, 6.0f, rows);
    why_row(view, question, rows);
    rows.text(canvas.word(Word::call_type_it), small_text, Role::soft_ink, 8.0f);
    for (const Field field : fields) number_row(view.model, question.head, field, rows);
    skip_button("call/as-shown", Word::call_as_shown, question, rows);
    skip_button("call/skip", Word::call_cannot_say, question, rows);
}

void cause_row(const CallView& view, std::size_t rank, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const RankedCause& ranked = view.plan.ranking.causes[rank];
    const FaultCause& cause = view.lore.book.causes[ranked.cause];
    const std::string name = "call/cause/" + cause.id;
    const std::vector<std::size_t>& told = view.call.notes.told;
    const bool is_told = std::find(told.begin(), told.end(), ranked.cause) != told.end();
    exercise_text(name,
                  std::to_string(rank + 1) + ". " + cause_name(view, ranked.cause) + " · " +
                      format_share(ranked.share),
                  bold_text, Role::ink, 2.0f, rows);
    exercise_text(name + "/mend", view.text(view.lore.causes[ranked.cause].fix), body_text,
                  Role::ink, 6.0f, rows);
    exercise_tick(name + "/tell", canvas.word(Word::call_tell),
                  canvas.word(cause.fix == Fix::by_hand ? Word::call_tell_hand
                                                        : Word::call_tell_set),
                  is_told, TellFix{ranked.cause, !is_told}, rows);
    if (is_told) say_first(cause.caution, rows);
    rows.space(8.0f);
}

} // namespace

void call_question(const CallView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::call_ask), bold_text, Role::soft_ink, 4.0f);
    if (view.plan.questions.empty())
        exercise_text("call/no-question", canvas.word(Word::call_no_question), body_text, Role::ink,
                      10.0f, rows);
    else if (const CallQuestion& best = view.plan.questions.front();
             best.kind == CallQuestion::Kind::test)
        ask_test(view, best, rows);
    else ask_number(view, best, rows);
    if (view.plan.ranking.answers.empty()) return rows.space(8.0f);
    rows.text(canvas.word(Word::faults_answered), bold_text, Role::ink, 4.0f);
    for (const TestAnswer& answer : view.plan.ranking.answers) {
        rows.text(view.text(view.lore.tests[answer.test].question), small_text, Role::soft_ink,
                  4.0f);
        answers(view, answer.test, rows);
    }
    rows.space(8.0f);
}

void call_causes(const CallView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::faults_causes), title_text, Role::ink, 4.0f);
    rows.text(canvas.word(Word::faults_judged), small_text, Role::soft_ink, 10.0f);
    const std::size_t count = std::min(view.plan.ranking.causes.size(), most_causes);
    for (std::size_t rank = 0; rank < count; ++rank) cause_row(view, rank, rows);
}

} // namespace carriageway
