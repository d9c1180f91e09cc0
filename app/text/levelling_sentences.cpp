// The second half of registration_sentences.h: prints by platen, and heights.
#include <algorithm>
#include <cmath>

#include "app/text/registration_sentences.h"
#include "app/text/sentences.h"

namespace carriageway {

namespace {

/// Heights nearer than this (mm) to a height point were read at it.
constexpr double at_point = 1.0;

/// A screw is said from here on, turns: a twentieth of one is what a hand can tell (ours), and half
/// of that rounds to it.
constexpr double least_turn = 0.025;

/// At which of its three points a part is farthest off; nothing where only its height is known.
std::optional<Word> worst_place(const PartOff& part) {
    if (part.known != LevelTerms::plane) return std::nullopt;
    if (part.worst == part.operator_left) return Word::level_at_left;
    if (part.worst == part.operator_right) return Word::level_at_right;
    return Word::level_at_machine;
}

/// "Worst: Platen 4, 0.9 mm too low at the machine side."
std::string worst_text(Language language, LengthUnit unit, const std::string& name,
                       const WorstOff& worst) {
    const bool high = height_of(worst.off.worst, worst.head) > 0.0;
    const std::string by = format_fine_length(std::abs(worst.off.worst), unit);
    const std::string_view way = word(language, high ? Word::level_too_high : Word::level_too_low);
    if (const std::optional<Word> where = worst_place(worst.off))
        return say(language, Word::level_worst_at, {name, by, way, word(language, *where)});
    return say(language, Word::level_worst, {name, by, way});
}

bool all_known(const Levelling& levelling) {
    const auto known = [](const LevelledPart& part) { return part.known != LevelTerms::none; };
    return std::all_of(levelling.heads.begin(), levelling.heads.end(), known) &&
           std::all_of(levelling.platens.begin(), levelling.platens.end(), known);
}

/// Where some parts are unknown or some readings contradict others, that; empty: neither.
std::string open_text(Language language, const Levelling& levelling) {
    std::string text;
    if (!all_known(levelling)) text += std::string(word(language, Word::level_some_unknown)) + " ";
    const bool settled = std::all_of(levelling.groups.begin(), levelling.groups.end(),
                                     [](const LevelGroup& group) { return group.settled; });
    if (!settled) text += std::string(word(language, Word::level_unsettled)) + " ";
    return text;
}

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

SaidVerdict scatter_verdict(Language language, LengthUnit unit, const Scatter& scatter,
                            double tolerance) {
    const auto text = [&](Word key) { return std::string(word(language, key)); };
    std::vector<std::string> why = signs_text(language, scatter);
    const bool signs = !why.empty();
    const double off = head_offset(scatter);
    if (off > tolerance)
        why.push_back(say(language, Word::scatter_head_off_why,
                          {format_fine_length(off, unit), format_fine_length(tolerance, unit)}));
    if (why.empty()) return {Tone::good, text(Word::scatter_nothing), text(Word::scatter_how)};
    return {Tone::act, text(signs ? Word::scatter_signs : Word::scatter_head_off),
            in_one_line(why)};
}

std::string part_name(const Job& job, Language language, const PartOff& part, bool head) {
    const std::string number = std::to_string(part.number);
    if (!head) return say(language, Word::level_platen, {number});
    // Readings outlive a head that was taken off the press.
    const Head* found = find_head(job, part.number);
    return found ? head_title(language, *found) : number;
}

double height_of(double gap, bool head) { return head ? gap : -gap; }

SaidVerdict levelling_verdict(Language language, LengthUnit unit, const Job& job,
                              const JobLevelling& found) {
    const Levelling& levelling = found.levelling;
    const auto text = [&](Word key) { return std::string(word(language, key)); };
    const std::string allowed = format_fine_length(found.targets.tolerance, unit);
    switch (levelling.refusal) {
        case LevelRefusal::no_readings:
            return {Tone::ask, text(Word::level_none), text(Word::level_how)};
        case LevelRefusal::not_finite:
            return {Tone::stop, text(Word::level_refused),
                    say(language, Word::level_not_finite,
                        {std::to_string(levelling.refused_reading + 1)})};
        case LevelRefusal::too_many_parts:
            return {Tone::stop, text(Word::level_refused), text(Word::level_too_many)};
        case LevelRefusal::none:
            break;
    }
    bool enough = false;
    for (const LevelGroup& group : levelling.groups)
        enough = enough || group.terms != LevelTerms::none;
    if (!enough) return {Tone::ask, text(Word::level_not_enough), text(Word::level_few_readings)};
    const std::string open = open_text(language, levelling);
    const std::string why = open + say(language, Word::level_out_why, {allowed});
    if (!found.worst) {
        const Word title = all_known(levelling) ? Word::level_all_within : Word::level_known_within;
        return {open.empty() ? Tone::good : Tone::ask, say(language, title, {allowed}), why};
    }
    const std::string name = part_name(job, language, found.worst->off, found.worst->head);
    return {Tone::act,
            found.out == 1 ? say(language, Word::level_one_out, {name})
                           : say(language, Word::level_some_out, {std::to_string(found.out)}),
            worst_text(language, unit, name, *found.worst) + " " + why};
}

std::vector<std::string> off_text(Language language, LengthUnit unit, const PartOff& part,
                                  bool head, double tolerance) {
    if (part.known == LevelTerms::none)
        return {std::string(word(language, Word::level_part_unknown))};
    if (!part.out)
        return {say(language, Word::level_part_within, {format_fine_length(tolerance, unit)})};
    const std::string by = format_fine_length(std::abs(part.worst), unit);
    const bool high = height_of(part.worst, head) > 0.0;
    std::vector<std::string> lines;
    if (const std::optional<Word> where = worst_place(part)) {
        const Word key = head ? (high ? Word::level_head_high : Word::level_head_low)
                              : (high ? Word::level_platen_high : Word::level_platen_low);
        lines.push_back(say(language, key, {by, word(language, *where)}));
    } else {
        const Word key =
            head ? (high ? Word::level_whole_head_high : Word::level_whole_head_low)
                 : (high ? Word::level_whole_platen_high : Word::level_whole_platen_low);
        lines.push_back(say(language, key, {by}));
    }
    if (!part.surely_out) lines.emplace_back(word(language, Word::level_unsure));
    return lines;
}

std::string points_text(Language language, LengthUnit unit, const PartOff& part, bool head) {
    if (part.known != LevelTerms::plane) return {};
    const auto at = [&](double gap) { return signed_length(height_of(gap, head), unit); };
    return say(language, Word::level_points,
               {at(part.operator_left), at(part.operator_right), at(part.machine_side)});
}

std::vector<std::string> level_turns_text(Language language, const PlatenTurns& turns,
                                          const std::vector<LevelScrew>& screws) {
    std::vector<std::string> lines;
    bool any = false;
    for (std::size_t i = 0; i < turns.screws.size() && i < screws.size(); ++i) {
        const double by = turns.screws[i].turns;
        if (std::abs(by) < least_turn) continue;
        any = true;
        lines.push_back(
            say(language, Word::level_screw_turn,
                {screws[i].name, format_fixed(std::abs(by), 2),
                 word(language, by < 0.0 ? Word::reg_counter_clockwise : Word::reg_clockwise)}));
    }
    if (any && !turns.takes_tilt) lines.emplace_back(word(language, Word::level_tilt_stays));
    return lines;
}

std::string stray_text(const Job& job, Language language, LengthUnit unit,
                       const StrayReading& stray) {
    const HeightReading& reading = job.height_readings[stray.reading];
    const Head* head = find_head(job, reading.head);
    return say(language, Word::level_stray,
               {head ? head_title(language, *head) : std::to_string(reading.head),
                say(language, Word::level_platen, {std::to_string(reading.platen)}),
                format_fine_length(reading.height, unit), signed_length(stray.residual, unit)});
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
