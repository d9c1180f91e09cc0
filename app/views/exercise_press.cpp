// The press during an exercise: what is asked, what can be ticked, a sheet to set by, and the
// settings with no word on which of them is right.
#include <algorithm>

#include "app/text/exercise_sentences.h"
#include "app/text/sentences.h"
#include "app/text/station_sentences.h"
#include "app/text/walk_sentences.h"
#include "app/views/exercise_parts.h"
#include "app/views/exercise_view.h"
#include "app/views/register_view.h"
#include "core/job_placement.h"

namespace carriageway {

namespace {

const ExerciseRun& run_of(const Model& model) { return *model.state->practice.exercise.run; }

/// One thing or several, in the words for it.
std::string counted(Language language, std::size_t count, Word none, Word one, Word more) {
    if (count == 0) return std::string(word(language, none));
    if (count == 1) return std::string(word(language, one));
    return say(language, more, {std::to_string(count)});
}

/// What can be claimed: of the head that is looked at, or of all, head by head.
void claims(const Model& model, Rows& rows) {
    const ExerciseRun& run = run_of(model);
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::exercise_claims), title_text, Role::ink, 8.0f);
    const std::vector<FaultClaim>& ticked = run.answer.faults;
    for (const Head& head : model.job->heads) {
        if (model.state->head != 0 && head.id != model.state->head) continue;
        bool named = model.state->head != 0;
        for (std::size_t i = 0; i < run.exercise.choices.size(); ++i) {
            const FaultClaim& claim = run.exercise.choices[i];
            if (claim.head != head.id) continue;
            if (!named) rows.text(head_name(model, head), bold_text, Role::ink, 5.0f);
            named = true;
            exercise_tick("exercise/claim/" + std::to_string(i + 1),
                          canvas.word(claim_word(claim.kind)), {},
                          std::find(ticked.begin(), ticked.end(), claim) != ticked.end(),
                          TickClaim{i}, rows);
        }
        rows.space(6.0f);
    }
}

/// The sheet as it lies beside the press: what every line says, and what stands there now.
void sheet(const Model& model, Rows& rows) {
    const ExerciseRun& run = run_of(model);
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    rows.text(canvas.word(Word::exercise_sheet), title_text, Role::ink, 6.0f);
    HeadId before = 0;
    for (std::size_t i = 0; i < run.exercise.sheet.size(); ++i) {
        const SheetLine& line = run.exercise.sheet[i];
        if (line.head != before && line.head != 0)
            rows.text(exercise_head_text(language, run.exercise, line.head), bold_text, Role::ink,
                      3.0f);
        before = line.head;
        const std::string label = capitalised(canvas.word(walk_word(line.field)));
        const std::string value = walk_value(language, model.state->looks.units,
                                             model.job->press.ruler, line.field, line.value);
        const float top = rows.y;
        const float width = rows.width - canvas.type().width(bold_text, value) - 14.0f;
        const bool beside =
            width > std::max(0.45f * rows.width, canvas.widest_word(label, small_text));
        const float label_height =
            canvas.paragraph_height(beside ? width : rows.width, label, small_text);
        const Box box = rows.next(std::max(canvas.type().height(bold_text), label_height) +
                                      (beside ? 0.0f : canvas.type().height(bold_text)) + 10.0f,
                                  0.0f);
        const Vec rule[] = {{box.x0, box.y1}, {box.x1, box.y1}};
        canvas.list().line(rule, 2, paint(Role::edge), 1.0f);
        canvas.paragraph({box.x0, top + 5.0f}, beside ? width : rows.width, label, small_text,
                         Role::ink, rows.on);
        const float x = beside ? box.x1 - canvas.type().width(bold_text, value) : box.x0;
        const float y = beside ? top + 5.0f : top + 5.0f + label_height;
        canvas.list().text({x, y}, value, bold_text, Role::ink, rows.on);
        canvas.reading("exercise/sheet/" + std::to_string(i + 1), box, label, value);
    }
    rows.space(14.0f);
}

/// The next station on which a head may stand, `by` 1 or -1; 0: none.
int station_beside(const Job& job, int station, int by) {
    for (int next = station + by; next >= 1 && next <= job.press.stations; next += by)
        if (job.uses[static_cast<std::size_t>(next - 1)] == StationUse::open &&
            station_room(job.press, next).print_head)
            return next;
    return 0;
}

/// What the colours want, and each of them between two buttons that move it.
void stations(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const Job& job = *model.job;
    rows.text(canvas.word(Word::exercise_wishes), title_text, Role::ink, 6.0f);
    const JobPlacement asked = job_placement(job);
    const std::vector<PlacementWish> wishes = wishes_apart(asked.question);
    for (std::size_t i = 0; i < wishes.size(); ++i)
        exercise_text("exercise/wish/" + std::to_string(i + 1),
                      capitalised(wish_text(language, job, asked, wishes[i])),
                      {TypeSize::body, false}, Role::ink, 5.0f, rows);
    rows.space(8.0f);
    rows.text(canvas.word(Word::exercise_placing), title_text, Role::ink, 6.0f);
    std::vector<const Head*> heads;
    for (const Head& head : job.heads) heads.push_back(&head);
    std::sort(heads.begin(), heads.end(),
              [](const Head* a, const Head* b) { return a->id < b->id; });
    for (const Head* head : heads) {
        const std::string base = "exercise/colour/" + std::to_string(head->id);
        const auto end = [&](std::string_view name, Word label, int by) {
            const int to = station_beside(job, head->station, by);
            return StepperEnd{name, label,
                              to == 0 ? std::optional<Action>()
                                      : DoEdit{Edit{MoveHead{head->id, to}}}};
        };
        const std::string less = base + "/less", more = base + "/more";
        const std::string where =
            say(language, Word::exercise_station_of, {std::to_string(head->station)});
        stepper_row(base, head->colour.empty() ? where : head->colour + " · " + where,
                    end(less, Word::exercise_station_less, -1),
                    end(more, Word::exercise_station_more, 1), {}, rows);
    }
    rows.space(8.0f);
}

} // namespace

bool looked_at_only(const Model& model) {
    const ExerciseState& state = model.state->practice.exercise;
    return examined(state) && state.run->exercise.kind == ExerciseKind::find_fault;
}

std::string exercise_banner_words(const Model& model) {
    const ExerciseRun& run = run_of(model);
    const Language language = model.state->looks.language;
    const std::string name = exercise_kind_text(language, run.exercise.kind).title;
    const std::string done =
        run.exercise.kind == ExerciseKind::find_fault
            ? counted(language, run.answer.faults.size(), Word::exercise_ticked_none,
                      Word::exercise_ticked_one, Word::exercise_ticked)
            : counted(language, model.moves, Word::exercise_moves_none, Word::exercise_moves_one,
                      Word::exercise_moves);
    return name + " · " + done;
}

void exercise_panel(const Model& model, Rows& rows) {
    const ExerciseRun& run = run_of(model);
    Canvas& canvas = rows.canvas;
    const Head* head = find_head(*model.job, model.state->head);
    exercise_task(model, rows);
    if (run.exercise.kind == ExerciseKind::read_sheet) sheet(model, rows);
    if (run.exercise.kind == ExerciseKind::place_stations) stations(model, rows);
    if (run.exercise.kind == ExerciseKind::find_fault) claims(model, rows);
    if (run.exercise.kind != ExerciseKind::place_stations) {
        if (head) {
            rows.text(canvas.word(Word::exercise_settings), title_text, Role::ink, 8.0f);
            exercise_settings(model, *head, rows);
        } else {
            rows.text(canvas.word(Word::heads), title_text);
            head_rows(model, rows);
        }
    }
    rows.space(8.0f);
    rows.text(canvas.word(Word::caution), small_text, Role::soft_ink);
}

void exercise_waits(Rows& rows) {
    const Canvas& canvas = rows.canvas;
    exercise_text("exercise/waits", canvas.word(Word::exercise_waits), {TypeSize::body, false},
                  Role::ink, 16.0f, rows);
    exercise_button("exercise/return", canvas.word(Word::exercise_return), {}, ButtonLook::strong,
                    ReturnToExercise{}, rows, true);
}

void exercise_cover(const Model& model, const Layout& layout, Canvas& canvas) {
    DrawingList& list = canvas.list();
    const Box all{layout.compact ? model.window.x0 : layout.places.x1, model.window.y0,
                  model.window.x1, layout.compact ? layout.places.y0 : model.window.y1};
    list.round(all, 0.0f, paint(Role::paper));
    const float width = std::min(all.width() - 32.0f, 420.0f);
    const std::string_view words = canvas.word(Word::exercise_waits);
    const float text = canvas.paragraph_height(width, words, {TypeSize::body, false});
    Rows rows{canvas, all.centre().x - 0.5f * width, width,
              std::max(all.y0 + 24.0f, all.centre().y - text - 40.0f), Role::paper};
    exercise_waits(rows);
}

} // namespace carriageway
