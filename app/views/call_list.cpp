// The log of calls: by press, the press that called last first; and what begins a new one.
#include <algorithm>

#include "app/records/fault_book.h"
#include "app/views/call_view.h"
#include "app/views/day_view.h"
#include "app/views/exercise_parts.h"

namespace carriageway {

namespace {

void begin_buttons(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    exercise_text("call/title", canvas.word(Word::call_title), title_text, Role::ink, 4.0f, rows);
    rows.text(canvas.word(Word::call_hint), small_text, Role::soft_ink, 12.0f);
    exercise_button("call/begin", canvas.word(Word::call_begin),
                    say(language, Word::call_begin_copy, {model.job->name}), ButtonLook::strong,
                    BeginCall{0}, rows, true);
    for (const PressRow& press : *model.presses)
        exercise_button("call/begin/" + std::to_string(press.id),
                        say(language, Word::call_begin_press, {press.name}),
                        canvas.word(Word::call_begin_kept), ButtonLook::plain, BeginCall{press.id},
                        rows);
    rows.space(10.0f);
}

std::string symptom_text(Language language, const CallRecord& call) {
    const FaultLore& lore = fault_lore();
    const std::optional<std::size_t> symptom = find_symptom(lore.book, call.symptom);
    return symptom ? text_of(language, lore.symptoms[*symptom])
                   : std::string(word(language, Word::call_no_symptom));
}

std::string found_text(Language language, const CallRecord& call) {
    const FaultLore& lore = fault_lore();
    const std::optional<std::size_t> cause = find_cause(lore.book, call.found);
    if (!cause) return {};
    return say(language, Word::call_found, {text_of(language, lore.causes[*cause].name)});
}

std::string when_text(const Canvas& canvas, const CallRecord& call) {
    const std::string stamp = stamp_text({call.time, {}});
    return stamp.empty() ? std::string(canvas.word(Word::call_no_date)) : stamp;
}

void erase_question(const Model& model, const CallRow& row, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string name = "call/row/" + std::to_string(row.id);
    if (model.state->practice.call.erasing != row.id) {
        const std::string when = when_text(canvas, row.call);
        const std::string words = say(canvas.language(), Word::call_erase_name, {when});
        exercise_button(name + "/erase", words, {}, ButtonLook::bare, AskEraseCall{row.id}, rows);
        return;
    }
    caution_row(say(canvas.language(), Word::call_erase_ask, {when_text(canvas, row.call)}), rows);
    exercise_button(name + "/keep", canvas.word(Word::call_erase_keep), {}, ButtonLook::strong,
                    AskEraseCall{}, rows);
    exercise_button(name + "/do", canvas.word(Word::call_erase_do), {}, ButtonLook::plain,
                    EraseCall{row.id}, rows);
    rows.space(8.0f);
}

void call_row(const Model& model, const CallRow& row, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    ExerciseCard card{"call/row/" + std::to_string(row.id),
                      symptom_text(language, row.call),
                      when_text(canvas, row.call),
                      found_text(language, row.call),
                      std::string(canvas.word(outcome_word(row.call.outcome))),
                      OpenCall{row.id}};
    exercise_card(card, rows);
    erase_question(model, row, rows);
}

} // namespace

void call_list(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    begin_buttons(model, rows);
    rows.text(canvas.word(Word::call_log), title_text, Role::ink, 8.0f);
    const std::vector<CallRow>& log = model.state->practice.call.log;
    if (log.empty())
        return exercise_text("call/none", canvas.word(Word::call_log_none), small_text, Role::ink,
                             8.0f, rows);
    std::vector<std::string> presses; // each once, the one that called last first
    for (const CallRow& row : log)
        if (std::find(presses.begin(), presses.end(), row.call.press) == presses.end())
            presses.push_back(row.call.press);
    for (std::size_t i = 0; i < presses.size(); ++i) {
        const std::string& press = presses[i];
        exercise_text("call/group/" + std::to_string(i + 1),
                      press.empty() ? canvas.word(Word::call_no_press) : std::string_view(press),
                      bold_text, Role::ink, 6.0f, rows);
        for (const CallRow& row : log)
            if (row.call.press == press) call_row(model, row, rows);
        rows.space(8.0f);
    }
}

} // namespace carriageway
