// Findings in words: for each kind its title, its reason, its label and its remedy.
#include <cmath>

#include "app/text/finding_telling.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

// ---- missed image ----

Saying missed(const Telling& t, Word title, Word at_end, Word at_side, Word in_all, Word label) {
    Saying out;
    out.title = say(t.language, title, {t.side()});
    out.label = say(t.language, label, {t.value()});
    if (t.along()) {
        out.why = say(t.language, at_end, {t.value(), t.length(t.job.wishes.run_past)});
    } else if (t.across()) {
        out.why = say(t.language, at_side, {t.value(), t.length(t.job.wishes.side_overlap)});
    } else {
        out.why = say(t.language, in_all, {t.value()});
    }
    return out;
}

Saying run_past_short(const Telling& t) {
    Word why = Word::why_run_past_short;
    if (t.finding.part == Part::squeegee) why = Word::why_squeegee_run_past_short;
    if (t.of_flood()) why = Word::why_flood_run_past_short;
    return {say(t.language, Word::title_run_past_short, {t.side()}),
            say(t.language, why, {t.side(), t.value(), t.limit()}),
            say(t.language, Word::label_run_past, {t.value()})};
}

Saying too_narrow(const Telling& t) {
    const bool inside = t.finding.value < 0.0;
    const Word squeegee = inside ? Word::why_squeegee_inside_image : Word::why_squeegee_too_narrow;
    const Word flood = inside ? Word::why_flood_inside_image : Word::why_flood_too_narrow;
    return {
        t.plain(t.of_flood() ? Word::title_flood_too_narrow : Word::title_squeegee_too_narrow),
        say(t.language, t.of_flood() ? flood : squeegee, {t.value(), t.limit()}),
        say(t.language, inside ? Word::label_too_narrow : Word::label_side_overlap, {t.value()})};
}

// ---- what is too near ----

Saying meets_frame(const Telling& t) {
    const bool into = t.finding.value < 0.0;
    Saying out;
    if (t.of_flood()) {
        out.title = t.plain(into ? Word::title_flood_meets_frame : Word::title_flood_near_frame);
        out.why = say(t.language, into ? Word::why_flood_meets_frame : Word::why_flood_near_frame,
                      {t.side(), t.value(), t.limit()});
    } else {
        out.title =
            t.plain(into ? Word::title_squeegee_meets_frame : Word::title_squeegee_near_frame);
        out.why =
            say(t.language, into ? Word::why_squeegee_meets_frame : Word::why_squeegee_near_frame,
                {t.side(), t.value(), t.limit()});
    }
    out.label = say(t.language, into ? Word::label_into_frame : Word::label_to_frame, {t.value()});
    return out;
}

Saying platen_edge(const Telling& t, bool off) {
    if (off) {
        return {t.plain(Word::title_off_platen),
                say(t.language, Word::why_off_platen, {t.side(), t.value()}),
                say(t.language, Word::label_off_platen, {t.value()})};
    }
    return {t.plain(Word::title_near_platen_edge),
            say(t.language, Word::why_near_platen_edge, {t.side(), t.value(), t.limit()}),
            say(t.language, Word::label_inside_platen, {t.value()})};
}

Saying too_wide(const Telling& t, Word title, Word why, Word label) {
    return {t.plain(title), say(t.language, why, {t.value(), t.limit()}),
            say(t.language, label, {t.length(std::abs(t.finding.value - t.finding.limit))})};
}

Saying bead(const Telling& t) {
    const bool none = t.finding.value <= 0.0;
    const std::string between = none ? format_length(0.0, t.unit) : t.value();
    return {t.plain(none ? Word::title_no_bead : Word::title_bead_too_narrow),
            say(t.language, none ? Word::why_no_bead : Word::why_bead_too_narrow,
                {t.value(), t.limit()}),
            say(t.language, Word::label_between_edges, {between})};
}

Saying outside_mesh(const Telling& t) {
    return {say(t.language, Word::title_image_outside_mesh, {t.side()}),
            say(t.language, Word::why_image_outside_mesh, {t.value()}),
            say(t.language, Word::label_outside_mesh, {t.value()})};
}

// ---- angles and speeds ----

Saying wings(const Telling& t) {
    const std::string angle = format_angle(t.finding.value);
    return {t.plain(Word::title_wings_dig_in),
            say(t.language, Word::why_wings_dig_in, {angle, format_angle(t.finding.limit)}),
            say(t.language, Word::label_wings, {angle})};
}

Saying angle_unusual(const Telling& t) {
    const bool low = t.finding.value < t.finding.limit;
    const Word squeegee = low ? Word::why_squeegee_angle_low : Word::why_squeegee_angle_high;
    const Word flood = low ? Word::why_flood_angle_low : Word::why_flood_angle_high;
    const std::string angle = format_angle(t.finding.value);
    return {
        t.plain(t.of_flood() ? Word::title_flood_angle_unusual
                             : Word::title_squeegee_angle_unusual),
        say(t.language, t.of_flood() ? flood : squeegee, {angle, format_angle(t.finding.limit)}),
        say(t.language, Word::label_angle, {angle})};
}

Saying too_fast(const Telling& t) {
    const std::string speed = format_speed(t.finding.value, t.unit);
    return {
        t.plain(t.of_flood() ? Word::title_flood_speed_beyond : Word::title_print_speed_beyond),
        say(t.language, t.of_flood() ? Word::why_flood_speed_beyond : Word::why_print_speed_beyond,
            {speed, format_speed(t.finding.limit, t.unit)}),
        say(t.language, Word::label_speed, {speed})};
}

// ---- stops and sensors ----

Saying both_on_saying(const Telling& t) {
    return {t.plain(Word::title_both_sensors_on),
            say(t.language, Word::why_both_sensors_on, {t.value(), t.limit()}),
            t.plain(Word::label_both_sensors_on)};
}

Saying position_lost(const Telling& t) {
    return {
        say(t.language, Word::title_position_lost, {t.side()}),
        say(t.language, Word::why_position_lost, {t.side(), t.value(), t.limit()}),
        say(t.language, Word::label_position_lost, {t.length(t.finding.value - t.finding.limit)})};
}

Saying no_stops_fit(const Telling& t) {
    Saying out{t.plain(Word::title_no_stops_fit),
               {},
               say(t.language, Word::label_no_stops_fit, {t.value()})};
    if (t.worked.conflict) out.why = conflict_text(t.language, t.unit, *t.worked.conflict);
    return out;
}

Saying stroke_too_long(const Telling& t) {
    return {say(t.language, Word::title_stroke_too_long, {t.value()}),
            say(t.language, Word::why_stroke_too_long, {t.value()}),
            say(t.language, Word::label_stroke_too_long, {t.value()})};
}

Saying miss_likely(const Telling& t) {
    const std::string chance = format_chance(t.language, t.finding.value);
    return {t.plain(Word::title_miss_likely), say(t.language, Word::why_miss_likely, {chance}),
            say(t.language, Word::label_missed_on, {chance})};
}

Saying beyond_range(const Telling& t) {
    return {t.plain(Word::title_beyond_range),
            say(t.language, Word::why_beyond_range, {t.side(), t.value()}),
            say(t.language, Word::label_beyond_range, {t.value()})};
}

Saying separation_thin(const Telling& t) {
    return {t.plain(Word::title_separation_thin),
            say(t.language, Word::why_separation_thin, {t.value(), t.limit()}),
            say(t.language, Word::label_apart, {t.value()})};
}

Saying saying(const Telling& t) {
    switch (t.finding.kind) {
        case FindingKind::both_sensors_on:
            return both_on_saying(t);
        case FindingKind::position_lost:
            return position_lost(t);
        case FindingKind::unprinted:
            return missed(t, Word::title_unprinted, Word::why_unprinted_end,
                          Word::why_unprinted_side, Word::why_unprinted_all,
                          Word::label_not_printed);
        case FindingKind::starved:
            return missed(t, Word::title_starved, Word::why_starved_end, Word::why_starved_side,
                          Word::why_starved_all, Word::label_not_flooded);
        case FindingKind::heavy:
            return missed(t, Word::title_heavy, Word::why_heavy_end, Word::why_starved_side,
                          Word::why_starved_all, Word::label_not_flooded);
        case FindingKind::off_platen:
            return platen_edge(t, true);
        case FindingKind::near_platen_edge:
            return platen_edge(t, false);
        case FindingKind::meets_frame:
        case FindingKind::side_meets_frame:
            return meets_frame(t);
        case FindingKind::beyond_range:
            return beyond_range(t);
        case FindingKind::bead_too_narrow:
            return bead(t);
        case FindingKind::wings_dig_in:
            return wings(t);
        case FindingKind::angle_unusual:
            return angle_unusual(t);
        case FindingKind::blade_too_narrow:
            return too_narrow(t);
        case FindingKind::blade_off_platen:
            return too_wide(t, Word::title_blade_off_platen, Word::why_blade_off_platen,
                            Word::label_too_wide);
        case FindingKind::flood_narrower:
            return too_wide(t, Word::title_flood_narrower, Word::why_flood_narrower,
                            Word::label_too_narrow);
        case FindingKind::image_outside_mesh:
            return outside_mesh(t);
        case FindingKind::no_stops_fit:
            return no_stops_fit(t);
        case FindingKind::run_past_short:
            return run_past_short(t);
        case FindingKind::separation_thin:
            return separation_thin(t);
        case FindingKind::stroke_too_long:
            return stroke_too_long(t);
        case FindingKind::miss_likely:
            return miss_likely(t);
        case FindingKind::speed_beyond_press:
            return too_fast(t);
        case FindingKind::squeegee_high:
        case FindingKind::flood_high:
        case FindingKind::flood_low:
        case FindingKind::screen_on_garment:
        case FindingKind::heights_uneven:
        case FindingKind::gap_unusual:
        case FindingKind::mesh_not_held:
        case FindingKind::pressure_unusual:
        case FindingKind::tension_low:
        case FindingKind::tension_apart:
        case FindingKind::detail_too_fine:
        case FindingKind::length_differs:
            return contact_saying(t);
    }
    return {};
}

// ---- remedies ----

RemedyText stops_remedy(const Telling& t) {
    const Stops& from = t.head->stops;
    const Stops& to = t.finding.remedy.stops;
    RemedyText text = stops_text(t.language, t.unit, t.job.press.ruler, from, to);
    const double shorter = separation(from) - separation(to);
    if (t.finding.kind == FindingKind::stroke_too_long && shorter > 0.0 && !text.main.empty()) {
        put(text.main, say(t.language, Word::remedy_shorten, {t.length(shorter)}));
    }
    return text;
}

RemedyText number_remedy(const Telling& t) {
    const Field field = t.finding.remedy.field;
    const Quantity quantity = info_of(field).quantity;
    const std::string now = plain_quantity(number_of(t.job, t.head, field), quantity, t.unit);
    const std::string then = format_quantity(t.language, t.finding.remedy.value, quantity, t.unit);
    return {say(t.language, Word::remedy_number, {word(t.language, field_word(field)), then}),
            say(t.language, Word::detail_number, {now, then})};
}

RemedyText remedy_text(const Telling& t) {
    switch (t.finding.remedy.kind) {
        case Remedy::Kind::stops:
            return t.head != nullptr ? stops_remedy(t) : RemedyText{};
        case Remedy::Kind::number:
            return t.head != nullptr ? number_remedy(t) : RemedyText{};
        case Remedy::Kind::none:
            break;
    }
    if (t.finding.kind != FindingKind::no_stops_fit) return {};
    if (!t.worked.change) return {t.plain(Word::change_none), {}};
    return {change_text(t.language, t.unit, *t.worked.change), {}};
}

}  // namespace

FindingText finding_text(Language language, LengthUnit unit, const Job& job,
                         const HeadAssessment& head, const Finding& finding) {
    const Telling telling{language, unit, job, find_head(job, finding.head), head, finding};
    Saying said = saying(telling);
    return {std::move(said.title), std::move(said.why), remedy_text(telling), std::move(said.label),
            spare_text(word(language, severity_word(finding.severity)))};
}

std::string finding_label(Language language, LengthUnit unit, const Job& job,
                          const HeadAssessment& head, const Finding& finding) {
    Saying said = saying({language, unit, job, find_head(job, finding.head), head, finding});
    give_back(said.title);
    give_back(said.why);
    return std::move(said.label);
}

void give_back(FindingText& text) {
    for (std::string* each : {&text.title, &text.why, &text.label, &text.severity}) give_back(*each);
    give_back(text.remedy);
}

}  // namespace carriageway
