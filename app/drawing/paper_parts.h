// The parts that a sheet is put together from. Each goes on at `pages.y` and begins new pages as it
// needs them.
#pragma once

#include "app/drawing/paper_page.h"
#include "app/drawing/paper_table.h"
#include "app/drawing/paper_words.h"

namespace carriageway {

// -- the overview
/// Title, what the job is about, the press from above, the link's code.
void front_part(const PaperJob& sheet, PaperPages& pages);
/// Every head's numbers in two tables.
void heads_part(const PaperJob& sheet, PaperPages& pages);
/// Stations without a head, the flash unit's and the cycle's numbers, what the recipe lacks, the
/// list before the run, cautions.
void run_part(const PaperJob& sheet, PaperPages& pages);

// -- what follows it
void head_page(const PaperJob& sheet, const Head& head, PaperPages& pages);
/// All heads side by side, a number a row.
void grid_pages(const PaperJob& sheet, PaperPages& pages);
/// What is to be fixed at every head.
void findings_part(const PaperJob& sheet, const Head& head, PaperPages& pages);

// -- rows of numbers with room to write down what was really set
float number_row_height(const PaperJob& sheet, HeadId head, Field field, float width,
                        const PaperPages& pages);
float entry_height(const PaperJob& sheet, HeadId head, Field field, float width,
                   const PaperPages& pages);
void draw_number_row(const PaperJob& sheet, HeadId head, Field field, Box box, PaperPages& pages);
float number_headings_height(const PaperJob& sheet, float width, const PaperPages& pages);
void draw_number_headings(const PaperJob& sheet, Vec at, float width, PaperPages& pages);
/// The box to tick, with its tick where it is done.
void draw_tick_box(DrawingList& list, Box box, bool done);
/// A box to write in; what is known already stands in it, and by whom.
void draw_entry(const PaperJob& sheet, HeadId head, Field field, Box box, PaperPages& pages);

// -- drawings
/// A drawing made for the screen, in black and greys.
void put_on_paper(const DrawingList& drawing, PaperPages& pages);
void press_drawing(const PaperJob& sheet, Box box, PaperPages& pages);
/// How many times smaller than it is a head was drawn, and where its drawing ends.
struct HeadDrawing {
    double times = 1.0;
    float bottom = 0.0f;
};
/// A head to scale, as large as it fits, from the top of a box.
HeadDrawing head_drawing(const PaperJob& sheet, const Head& head, Box box, PaperPages& pages);
/// A code's modules as one area, quiet zone included.
void code_drawing(const QrCode& code, Box box, PaperPages& pages);

} // namespace carriageway
