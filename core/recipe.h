// The recipe: what must be known for a job to come back as it was, head by head and for the job.
//
// Nothing here is forced: a gap is shown, and the job runs with it. What was really set on the walk
// counts as known. Which entries a recipe has is common practice, no source.
#pragma once

#include <vector>

#include "core/fields.h"
#include "core/job.h"

namespace carriageway {

/// One thing to know.
enum class RecipeItem {
    // of a head
    mesh,             ///< count and thread
    stencil_note,     ///< emulsion or film, coats, exposure
    stencil_build_up, ///< on the print side
    ink_note,         ///< kind, mix, additives
    blade_hardness,
    blade_edge,
    stroke_pattern, ///< print strokes, and which way they print
    speeds,         ///< of print and flood
    pressures,      ///< of squeegee and flood bar
    off_contact,
    // of the job
    garment_name, ///< fabric, weight, colour
    platen_size,
    flash_dwell,
    flash_temperature,
    dryer, ///< temperature and time
    count, ///< how many there are; not an entry
};

struct RecipeEntry {
    RecipeItem item = RecipeItem::mesh;
    HeadId head = 0; ///< 0: of the job
    bool known = false;
    bool operator==(const RecipeEntry&) const = default;
};

/// Every entry of a job: head by head in the order of their stations, then the job's. The flash's
/// are there where a station has a flash unit or a colour wants one. A number is known, even one
/// that was never touched, unless it is 0 where 0 stands for not noted; a text is, unless it is
/// empty.
std::vector<RecipeEntry> recipe_of(const Job& job);

/// The entries that aren't known, in the same order.
std::vector<RecipeEntry> recipe_gaps(const Job& job);

/// Whether a value of this field stands for "nobody has noted it": 0 in fields where 0 can't be
/// meant.
bool is_not_noted(Field field, double value);

} // namespace carriageway
