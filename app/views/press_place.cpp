// The press: the diagram, and beside or below it what is to be done.
#include <array>
#include <span>

#include "app/text/sentences.h"
#include "app/views/call_view.h"
#include "app/views/class_view.h"
#include "app/views/cycle_view.h"
#include "app/views/exercise_view.h"
#include "app/views/first_view.h"
#include "app/views/panel.h"

namespace carriageway {

namespace {

/// A head on a small screen is smaller than a finger; of two that it touches, the nearer is meant.
Box for_fingers(Box box) {
    constexpr float least = 46.0f;
    const Vec more{0.5f * std::max(0.0f, least - box.width()), 0.5f * std::max(0.0f, least - box.height())};
    return {box.x0 - more.x, box.y0 - more.y, box.x1 + more.x, box.y1 + more.y};
}

/// Where a slider stands, for assistive technology: a step is a graduation of the ruler.
void count_in_graduations(Thing& thing, const Ruler& ruler, double y) {
    const FieldInfo& info = info_of(Field::machine_stop);
    const double mark = ruler.inches ? ruler.graduation / mm_per_inch : ruler.graduation;
    const double a = ruler_reading(ruler, info.least) / mark, b = ruler_reading(ruler, info.most) / mark;
    thing.now = std::round(ruler_reading(ruler, y) / mark);
    thing.least = std::ceil(std::min(a, b));
    thing.most = std::floor(std::max(a, b));
}

std::string stop_reading(const Model& model, const Head& head, End end) {
    return field_value(model, head.id,
                       end == End::machine_side ? Field::machine_stop : Field::operator_stop);
}

/// Attaches to the diagram's things what a tap, a drag or a step does.
void attach(const Model& model, const DiagramThings& things, Canvas& canvas) {
    const std::span<Thing> list = canvas.list().things();
    for (const DiagramThings::HeadThing& made : things.heads) {
        const Head& head = *find_head(*model.job, made.head);
        const HeadAssessment& assessed = *find_head(*model.assessment, made.head);
        Thing& thing = list[made.thing];
        put(thing.label, head_name(model, head));
        if (!examined(model.state->practice.exercise)) {
            thing.value.assign(canvas.word(assessed.fit ? Word::fit_to_run : Word::not_fit));
            thing.value += ", ";
            thing.value += *Passing(say(canvas.language(), Word::covered_share,
                                        {format_share(assessed.coverage.share())}));
        }
        thing.chosen = made.head == model.state->head;
        thing.target = for_fingers(thing.box);
        if (!thing.chosen) thing.action = canvas.action(ChooseHead{made.head});
        if (model.state->head == 0 && !looked_at_only(model))
            thing.hold = canvas.hold(HoldColour{made.head});
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
        count_in_graduations(thing, model.job->press.ruler, stop_of(head.stops, made.end));
    }
}

/// A button over the diagram.
struct DiagramTool {
    const char* name = "";
    Icon icon = Icon::none;
    Word words = Word::count;
    Action action = ShowAll{};
    Box box;
};

/// Those that are shown.
struct DiagramTools {
    std::array<DiagramTool, 3> all;
    std::size_t count = 0;
    void push_back(const DiagramTool& tool) { all[count++] = tool; }
    std::span<const DiagramTool> shown() const { return {all.data(), count}; }
};

/// Zoom by buttons, since gloved fingers can't pinch: a column at the left in wide windows; in
/// compact ones the corners that a round table leaves free.
DiagramTools diagram_tools(const Model& model, const Layout& layout) {
    const float side = 48.0f, gap = 6.0f;
    const Box view = layout.diagram;
    const bool head = model.state->head != 0;
    const Word whole = head ? Word::whole_head : Word::whole_press;
    const auto at = [&](float x, float y) { return Box{x, y, x + side, y + side}; };
    const float left = view.x0 + 8.0f, right = view.x1 - 8.0f - side;
    const float top = view.y0 + 4.0f, bottom = view.y1 - 4.0f - side;
    DiagramTools tools;
    if (!layout.compact || view.width() > 560.0f) {
        tools.push_back({"zoom/in", Icon::plus, Word::zoom_in, Zoom{1.5}, at(left, top)});
        tools.push_back({"zoom/out", Icon::minus, Word::zoom_out, Zoom{1.0 / 1.5}, at(left, top + side + gap)});
        tools.push_back({"zoom/all", Icon::whole, whole, ShowAll{}, at(left, top + 2.0f * (side + gap))});
        return tools;
    }
    if (!head) {
        tools.push_back({"zoom/in", Icon::plus, Word::zoom_in, Zoom{1.5}, at(left, top)});
        tools.push_back({"zoom/out", Icon::minus, Word::zoom_out, Zoom{1.0 / 1.5}, at(left, bottom)});
    }
    // A head fills a phone's width; the way back to all of it is offered once it has been moved.
    if (model.state->own_camera)
        tools.push_back({"zoom/all", Icon::whole, whole, ShowAll{}, head ? at(left, bottom) : at(right, bottom)});
    return tools;
}

/// A colour under the finger, and what letting it go would do.
void dragged_colour(const Model& model, const Projection& projection, Canvas& canvas) {
    constexpr float disc = 20.0f, above = 46.0f, pad = 10.0f;
    const ColourDrag& drag = *model.state->colour_drag;
    const Job& job = *model.job;
    const Head* head = find_head(job, drag.head);
    if (!head) return;
    DrawingList& list = canvas.list();
    const HeadPlace place = place_of_station(job.press, drag.station);
    const Vec target = projection.to_screen(place.to_press({0.0, 0.0}));
    const StationUse use = job.uses[static_cast<std::size_t>(drag.station - 1)];
    const bool can = use == StationUse::open && station_room(job.press, drag.station).print_head;
    const std::string number = std::to_string(drag.station);
    const Head* there = head_on(job, drag.station);
    const std::string words =
        !can ? say(canvas.language(), Word::stations_drop_not,
                   {number, canvas.word(use_word(use))})
        : there && there != head ? say(canvas.language(), Word::stations_drop_swap, {number})
                                 : say(canvas.language(), Word::stations_drop_on, {number});
    list.circle(target, std::max(26.0f, static_cast<float>(projection.size(260.0))),
                paint(can ? Role::focus : Role::stop), 4.0f);
    list.disc(drag.at, disc, own_colour(head->ink));
    list.circle(drag.at, disc, paint(Role::ink), 2.0f);
    // Over the drawing's own words, in as many lines as the width asks for.
    const TypeStyle style{TypeSize::body, true};
    const Box view = list.clip();
    const float width =
        std::min(canvas.type().width(style, words), view.width() - 8.0f - 2.0f * pad);
    const float text = canvas.paragraph_height(width, words, style);
    const Box box{0.0f, 0.0f, width + 2.0f * pad, text + pad};
    const float x = std::clamp(drag.at.x - 0.5f * box.x1, view.x0 + 4.0f,
                               std::max(view.x0 + 4.0f, view.x1 - 4.0f - box.x1));
    const float y = std::max(view.y0 + 4.0f, drag.at.y - above - box.y1);
    const int before = list.layer();
    list.set_layer(2);
    list.round({x, y, x + box.x1, y + box.y1}, 10.0f, paint(Role::strong));
    canvas.paragraph({x + pad, y + 0.5f * pad}, width, words, style, Role::on_strong, Role::strong);
    list.set_layer(before);
}

/// What the first steps put a ring round, as it was drawn.
std::vector<Box> boxes_to_ring(const Model& model, const DiagramThings& made,
                               const DrawingList& list) {
    const HeadId head = model.state->first.head;
    std::vector<Box> boxes;
    for (const DiagramThings::Handle& handle : made.handles)
        if (handle.head == head) boxes.push_back(list.things()[handle.thing].box);
    if (boxes.empty() && model.state->head == 0)
        for (const DiagramThings::HeadThing& each : made.heads)
            if (each.head == head) boxes.push_back(list.things()[each.thing].box);
    return boxes;
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
    // Where the held stop may stand is part of the answer.
    const bool exam = examined(state.practice.exercise);
    input.verdicts = !exam;
    input.with_handles = !looked_at_only(model);
    input.held = state.held && !exam;
    input.language = canvas.language();
    input.units = state.looks.units;
    input.pulse = state.pulse;
    CycleView cycle;
    const bool runs = cycle_on_screen(model);
    if (runs) {
        cycle = cycle_view(*model.job, *model.assessment, state.head, state.cycle.time);
        input.running = &cycle.heads;
        input.with_handles = false;
    }
    const DiagramTools tools = diagram_tools(model, layout);
    std::array<Box, 4> reserved;
    std::size_t count = 0;
    for (const DiagramTool& tool : tools.shown()) reserved[count++] = tool.box.inset(-2.0f);
    const bool legend =
        !layout.compact && !state.head && !exam && !runs && layout.diagram.height() > 420.0f;
    if (legend) reserved[count++] = legend_box(layout.diagram, canvas.type(), canvas.language());
    input.reserved = {reserved.data(), count};
    DiagramThings& things = frame.diagram_things;
    canvas.list().thing("diagram", ThingRole::image, layout.diagram).label.assign(
        canvas.word(Word::seen_from_above));
    draw_diagram(input, canvas.list(), things);
    attach(model, things, canvas);
    if (legend) draw_legend(input, canvas.list());
    first_ring(model, boxes_to_ring(model, things, canvas.list()), canvas);
    if (state.colour_drag) dragged_colour(model, frame.projection, canvas);
    for (const DiagramTool& tool : tools.shown())
        canvas.icon_button(tool.name, tool.box, tool.icon, canvas.word(tool.words), canvas.action(tool.action));
    if (runs) cycle_strip(model, cycle, layout.cycle, canvas);
}

void panel(const Model& model, const Layout& layout, Canvas& canvas) {
    const bool exam = examined(model.state->practice.exercise);
    const Word label = exam ? Word::practice_exercises : Word::what_to_fix;
    const auto contents = [&](Rows& rows) {
        if (exam) return exercise_panel(model, rows);
        if (first_steps_on_screen(model)) first_card(model, rows);
        reply_button(model, rows);
        if (const HeadAssessment* head = find_head(*model.assessment, model.state->head))
            head_panel(model, *head, rows);
        else press_panel(model, rows);
    };
    place_panel(model, layout, canvas.word(label), canvas, std::cref(contents));
}

} // namespace

void press_place(const Model& model, const Layout& layout, Canvas& canvas) {
    canvas.list().round(layout.diagram, 0.0f, paint(Role::paper));
    diagram(model, layout, canvas);
    press_header(model, layout, canvas);
    if (!layout.banner.empty()) visit_banner(model, layout, canvas);
    if (model.state->pad && !model.state->pad->reading && !model.state->day.open) number_pad(model, layout, canvas);
    else panel(model, layout, canvas);
}

void draw_frame(const Model& model, Frame& frame) {
    Canvas canvas(frame, model.state->looks.language);
    const Layout layout = lay_out(model, canvas);
    const bool exam = examined(model.state->practice.exercise);
    switch (model.state->place) {
    case Place::press: press_place(model, layout, canvas); break;
    case Place::registration:
        (exam ? exercise_cover : register_place)(model, layout, canvas);
        break;
    case Place::rate: (exam ? exercise_cover : rate_place)(model, layout, canvas); break;
    case Place::practice: practice_place(model, layout, canvas); break;
    case Place::jobs: jobs_place(model, layout, canvas); break;
    }
    canvas.list().set_layer(1);
    const bool covered = layout.compact && model.state->pad && !model.state->pad->reading && !model.state->day.open &&
                         model.state->place != Place::jobs;
    if (!covered) places_bar(model, layout, canvas);
    if (model.state->share) share_sheet(model, canvas);
    else if (model.state->measuring.open) measure_sheet(model, canvas);
    else if (model.state->day.open) day_sheet(model, canvas);
    notice_line(model, layout, canvas);
    class_trail(model.state->class_view, canvas.list());
    canvas.list().set_layer(0);
}

} // namespace carriageway
