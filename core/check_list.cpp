#include "core/check_list.h"

#include <array>

namespace carriageway {
namespace {

struct Row {
    CheckStep step;
    CheckList list;
    Caution caution;
};

using S = CheckStep;
using L = CheckList;
using C = Caution;

constexpr std::array<Row, static_cast<std::size_t>(CheckStep::count) - 1> rows{{
    {S::table_clear, L::before_run, C::index_path},
    {S::guards_closed, L::before_run, C::index_path},
    {S::arms_down_locked, L::before_run, C::hands_in_carriage},
    {S::holders_seated, L::before_run, C::hands_in_carriage},
    {S::screens_at_stop, L::before_run, C::none},
    {S::clamps_in_order, L::before_run, C::hands_in_carriage},
    {S::pressure_locked, L::before_run, C::none},
    {S::stops_tight, L::before_run, C::hands_in_carriage},
    {S::screens_taped, L::before_run, C::none},
    {S::ink_in_screens, L::before_run, C::solvents},
    {S::platens_glued, L::before_run, C::solvents},
    {S::flash_warm, L::before_run, C::hot_surface},
    {S::image_complete, L::first_piece, C::none},
    {S::colours_meet, L::first_piece, C::none},
    {S::hand_feels_right, L::first_piece, C::none},
    {S::wash_or_stretch, L::first_piece, C::hot_surface},
    {S::place_on_garment, L::first_piece, C::none},
    {S::screens_held_mechanically, L::before_night, C::hands_in_carriage},
    {S::ink_covered, L::before_night, C::solvents},
    {S::heads_up, L::before_night, C::index_path},
    {S::flash_off_cooled, L::before_night, C::hot_surface},
    {S::air_and_power_off, L::before_night, C::isolated_and_bled},
    {S::mechanical_hold_released, L::before_unloading, C::hands_in_carriage},
    {S::arms_up_locked, L::before_unloading, C::hands_in_carriage},
    {S::air_bled, L::before_unloading, C::isolated_and_bled},
    {S::ink_out, L::tear_down, C::solvents},
    {S::blades_out_washed, L::tear_down, C::solvents},
    {S::screens_out, L::tear_down, C::isolated_and_bled},
    {S::adjusters_to_middle, L::tear_down, C::isolated_and_bled},
    {S::stops_noted, L::tear_down, C::none},
    {S::platens_cleaned, L::tear_down, C::solvents},
}};

constexpr bool in_order() {
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (static_cast<std::size_t>(rows[i].step) != i + 1) return false;
    return true;
}
static_assert(in_order(), "the rows stand in the order of CheckStep, behind `own`");

constexpr Row not_a_step{CheckStep::own, CheckList::before_run, Caution::none};

const Row& row_of(CheckStep step) {
    const bool usual = step > CheckStep::own && step < CheckStep::count;
    return usual ? rows[static_cast<std::size_t>(step) - 1] : not_a_step;
}

std::vector<CheckItem> made() {
    std::vector<CheckItem> items;
    for (const Row& row : rows)
        items.push_back({static_cast<std::uint32_t>(items.size() + 1), row.list, row.step, {},
                         Caution::none});
    return items;
}

} // namespace

CheckList list_of(CheckStep step) { return row_of(step).list; }
Caution caution_of(CheckStep step) { return row_of(step).caution; }

const std::vector<CheckItem>& usual_checks() {
    static const std::vector<CheckItem> items = made();
    return items;
}

} // namespace carriageway
