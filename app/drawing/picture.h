// A drawing list as a picture, without a window.
#pragma once

#include "app/drawing/drawing_list.h"
#include "app/drawing/raster.h"

namespace carriageway {

class Fonts;

/// Paints all layers of `list` on the theme's paper. `width` and `height` in pixels; the fonts say
/// how many pixels a dp has and must be those that the list was made with. The same list always
/// gives the same picture.
Picture paint_picture(const DrawingList& list, Theme theme, const Fonts& fonts, int width,
                      int height);

} // namespace carriageway
