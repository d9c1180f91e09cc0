// A page of the sheet, small: what will be where. Letters are too small to be read and stand as
// bars.
#pragma once

#include "app/drawing/drawing_list.h"

namespace carriageway {

/// Draws a page made for paper (paper_sheet.h) into a box of its shape, on white in both themes.
void draw_paper_preview(const DrawingList& page, Box box, DrawingList& list);

} // namespace carriageway
