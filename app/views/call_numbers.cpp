// The head that a call is about: to scale as its numbers make it, and the numbers one by one.
#include <algorithm>

#include "app/drawing/diagram.h"
#include "app/text/sentences.h"
#include "app/views/call_view.h"
#include "app/views/exercise_parts.h"

namespace carriageway {

namespace {

constexpr float lowest_picture = 240.0f, highest_picture = 400.0f;

/// What is read out first, whatever the symptom: it decides what is printed.
constexpr Field usual_numbers[] = {
    Field::operator_stop,  Field::machine_stop, Field::image_width,    Field::image_length,
    Field::image_offset_y, Field::squeegee_angle, Field::squeegee_gauge, Field::flood_angle,
    Field::flood_gauge,    Field::height_left,  Field::height_right,   Field::height_machine,
    Field::squeegee_pressure, Field::print_speed, Field::tension_along};

std::string read_text(const CallView& view, const Head& head) {
    std::string names;
    for (const NumberRead& number : view.call.notes.read) {
        if (number.head != head.id && number.head != 0) continue;
        names += (names.empty() ? "" : ", ") +
                 std::string(word(view.language(), field_word(number.field)));
    }
    return names.empty() ? names : say(view.language(), Word::call_number_read, {names});
}

/// Numbers beyond the usual ones that were read out.
std::vector<NumberRead> other_numbers(const CallView& view, const Head& head) {
    std::vector<NumberRead> others;
    for (const NumberRead& number : view.call.notes.read) {
        const bool usual = std::find(std::begin(usual_numbers), std::end(usual_numbers),
                                     number.field) != std::end(usual_numbers);
        if (!usual && (number.head == head.id || number.head == 0)) others.push_back(number);
    }
    return others;
}

bool is_asked_now(const CallView& view, Field field) {
    if (view.plan.questions.empty()) return false;
    const CallQuestion& best = view.plan.questions.front();
    if (best.kind != CallQuestion::Kind::number) return false;
    const std::vector<Field> asked = numbers_with(best.field);
    return std::find(asked.begin(), asked.end(), field) != asked.end();
}

} // namespace

void head_picture(const Model& model, const std::string& name, std::string_view label,
                  const Job& job, const Assessment& assessment, HeadId head, Rows& rows) {
    const Head* set = find_head(job, head);
    const HeadAssessment* worked = find_head(assessment, head);
    if (!set || !worked) return;
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    const float height = std::clamp(0.9f * rows.width, lowest_picture, highest_picture);
    const Box box = rows.next(height, 10.0f);
    DiagramInput input;
    input.job = &job;
    input.assessment = &assessment;
    input.projection = {camera_for_head(job, *set, box, rail_room), box};
    input.chosen = head;
    input.chosen_stop = model.state->stop;
    input.with_handles = false;
    input.language = canvas.language();
    input.units = model.state->looks.units;
    HeadView view;
    view.head = set;
    view.assessed = worked;
    view.aim(input.projection, place_of_station(job.press, set->station));
    list.push_clip(box);
    list.round(box, 12.0f, paint(Role::paper));
    draw_head(input, view, list);
    draw_carriage(input, view, list);
    LabelPlacer labels(box.inset(2.0f));
    DiagramThings things;
    draw_rail(input, view, list, labels, things);
    list.pop_clip();
    list.ring(box, 12.0f, paint(Role::edge), 1.2f);
    Thing& thing = list.thing(name, ThingRole::image, box);
    thing.label.assign(label);
    if (!worked->findings.empty())
        thing.value = finding_text(canvas.language(), model.state->looks.units, job, *worked,
                                   worked->findings.front())
                          .title;
}

void call_numbers(const CallView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Head* head = find_head(*view.model.job, view.call.notes.head);
    if (!head) return;
    if (!view.plan.edits.empty())
        choices("call/show", canvas.word(Word::call_show),
                {{"call/show/now", std::string(canvas.word(Word::call_as_it_is)),
                  canvas.action(ShowCallAfter{false}), !view.call.picture_after},
                 {"call/show/told", std::string(canvas.word(Word::call_as_told)),
                  canvas.action(ShowCallAfter{true}), view.call.picture_after}},
                rows);
    const bool after = view.call.picture_after && !view.plan.edits.empty();
    head_picture(view.model, "call/picture",
                 say(view.language(), Word::call_drawing, {head_name(view.model, *head)}),
                 after ? view.plan.after : *view.model.job,
                 after ? view.plan.after_worked : *view.model.assessment, head->id, rows);
    rows.text(canvas.word(Word::call_numbers), bold_text, Role::ink, 4.0f);
    const std::string read = read_text(view, *head);
    if (!read.empty()) exercise_text("call/read", read, small_text, Role::soft_ink, 8.0f, rows);
    for (const Field field : usual_numbers)
        if (!is_asked_now(view, field)) number_row(view.model, head->id, field, rows);
    for (const NumberRead& number : other_numbers(view, *head))
        if (!is_asked_now(view, number.field))
            number_row(view.model, number.head, number.field, rows);
    rows.space(12.0f);
}

} // namespace carriageway
