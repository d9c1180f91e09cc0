// Measuring a press: what has been read so far. Nothing here is part of a job; what follows from it
// becomes one edit when the person says so.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measured_press.h"

namespace carriageway {

/// What is measured: the procedure that feeds a field, or a screw's travel a turn.
struct MeasureTarget {
    Field field = Field::count;      ///< the procedure's first; Field::count: a screw
    std::optional<ScrewPlace> screw; ///< which, where it is one
    bool operator==(const MeasureTarget&) const = default;
};

/// A target with the readings taken for it, one list for each kind that its procedure needs, in the
/// procedure's order.
struct Taking {
    MeasureTarget target;
    std::vector<KindReadings> lists;
};

/// The sheet for measuring.
struct Measuring {
    bool open = false;
    std::optional<MeasureTarget> target; ///< shown; nothing: the list of all
    bool direct = false;   ///< came straight to this target: closing it closes the sheet
    std::vector<Taking> taken; ///< readings stay when the sheet is closed
    std::string opener;    ///< what had the keyboard's focus before
};

/// What the number pad is open for, where it isn't a field of the job.
struct PadReading {
    std::size_t list = 0;  ///< which of the target's lists
    bool step = false;     ///< the smallest step that can be read, not a reading
    Quantity quantity = Quantity::length;
    bool on_ruler = false; ///< typed as the arm's ruler shows it
    std::string label;     ///< in the user's language
};

} // namespace carriageway
