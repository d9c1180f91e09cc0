// Two jobs side by side: what was set differently, on the press and as a table.
#include <algorithm>

#include "app/text/difference_sentences.h"
#include "app/text/sentences.h"
#include "app/views/day_view.h"
#include "app/views/walk_view.h"

namespace carriageway {

namespace {

constexpr float lowest_diagram = 220.0f, highest_diagram = 380.0f;
constexpr float strip_height = 56.0f;

/// How many differences a head of the second job has.
std::size_t differences_of(const std::vector<JobDifference>& all, HeadId head) {
    return static_cast<std::size_t>(std::count_if(
        all.begin(), all.end(), [&](const JobDifference& one) { return one.head_b == head; }));
}

/// The second job's press from above; heads that differ have a ring and the number of differences.
void marked_press(const Model& model, const std::vector<JobDifference>& all, Rows& rows) {
    const Job& job = judged_job(model);
    Canvas& canvas = rows.canvas;
    const Box view =
        rows.next(std::clamp(0.8f * rows.width, lowest_diagram, highest_diagram), 10.0f);
    DiagramInput input;
    input.job = &job;
    const Assessment& assessment = model.as_set ? *model.as_set : *model.assessment;
    input.assessment = &assessment;
    input.projection = {camera_for_press(job.press, view, 30.0f * canvas.scale()), view};
    input.with_handles = false;
    input.language = canvas.language();
    DrawingList& list = canvas.list();
    list.round(view, 12.0f, paint(Role::paper));
    list.circle(input.projection.to_screen({0.0, 0.0}), 10.0f, paint(Role::edge), 2.0f);
    int marked = 0;
    for (const HeadAssessment& assessed : assessment.heads) {
        const Head& head = *find_head(job, assessed.head);
        HeadView drawn;
        drawn.head = &head;
        drawn.assessed = &assessed;
        drawn.aim(input.projection, place_of_station(job.press, head.station));
        draw_head(input, drawn, list);
        const std::size_t count = differences_of(all, head.id);
        if (count == 0) continue;
        ++marked;
        const Vec at = drawn.to(0.0, 0.0);
        const std::string number = std::to_string(count);
        const float radius =
            std::max(15.0f, 0.5f * canvas.type().width({TypeSize::small, true}, number) + 8.0f);
        list.disc(at, radius, paint(Role::strong));
        list.circle(at, radius, paint(Role::paper), 2.0f);
        list.text_centred(at, number, {TypeSize::small, true}, Role::on_strong, Role::strong);
    }
    Thing& thing = list.thing("compare/press", ThingRole::image, view);
    thing.label = say(canvas.language(), Word::compare_on_diagram, {std::to_string(marked)});
}

/// Both jobs' stops of one head along its arm, to the same scale: one above, one below.
void stops_strip(const CompareState& compare, const Head& a, const Head& b, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Box box = rows.next(strip_height, 4.0f);
    DrawingList& list = canvas.list();
    const double lo = std::min({a.stops.operator_side, b.stops.operator_side}) - 40.0;
    const double hi = std::max({a.stops.machine_side, b.stops.machine_side}) + 40.0;
    const auto x_of = [&](double y) {
        return box.x0 + static_cast<float>((y - lo) / (hi - lo)) * box.width();
    };
    list.round(box, 8.0f, paint(Role::paper));
    const auto bar = [&](const Stops& stops, float y, bool filled) {
        const Box span{x_of(stops.operator_side), y - 6.0f, x_of(stops.machine_side), y + 6.0f};
        if (filled) list.round(span, 3.0f, paint(Role::ink));
        else list.ring(span, 3.0f, paint(Role::ink), 2.0f);
    };
    bar(a.stops, box.y0 + 17.0f, false);
    bar(b.stops, box.y1 - 17.0f, true);
    rows.text(say(canvas.language(), Word::compare_stops_drawn,
                  {compare.name, std::string(canvas.word(Word::compare_here))}),
              small_text, Role::soft_ink, 8.0f);
}

/// One line of the table: what, and both values, below one another where they need the width.
void difference_row(const SaidDifference& said, const std::string& name, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float pad = 12.0f;
    const float half = 0.5f * (rows.width - 3.0f * pad);
    const std::string what = capitalised(said.what);
    const float head = canvas.paragraph_height(rows.width - 2.0f * pad, what, small_text);
    const float values = std::max(canvas.paragraph_height(half, said.a, body_text),
                                  canvas.paragraph_height(half, said.b, bold_text));
    const Box box = rows.next(head + values + 18.0f, 6.0f);
    canvas.list().round(box, 10.0f, paint(Role::quiet));
    canvas.paragraph({box.x0 + pad, box.y0 + 7.0f}, rows.width - 2.0f * pad, what, small_text,
                     Role::soft_ink, Role::quiet);
    const float y = box.y0 + 9.0f + head;
    canvas.paragraph({box.x0 + pad, y}, half, said.a, body_text, Role::ink, Role::quiet);
    canvas.paragraph({box.x0 + 2.0f * pad + half, y}, half, said.b, bold_text, Role::ink,
                     Role::quiet);
    canvas.reading(name, box, what, said.a + " → " + said.b);
}

void columns_row(const CompareState& compare, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float pad = 12.0f, half = 0.5f * (rows.width - 3.0f * pad);
    const std::string_view here = canvas.word(Word::compare_here);
    const float height = std::max(canvas.paragraph_height(half, compare.name, small_text),
                                  canvas.paragraph_height(half, here, small_text));
    const Box box = rows.next(height, 6.0f);
    canvas.paragraph({box.x0 + pad, box.y0}, half, compare.name, small_text, Role::soft_ink,
                     rows.on);
    canvas.paragraph({box.x0 + 2.0f * pad + half, box.y0}, half, here, small_text, Role::soft_ink,
                     rows.on);
}

void owner_title(const CompareState& compare, const Job& job, const JobDifference& one,
                 Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.space(8.0f);
    rows.text(difference_owner(canvas.language(), compare.job, job, one), bold_text);
    const Head* a = find_head(compare.job, one.head_a);
    const Head* b = find_head(job, one.head_b);
    if (a && b && !(a->stops == b->stops)) stops_strip(compare, *a, *b, rows);
    columns_row(compare, rows);
}

} // namespace

void compare_part(const Model& model, Rows& rows) {
    if (!model.state->day.compare) return;
    Canvas& canvas = rows.canvas;
    const CompareState& compare = *model.state->day.compare;
    const Job& job = judged_job(model);
    choices("compare/show", canvas.word(Word::compare_show),
            {{"compare/matters", std::string(canvas.word(Word::compare_what_matters)),
              canvas.action(CompareEverything{false}), !compare.everything},
             {"compare/everything", std::string(canvas.word(Word::compare_everything)),
              canvas.action(CompareEverything{true}), compare.everything}},
            rows);
    CompareBy by;
    by.as_set = false; // both are as they were really set
    by.what_matters = !compare.everything;
    const std::vector<JobDifference> all = job_changes(compare.job, job, by);
    const std::string count = std::to_string(all.size());
    rows.text(all.empty()       ? std::string(canvas.word(Word::compare_same))
              : all.size() == 1 ? std::string(canvas.word(Word::compare_count_one))
                                : say(canvas.language(), Word::compare_count, {count}),
              {TypeSize::title, true}, Role::ink, 4.0f);
    rows.text(canvas.word(Word::compare_as_set), small_text, Role::soft_ink, 10.0f);
    marked_press(model, all, rows);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (i == 0 || !same_owner(all[i - 1], all[i])) owner_title(compare, job, all[i], rows);
        difference_row(difference_text(canvas.language(), model.state->looks.units, compare.job, job,
                                       all[i]),
                       "compare/row/" + std::to_string(i), rows);
    }
}

} // namespace carriageway
