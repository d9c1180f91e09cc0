#include "app/views/sheet.h"

#include "app/views/views.h"

namespace carriageway {

namespace {

constexpr float lowest = 480.0f; ///< dp: windows below it have no room beside a sheet
constexpr float corner = 20.0f;
constexpr int shade = 140;

} // namespace

void cover(Frame& frame) {
    frame.list.forget_things();
    frame.unseen.clear();
    for (ScrollArea& area : frame.scrolls)
        area.covered = true;
    frame.diagram = {};
    frame.typing = {};
}

bool fills_window(Box window) {
    return window.width() < compact_width || window.height() < lowest;
}

void sheet_ground(Canvas& canvas, std::string_view name, std::string_view label, Box box, bool full) {
    DrawingList& list = canvas.list();
    const Box all = list.window();
    Thing& sheet = list.thing(name, ThingRole::region, box);
    sheet.label.assign(label);
    sheet.target = all;
    if (full) {
        list.round(all, 0.0f, paint(Role::panel));
        return;
    }
    list.round(all, 0.0f, paint(Role::shade, shade));
    list.round(box, corner, paint(Role::panel));
    list.ring(box, corner, paint(Role::edge), 1.2f);
}

} // namespace carriageway
