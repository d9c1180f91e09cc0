// The people who practise on this device: who it is now, one person or the group, and a result that
// was sent here.
#include <cmath>

#include "app/text/exercise_sentences.h"
#include "app/text/practice_sentences.h"
#include "app/views/chip_grid.h"
#include "app/views/day_view.h"
#include "app/views/exercise_parts.h"
#include "app/views/practice_view.h"
#include "app/views/trainee_view.h"

namespace carriageway {

namespace {

constexpr int most_columns = 3;

void choose_person(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TraineeId chosen = model.practised_by->who.id;
    rows.text(canvas.word(Word::trainee_who), title_text, Role::ink, 8.0f);
    std::vector<Chip> chips{{"trainee/choose/0", std::string(canvas.word(Word::trainee_nobody)), {},
                             chosen == 0, ChooseTrainee{0}}};
    for (const TraineeSummary& person : *model.group)
        chips.push_back({"trainee/choose/" + std::to_string(person.who.id), person.who.name, {},
                         person.who.id == chosen, ChooseTrainee{person.who.id}});
    chip_grid("trainee/choose", canvas.word(Word::trainee_who), chips,
              chip_columns(chips, most_columns, rows.width, canvas), rows);
    rows.space(8.0f);
    text_row(model, "trainee/add", canvas.word(Word::trainee_add), {},
             canvas.word(Word::trainee_add_hint), EditText{TextTarget::new_trainee}, rows);
    exercise_text("trainee/stays", canvas.word(Word::trainee_stays), small_text, Role::soft_ink,
                  14.0f, rows);
}

std::string minutes_and_points(const Canvas& canvas, const Attempt& attempt) {
    const Language language = canvas.language();
    return say(language, Word::exercise_level, {std::to_string(attempt.level)}) + " · " +
           say(language, Word::exercise_score,
               {std::to_string(points_of(attempt.score)), "100"});
}

} // namespace

std::string person_name(const Canvas& canvas, const TraineeRow& who) {
    return who.id == 0 ? std::string(canvas.word(Word::trainee_nobody)) : who.name;
}

Word sign_word(SignState state) {
    switch (state) {
    case SignState::shown: return Word::sign_shown;
    case SignState::helped: return Word::sign_helped;
    case SignState::alone:
    case SignState::count: break;
    }
    return Word::sign_alone;
}

void sign_mark(DrawingList& list, Vec centre, float size, std::optional<SignState> state) {
    const float radius = 0.5f * size;
    if (!state) {
        const Vec dash[] = {{centre.x - 0.6f * radius, centre.y},
                            {centre.x + 0.6f * radius, centre.y}};
        return list.line(dash, 2, paint(Role::soft_ink), 2.0f);
    }
    const Role role = *state == SignState::shown    ? Role::soft_ink
                      : *state == SignState::helped ? Role::mind
                                                    : Role::fit;
    if (*state == SignState::alone) return list.disc(centre, radius, paint(role));
    list.circle(centre, radius - 1.0f, paint(role), 2.0f);
    if (*state == SignState::shown) return;
    // The lower half, as of a glass that is half full.
    constexpr int corners = 13;
    Vec half[corners];
    for (int i = 0; i < corners; ++i) {
        const float angle = 3.14159265f * static_cast<float>(i) / static_cast<float>(corners - 1);
        half[i] = {centre.x + (radius - 1.0f) * std::cos(angle),
                   centre.y + (radius - 1.0f) * std::sin(angle)};
    }
    list.fill(half, corners, paint(role));
}

void arrived_result(const Model& model, Rows& rows) {
    const std::optional<ExerciseResult>& arrived = model.state->practice.trainee.arrived;
    if (!arrived) return;
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    rows.text(canvas.word(Word::result_arrived), title_text, Role::ink, 6.0f);
    exercise_text("result/topic", topic_text(language, arrived->attempt.topic), bold_text,
                  Role::ink, 2.0f, rows);
    exercise_text("result/score", minutes_and_points(canvas, arrived->attempt), body_text,
                  Role::ink, 2.0f, rows);
    exercise_text("result/of",
                  arrived->name.empty() ? std::string(canvas.word(Word::result_of_nobody))
                                        : say(language, Word::result_of, {arrived->name}),
                  body_text, Role::ink, 6.0f, rows);
    rows.text(canvas.word(Word::result_unproved), small_text, Role::soft_ink, 10.0f);
    const TraineeRow& who = model.practised_by->who;
    if (who.id == 0)
        exercise_text("result/whose", canvas.word(Word::result_note_nobody), body_text, Role::ink,
                      8.0f, rows);
    else
        exercise_button("result/note", say(language, Word::result_note, {who.name}), {},
                        ButtonLook::strong, NoteResult{}, rows);
    exercise_button("result/drop", canvas.word(Word::result_drop), {}, ButtonLook::plain,
                    DropResult{}, rows);
    rows.space(12.0f);
}

void trainees_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const bool group = model.state->practice.trainee.group;
    arrived_result(model, rows);
    const auto choice = [&](std::string_view name, Word words, bool shows_group) {
        return Choice{name, std::string(canvas.word(words)), canvas.action(ShowGroup{shows_group}),
                      group == shows_group};
    };
    choices("trainee/view", canvas.word(Word::trainee_view),
            {choice("trainee/one", Word::trainee_one, false),
             choice("trainee/group", Word::trainee_all, true)},
            rows);
    if (group) return trainee_group(model, rows);
    choose_person(model, rows);
    trainee_person(model, rows);
}

} // namespace carriageway
