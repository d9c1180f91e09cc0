// The panel beside or below a place's drawing: its ground, its grip and the column in it.
#pragma once

#include <functional>

#include "app/views/views.h"

namespace carriageway {

/// Draws the panel of a place where the layout has it and lets `contents` fill its column, which
/// scrolls. In a compact window the panel is a sheet with a grip. `label` is read aloud.
void place_panel(const Model& model, const Layout& layout, std::string_view label, Canvas& canvas,
                 const std::function<void(Rows&)>& contents);

} // namespace carriageway
