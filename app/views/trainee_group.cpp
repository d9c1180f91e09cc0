// The group at a glance: a person a row, a topic a box.
#include <algorithm>
#include <cmath>

#include "app/text/practice_sentences.h"
#include "app/views/exercise_parts.h"
#include "app/views/trainee_view.h"

namespace carriageway {

namespace {

constexpr float gap = 4.0f, pad = 10.0f, mark = 14.0f;
constexpr SignState states[] = {SignState::shown, SignState::helped, SignState::alone};

/// How the boxes of a row lie: the same for everybody, so that a topic stands below itself.
struct Grid {
    int columns = 1;
    float width = 0.0f, height = 0.0f; ///< of a box
    float all() const {
        const int lines = (static_cast<int>(topic_count) + columns - 1) / columns;
        return static_cast<float>(lines) * (height + gap) - gap;
    }
};

Grid grid_for(const Canvas& canvas, float room) {
    const float least = std::max(30.0f, canvas.type().width(bold_text, "8") + 16.0f);
    Grid grid;
    grid.columns = std::clamp(static_cast<int>((room + gap) / (least + gap)), 1,
                              static_cast<int>(topic_count));
    grid.width = (room + gap) / static_cast<float>(grid.columns) - gap;
    grid.width = std::min(grid.width, 2.2f * least);
    grid.height = canvas.type().height(small_text) + canvas.type().height(bold_text) + mark + 14.0f;
    return grid;
}

void centred(DrawingList& list, const TypeMeasure& type, Vec at, std::string_view words,
             TypeStyle style, Role role, Role on) {
    list.text({at.x - 0.5f * type.width(style, words), at.y}, words, style, role, on);
}

void cell(Box box, std::size_t number, const TopicSummary& topic, Canvas& canvas) {
    DrawingList& list = canvas.list();
    const bool tried = topic.done.attempts > 0;
    const bool managed = tried && topic.done.mean_of_last >= managed_score;
    list.round(box, 6.0f, paint(Role::paper));
    list.ring(box, 6.0f, paint(managed ? Role::fit : Role::edge), managed ? 2.6f : 1.0f);
    float y = box.y0 + 3.0f;
    const float x = box.centre().x;
    centred(list, canvas.type(), {x, y}, std::to_string(number), small_text, Role::soft_ink,
            Role::paper);
    y += canvas.type().height(small_text);
    centred(list, canvas.type(), {x, y}, tried ? std::to_string(topic.done.level) : "–", bold_text,
            tried ? Role::ink : Role::soft_ink, Role::paper);
    sign_mark(list, {x, box.y1 - 5.0f - 0.5f * mark}, mark, topic.state());
}

/// The same in words, for who can't see it.
std::string read_aloud(const Canvas& canvas, const TraineeSummary& person) {
    const Language language = canvas.language();
    std::string all;
    for (const PracticeTopic topic : topics_in_order) {
        const TopicSummary& of = person.of(topic);
        const std::string level =
            of.done.attempts > 0
                ? say(language, Word::exercise_level, {std::to_string(of.done.level)})
                : std::string(canvas.word(Word::group_not_tried));
        const std::optional<SignState> state = of.state();
        all += (all.empty() ? "" : "; ") + topic_text(language, topic) + ", " + level + ", ";
        all += canvas.word(state ? sign_word(*state) : Word::sign_none);
    }
    return all;
}

void person_row(const TraineeSummary& person, const Grid& grid, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float width = rows.width - 2.0f * pad;
    const float name = canvas.paragraph_height(width, person.who.name, bold_text);
    const Box box = rows.next(name + grid.all() + 2.0f * pad + 6.0f, 10.0f);
    DrawingList& list = canvas.list();
    list.round(box, 12.0f, paint(Role::panel));
    list.ring(box, 12.0f, paint(Role::edge), 1.2f);
    canvas.paragraph({box.x0 + pad, box.y0 + pad}, width, person.who.name, bold_text, Role::ink,
                     Role::panel);
    const float top = box.y0 + pad + name + 6.0f;
    for (std::size_t i = 0; i < topic_count; ++i) {
        const int column = static_cast<int>(i) % grid.columns;
        const int line = static_cast<int>(i) / grid.columns;
        const float x = box.x0 + pad + static_cast<float>(column) * (grid.width + gap);
        const float y = top + static_cast<float>(line) * (grid.height + gap);
        cell({x, y, x + grid.width, y + grid.height}, i + 1, person.of(topics_in_order[i]), canvas);
    }
    Thing& thing =
        list.thing("trainee/row/" + std::to_string(person.who.id), ThingRole::list_item, box);
    thing.label = person.who.name;
    thing.value = read_aloud(canvas, person);
    thing.action = canvas.action(ChooseTrainee{person.who.id});
}

/// What the numbers and the shapes stand for.
void legend(Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.space(4.0f);
    rows.text(canvas.word(Word::group_topics), small_text, Role::soft_ink, 2.0f);
    for (std::size_t i = 0; i < topic_count; ++i)
        exercise_text(
            std::string("trainee/legend/") + topic_key(topics_in_order[i]),
            std::to_string(i + 1) + "  " + topic_text(canvas.language(), topics_in_order[i]),
            small_text, Role::ink, 2.0f, rows);
    rows.space(6.0f);
    rows.text(canvas.word(Word::group_signs), small_text, Role::soft_ink, 4.0f);
    const auto line = [&](std::optional<SignState> state, Word words) {
        const float room = mark + 10.0f;
        const float height =
            canvas.paragraph_height(rows.width - room, canvas.word(words), small_text);
        const Box box = rows.next(std::max(mark, height), 4.0f);
        sign_mark(canvas.list(), {box.x0 + 0.5f * mark, box.centre().y}, mark, state);
        canvas.paragraph({box.x0 + room, box.centre().y - 0.5f * height}, rows.width - room,
                         canvas.word(words), small_text, Role::ink, rows.on);
    };
    line(std::nullopt, Word::sign_none);
    for (const SignState state : states) line(state, sign_word(state));
    rows.space(8.0f);
}

} // namespace

void trainee_group(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::group_heading), title_text, Role::ink, 4.0f);
    if (model.group->empty())
        return exercise_text("trainee/nobody", canvas.word(Word::group_empty),
                             {TypeSize::body, false}, Role::soft_ink, 12.0f, rows);
    rows.text(canvas.word(Word::group_hint), small_text, Role::soft_ink, 10.0f);
    const Grid grid = grid_for(canvas, rows.width - 2.0f * pad);
    for (const TraineeSummary& person : *model.group) person_row(person, grid, rows);
    legend(rows);
    exercise_button("trainee/save-group", canvas.word(Word::group_save), {}, ButtonLook::plain,
                    ExportGroup{}, rows);
    rows.text(canvas.word(Word::trainee_stays), small_text, Role::soft_ink, 8.0f);
}

} // namespace carriageway
