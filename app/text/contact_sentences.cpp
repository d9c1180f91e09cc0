// Findings of heights, air, tension, detail and length in words.
#include "app/text/finding_telling.h"

namespace carriageway {
namespace {

std::string fine(const Telling& t, double mm) {
    return format_fine_length(mm, t.unit);
}

std::string quantity(const Telling& t, double value, Quantity of, int decimals) {
    const double step = std::pow(10.0, decimals);
    return format_quantity(t.language, std::round(value * step) / step, of, t.unit);
}

Saying edge_height(const Telling& t, Word title, Word why, Word label) {
    const std::string value = fine(t, t.finding.value);
    return {t.plain(title), say(t.language, why, {value}), say(t.language, label, {value})};
}

Saying screen_on_garment(const Telling& t) {
    const bool touches = t.finding.value > -0.005;
    return {t.plain(Word::title_screen_on_garment),
            touches ? t.plain(Word::why_screen_touches_garment)
                    : say(t.language, Word::why_screen_on_garment, {fine(t, -t.finding.value)}),
            t.plain(Word::label_on_garment)};
}

Saying heights_uneven(const Telling& t) {
    const std::string value = fine(t, t.finding.value);
    return {say(t.language, Word::title_heights_uneven, {t.side()}),
            say(t.language, Word::why_heights_uneven, {t.side(), value, fine(t, t.finding.limit)}),
            say(t.language, Word::label_higher, {value})};
}

Saying gap_unusual(const Telling& t) {
    const bool low = t.finding.value < t.finding.limit;
    const std::string value = fine(t, t.finding.value);
    const bool ours = t.job.garment.kind == GarmentKind::fleece;
    const Word why = ours ? (low ? Word::why_gap_low_ours : Word::why_gap_high_ours)
                          : (low ? Word::why_gap_low : Word::why_gap_high);
    return {t.plain(Word::title_gap_unusual),
            say(t.language, why,
                {value, fine(t, t.finding.limit)}),
            say(t.language, Word::label_gap, {value})};
}

Saying mesh_not_held(const Telling& t) {
    const std::string load = quantity(t, t.finding.value, Quantity::tension, 2);
    const std::string needed = quantity(t, t.finding.limit, Quantity::tension, 2);
    return {t.plain(Word::title_mesh_not_held),
            say(t.language, Word::why_mesh_not_held, {load, needed}),
            say(t.language, Word::label_load, {load, needed})};
}

Saying pressure_unusual(const Telling& t) {
    const bool low = t.finding.value < t.finding.limit;
    const std::string value = quantity(t, t.finding.value, Quantity::pressure, 0);
    return {t.plain(t.of_flood() ? Word::title_flood_pressure_unusual
                                 : Word::title_squeegee_pressure_unusual),
            say(t.language, low ? Word::why_pressure_low : Word::why_pressure_high,
                {value, quantity(t, t.finding.limit, Quantity::pressure, 0)}),
            say(t.language, Word::label_speed, {value})};
}

Saying tension(const Telling& t, Word title, Word why) {
    const std::string value = quantity(t, std::abs(t.finding.value), Quantity::tension, 1);
    return {t.plain(title),
            say(t.language, why, {value, quantity(t, t.finding.limit, Quantity::tension, 1)}),
            say(t.language, Word::label_tension, {value})};
}

Saying detail_too_fine(const Telling& t) {
    const std::string value = fine(t, t.finding.value);
    return {t.plain(Word::title_detail_too_fine),
            say(t.language, Word::why_detail_too_fine, {value, fine(t, t.finding.limit)}),
            say(t.language, Word::label_line, {value})};
}

Saying length_differs(const Telling& t) {
    const bool longer = t.finding.value > 0.0;
    const std::string value = fine(t, std::abs(t.finding.value));
    return {t.plain(Word::title_length_differs),
            say(t.language, longer ? Word::why_prints_longer : Word::why_prints_shorter,
                {value, fine(t, t.finding.limit)}),
            say(t.language, longer ? Word::label_longer : Word::label_shorter, {value})};
}

} // namespace

Saying contact_saying(const Telling& t) {
    switch (t.finding.kind) {
        case FindingKind::squeegee_high:
            return edge_height(t, Word::title_squeegee_high, Word::why_squeegee_high,
                               Word::label_above_garment);
        case FindingKind::flood_high:
            return edge_height(t, Word::title_flood_high, Word::why_flood_high,
                               Word::label_above_mesh);
        case FindingKind::flood_low:
            return edge_height(t, Word::title_flood_low, Word::why_flood_low,
                               Word::label_into_garment);
        case FindingKind::screen_on_garment:
            return screen_on_garment(t);
        case FindingKind::heights_uneven:
            return heights_uneven(t);
        case FindingKind::gap_unusual:
            return gap_unusual(t);
        case FindingKind::mesh_not_held:
            return mesh_not_held(t);
        case FindingKind::pressure_unusual:
            return pressure_unusual(t);
        case FindingKind::tension_low:
            return tension(t, Word::title_tension_low, Word::why_tension_low);
        case FindingKind::tension_apart:
            return tension(t, Word::title_tension_apart, Word::why_tension_apart);
        case FindingKind::detail_too_fine:
            return detail_too_fine(t);
        case FindingKind::length_differs:
            return length_differs(t);
        default:
            return {};
    }
}

} // namespace carriageway
