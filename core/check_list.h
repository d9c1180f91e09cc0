// The lists that go with a run: what is looked at before it, when its first piece is there, before
// the night, before screens come off, and at the end. Which steps a press needs is its profile's;
// words of the usual steps come from the catalogue, a person's own step has a text.
//
// All steps are the trade's habit: common practice, no source.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/caution.h"

namespace carriageway {

/// When a step is due.
enum class CheckList { before_run, first_piece, before_night, before_unloading, tear_down };
inline constexpr int check_lists = 5;

/// A usual step; `own` has a text instead.
enum class CheckStep {
    own,
    // before the run
    table_clear,        ///< nothing and nobody in the index path
    guards_closed,
    arms_down_locked,
    holders_seated,     ///< squeegee and flood bar seated and centred in their holders
    screens_at_stop,    ///< against the rear stop far enough, not hard against the frame
    clamps_in_order,
    pressure_locked,
    stops_tight,
    screens_taped,
    ink_in_screens,
    platens_glued,
    flash_warm,
    // first piece
    image_complete,
    colours_meet,
    hand_feels_right,   ///< the print's feel and thickness
    wash_or_stretch,    ///< a cure test on the first piece
    place_on_garment,
    // before the night
    screens_held_mechanically, ///< air leaks away and clamps let go
    ink_covered,
    heads_up,
    flash_off_cooled,
    air_and_power_off,
    // before unloading
    mechanical_hold_released,
    arms_up_locked,
    air_bled,
    // tear-down
    ink_out,
    blades_out_washed,
    screens_out,
    adjusters_to_middle,
    stops_noted,
    platens_cleaned,
    count, ///< how many there are; not a step
};

/// One step of a press's lists.
struct CheckItem {
    std::uint32_t id = 0; ///< above 0, unique among the profile's items
    CheckList list = CheckList::before_run;
    CheckStep step = CheckStep::own;
    std::string text;     ///< of an own step; empty otherwise
    Caution caution = Caution::none; ///< of an own step; that of a usual one is caution_of()
    bool operator==(const CheckItem&) const = default;
};

/// Most steps that a profile keeps. Ours.
inline constexpr std::size_t most_check_items = 200;

/// The list that a usual step belongs to, and what to mind with it. `own` and values outside the
/// enum: before_run, none.
CheckList list_of(CheckStep step);
Caution caution_of(CheckStep step);
inline Caution caution_of(const CheckItem& item) {
    return item.step == CheckStep::own ? item.caution : caution_of(item.step);
}

/// Every usual step, in the order in which it is worked, with ids from 1.
const std::vector<CheckItem>& usual_checks();

} // namespace carriageway
