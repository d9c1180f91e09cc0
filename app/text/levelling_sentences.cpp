// The second half of registration_sentences.h: prints by platen, and heights.
#include <cmath>

#include "app/text/registration_sentences.h"

namespace carriageway {

namespace {

/// Heights nearer than this (mm) to a height point were read at it.
constexpr double at_point = 1.0;

} // namespace

std::string fault_text(Language language, const ScatterFault& fault,
                       const std::vector<PlatenReading>& readings) {
    const bool there = fault.reading < readings.size();
    const std::string platen = std::to_string(there ? readings[fault.reading].platen : 0);
    const std::string turn = std::to_string(there ? readings[fault.reading].turn : 0);
    const std::string value = format_number(fault.value, 0), limit = format_number(fault.limit, 0);
    switch (fault.kind) {
    case ScatterFaultKind::too_few_platens:
        return say(language, Word::scatter_fault_platens, {value, limit});
    case ScatterFaultKind::too_few_turns:
        return say(language, Word::scatter_fault_turns, {value, limit});
    case ScatterFaultKind::platen_once: return say(language, Word::scatter_fault_once, {platen});
    case ScatterFaultKind::repeated:
        return say(language, Word::scatter_fault_repeated, {platen, turn});
    case ScatterFaultKind::other_marks:
        return say(language, Word::scatter_fault_marks, {platen, turn});
    case ScatterFaultKind::not_readable:
        return say(language, Word::scatter_fault_unreadable, {platen, turn});
    case ScatterFaultKind::too_many: return say(language, Word::scatter_fault_many, {value, limit});
    case ScatterFaultKind::reading_error:
        return std::string(word(language, Word::reg_fault_reading_error));
    }
    return {};
}

std::vector<std::string> signs_text(Language language, const Scatter& scatter) {
    std::vector<std::string> lines;
    for (const ScatterSign& sign : signs_of(scatter)) {
        switch (sign.cause) {
        case ScatterCause::index_or_lock:
            lines.emplace_back(word(language, Word::scatter_sign_index));
            break;
        case ScatterCause::heat_or_drift:
            lines.emplace_back(word(language, Word::scatter_sign_drift));
            break;
        case ScatterCause::platen_off:
            lines.push_back(
                say(language, Word::scatter_sign_platen, {std::to_string(sign.platen)}));
            break;
        }
    }
    return lines;
}

LevelPoints level_points(const HeightPoints& points) {
    return {{-points.across, points.operator_y}, {points.across, points.operator_y},
            {0.0, points.machine_y}};
}

SaidVerdict levelling_verdict(Language language, LengthUnit unit, const Levelling& levelling,
                              int out, double tolerance) {
    const auto text = [&](Word key) { return std::string(word(language, key)); };
    const std::string allowed = fine_length(tolerance, unit);
    switch (levelling.refusal) {
    case LevelRefusal::no_readings: return {Tone::ask, text(Word::level_none), text(Word::level_how)};
    case LevelRefusal::not_finite:
        return {Tone::stop, text(Word::level_refused),
                say(language, Word::level_not_finite, {std::to_string(levelling.refused_reading + 1)})};
    case LevelRefusal::too_many_parts:
        return {Tone::stop, text(Word::level_refused), text(Word::level_too_many)};
    case LevelRefusal::none: break;
    }
    bool enough = false;
    for (const LevelGroup& group : levelling.groups) enough = enough || group.terms != LevelTerms::none;
    if (!enough) return {Tone::ask, text(Word::level_not_enough), text(Word::level_few_readings)};
    const std::string why = say(language, Word::level_out_why, {allowed});
    if (out == 0) return {Tone::good, say(language, Word::level_all_within, {allowed}), why};
    if (out == 1) return {Tone::act, text(Word::level_one_out), why};
    return {Tone::act, say(language, Word::level_some_out, {std::to_string(out)}), why};
}

std::string off_text(Language language, LengthUnit unit, const PartOff& part, bool head,
                     double tolerance) {
    if (part.known == LevelTerms::none) return std::string(word(language, Word::level_part_unknown));
    if (!part.out) return say(language, Word::level_part_within, {fine_length(tolerance, unit)});
    std::string where;
    if (part.known == LevelTerms::plane) {
        Word at = Word::level_at_machine;
        if (part.worst == part.operator_left) at = Word::level_at_left;
        else if (part.worst == part.operator_right) at = Word::level_at_right;
        where = word(language, at);
    }
    const bool wide = part.worst > 0.0;
    const Word key = head ? (wide ? Word::level_head_high : Word::level_head_low)
                          : (wide ? Word::level_platen_low : Word::level_platen_high);
    std::string text = say(language, key, {fine_length(std::abs(part.worst), unit), where});
    // Without tilts there is no place to name: what stood for it takes its space along.
    for (const std::string_view gap : {" :", " ,"})
        if (const std::size_t at = text.find(gap); where.empty() && at != std::string::npos)
            text.erase(at, 1);
    if (!part.surely_out) text += ". " + std::string(word(language, Word::level_unsure));
    return text;
}

std::vector<std::string> level_turns_text(Language language, const PlatenTurns& turns,
                                          const std::vector<LevelScrew>& screws) {
    std::vector<std::string> lines;
    bool any = false;
    for (std::size_t i = 0; i < turns.screws.size() && i < screws.size(); ++i) {
        const double by = turns.screws[i].turns;
        // A twentieth of a turn is what a hand can tell (ours).
        if (std::abs(by) < 0.025) continue;
        any = true;
        lines.push_back(
            say(language, Word::level_screw_turn,
                {screws[i].name, format_fixed(std::abs(by), 2),
                 word(language, by < 0.0 ? Word::reg_counter_clockwise : Word::reg_clockwise)}));
    }
    if (any && !turns.takes_tilt) lines.emplace_back(word(language, Word::level_tilt_stays));
    return lines;
}

Word point_word(const HeightPoints& points, const Point& place) {
    const LevelPoints at = level_points(points);
    const auto near = [&](const Point& point) {
        return std::hypot(place.x - point.x, place.y - point.y) < at_point;
    };
    if (near(at.operator_left)) return Word::level_point_left;
    if (near(at.operator_right)) return Word::level_point_right;
    if (near(at.machine_side)) return Word::level_point_machine;
    return Word::level_point_centre;
}

} // namespace carriageway
