#include "app/views/exercise_send.h"

#include "app/views/day_view.h"
#include "app/views/exercise_parts.h"
#include "app/views/exercise_run.h"

namespace carriageway {

namespace {

bool can_link(const Model& model) {
    return model.abilities->copy_text &&
           !(model.abilities->link_base.empty() && model.state->habits.link_base.empty());
}

} // namespace

void exercise_send(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TraineeRow& who = model.practised_by->who;
    rows.space(6.0f);
    if (who.id != 0 && model.state->practice.exercise.run->noted_for == who.id)
        exercise_text("exercise/kept",
                      say(canvas.language(), Word::exercise_result_kept, {who.name}), body_text,
                      Role::ink, 10.0f, rows);
    rows.text(canvas.word(Word::exercise_send), bold_text, Role::ink, 6.0f);
    exercise_button("exercise/save", canvas.word(Word::exercise_save), {}, ButtonLook::plain,
                    SendExercise{false, false}, rows);
    if (can_link(model))
        exercise_button("exercise/copy", canvas.word(Word::exercise_copy), {}, ButtonLook::plain,
                        SendExercise{false, true}, rows);
    rows.space(6.0f);
    rows.text(canvas.word(Word::exercise_result_send), bold_text, Role::ink, 6.0f);
    text_row(model, "exercise/sender", canvas.word(Word::result_sender),
             model.state->practice.trainee.sender, canvas.word(Word::result_sender_hint),
             EditText{TextTarget::sender}, rows);
    exercise_button("exercise/save-result", canvas.word(Word::exercise_result_save), {},
                    ButtonLook::plain, SendExercise{true, false}, rows);
    if (can_link(model))
        exercise_button("exercise/copy-result", canvas.word(Word::exercise_result_copy), {},
                        ButtonLook::plain, SendExercise{true, true}, rows);
}

} // namespace carriageway
