// Calls: what is asked, what is read out, and what to say, from the top of the page down.
#include "app/views/call_view.h"
#include "app/views/chip_grid.h"
#include "app/views/day_view.h"
#include "app/views/exercise_parts.h"
#include "app/views/practice_view.h"

namespace carriageway {

namespace {

void symptom_choice(const CallView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::call_what), title_text, Role::ink, 8.0f);
    const FaultBook& book = view.lore.book;
    for (std::size_t i = 0; i < book.symptoms.size(); ++i)
        wide_button("call/symptom/" + book.symptoms[i].id, view.text(view.lore.symptoms[i]),
                    ButtonLook::plain, ChooseCallSymptom{i}, rows);
}

void how_ended(const CallView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto choice = [&](std::string_view name, CallOutcome outcome) {
        return Choice{name, std::string(canvas.word(outcome_word(outcome))),
                      canvas.action(EndCallAs{outcome}), view.call.record.outcome == outcome};
    };
    rows.text(canvas.word(Word::call_ended), bold_text, Role::ink, 6.0f);
    choices("call/outcome", canvas.word(Word::call_ended),
            {choice("call/outcome/open", CallOutcome::open),
             choice("call/outcome/solved", CallOutcome::solved),
             choice("call/outcome/not-solved", CallOutcome::not_solved),
             choice("call/outcome/passed-on", CallOutcome::passed_on)},
            rows);
}

/// The call's job must be the one that is open: numbers typed into another would change that.
void waiting_call(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const CallState& call = model.state->practice.call;
    exercise_text("call/elsewhere", canvas.word(Word::call_elsewhere), bold_text, Role::ink, 8.0f,
                  rows);
    exercise_button("call/back", canvas.word(Word::call_back_to_job), {}, ButtonLook::strong,
                    OpenCall{call.id}, rows, true);
    exercise_button("call/leave", canvas.word(Word::call_leave), {}, ButtonLook::plain, LeaveCall{},
                    rows);
}

void open_call(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const CallState& call = model.state->practice.call;
    const FaultLore& lore = fault_lore();
    const CallView view{model, lore, call,
                        call_plan(lore, call, *model.job, *model.assessment)};
    exercise_button("call/leave", canvas.word(Word::call_leave), {}, ButtonLook::bare, LeaveCall{},
                    rows);
    text_row(model, "call/press", canvas.word(Word::call_press), call.record.press,
             canvas.word(Word::call_press_hint), EditText{TextTarget::call_press}, rows);
    if (call.symptom) {
        call_symptom(view, rows);
        call_question(view, rows);
        call_numbers(view, rows);
        call_causes(view, rows);
        call_read_back(view, rows);
        rows.space(8.0f);
    } else {
        symptom_choice(view, rows);
    }
    text_row(model, "call/notes", canvas.word(Word::call_notes), call.notes.text,
             canvas.word(Word::call_notes_hint), EditText{TextTarget::call_notes}, rows);
    how_ended(view, rows);
    rows.text(canvas.word(Word::caution), small_text, Role::soft_ink);
}

} // namespace

Word outcome_word(CallOutcome outcome) {
    switch (outcome) {
    case CallOutcome::solved: return Word::call_solved;
    case CallOutcome::not_solved: return Word::call_not_solved;
    case CallOutcome::passed_on: return Word::call_passed_on;
    case CallOutcome::open:
    case CallOutcome::count: break;
    }
    return Word::call_open;
}

void call_symptom(const CallView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    exercise_text("call/symptom", view.text(view.lore.symptoms[*view.call.symptom]), title_text,
                  Role::ink, 8.0f, rows);
    exercise_button("call/another", canvas.word(Word::faults_another), {}, ButtonLook::plain,
                    ChooseCallSymptom{}, rows);
    rows.text(canvas.word(Word::faults_which_head), bold_text, Role::ink, 6.0f);
    std::vector<Chip> chips{{"call/head/0", std::string(canvas.word(Word::faults_not_sure)), {},
                             view.call.notes.head == 0, ChooseCallHead{0}}};
    for (const Head& head : view.model.job->heads)
        chips.push_back({"call/head/" + std::to_string(head.station), std::to_string(head.station),
                         head.colour, view.call.notes.head == head.id, ChooseCallHead{head.id}});
    chip_grid("call/head", canvas.word(Word::faults_which_head), chips,
              chip_columns(chips, 5, rows.width, canvas), rows);
    rows.space(10.0f);
}

void call_part(const Model& model, Rows& rows) {
    const CallState& call = model.state->practice.call;
    reply_rows(model, rows);
    if (call.id == 0) call_list(model, rows);
    else if (!call_is_at_hand(call, model.current)) waiting_call(model, rows);
    else open_call(model, rows);
}

} // namespace carriageway
