// The press: the diagram, and beside or below it what is to be done.
#include "app/views/views.h"

namespace carriageway {

namespace {

std::string stop_reading(const Model& model, const Head& head, End end) {
    return field_value(model, head.id,
                       end == End::machine_side ? Field::machine_stop : Field::operator_stop);
}

/// Attaches to the diagram's things what a tap, a drag or a step does.
void attach(const Model& model, const DiagramThings& things, Canvas& canvas) {
    std::vector<Thing>& list = canvas.list().things();
    for (const DiagramThings::HeadThing& made : things.heads) {
        const Head& head = *find_head(*model.job, made.head);
        const HeadAssessment& assessed = *find_head(*model.assessment, made.head);
        Thing& thing = list[made.thing];
        thing.label = head_name(model, head);
        thing.value.assign(canvas.word(assessed.fit ? Word::fit_to_run : Word::not_fit));
        thing.value += ", " + say(canvas.language(), Word::covered_share,
                                  {format_share(assessed.coverage.share())});
        thing.chosen = made.head == model.state->head;
        if (!thing.chosen) thing.action = canvas.action(ChooseHead{made.head});
    }
    for (const DiagramThings::Handle& made : things.handles) {
        const Head& head = *find_head(*model.job, made.head);
        Thing& thing = list[made.thing];
        const bool machine = made.end == End::machine_side;
        thing.label.assign(canvas.word(machine ? Word::machine_stop_ruler : Word::operator_stop_ruler));
        thing.value = stop_reading(model, head, made.end);
        thing.action = canvas.action(ChooseStop{made.head, made.end});
        thing.hold = canvas.hold(HoldStop{made.head, made.end});
        thing.less = canvas.action(StepStop{made.head, made.end, -1.0, 0.0});
        thing.more = canvas.action(StepStop{made.head, made.end, 1.0, 0.0});
        thing.chosen = machine == (model.state->stop == End::machine_side);
    }
}

/// Zoom by buttons, since gloved fingers can't pinch.
void zoom_buttons(const Model& model, const Layout& layout, Canvas& canvas) {
    const float side = 48.0f;
    const Box view = layout.diagram;
    const bool head = model.state->head != 0;
    // Upright at the left in wide windows; along the top left corner in compact ones, off the rail.
    float x = view.x0 + 8.0f, y = view.y0 + 4.0f;
    const auto tool = [&](std::string_view name, Icon icon, Word words, Action action) {
        canvas.icon_button(name, {x, y, x + side, y + side}, icon, canvas.word(words),
                           canvas.action(std::move(action)));
        if (layout.compact && !head) x += side + 6.0f;
        else y += side + 6.0f;
    };
    if (layout.compact && head && view.width() < 420.0f) {
        // On a phone a head fills the width: only "whole" is offered beside pinch and keys.
        if (model.state->own_camera) tool("zoom/all", Icon::whole, Word::whole_head, ShowAll{});
        return;
    }
    tool("zoom/in", Icon::plus, Word::zoom_in, Zoom{1.5});
    tool("zoom/out", Icon::minus, Word::zoom_out, Zoom{1.0 / 1.5});
    tool("zoom/all", Icon::whole, head ? Word::whole_head : Word::whole_press, ShowAll{});
}

void diagram(const Model& model, const Layout& layout, Canvas& canvas) {
    const ViewState& state = *model.state;
    Frame& frame = canvas.frame();
    frame.diagram = layout.diagram;
    frame.projection = {state.camera, layout.diagram};
    DiagramInput input;
    input.job = model.job;
    input.assessment = model.assessment;
    input.projection = frame.projection;
    input.chosen = state.head;
    input.chosen_stop = state.stop;
    input.held = state.held;
    input.language = canvas.language();
    input.units = state.looks.units;
    input.pulse = state.pulse;
    DiagramThings things;
    canvas.list().thing("diagram", ThingRole::image, layout.diagram).label.assign(
        canvas.word(Word::seen_from_above));
    draw_diagram(input, canvas.list(), things);
    attach(model, things, canvas);
    if (!layout.compact && !state.head && layout.diagram.height() > 420.0f)
        draw_legend(input, canvas.list());
}

void panel(const Model& model, const Layout& layout, Canvas& canvas) {
    const ViewState& state = *model.state;
    DrawingList& list = canvas.list();
    const Box box = layout.panel;
    list.set_layer(1);
    list.round(box, layout.compact ? 16.0f : 0.0f, paint(Role::panel));
    const Vec edge[] = {{box.x0, layout.compact ? box.y0 + 12.0f : box.y0}, {box.x0, box.y1}};
    if (!layout.compact) list.line(edge, 2, paint(Role::edge), 1.0f);
    else list.ring({box.x0 - 2.0f, box.y0, box.x1 + 2.0f, box.y1 + 20.0f}, 16.0f, paint(Role::edge), 1.0f);
    list.thing("panel", ThingRole::region, box).label.assign(canvas.word(Word::what_to_fix));
    Box inside = box;
    if (layout.compact) {
        const Box grip = around({box.centre().x, box.y0 + 9.0f}, 44.0f, 5.0f);
        list.round(grip, 2.5f, paint(Role::edge));
        Thing& thing = list.thing("panel/grip", ThingRole::button,
                                  {box.centre().x - 60.0f, box.y0, box.centre().x + 60.0f, box.y0 + 20.0f});
        thing.target = {box.centre().x - 80.0f, box.y0 - 24.0f, box.centre().x + 80.0f, box.y0 + 20.0f};
        thing.label.assign(canvas.word(state.tall_sheet ? Word::less : Word::more));
        thing.action = canvas.action(ToggleSheet{});
        thing.hold = canvas.hold(HoldSheet{});
        inside.y0 += 18.0f;
    }
    list.push_clip(inside);
    const HeadAssessment* head = find_head(*model.assessment, state.head);
    Rows rows{canvas, inside.x0 + 16.0f, inside.width() - 32.0f,
                inside.y0 + (layout.compact ? 2.0f : 18.0f) - state.panel_scroll, Role::panel};
    const float top = rows.y;
    // A sheet much wider than a hand reads better in a column of its own.
    if (layout.compact && rows.width > 560.0f) {
        rows.x += 0.5f * (rows.width - 560.0f);
        rows.width = 560.0f;
    }
    if (head) head_panel(model, *head, layout.compact, rows);
    else press_panel(model, layout.compact, rows);
    list.pop_clip();
    canvas.frame().scrolls.push_back({inside, rows.y - top + 12.0f, &ViewState::panel_scroll});
    list.set_layer(0);
}

} // namespace

void press_place(const Model& model, const Layout& layout, Canvas& canvas) {
    canvas.list().round(layout.diagram, 0.0f, paint(Role::paper));
    diagram(model, layout, canvas);
    zoom_buttons(model, layout, canvas);
    press_header(model, layout, canvas);
    if (model.state->pad) {
        number_pad(model, layout, canvas);
        if (layout.compact) return;
    }
    if (!(model.state->pad && !layout.compact)) panel(model, layout, canvas);
}

void draw_frame(const Model& model, Frame& frame) {
    Canvas canvas(frame, model.state->looks.language);
    const Layout layout = lay_out(model, frame.list.type());
    switch (model.state->place) {
    case Place::press: press_place(model, layout, canvas); break;
    case Place::jobs: jobs_place(model, layout, canvas); break;
    }
    canvas.list().set_layer(1);
    places_bar(model, layout, canvas);
    notice_line(model, layout, canvas);
    canvas.list().set_layer(0);
}

} // namespace carriageway
