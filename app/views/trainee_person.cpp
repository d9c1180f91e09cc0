// One person who practises: what comes next, each topic with its signatures, and the data.
#include <cmath>

#include "app/text/exercise_sentences.h"
#include "app/text/practice_sentences.h"
#include "app/views/chip_grid.h"
#include "app/views/day_view.h"
#include "app/views/exercise_parts.h"
#include "app/views/trainee_view.h"

namespace carriageway {

namespace {

constexpr double seconds_per_minute = 60.0;
constexpr SignState states[] = {SignState::shown, SignState::helped, SignState::alone};

std::string level_text(Language language, int level) {
    return say(language, Word::exercise_level, {std::to_string(level)});
}

std::string sign_text(const Canvas& canvas, std::optional<SignState> state) {
    return std::string(canvas.word(state ? sign_word(*state) : Word::sign_none));
}

/// "Level 3 · 12 exercises · mean 85 of 100 · 34 min".
std::string status_of(const Canvas& canvas, PracticeTopic topic, const TopicDone& done) {
    const Language language = canvas.language();
    if (done.attempts == 0)
        return std::string(canvas.word(has_exercises(topic) ? Word::exercise_never
                                                            : Word::topic_by_hand));
    const std::string count = std::to_string(done.attempts);
    return say(language, Word::topic_status,
               {level_text(language, done.level),
                done.attempts == 1 ? std::string(canvas.word(Word::topic_done_one))
                                   : say(language, Word::topic_done, {count}),
                std::to_string(points_of(done.mean_of_last)),
                format_number(std::ceil(done.seconds / seconds_per_minute), 0)});
}

void next_card(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const TraineeSummary& who = *model.practised_by;
    rows.text(canvas.word(Word::trainee_next), bold_text, Role::ink, 6.0f);
    const std::optional<NextTopic> next = practice_next(who.done(), model.time);
    if (!next)
        return exercise_text("trainee/next", canvas.word(Word::trainee_next_none), body_text,
                             Role::ink, 12.0f, rows);
    const TopicDone& done = who.of(next->topic).done;
    const ExerciseKind kind = kind_of(next->topic);
    exercise_card({"trainee/next", topic_text(language, next->topic),
                   exercise_kind_text(language, kind).about,
                   next_reason_text(language, *next, done),
                   level_text(language, std::max(lowest_level, done.level)), StartExercise{kind}},
                  rows);
    rows.space(8.0f);
}

void mistakes(const TopicSummary& topic, const std::string& name, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    if (topic.done.attempts == 0) return;
    if (topic.mistakes.empty())
        return exercise_text(name + "/mistakes", canvas.word(Word::topic_no_mistakes), small_text,
                             Role::ink, 8.0f, rows);
    rows.text(canvas.word(Word::topic_mistakes), small_text, Role::soft_ink, 2.0f);
    for (std::size_t i = 0; i < topic.mistakes.size(); ++i) {
        const MistakeCount& one = topic.mistakes[i];
        const std::string what = mistake_text(language, one.mistake);
        exercise_text(name + "/mistake/" + std::to_string(i + 1),
                      one.times == 1
                          ? say(language, Word::topic_mistake_one, {what})
                          : say(language, Word::topic_mistake, {what, std::to_string(one.times)}),
                      small_text, Role::ink, 3.0f, rows);
    }
    rows.space(5.0f);
}

std::string signed_text(const Canvas& canvas, const std::optional<SignOff>& sign) {
    if (!sign) return std::string(canvas.word(Word::sign_none));
    const std::string stamp = stamp_text({sign->time, sign->by});
    if (!stamp.empty()) return stamp;
    return std::string(canvas.word(Word::sign_unsigned_by));
}

void sign_buttons(const TopicSummary& topic, PracticeTopic key, const std::string& name,
                  Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::sign_heading), small_text, Role::soft_ink, 4.0f);
    std::vector<Chip> chips;
    for (const SignState state : states) {
        const std::optional<SignOff>& sign = topic.signs[static_cast<std::size_t>(state)];
        chips.push_back({name + "/" + sign_key(state), std::string(canvas.word(sign_word(state))),
                         signed_text(canvas, sign), sign.has_value(),
                         SignTopic{key, state, !sign.has_value()}});
    }
    chip_grid(name + "/signs", canvas.word(Word::sign_heading), chips,
              chip_columns(chips, 3, rows.width, canvas), rows);
}

/// What opens below a topic.
void open_topic(const Model& model, PracticeTopic topic, const std::string& name, Rows& rows) {
    const TraineeSummary& who = *model.practised_by;
    mistakes(who.of(topic), name, rows);
    if (who.who.id != 0) sign_buttons(who.of(topic), topic, name, rows);
    if (has_exercises(topic))
        exercise_button(name + "/practise", rows.canvas.word(Word::topic_practise), {},
                        ButtonLook::plain, StartExercise{kind_of(topic)}, rows);
    rows.space(10.0f);
}

void topic_row(const Model& model, PracticeTopic topic, Rows& rows) {
    constexpr float pad = 14.0f, mark = 18.0f, arrow = 18.0f, gap = 12.0f;
    Canvas& canvas = rows.canvas;
    const TopicSummary& summary = model.practised_by->of(topic);
    const bool open = model.state->practice.trainee.topic == topic;
    const std::string words = topic_text(canvas.language(), topic);
    const std::string status = status_of(canvas, topic, summary.done);
    const float width = rows.width - 2.0f * (pad + gap) - mark - arrow;
    const float first = canvas.paragraph_height(width, words, bold_text);
    const float second = canvas.paragraph_height(width, status, small_text);
    const Box box = rows.next(std::max(60.0f, first + second + 22.0f), 8.0f);
    DrawingList& list = canvas.list();
    list.round(box, 12.0f, paint(Role::panel));
    list.ring(box, 12.0f, paint(open ? Role::ink : Role::edge), open ? 1.8f : 1.2f);
    sign_mark(list, {box.x0 + pad + 0.5f * mark, box.centre().y}, mark, summary.state());
    const float x = box.x0 + pad + mark + gap;
    const float y = box.centre().y - 0.5f * (first + second + 2.0f);
    canvas.paragraph({x, y}, width, words, bold_text, Role::ink, Role::panel);
    canvas.paragraph({x, y + first + 2.0f}, width, status, small_text, Role::soft_ink, Role::panel);
    canvas.icon(open ? Icon::up : Icon::down, {box.x1 - pad - 0.5f * arrow, box.centre().y}, arrow,
                Role::soft_ink);
    const std::string name = std::string("trainee/topic/") + topic_key(topic);
    Thing& thing = list.thing(name, ThingRole::button, box);
    thing.label = words;
    thing.value = status + ", " + sign_text(canvas, summary.state());
    thing.chosen = open;
    thing.action = canvas.action(OpenTopic{open ? std::nullopt : std::optional(topic)});
    if (open) open_topic(model, topic, name, rows);
}

bool did_anything(const TraineeSummary& who) {
    for (const TopicSummary& topic : who.topics)
        if (topic.done.attempts > 0) return true;
    return false;
}

/// Erasing is final: it is asked once more, and says so.
void erase_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TraineeSummary& who = *model.practised_by;
    const bool nobody = who.who.id == 0;
    if (nobody && !did_anything(who)) return;
    if (model.state->practice.trainee.erasing != who.who.id)
        return exercise_button(
            "trainee/erase",
            canvas.word(nobody ? Word::trainee_erase_nobody : Word::trainee_erase), {},
            ButtonLook::plain, AskErase{who.who.id}, rows);
    caution_row(nobody ? std::string(canvas.word(Word::trainee_erase_ask_nobody))
                       : say(canvas.language(), Word::trainee_erase_ask, {who.who.name}),
                rows);
    exercise_button("trainee/erase/keep", canvas.word(Word::trainee_erase_keep), {},
                    ButtonLook::strong, AskErase{}, rows);
    exercise_button("trainee/erase/do", canvas.word(Word::trainee_erase_do), {}, ButtonLook::plain,
                    EraseTrainee{who.who.id}, rows);
}

void data_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TraineeRow& who = model.practised_by->who;
    rows.space(8.0f);
    if (who.id != 0) {
        text_row(model, "trainee/rename", canvas.word(Word::trainee_name), who.name, {},
                 EditText{TextTarget::trainee_name}, rows);
        exercise_button("trainee/export", canvas.word(Word::trainee_export), {}, ButtonLook::plain,
                        ExportTrainee{who.id}, rows);
    }
    erase_part(model, rows);
}

} // namespace

void trainee_person(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TraineeRow& who = model.practised_by->who;
    exercise_text("trainee/who", person_name(canvas, who), title_text, Role::ink, 8.0f, rows);
    next_card(model, rows);
    rows.text(canvas.word(Word::trainee_topics), bold_text, Role::ink, 2.0f);
    rows.text(
        canvas.word(who.id == 0 ? Word::trainee_topics_hint_nobody : Word::trainee_topics_hint),
        small_text, Role::soft_ink, 8.0f);
    if (who.id != 0 && model.state->habits.initials.empty())
        text_row(model, "trainee/initials", canvas.word(Word::initials), {},
                 canvas.word(Word::initials_hint), EditText{TextTarget::initials}, rows);
    for (const PracticeTopic topic : topics_in_order) topic_row(model, topic, rows);
    data_part(model, rows);
}

} // namespace carriageway
