#include "app/text/exercise_sentences.h"

#include <cmath>
#include <vector>

#include "app/text/sentences.h"

namespace carriageway {

namespace {

struct KindRow {
    Word title, about;
};

KindRow kind_row(ExerciseKind kind) {
    switch (kind) {
    case ExerciseKind::find_fault:
        return {Word::exercise_find_fault, Word::exercise_find_fault_short};
    case ExerciseKind::shortest_stroke:
        return {Word::exercise_shortest_stroke, Word::exercise_shortest_stroke_short};
    case ExerciseKind::trainee_angle:
        return {Word::exercise_trainee_angle, Word::exercise_trainee_angle_short};
    case ExerciseKind::which_dial:
        return {Word::exercise_which_dial, Word::exercise_which_dial_short};
    case ExerciseKind::read_sheet:
        return {Word::exercise_read_sheet, Word::exercise_read_sheet_short};
    case ExerciseKind::place_stations:
        return {Word::exercise_place_stations, Word::exercise_place_stations_short};
    case ExerciseKind::judge_gap:
        return {Word::exercise_judge_gap, Word::exercise_judge_gap_short};
    case ExerciseKind::count: break;
    }
    return {Word::count, Word::count};
}

std::string fine_gap(const Job& job, LengthUnit unit) {
    return format_fine_length(job.garment.compressed, unit);
}

/// With what this press's profile says of angles: without it, there is nothing to judge by.
std::string trainee_asked(Language language, const Exercise& exercise, const std::string& head) {
    const Angles& angles = exercise.job.press.angles;
    std::vector<std::string> said{
        say(language, Word::asked_trainee_angle,
            {head, word(language, field_word(exercise.field))}),
        say(language, Word::asked_trainee_range,
            {format_angle(angles.least), format_angle(angles.most)})};
    const Head* set = find_head(exercise.job, exercise.head);
    if (set && set->flood.winged && exercise.field == Field::flood_angle)
        said.push_back(
            say(language, Word::asked_trainee_wings, {format_angle(angles.wings_flat)}));
    return in_one_line(said);
}

} // namespace

ExerciseKindText exercise_kind_text(Language language, ExerciseKind kind) {
    const KindRow row = kind_row(kind);
    return {std::string(word(language, row.title)), std::string(word(language, row.about))};
}

std::string exercise_head_text(Language language, const Exercise& exercise, HeadId head) {
    const Head* found = find_head(exercise.job, head);
    return found ? head_title(language, *found)
                 : std::string(word(language, Word::exercise_whole));
}

std::string exercise_asked_text(Language language, LengthUnit unit, const Exercise& exercise) {
    const std::string head = exercise_head_text(language, exercise, exercise.head);
    const auto plain = [&](Word key) { return std::string(word(language, key)); };
    switch (exercise.kind) {
    case ExerciseKind::find_fault: return plain(Word::asked_find_fault);
    case ExerciseKind::shortest_stroke: return say(language, Word::asked_shortest_stroke, {head});
    case ExerciseKind::trainee_angle:
        return trainee_asked(language, exercise, head);
    case ExerciseKind::which_dial: return say(language, Word::asked_which_dial, {head});
    case ExerciseKind::read_sheet: return plain(Word::asked_read_sheet);
    case ExerciseKind::place_stations: return plain(Word::asked_place_stations);
    case ExerciseKind::judge_gap: {
        const bool shirt = exercise.job.garment.kind == GarmentKind::t_shirt;
        const bool height = exercise.field == Field::height_left;
        return say(language, height ? Word::asked_judge_height : Word::asked_judge_gap,
                   {head, word(language, shirt ? Word::garment_t_shirt : Word::garment_fleece),
                    fine_gap(exercise.job, unit)});
    }
    case ExerciseKind::count: break;
    }
    return {};
}

Word claim_word(FindingKind kind) {
    switch (kind) {
    case FindingKind::both_sensors_on: return Word::title_both_sensors_on;
    case FindingKind::position_lost: return Word::claim_position_lost;
    case FindingKind::unprinted: return Word::claim_unprinted;
    case FindingKind::starved: return Word::claim_starved;
    case FindingKind::heavy: return Word::claim_heavy;
    case FindingKind::off_platen: return Word::title_off_platen;
    case FindingKind::near_platen_edge: return Word::title_near_platen_edge;
    case FindingKind::meets_frame: return Word::claim_meets_frame;
    case FindingKind::beyond_range: return Word::title_beyond_range;
    case FindingKind::bead_too_narrow: return Word::title_bead_too_narrow;
    case FindingKind::wings_dig_in: return Word::title_wings_dig_in;
    case FindingKind::angle_unusual: return Word::claim_angle_unusual;
    case FindingKind::blade_too_narrow: return Word::claim_blade_too_narrow;
    case FindingKind::blade_off_platen: return Word::title_blade_off_platen;
    case FindingKind::flood_narrower: return Word::title_flood_narrower;
    case FindingKind::side_meets_frame: return Word::claim_side_meets_frame;
    case FindingKind::image_outside_mesh: return Word::claim_image_outside_mesh;
    case FindingKind::no_stops_fit: return Word::title_no_stops_fit;
    case FindingKind::run_past_short: return Word::claim_run_past_short;
    case FindingKind::separation_thin: return Word::title_separation_thin;
    case FindingKind::stroke_too_long: return Word::claim_stroke_too_long;
    case FindingKind::miss_likely: return Word::title_miss_likely;
    case FindingKind::speed_beyond_press: return Word::claim_speed_beyond_press;
    case FindingKind::squeegee_high: return Word::title_squeegee_high;
    case FindingKind::flood_high: return Word::title_flood_high;
    case FindingKind::flood_low: return Word::title_flood_low;
    case FindingKind::screen_on_garment: return Word::title_screen_on_garment;
    case FindingKind::heights_uneven: return Word::claim_heights_uneven;
    case FindingKind::gap_unusual: return Word::title_gap_unusual;
    case FindingKind::mesh_not_held: return Word::title_mesh_not_held;
    case FindingKind::pressure_unusual: return Word::claim_pressure_unusual;
    case FindingKind::tension_low: return Word::title_tension_low;
    case FindingKind::tension_apart: return Word::title_tension_apart;
    case FindingKind::detail_too_fine: return Word::title_detail_too_fine;
    case FindingKind::length_differs: return Word::title_length_differs;
    }
    return Word::count;
}

Word breaking_word(BreakingKind kind) {
    switch (kind) {
    case BreakingKind::stops_together: return Word::breaking_stops_together;
    case BreakingKind::operator_stop_in: return Word::breaking_operator_stop_in;
    case BreakingKind::machine_stop_in: return Word::breaking_machine_stop_in;
    case BreakingKind::operator_stop_out: return Word::breaking_operator_stop_out;
    case BreakingKind::machine_stop_out: return Word::breaking_machine_stop_out;
    case BreakingKind::flood_too_flat: return Word::breaking_flood_too_flat;
    case BreakingKind::squeegee_too_steep: return Word::breaking_squeegee_too_steep;
    case BreakingKind::squeegee_narrow: return Word::breaking_squeegee_narrow;
    case BreakingKind::flood_narrow: return Word::breaking_flood_narrow;
    case BreakingKind::too_fast: return Word::breaking_too_fast;
    case BreakingKind::squeegee_lifted: return Word::breaking_squeegee_lifted;
    case BreakingKind::one_side_high: return Word::breaking_one_side_high;
    case BreakingKind::screen_low: return Word::breaking_screen_low;
    case BreakingKind::mesh_slack: return Word::breaking_mesh_slack;
    case BreakingKind::image_aside: return Word::breaking_image_aside;
    case BreakingKind::count: break;
    }
    return Word::count;
}

std::string adjuster_text(Language language, const Adjuster& adjuster) {
    if (!adjuster.name.empty()) return adjuster.name;
    switch (adjuster.side) {
    case AdjusterSide::left: return std::string(word(language, Word::adjuster_side_left));
    case AdjusterSide::right: return std::string(word(language, Word::adjuster_side_right));
    case AdjusterSide::across: break;
    }
    return std::string(word(language, Word::adjuster_side_across));
}

std::string adjuster_effect_text(Language language, const Adjuster& adjuster) {
    const bool plus = adjuster.clockwise_positive;
    if (adjuster.side == AdjusterSide::across)
        return say(language, Word::adjuster_moves_across,
                   {word(language, plus ? Word::adjuster_to_right : Word::adjuster_to_left)});
    return say(language,
               adjuster.side == AdjusterSide::left ? Word::adjuster_moves_left
                                                   : Word::adjuster_moves_right,
               {word(language, plus ? Word::toward_machine : Word::toward_operator)});
}

namespace {

/// The name of an ink that exercises are made with (core/exercise_job.cpp).
Word ink_word(std::uint32_t ink) {
    switch (ink) {
    case 0xE69F00: return Word::ink_orange;
    case 0x56B4E9: return Word::ink_sky_blue;
    case 0x009E73: return Word::ink_green;
    case 0xF0E442: return Word::ink_yellow;
    case 0x0072B2: return Word::ink_blue;
    case 0xD55E00: return Word::ink_red;
    case 0xCC79A7: return Word::ink_pink;
    default: return Word::count; // none: it keeps its number
    }
}

} // namespace

void name_exercise(Language language, Exercise& exercise) {
    exercise.job.name = exercise_kind_text(language, exercise.kind).title;
    for (Head& head : exercise.job.heads) {
        const std::string_view name = word(language, ink_word(head.ink));
        if (!name.empty()) head.colour = name;
    }
}

Word turn_word(bool clockwise) {
    return clockwise ? Word::reg_clockwise : Word::reg_counter_clockwise;
}

std::string exercise_number_text(Language, LengthUnit unit, const Exercise& exercise,
                                 double value) {
    return exercise.kind == ExerciseKind::trainee_angle ? format_angle(value)
                                                        : format_fine_length(value, unit);
}

int points_of(double share) {
    // Rounding of sums must not take a point away.
    constexpr double slack = 1e-6;
    return static_cast<int>(std::trunc(100.0 * share + (share < 0.0 ? -slack : slack)));
}

} // namespace carriageway
