// The Practice place: exercises, faults, calls and the people who practise, one at a time.
#include "app/views/exercise_view.h"
#include "app/views/practice_view.h"

namespace carriageway {

namespace {

struct PartRow {
    PracticePart part;
    std::string_view name;
    Word words;
    void (*draw)(const Model&, Rows&);
};
constexpr PartRow part_rows[] = {
    {PracticePart::exercises, "practice/exercises", Word::practice_exercises, exercises_part},
    {PracticePart::faults, "practice/faults", Word::practice_faults, faults_part},
    {PracticePart::call, "practice/call", Word::practice_call, call_part},
    {PracticePart::trainees, "practice/trainees", Word::practice_trainees, trainees_part},
};

/// Whether a part works on the job that is open, and so would say what an exercise asks about it.
bool gives_away(const Model& model, PracticePart part) {
    return examined(model.state->practice.exercise) &&
           (part == PracticePart::faults || part == PracticePart::call);
}

/// What the number pad leaves of the page; large letters on a small phone leave next to nothing.
Box beside_pad(const Model& model, const Layout& layout, Box page, Canvas& canvas) {
    if (!layout.compact) page.x1 = layout.panel.x0;
    else
        page.y1 = std::min(layout.panel.y0,
                           model.window.y1 - pad_height(model, canvas, layout.panel.width()));
    return page;
}

void parts_of_place(const Model& model, Box page, Canvas& canvas) {
    canvas.list().push_clip(page);
    const float width = std::min(page.width() - 32.0f, 640.0f);
    Rows rows{canvas, page.centre().x - 0.5f * width, width,
              page.y0 + 18.0f - model.state->practice_scroll, Role::paper};
    const float top = rows.y;
    rows.text(canvas.word(Word::place_practice), {TypeSize::title, true}, Role::ink, 10.0f);
    std::vector<Choice> parts;
    for (const PartRow& row : part_rows)
        parts.push_back({row.name, std::string(canvas.word(row.words)),
                         canvas.action(ShowPractice{row.part}),
                         model.state->practice.part == row.part});
    choices("practice/part", canvas.word(Word::place_practice), parts, rows);
    rows.space(8.0f);
    for (const PartRow& row : part_rows)
        if (row.part == model.state->practice.part) {
            if (gives_away(model, row.part)) exercise_waits(rows);
            else row.draw(model, rows);
        }
    canvas.list().pop_clip();
    canvas.frame().scrolls.push_back({page, rows.y - top + 24.0f, &ViewState::practice_scroll});
}

} // namespace

void practice_place(const Model& model, const Layout& layout, Canvas& canvas) {
    constexpr float least_page = 60.0f;
    DrawingList& list = canvas.list();
    const Box all{layout.compact ? model.window.x0 : layout.places.x1, model.window.y0,
                  model.window.x1, layout.compact ? layout.places.y0 : model.window.y1};
    list.round(all, 0.0f, paint(Role::paper));
    list.thing("practice", ThingRole::region, all).label.assign(canvas.word(Word::place_practice));
    const Pad* pad = model.state->pad ? &*model.state->pad : nullptr;
    const bool typing = pad && !pad->reading && !model.state->day.open;
    const Box page = typing ? beside_pad(model, layout, all, canvas) : all;
    if (page.height() >= least_page) parts_of_place(model, page, canvas);
    if (typing) number_pad(model, layout, canvas);
}

} // namespace carriageway
