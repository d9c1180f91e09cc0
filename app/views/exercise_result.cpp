// The result of an exercise: the score, each line with its reason, what comes next, and the way to
// look at it once more with everything shown.
#include <algorithm>
#include <cmath>

#include "app/text/exercise_sentences.h"
#include "app/views/exercise_parts.h"
#include "app/views/exercise_send.h"
#include "app/views/exercise_view.h"

namespace carriageway {

namespace {

constexpr double good_from = 0.8, partly_from = 0.4;

struct Verdict {
    Word words;
    Role role;
};

Verdict verdict_of(double score) {
    if (points_of(score) == 100) return {Word::exercise_full, Role::fit};
    if (score >= good_from) return {Word::exercise_good, Role::fit};
    if (score >= partly_from) return {Word::exercise_partly, Role::mind};
    return {Word::exercise_poor, Role::stop};
}

/// The score in large figures over a bar of as much of the whole.
void score_card(const ExerciseRun& run, Rows& rows) {
    constexpr float pad = 16.0f, bar = 12.0f;
    Canvas& canvas = rows.canvas;
    const Verdict verdict = verdict_of(run.score);
    const std::string score = say(canvas.language(), Word::exercise_score,
                                  {std::to_string(points_of(run.score)), "100"});
    const std::string_view words = canvas.word(verdict.words);
    const float width = rows.width - 2.0f * pad;
    const float mark = canvas.type().height(title_text) * 0.8f;
    const float said = canvas.paragraph_height(width - mark - 8.0f, words, title_text);
    const float figures = canvas.paragraph_height(width, score, large_text);
    const Box box = rows.next(2.0f * pad + said + 4.0f + figures + 12.0f + bar, 14.0f);
    DrawingList& list = canvas.list();
    list.round(box, 16.0f, paint(Role::panel));
    list.ring(box, 16.0f, paint(verdict.role), 2.0f);
    float y = box.y0 + pad;
    draw_verdict(list, {box.x0 + pad + 0.5f * mark, y + 0.5f * canvas.type().height(title_text)},
                 mark, verdict.role);
    canvas.paragraph({box.x0 + pad + mark + 8.0f, y}, width - mark - 8.0f, words, title_text,
                     verdict.role, Role::panel);
    y += said + 4.0f;
    canvas.paragraph({box.x0 + pad, y}, width, score, large_text, Role::ink, Role::panel);
    const Box whole{box.x0 + pad, box.y1 - pad - bar, box.x1 - pad, box.y1 - pad};
    list.round(whole, 0.5f * bar, paint(Role::quiet));
    const float part = whole.width() * static_cast<float>(std::clamp(run.score, 0.0, 1.0));
    if (part > bar)
        list.round({whole.x0, whole.y0, whole.x0 + part, whole.y1}, 0.5f * bar,
                   paint(verdict.role));
    Thing& thing = list.thing("exercise/score", ThingRole::text, box);
    thing.label = score;
    thing.value.assign(words);
    thing.live = true;
}

/// The role and sign of a line: right, in part, wrong.
Role role_of(const MarkLine& line) {
    if (line.points < 0.0 || (line.most > 0.0 && line.points <= 0.0)) return Role::stop;
    if (line.points + 1e-9 < line.most) return Role::mind;
    return line.most > 0.0 ? Role::fit : Role::soft_ink;
}

std::string points_text(Language language, const MarkLine& line) {
    const auto signed_points = [](double share) {
        const int points = points_of(share);
        return points < 0 ? "−" + std::to_string(-points) : std::to_string(points);
    };
    if (line.points < 0.0) return signed_points(line.points);
    if (line.most <= 0.0) return {};
    return say(language, Word::exercise_points,
               {signed_points(line.points), signed_points(line.most)});
}

void mark_line(const std::string& name, const std::string& words, const MarkLine& line,
               Rows& rows) {
    constexpr float sign = 14.0f, gap = 12.0f;
    Canvas& canvas = rows.canvas;
    const std::string points = points_text(canvas.language(), line);
    const float right = points.empty() ? 0.0f : canvas.type().width(small_text, points) + 14.0f;
    const float width = rows.width - sign - gap - right;
    // Large letters leave no room beside the words: the points stand below them.
    const bool beside = width > 0.5f * rows.width;
    const float inside = beside ? width : rows.width - sign - gap;
    const float text = canvas.paragraph_height(inside, words, body_text);
    const float below = beside || points.empty() ? 0.0f : canvas.type().height(small_text) + 2.0f;
    const Box box = rows.next(text + below + 12.0f, 2.0f);
    const Role role = role_of(line);
    draw_verdict(canvas.list(),
                 {box.x0 + 0.5f * sign, box.y0 + 6.0f + 0.5f * canvas.type().height(body_text)},
                 sign, role);
    const float x = box.x0 + sign + gap;
    canvas.paragraph({x, box.y0 + 6.0f}, inside, words, body_text, Role::ink, rows.on);
    if (!points.empty()) {
        const float at = beside ? box.x1 - canvas.type().width(small_text, points) : x;
        const float y =
            beside ? box.y0 + 6.0f +
                         0.5f * (canvas.type().height(body_text) - canvas.type().height(small_text))
                   : box.y0 + 8.0f + text;
        canvas.list().text({at, y}, points, small_text, Role::soft_ink, rows.on);
    }
    canvas.reading(name, box, words, points);
}

std::string time_text(Language language, double seconds) {
    const long whole = std::lround(std::max(0.0, seconds));
    const std::string rest = std::to_string(whole % 60);
    return whole < 60 ? say(language, Word::exercise_seconds, {rest})
                      : say(language, Word::exercise_minutes, {std::to_string(whole / 60), rest});
}

void circumstances(const ExerciseRun& run, Rows& rows) {
    const Language language = rows.canvas.language();
    const auto line = [&](std::string_view name, const std::string& words, Role role) {
        exercise_text(name, words, small_text, role, 3.0f, rows);
    };
    if (run.hints_shown > 0) {
        const std::string less =
            std::to_string(points_of(run.marking.score) - points_of(run.score));
        line("exercise/hints",
             run.hints_shown == 1
                 ? say(language, Word::exercise_hints_used_one, {less})
                 : say(language, Word::exercise_hints_used,
                       {std::to_string(run.hints_shown), less}),
             Role::ink);
    }
    line("exercise/time", say(language, Word::exercise_time, {time_text(language, run.seconds)}),
         Role::ink);
    if (!run.exercise.from_job && !run.again) {
        const Word words = run.level_after > run.exercise.level   ? Word::exercise_level_rises
                           : run.level_after < run.exercise.level ? Word::exercise_level_falls
                                                                  : Word::exercise_level_stays;
        line("exercise/level", say(language, words, {std::to_string(run.level_after)}), Role::ink);
    }
    if (!run.exercise.from_job)
        line("exercise/seed",
             say(language, Word::exercise_seed, {std::to_string(run.exercise.seed)}),
             Role::soft_ink);
    rows.space(12.0f);
}

} // namespace

void exercise_result(const Model& model, Rows& rows) {
    const ExerciseRun& run = *model.state->practice.exercise.run;
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    std::string what = exercise_kind_text(language, run.exercise.kind).title;
    if (!run.exercise.from_job)
        what += " · " +
                say(language, Word::exercise_level, {std::to_string(run.exercise.level)});
    rows.text(what, bold_text, Role::ink, 8.0f);
    score_card(run, rows);
    for (std::size_t i = 0; i < run.marking.lines.size(); ++i)
        mark_line("exercise/line/" + std::to_string(i + 1),
                  mark_text(language, model.state->looks.units, run.exercise,
                            run.marking.lines[i]),
                  run.marking.lines[i], rows);
    rows.space(10.0f);
    circumstances(run, rows);
    if (!run.exercise.from_job)
        exercise_button("exercise/another", canvas.word(Word::exercise_another), {},
                        ButtonLook::strong, StartExercise{run.exercise.kind}, rows, true);
    exercise_button("exercise/repeat", canvas.word(Word::exercise_repeat), {}, ButtonLook::plain,
                    RepeatExercise{}, rows);
    exercise_button("exercise/look", canvas.word(Word::exercise_look),
                    canvas.word(Word::exercise_look_detail), ButtonLook::plain, OpenMarked{}, rows);
    exercise_button("exercise/all", canvas.word(Word::exercise_all), {}, ButtonLook::plain,
                    ShowExercises{}, rows);
    exercise_send(model, rows);
    rows.space(6.0f);
    rows.text(canvas.word(Word::exercise_own_back), small_text, Role::soft_ink);
}

} // namespace carriageway
