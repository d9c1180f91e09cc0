#include "app/views/panel.h"

namespace carriageway {

namespace {

constexpr float sheet_corner = 16.0f;    ///< of a compact window's sheet
constexpr float behind_places = 20.0f;   ///< its lower corners lie behind the bar of places
constexpr float grip_width = 44.0f, grip_height = 5.0f, grip_row = 18.0f;
constexpr float grip_from_top = 9.0f;
constexpr float column_margin = 16.0f;   ///< left and right of the column
constexpr float column_top = 18.0f, column_top_of_sheet = 2.0f;
constexpr float column_bottom = 12.0f;
/// A sheet much wider than a hand reads better in a column of its own.
constexpr float widest_column = 560.0f;

void ground(const Box& box, bool compact, DrawingList& list) {
    if (!compact) {
        const Vec edge[] = {{box.x0, box.y0}, {box.x0, box.y1}};
        list.round(box, 0.0f, paint(Role::panel));
        list.line(edge, 2, paint(Role::edge), 1.0f);
        return;
    }
    const float bottom = box.y1 + behind_places;
    list.round({box.x0, box.y0, box.x1, bottom}, sheet_corner, paint(Role::panel));
    // Its sides lie outside the window: what shows is the upper edge.
    list.ring({box.x0 - 2.0f, box.y0, box.x1 + 2.0f, bottom}, sheet_corner, paint(Role::edge),
              1.0f);
}

/// What pulls a sheet up; its target is larger than what is drawn.
void grip(const Box& box, bool tall, Canvas& canvas) {
    constexpr float half = 60.0f, half_target = 80.0f, below = 20.0f, above = 24.0f;
    const float middle = box.centre().x;
    DrawingList& list = canvas.list();
    list.round(around({middle, box.y0 + grip_from_top}, grip_width, grip_height),
               0.5f * grip_height, paint(Role::edge));
    Thing& thing = list.thing("panel/grip", ThingRole::button,
                              {middle - half, box.y0, middle + half, box.y0 + below});
    thing.target = {middle - half_target, box.y0 - above, middle + half_target, box.y0 + below};
    thing.label.assign(canvas.word(tall ? Word::less : Word::more));
    thing.action = canvas.action(ToggleSheet{});
    thing.hold = canvas.hold(HoldSheet{});
}

} // namespace

void place_panel(const Model& model, const Layout& layout, std::string_view label, Canvas& canvas,
                 const std::function<void(Rows&)>& contents) {
    const ViewState& state = *model.state;
    DrawingList& list = canvas.list();
    list.set_layer(1);
    ground(layout.panel, layout.compact, list);
    list.thing("panel", ThingRole::region, layout.panel).label.assign(label);
    Box inside = layout.panel;
    if (layout.compact) {
        grip(layout.panel, state.tall_sheet, canvas);
        inside.y0 += grip_row;
    }
    list.push_clip(inside);
    const float top =
        inside.y0 + (layout.compact ? column_top_of_sheet : column_top) - state.panel_scroll;
    Rows rows{canvas, inside.x0 + column_margin, inside.width() - 2.0f * column_margin, top,
              Role::panel};
    if (layout.compact && rows.width > widest_column) {
        rows.x += 0.5f * (rows.width - widest_column);
        rows.width = widest_column;
    }
    contents(rows);
    list.pop_clip();
    canvas.frame().scrolls.push_back(
        {inside, rows.y - top + column_bottom, &ViewState::panel_scroll});
    list.set_layer(0);
}

} // namespace carriageway
