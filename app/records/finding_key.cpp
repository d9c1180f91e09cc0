#include "app/records/finding_key.h"

namespace carriageway {

const char* finding_key(FindingKind kind) {
    switch (kind) {
    case FindingKind::both_sensors_on: return "both_sensors_on";
    case FindingKind::position_lost: return "position_lost";
    case FindingKind::unprinted: return "unprinted";
    case FindingKind::starved: return "starved";
    case FindingKind::heavy: return "heavy";
    case FindingKind::off_platen: return "off_platen";
    case FindingKind::near_platen_edge: return "near_platen_edge";
    case FindingKind::meets_frame: return "meets_frame";
    case FindingKind::beyond_range: return "beyond_range";
    case FindingKind::bead_too_narrow: return "bead_too_narrow";
    case FindingKind::wings_dig_in: return "wings_dig_in";
    case FindingKind::angle_unusual: return "angle_unusual";
    case FindingKind::blade_too_narrow: return "blade_too_narrow";
    case FindingKind::blade_off_platen: return "blade_off_platen";
    case FindingKind::flood_narrower: return "flood_narrower";
    case FindingKind::side_meets_frame: return "side_meets_frame";
    case FindingKind::image_outside_mesh: return "image_outside_mesh";
    case FindingKind::no_stops_fit: return "no_stops_fit";
    case FindingKind::run_past_short: return "run_past_short";
    case FindingKind::separation_thin: return "separation_thin";
    case FindingKind::stroke_too_long: return "stroke_too_long";
    case FindingKind::miss_likely: return "miss_likely";
    case FindingKind::speed_beyond_press: return "speed_beyond_press";
    case FindingKind::squeegee_high: return "squeegee_high";
    case FindingKind::flood_high: return "flood_high";
    case FindingKind::flood_low: return "flood_low";
    case FindingKind::screen_on_garment: return "screen_on_garment";
    case FindingKind::heights_uneven: return "heights_uneven";
    case FindingKind::gap_unusual: return "gap_unusual";
    case FindingKind::mesh_not_held: return "mesh_not_held";
    case FindingKind::pressure_unusual: return "pressure_unusual";
    case FindingKind::tension_low: return "tension_low";
    case FindingKind::tension_apart: return "tension_apart";
    case FindingKind::detail_too_fine: return "detail_too_fine";
    case FindingKind::length_differs: return "length_differs";
    }
    return "";
}

std::optional<FindingKind> finding_from(std::string_view key) {
    constexpr int count = static_cast<int>(FindingKind::length_differs) + 1;
    for (int i = 0; i < count; ++i)
        if (key == finding_key(static_cast<FindingKind>(i))) return static_cast<FindingKind>(i);
    return std::nullopt;
}

} // namespace carriageway
