// What an exercise asks, its hints, and the exercises that are answered in the Practice place: a
// drawing and large answers.
#include "app/drawing/side_layer.h"
#include "app/text/exercise_sentences.h"
#include "app/views/chip_grid.h"
#include "app/views/exercise_parts.h"
#include "app/views/exercise_view.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

constexpr float least_drawing = 240.0f, most_drawing = 460.0f; ///< height of a drawing, dp

/// A frame for a drawing, as high as its width asks for.
Box drawing_box(float share, Rows& rows) {
    const Box box =
        rows.next(std::clamp(share * rows.width, least_drawing, most_drawing), 12.0f);
    rows.canvas.list().round(box, 14.0f, paint(Role::paper));
    rows.canvas.list().ring(box, 14.0f, paint(Role::edge), 1.2f);
    return box;
}

/// The screen from above with its marks, and no word on what to turn.
void marks_drawing(const Exercise& exercise, Rows& rows) {
    const Head* head = find_head(exercise.job, exercise.head);
    if (!head || head->rounds.empty()) return;
    Canvas& canvas = rows.canvas;
    HeadRegistration result = register_head(exercise.job.press, head->rounds, 0,
                                            exercise.job.registration.tolerance);
    result.advice.reset();
    const Box box = drawing_box(0.95f, rows);
    RegisterDrawing drawing;
    drawing.job = &exercise.job;
    drawing.head = head;
    drawing.round = &head->rounds.front();
    drawing.result = &result;
    drawing.language = canvas.language();
    drawing.view = box.inset(6.0f);
    drawing.scale = register_scale(exercise.job.press, *head, drawing.view, canvas.type());
    const std::string words =
        say(canvas.language(), Word::reg_exaggerated,
            {std::to_string(exaggeration(head->rounds.front(), drawing.scale))});
    drawing.view.y1 -= caption(drawing.view, words, canvas);
    drawing.scale = register_scale(exercise.job.press, *head, drawing.view, canvas.type());
    Thing& thing = canvas.list().thing("exercise/drawing", ThingRole::image, box);
    thing.label.assign(canvas.word(Word::reg_drawing));
    draw_register(drawing, canvas.list());
}

/// What each mark shows, in words: the drawing alone is no use to whoever doesn't see it.
void mark_rows(const Model& model, const Exercise& exercise, Rows& rows) {
    const Head* head = find_head(exercise.job, exercise.head);
    if (!head || head->rounds.empty()) return;
    const Language language = rows.canvas.language();
    const std::vector<MarkReading>& marks = head->rounds.front().marks;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const std::string number = std::to_string(i + 1);
        exercise_text("exercise/mark/" + number,
                      say(language, Word::reg_mark, {number}) + ": " +
                          offset_text(language, model.state->looks.units, error_of(marks[i])),
                      small_text, Role::ink, 3.0f, rows);
    }
    rows.space(10.0f);
}

int way_of(const ExerciseAnswer& answer, std::size_t adjuster) {
    for (const DialTurn& turn : answer.turns)
        if (turn.adjuster == adjuster) return turn.clockwise ? 1 : -1;
    return 0;
}

/// Each adjuster with what it does, and the two ways to turn it; a second tap leaves it alone.
void dials(const ExerciseRun& run, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const std::vector<Adjuster>& adjusters = run.exercise.job.press.adjusters;
    for (std::size_t i = 0; i < adjusters.size(); ++i) {
        const std::string base = "exercise/dial/" + std::to_string(i + 1);
        const std::string name = adjuster_text(language, adjusters[i]);
        rows.text(name, bold_text, Role::ink, 1.0f);
        exercise_text(base + "/effect", adjuster_effect_text(language, adjusters[i]), small_text,
                      Role::soft_ink, 5.0f, rows);
        const int chosen = way_of(run.answer, i);
        const auto choice = [&](const std::string& thing, Word words, int way) {
            return Chip{thing, std::string(canvas.word(words)), {}, chosen == way,
                        ChooseTurn{i, chosen == way ? 0 : way}};
        };
        const std::vector<Chip> chips{
            choice(base + "/counter", Word::reg_counter_clockwise, -1),
            choice(base + "/clockwise", Word::reg_clockwise, 1)};
        chip_grid(base, name, chips, chip_columns(chips, 2, rows.width, canvas), rows);
        rows.space(10.0f);
    }
}

/// A head from the side, as it is set.
void side_drawing(const Model& model, const Exercise& exercise, Rows& rows) {
    const Head* head = find_head(exercise.job, exercise.head);
    if (!head) return;
    Canvas& canvas = rows.canvas;
    Assessment assessment;
    assess(exercise.job, assessment);
    SideInput input;
    input.job = &exercise.job;
    input.head = head;
    input.assessed = find_head(assessment, head->id);
    input.language = canvas.language();
    input.units = model.state->looks.units;
    input.box = rows.next(side_view_height(rows.width), 4.0f);
    canvas.list().thing("exercise/drawing", ThingRole::image, input.box).label.assign(
        canvas.word(Word::section_side));
    SideThings things;
    draw_side_view(input, canvas.list(), things);
    rows.text(say(canvas.language(), Word::side_exaggerated, {std::to_string(things.exaggeration)}),
              small_text, Role::soft_ink, 10.0f);
}

void numbers(const Model& model, const ExerciseRun& run, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::exercise_numbers), bold_text, Role::ink, 6.0f);
    std::vector<Chip> chips;
    const std::vector<double>& offered = run.exercise.numbers;
    for (std::size_t i = 0; i < offered.size(); ++i)
        chips.push_back({"exercise/number/" + std::to_string(i + 1),
                         exercise_number_text(canvas.language(), model.state->looks.units,
                                              run.exercise, offered[i]),
                         {},
                         run.answer.number == offered[i],
                         ChooseAnswer{i}});
    chip_grid("exercise/number", canvas.word(Word::exercise_numbers), chips,
              chip_columns(chips, 3, rows.width, canvas), rows);
    rows.space(10.0f);
}

} // namespace

void exercise_task(const Model& model, Rows& rows) {
    const ExerciseRun& run = *model.state->practice.exercise.run;
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const LengthUnit units = model.state->looks.units;
    exercise_asked(exercise_kind_text(language, run.exercise.kind).title,
                   exercise_asked_text(language, units, run.exercise), rows);
    for (std::size_t i = 0; i < run.hints_shown; ++i)
        exercise_hint_row("exercise/hint/" + std::to_string(i + 1),
                          hint_text(language, units, run.exercise, run.hints[i]), rows);
    if (run.hints_shown < run.hints.size())
        exercise_button("exercise/hint",
                        canvas.word(run.hints_shown == 0 ? Word::exercise_hint
                                                         : Word::exercise_hint_more),
                        say(language, Word::exercise_hint_costs,
                            {std::to_string(points_of(hint_share))}),
                        ButtonLook::plain, ShowHint{}, rows);
    else
        rows.text(canvas.word(Word::exercise_hints_gone), small_text, Role::soft_ink, 6.0f);
    rows.space(8.0f);
}

void exercise_end_buttons(Rows& rows) {
    const Canvas& canvas = rows.canvas;
    exercise_button("exercise/mark", canvas.word(Word::exercise_mark), {}, ButtonLook::strong,
                    MarkExercise{}, rows, true);
    exercise_button("exercise/leave", canvas.word(Word::exercise_leave), {}, ButtonLook::plain,
                    LeaveExercise{}, rows);
}

void exercise_under_way(const Model& model, Rows& rows) {
    const ExerciseState& state = model.state->practice.exercise;
    const ExerciseRun& run = *state.run;
    Canvas& canvas = rows.canvas;
    exercise_task(model, rows);
    switch (run.exercise.kind) {
    case ExerciseKind::which_dial:
        marks_drawing(run.exercise, rows);
        mark_rows(model, run.exercise, rows);
        dials(run, rows);
        break;
    case ExerciseKind::trainee_angle:
        side_drawing(model, run.exercise, rows);
        numbers(model, run, rows);
        break;
    case ExerciseKind::judge_gap: numbers(model, run, rows); break;
    default:
        exercise_button("exercise/return", canvas.word(Word::exercise_return), {},
                        ButtonLook::strong, ReturnToExercise{}, rows, true);
        exercise_button("exercise/leave", canvas.word(Word::exercise_leave), {}, ButtonLook::plain,
                        LeaveExercise{}, rows);
        return;
    }
    exercise_end_buttons(rows);
}

} // namespace carriageway
