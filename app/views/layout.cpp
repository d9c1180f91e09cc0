#include "app/views/cycle_view.h"

namespace carriageway {

namespace {

/// Above this text size the bar of places shows icons and the name of the present place only.
constexpr float icons_only_scale = 1.3f;

/// The strip of a running cycle: as wide as two hands reach, and a little off the edges.
constexpr float widest_strip = 520.0f, strip_margin = 4.0f;

/// Takes room for the strip of a running cycle from the diagram's lower edge.
void make_room_for_cycle(float strip, Layout& layout) {
    if (strip <= 0.0f) return;
    layout.diagram.y1 -= strip + 2.0f * strip_margin;
    const Box under = layout.diagram;
    const float half = 0.5f * std::min(widest_strip, under.width() - 2.0f * strip_margin);
    const float middle = under.centre().x, top = under.y1 + strip_margin;
    layout.cycle = {middle - half, top, middle + half, top + strip};
}

/// `room` is the height of the diagram and all that lies below it.
float cycle_strip_room(const Model& model, float width, float room, Canvas& canvas) {
    if (!cycle_on_screen(model)) return 0.0f;
    const float wide = std::min(widest_strip, width - 2.0f * strip_margin);
    return cycle_strip_height(canvas, wide, 0.5f * room);
}

Layout lay_out_compact(const Model& model, Canvas& canvas) {
    const TypeMeasure& type = canvas.type();
    const Box window = model.window;
    const ViewState& state = *model.state;
    Layout layout;
    layout.compact = true;
    const float words = type.height({TypeSize::small, false});
    const bool icons_only = type.scale() > icons_only_scale;
    const float bar = std::max(60.0f, (icons_only ? 30.0f : 34.0f) + words + (icons_only ? 8 : 0));
    layout.places = {window.x0, window.y1 - bar, window.x1, window.y1};
    const float header = header_height(model, canvas, window.width());
    layout.header = {window.x0, window.y0, window.x1, window.y0 + header};
    const float banner = banner_height(model, canvas, window.width(), true);
    layout.banner = {window.x0, layout.header.y1, window.x1, layout.header.y1 + banner};
    const float room = layout.places.y0 - layout.banner.y1;
    // Room for one finding with its button and the row that moves a stop; larger text gets more,
    // the diagram keeps at least two fifths.
    const float wanted = state.place == Place::press ? 292.0f * (0.35f + 0.65f * type.scale()) : room;
    float panel = std::min(wanted, room * 0.56f);
    // Before a class the drawing is what is looked at.
    if (state.class_view.on && state.place == Place::press) panel = std::min(panel, room * 0.4f);
    if (state.tall_sheet) panel = room * 0.8f;
    const float strip = cycle_strip_room(model, window.width(), room, canvas);
    // While a cycle runs the diagram is what one looks at: it keeps its two fifths before all else,
    // unless the sheet is pulled up.
    if (strip > 0.0f) {
        const float share = state.tall_sheet ? 0.8f : 0.54f;
        panel = std::min(panel, std::max(0.12f * room, share * room - strip));
    }
    layout.panel = {window.x0, layout.places.y0 - panel, window.x1, layout.places.y0};
    layout.diagram = {window.x0, layout.banner.y1, window.x1, layout.panel.y0};
    make_room_for_cycle(strip, layout);
    return layout;
}

Layout lay_out_wide(const Model& model, Canvas& canvas) {
    const TypeMeasure& type = canvas.type();
    const Box window = model.window;
    Layout layout;
    layout.compact = false;
    const float rail = std::max(96.0f, 40.0f + 62.0f * type.scale());
    // Before a class the drawing is what is looked at: the panel stays as wide as for plain text.
    const bool for_class = model.state->class_view.on && model.state->place == Place::press;
    const float widest = for_class ? 340.0f : 0.42f * window.width();
    constexpr float least = 320.0f;
    const float panel = std::clamp(200.0f + 140.0f * type.scale(), least, std::max(least, widest));
    layout.places = {window.x0, window.y0, window.x0 + rail, window.y1};
    layout.panel = {window.x1 - panel, window.y0, window.x1, window.y1};
    const float header = header_height(model, canvas, layout.panel.x0 - layout.places.x1);
    layout.header = {layout.places.x1, window.y0, layout.panel.x0, window.y0 + header + 8.0f};
    layout.banner = layout.header;
    layout.banner.y0 = layout.header.y1;
    layout.banner.y1 = layout.banner.y0 + banner_height(model, canvas, layout.header.width(), false);
    layout.diagram = {layout.places.x1, layout.banner.y1, layout.panel.x0, window.y1};
    const Box& diagram = layout.diagram;
    make_room_for_cycle(cycle_strip_room(model, diagram.width(), diagram.height(), canvas), layout);
    return layout;
}

} // namespace

Layout lay_out(const Model& model, Canvas& canvas) {
    const bool tall = model.window.height() > model.window.width();
    const bool compact = model.window.width() < compact_width || tall;
    return compact ? lay_out_compact(model, canvas) : lay_out_wide(model, canvas);
}

} // namespace carriageway
