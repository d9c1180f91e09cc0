// A trainer makes an exercise out of the job that is open: a head, and what is to be set wrong.
#include "app/text/exercise_sentences.h"
#include "app/views/chip_grid.h"
#include "app/views/exercise_parts.h"
#include "app/views/exercise_view.h"
#include "core/exercise_break.h"

namespace carriageway {

namespace {

void heads(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::exercise_own_head), title_text, Role::ink, 6.0f);
    std::vector<Chip> chips;
    for (const Head& head : model.job->heads)
        chips.push_back({"exercise/own/head/" + std::to_string(head.station),
                         head_name(model, head),
                         {},
                         head.id == model.state->practice.exercise.own_head,
                         ChooseOwnHead{head.id}});
    chip_grid("exercise/own/heads", canvas.word(Word::exercise_own_head), chips,
              chip_columns(chips, 3, rows.width, canvas), rows);
    rows.space(12.0f);
}

std::string fault_list(Language language, const Breaking& breaking) {
    std::string list;
    for (const FaultClaim& fault : breaking.faults) {
        if (!list.empty()) list += " · ";
        list += word(language, claim_word(fault.kind));
    }
    return list;
}

void breakings(const Model& model, HeadId head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::exercise_own_break), title_text, Role::ink, 8.0f);
    const std::vector<Breaking> all = breakings_of(*model.job, head);
    for (std::size_t i = 0; i < all.size(); ++i)
        exercise_card({"exercise/own/break/" + std::to_string(i + 1),
                       std::string(canvas.word(breaking_word(all[i].kind))),
                       fault_list(canvas.language(), all[i]),
                       {},
                       {},
                       BreakHead{i}},
                      rows);
    if (all.empty())
        exercise_text("exercise/own/none", canvas.word(Word::exercise_own_none), body_text,
                      Role::ink, 8.0f, rows);
}

} // namespace

void exercise_own(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::exercise_own_about), body_text, Role::ink, 12.0f);
    const HeadId chosen = model.state->practice.exercise.own_head;
    if (model.job->heads.empty()) {
        exercise_text("exercise/own/none", canvas.word(Word::exercise_own_no_heads), body_text,
                      Role::ink, 12.0f, rows);
    } else if (!faults_of(*model.job).empty()) {
        exercise_text("exercise/own/not-right", canvas.word(Word::exercise_own_not_right),
                      body_text, Role::ink, 10.0f, rows);
        exercise_button("exercise/own/press", canvas.word(Word::place_press), {},
                        ButtonLook::strong, GoTo{Place::press}, rows);
    } else {
        heads(model, rows);
        if (find_head(*model.job, chosen)) breakings(model, chosen, rows);
    }
    rows.space(6.0f);
    exercise_button("exercise/all", canvas.word(Word::exercise_all), {}, ButtonLook::plain,
                    ShowExercises{}, rows);
}

} // namespace carriageway
