// The exercises of the Practice place: what can be practised, and the stage that is reached.
#include "app/text/exercise_sentences.h"
#include "app/views/exercise_parts.h"
#include "app/views/exercise_run.h"
#include "app/views/exercise_view.h"
#include "app/views/practice_view.h"

namespace carriageway {

void exercises_part(const Model& model, Rows& rows) {
    switch (model.state->practice.exercise.stage) {
    case ExerciseStage::kinds: return exercise_kinds(model, rows);
    case ExerciseStage::own: return exercise_own(model, rows);
    case ExerciseStage::under_way: return exercise_under_way(model, rows);
    case ExerciseStage::marked: return exercise_result(model, rows);
    }
}

int exercise_level(const ExerciseState& state, ExerciseKind kind) {
    return state.record ? next_level(state.record->of(kind)) : lowest_level;
}

std::optional<double> last_score(const ExerciseState& state, ExerciseKind kind) {
    if (!state.record || state.record->of(kind).empty()) return std::nullopt;
    return state.record->of(kind).back().score;
}

void exercise_kinds(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const ExerciseState& state = model.state->practice.exercise;
    rows.text(canvas.word(Word::exercises_about), {TypeSize::body, false}, Role::ink, 12.0f);
    if (model.practised_by->who.id != 0)
        exercise_text("exercise/for", say(language, Word::exercise_for,
                                          {model.practised_by->who.name}),
                      {TypeSize::body, true}, Role::ink, 10.0f, rows);
    for (const ExerciseKind kind : exercise_kinds_in_order) {
        const ExerciseKindText text = exercise_kind_text(language, kind);
        const std::optional<double> last = last_score(state, kind);
        exercise_card(
            {"exercise/start/" + std::string(exercise_kind_name(kind)), text.title, text.about,
             last ? say(language, Word::exercise_last, {std::to_string(points_of(*last)), "100"})
                  : std::string(canvas.word(Word::exercise_never)),
             say(language, Word::exercise_level, {std::to_string(exercise_level(state, kind))}),
             StartExercise{kind}},
            rows);
    }
    rows.text(canvas.word(Word::exercise_levels_about), {TypeSize::small, false}, Role::soft_ink,
              14.0f);
    exercise_button("exercise/own", canvas.word(Word::exercise_own),
                    canvas.word(Word::exercise_own_detail), ButtonLook::plain, MakeOwnExercise{},
                    rows);
}

} // namespace carriageway
