#include "app/text/fault_sentences.h"

#include <array>
#include <cmath>

#include "app/text/sentences.h"

namespace carriageway {
namespace {

// In the order of Evidence.
constexpr std::array condition_words{
    Word::evidence_both_sensors_on,
    Word::evidence_separation_thin,
    Word::evidence_position_lost,
    Word::evidence_unprinted,
    Word::evidence_starved,
    Word::evidence_heavy,
    Word::evidence_run_past_short,
    Word::evidence_side_overlap_short,
    Word::evidence_bead_narrow,
    Word::evidence_flood_narrower,
    Word::evidence_flood_unwinged,
    Word::evidence_wings_dig_in,
    Word::evidence_flood_high,
    Word::evidence_flood_low,
    Word::evidence_flood_fast,
    Word::evidence_flood_pressure_high,
    Word::evidence_squeegee_high,
    Word::evidence_blade_off_platen,
    Word::evidence_angle_unusual,
    Word::evidence_blade_soft,
    Word::evidence_blade_hard,
    Word::evidence_edge_rounded,
    Word::evidence_print_fast,
    Word::evidence_pressure_low,
    Word::evidence_pressure_high,
    Word::evidence_mesh_not_held,
    Word::evidence_gap_large,
    Word::evidence_gap_small,
    Word::evidence_heights_uneven,
    Word::evidence_level_out,
    Word::evidence_tension_low,
    Word::evidence_tension_apart,
    Word::evidence_length_differs,
    Word::evidence_film_thin,
    Word::evidence_detail_fine,
    Word::evidence_head_off,
    Word::evidence_screw_answers_otherwise,
    Word::evidence_play_large,
    Word::evidence_index_scatters,
    Word::evidence_prints_drift,
    Word::evidence_platen_off,
    Word::evidence_platen_hot,
    Word::evidence_dwell_short,
    Word::evidence_dwell_long,
    Word::evidence_prints_on_wet,
    Word::evidence_flash_missing,
    Word::evidence_cure_low,
    Word::evidence_cure_high,
    Word::evidence_air_noted,
    Word::evidence_set_otherwise,
    Word::evidence_left_unsecured};
static_assert(condition_words.size() == static_cast<std::size_t>(evidence_kinds));

/// Lengths that are told to a hundredth: what is read with a loupe or a gauge.
bool is_fine(Evidence evidence) {
    switch (evidence) {
        case Evidence::gap_large:
        case Evidence::gap_small:
        case Evidence::heights_uneven:
        case Evidence::level_out:
        case Evidence::length_differs:
        case Evidence::detail_fine:
        case Evidence::head_off:
        case Evidence::screw_answers_otherwise:
        case Evidence::play_large:
        case Evidence::index_scatters:
        case Evidence::prints_drift:
        case Evidence::platen_off: return true;
        default: return false;
    }
}

/// A figure rounded to so many decimals, with its unit.
std::string rounded(Language language, double value, Quantity quantity, LengthUnit unit,
                    int decimals) {
    const double step = std::pow(10.0, -decimals);
    return format_quantity(language, std::round(value / step) * step, quantity, unit);
}

std::string counted(Language language, double value, Word one, Word many) {
    return value == 1.0 ? say(language, one, {}) : say(language, many, {format_number(value, 0)});
}

std::string figure(Language language, LengthUnit unit, Evidence evidence, double value) {
    if (evidence == Evidence::air_noted)
        return say(language, Word::evidence_minutes, {format_number(value, 1)});
    if (evidence == Evidence::set_otherwise)
        return counted(language, value, Word::evidence_numbers_one, Word::evidence_numbers);
    const Quantity quantity = quantity_of(evidence).value_or(Quantity::ratio);
    switch (quantity) {
        case Quantity::length:
            return is_fine(evidence) ? format_fine_length(value, unit) : format_length(value, unit);
        case Quantity::angle: return format_angle(value);
        case Quantity::speed: return format_speed(value, unit);
        case Quantity::time: return format_time(value);
        case Quantity::count:
            return counted(language, value, Word::evidence_heads_one, Word::evidence_heads);
        case Quantity::tension:
        case Quantity::thread: return rounded(language, value, quantity, unit, 1);
        default: return rounded(language, value, quantity, unit, 0);
    }
}

/// Which sentence a condition takes, of those with what was found and perhaps a limit.
Word frame_of(Evidence evidence, const Sighting& sighting) {
    const bool seen = sighting.sight == Sight::seen;
    if (!quantity_of(evidence)) return seen ? Word::evidence_seen : Word::evidence_not_seen;
    // None of what must not be: the figure says nothing more.
    if (sighting.limit == 0.0 && !seen)
        return sighting.value > 0.0 ? Word::evidence_not_seen_value : Word::evidence_not_seen;
    if (sighting.limit == 0.0) return Word::evidence_seen_value;
    if (!seen) return Word::evidence_not_seen_limit;
    if (evidence == Evidence::screw_answers_otherwise) return Word::evidence_seen_profile;
    if (evidence == Evidence::index_scatters) return Word::evidence_seen_across;
    return Word::evidence_seen_limit;
}

} // namespace

Word evidence_word(Evidence evidence) {
    const auto index = static_cast<std::size_t>(evidence);
    return index < condition_words.size() ? condition_words[index] : Word::count;
}

std::string evidence_text(Language language, LengthUnit unit, const Job& job,
                          const Contribution& contribution, bool name_head) {
    if (contribution.kind != Contribution::Kind::evidence) return {};
    const Evidence evidence = contribution.evidence;
    const Sighting& sighting = contribution.sighting;
    const std::string_view condition = word(language, evidence_word(evidence));
    if (sighting.sight == Sight::not_known)
        return say(language, Word::evidence_not_known, {condition});
    const std::string sentence = say(language, frame_of(evidence, sighting),
                                     {condition, figure(language, unit, evidence, sighting.value),
                                      figure(language, unit, evidence, sighting.limit)});
    if (sighting.sight != Sight::seen) return sentence;
    if (sighting.platen > 0) {
        const std::string platen =
            say(language, Word::evidence_platen, {std::to_string(sighting.platen)});
        return say(language, Word::evidence_of, {platen, sentence});
    }
    const Head* head = find_head(job, sighting.head);
    if (!name_head || head == nullptr) return sentence;
    return say(language, Word::evidence_of, {head_title(language, *head), sentence});
}

std::string cause_share_text(double share) {
    if (share < 0.1) return format_share(share);
    return format_share(std::round(100.0 * share) / 100.0);
}

std::string factor_text(Language language, const Contribution& contribution) {
    const std::string factor = format_number(contribution.factor, 2);
    if (contribution.kind == Contribution::Kind::weight)
        return say(language, Word::factor_weight, {factor});
    if (contribution.factor == 1.0) return std::string(word(language, Word::factor_none));
    return say(language,
               contribution.factor > 1.0 ? Word::factor_for : Word::factor_against, {factor});
}

} // namespace carriageway
