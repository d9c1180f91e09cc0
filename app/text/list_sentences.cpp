#include "app/text/list_sentences.h"

#include <array>

#include "app/text/measure.h"

namespace carriageway {
namespace {

// In the order of CheckStep, behind `own`.
constexpr std::array step_words{
    Word::step_table_clear,
    Word::step_guards_closed,
    Word::step_arms_down_locked,
    Word::step_holders_seated,
    Word::step_screens_at_stop,
    Word::step_clamps_in_order,
    Word::step_pressure_locked,
    Word::step_stops_tight,
    Word::step_screens_taped,
    Word::step_ink_in_screens,
    Word::step_platens_glued,
    Word::step_flash_warm,
    Word::step_image_complete,
    Word::step_colours_meet,
    Word::step_hand_feels_right,
    Word::step_wash_or_stretch,
    Word::step_place_on_garment,
    Word::step_screens_held_mechanically,
    Word::step_ink_covered,
    Word::step_heads_up,
    Word::step_flash_off_cooled,
    Word::step_air_and_power_off,
    Word::step_mechanical_hold_released,
    Word::step_arms_up_locked,
    Word::step_air_bled,
    Word::step_ink_out,
    Word::step_blades_out_washed,
    Word::step_screens_out,
    Word::step_adjusters_to_middle,
    Word::step_stops_noted,
    Word::step_platens_cleaned,
};
static_assert(step_words.size() + 1 == static_cast<std::size_t>(CheckStep::count));

} // namespace

Word list_word(CheckList list) {
    switch (list) {
    case CheckList::before_run: return Word::list_before_run;
    case CheckList::first_piece: return Word::list_first_piece;
    case CheckList::before_night: return Word::list_before_night;
    case CheckList::before_unloading: return Word::list_before_unloading;
    case CheckList::tear_down: return Word::list_tear_down;
    }
    return Word::count;
}

Word step_word(CheckStep step) {
    const bool usual = step > CheckStep::own && step < CheckStep::count;
    return usual ? step_words[static_cast<std::size_t>(step) - 1] : Word::count;
}

std::string step_text(Language language, const CheckItem& item) {
    return item.step == CheckStep::own ? item.text
                                       : std::string(word(language, step_word(item.step)));
}

Word reason_word(StopReason reason) {
    switch (reason) {
    case StopReason::other: return Word::reason_other;
    case StopReason::ink: return Word::reason_ink;
    case StopReason::blade: return Word::reason_blade;
    case StopReason::screen: return Word::reason_screen;
    case StopReason::registration: return Word::reason_registration;
    case StopReason::garments: return Word::reason_garments;
    case StopReason::air: return Word::reason_air;
    case StopReason::machine: return Word::reason_machine;
    case StopReason::flash: return Word::reason_flash;
    case StopReason::pause: return Word::reason_pause;
    case StopReason::count: break;
    }
    return Word::count;
}

std::string stoppage_text(Language language, const Stoppage& stoppage) {
    return say(language, Word::stoppage_row,
               {format_number(stoppage.minutes, 1), word(language, reason_word(stoppage.reason))});
}

std::string count_text(Language language, const PieceCount& count) {
    std::string text = say(language, Word::tally_printed, {format_number(count.printed, 0)});
    if (count.spoiled > 0.0)
        text += ", " + say(language, Word::tally_spoiled, {format_number(count.spoiled, 0)});
    return text;
}

Word sign_word(Caution caution) {
    switch (caution) {
    case Caution::none: break;
    case Caution::hands_in_carriage: return Word::sign_hands;
    case Caution::index_path: return Word::sign_index_path;
    case Caution::isolated_and_bled: return Word::sign_isolated;
    case Caution::lamps_alive: return Word::sign_lamps;
    case Caution::hot_surface: return Word::sign_hot;
    case Caution::solvents: return Word::sign_solvents;
    }
    return Word::count;
}

} // namespace carriageway
