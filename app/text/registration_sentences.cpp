#include "app/text/registration_sentences.h"

#include <cmath>
#include <cstdlib>
#include <numeric>

namespace carriageway {

namespace {

/// Lengths below this (mm) are written as none.
constexpr double least_said = 0.005;

std::string percent(double share, bool sign) {
    const std::string number = format_fixed(std::abs(share) * 100.0, 2);
    return (!sign ? "" : share < 0.0 ? "−" : "+") + number + " %";
}

std::string part_text(Language language, Word key, const DistortionPart& part) {
    return say(language, key, {percent(part.value, true) + " ± " + percent(part.deviation, false)});
}

std::string_view way_x(Language language, double by) {
    return word(language, by < 0.0 ? Word::reg_to_the_left : Word::reg_to_the_right);
}

std::string_view way_y(Language language, double by) {
    return word(language, by < 0.0 ? Word::toward_operator : Word::toward_machine);
}

std::string number_text(std::size_t number) { return std::to_string(number); }

Word cause_word(LikelyCause cause) {
    switch (cause) {
    case LikelyCause::drag: return Word::reg_cause_drag;
    case LikelyCause::off_contact: return Word::reg_cause_off_contact;
    case LikelyCause::tension: return Word::reg_cause_tension;
    case LikelyCause::film: return Word::reg_cause_film;
    }
    return Word::count;
}

int turned_screws(const Advice& advice) {
    int count = 0;
    for (const ScrewAdvice& screw : advice.screws) count += screw.graduations != 0 ? 1 : 0;
    return count;
}

SaidVerdict advised_verdict(Language language, LengthUnit unit, const Registration& lies,
                            const Advice& advice, RegistrationVerdict verdict,
                            double tolerance) {
    const std::string off = format_fine_length(lies.error_max, unit);
    const std::string allowed = format_fine_length(tolerance, unit);
    if (verdict == RegistrationVerdict::no_adjusters)
        return {Tone::act, std::string(word(language, Word::reg_no_adjusters)),
                say(language, Word::reg_no_adjusters_why, {off})};
    const int turned = turned_screws(advice);
    if (verdict == RegistrationVerdict::read_finer)
        return {Tone::ask, std::string(word(language, Word::reg_read_finer)),
                say(language, Word::reg_read_finer_why, {off, allowed})};
    if (turned == 0)
        return {Tone::act, std::string(word(language, Word::reg_settled)),
                say(language, Word::reg_settled_why, {off, allowed})};
    const std::string why = say(language, Word::reg_turn_why,
                                {off, format_fine_length(advice.predicted_max, unit), allowed});
    if (turned == 1) return {Tone::act, std::string(word(language, Word::reg_turn_one)), why};
    return {Tone::act, say(language, Word::reg_turn_some, {std::to_string(turned)}), why};
}

} // namespace

std::string signed_length(double mm, LengthUnit unit, bool with_unit) {
    const std::string number = plain_fine_length(std::abs(mm), unit);
    const bool none = number == plain_fine_length(0.0, unit);
    std::string text = (none ? "" : mm < 0.0 ? "−" : "+") + number;
    if (with_unit) text += " " + std::string(length_unit_name(unit));
    return text;
}

std::string turns_fraction(int marks, int marks_a_turn) {
    const int all = std::abs(marks), of = std::max(1, marks_a_turn);
    const int whole = all / of, rest = all % of;
    if (rest == 0) return std::to_string(whole);
    const int common = std::gcd(rest, of);
    const std::string part = std::to_string(rest / common) + "/" + std::to_string(of / common);
    return whole == 0 ? part : std::to_string(whole) + " " + part;
}

std::string dial_text(Language language, int marks) {
    const std::string_view way =
        word(language, marks < 0 ? Word::reg_counter_clockwise : Word::reg_clockwise);
    if (std::abs(marks) == 1) return say(language, Word::reg_one_dial_mark, {way});
    return say(language, Word::reg_dial_marks, {std::to_string(std::abs(marks)), way});
}

std::string offset_text(Language language, LengthUnit unit, const Point& by) {
    const bool x = std::abs(by.x) >= least_said, y = std::abs(by.y) >= least_said;
    const std::string across = format_fine_length(std::abs(by.x), unit);
    const std::string along = format_fine_length(std::abs(by.y), unit);
    if (x && y)
        return say(language, Word::reg_off_both,
                   {across, way_x(language, by.x), along, way_y(language, by.y)});
    if (x) return say(language, Word::reg_off_one, {across, way_x(language, by.x)});
    if (y) return say(language, Word::reg_off_one, {along, way_y(language, by.y)});
    return std::string(word(language, Word::reg_on_its_place));
}

SaidVerdict registration_verdict(Language language, LengthUnit unit, const HeadRegistration& head,
                                 const PressProfile& press, double tolerance) {
    const auto said = [&](Tone tone, Word title, const std::string& why) {
        return SaidVerdict{tone, std::string(word(language, title)), why};
    };
    const auto text = [&](Word key) { return std::string(word(language, key)); };
    if (const RegistrationFault* fault = std::get_if<RegistrationFault>(&head.lies)) {
        if (fault->kind == RegistrationFaultKind::no_marks)
            return said(Tone::ask, Word::reg_no_marks, text(Word::reg_no_marks_why));
        return said(Tone::stop, Word::reg_fault, fault_text(language, unit, *fault));
    }
    const Registration& lies = std::get<Registration>(head.lies);
    if (!head.read) return said(Tone::ask, Word::reg_unread, text(Word::reg_unread_why));
    if (head.advice)
        if (const AdjusterFault* fault = std::get_if<AdjusterFault>(&*head.advice))
            return said(Tone::stop, Word::reg_adjuster_fault, fault_text(language, *fault, press));
    if (head.within || !head.advice)
        return said(Tone::good, Word::reg_within,
                    say(language, Word::reg_within_why,
                        {format_fine_length(lies.error_max, unit), format_fine_length(tolerance, unit)}));
    return advised_verdict(language, unit, lies, std::get<Advice>(*head.advice),
                           head.verdict, tolerance);
}

std::string fault_text(Language language, LengthUnit unit, const RegistrationFault& fault) {
    const std::string mark = number_text(fault.mark + 1);
    const auto text = [&](Word key) { return std::string(word(language, key)); };
    const auto whole = [](double value) { return format_number(value, 0); };
    switch (fault.kind) {
    case RegistrationFaultKind::no_marks: return text(Word::reg_fault_no_marks);
    case RegistrationFaultKind::too_many_marks:
        return say(language, Word::reg_fault_too_many_marks, {whole(fault.value), whole(fault.limit)});
    case RegistrationFaultKind::reading_error: return text(Word::reg_fault_reading_error);
    case RegistrationFaultKind::not_finite: return say(language, Word::reg_fault_not_finite, {mark});
    case RegistrationFaultKind::too_far:
        return say(language, Word::reg_fault_too_far,
                   {mark, format_length(fault.value, unit), format_length(fault.limit, unit)});
    case RegistrationFaultKind::duplicate:
        return say(language, Word::reg_fault_duplicate, {mark, number_text(fault.other + 1)});
    case RegistrationFaultKind::too_close:
        // The spread is the root of a sum; two marks at opposite ends of their distance make it up.
        return say(language, Word::reg_fault_too_close,
                   {format_length(std::ceil(fault.limit * std::sqrt(2.0)), unit)});
    case RegistrationFaultKind::no_rotation: return text(Word::reg_fault_no_rotation);
    case RegistrationFaultKind::mirrored: return text(Word::reg_fault_mirrored);
    case RegistrationFaultKind::turned_too_far:
        return say(language, Word::reg_fault_turned_too_far,
                   {format_angle(std::abs(fault.value)), format_angle(fault.limit)});
    case RegistrationFaultKind::size_implausible:
        return say(language, Word::reg_fault_size_implausible,
                   {percent(fault.value, true), percent(fault.limit, false)});
    case RegistrationFaultKind::marks_disagree:
        return say(language, Word::reg_fault_marks_disagree,
                   {mark, format_fine_length(fault.value, unit), format_fine_length(fault.limit, unit)});
    }
    return {};
}

std::string fault_text(Language language, const AdjusterFault& fault, const PressProfile& press) {
    const std::string name =
        fault.adjuster < press.adjusters.size() ? press.adjusters[fault.adjuster].name : "?";
    switch (fault.kind) {
    case AdjusterFaultKind::repeated_side:
        return say(language, Word::reg_adjuster_repeated_side, {name});
    case AdjusterFaultKind::no_travel: return say(language, Word::reg_adjuster_no_travel, {name});
    case AdjusterFaultKind::no_lever: return say(language, Word::reg_adjuster_no_lever, {name});
    case AdjusterFaultKind::not_finite:
        return std::string(word(language, Word::reg_adjuster_not_finite));
    }
    return {};
}

SaidScrew screw_text(Language language, LengthUnit unit, const ScrewAdvice& screw,
                     const Adjuster& adjuster) {
    SaidScrew said;
    said.turn = screw.graduations != 0;
    if (!said.turn) {
        said.title = say(language, Word::reg_screw_leave, {adjuster.name});
        const bool noise =
            std::abs(screw.turns) < noise_deviations * std::max(screw.deviation, 1e-12);
        said.lines.emplace_back(
            word(language, noise ? Word::reg_screw_noise : Word::reg_screw_not_needed));
        return said;
    }
    said.title = adjuster.name + ": " + dial_text(language, screw.graduations);
    const double travel = travel_of(adjuster, screw.graduations);
    const std::string_view way =
        adjuster.side == AdjusterSide::across ? way_x(language, travel) : way_y(language, travel);
    const std::string turns = turns_fraction(screw.graduations, adjuster.graduations);
    const std::string moved = format_fine_length(std::abs(travel), unit);
    const int all = std::abs(screw.graduations);
    if (all == adjuster.graduations)
        said.lines.push_back(say(language, Word::reg_screw_effect_one, {moved, way}));
    else
        said.lines.push_back(say(language,
                                 all < adjuster.graduations ? Word::reg_screw_effect
                                                            : Word::reg_screw_effect_more,
                                 {turns, moved, way}));
    if (screw.move_count == 2)
        said.lines.push_back(say(language, Word::reg_take_up,
                                 {dial_text(language, screw.moves[0]),
                                  dial_text(language, screw.moves[1])}));
    said.lines.push_back(
        say(language, Word::reg_give_or_take,
            {format_fixed(screw.deviation * static_cast<double>(adjuster.graduations), 1)}));
    if (screw.shortfall > 0.0)
        said.lines.push_back(say(language, Word::reg_shortfall, {format_number(screw.shortfall, 2)}));
    return said;
}

std::vector<std::string> left_over_text(Language language, LengthUnit unit, const Advice& advice) {
    std::vector<std::string> lines;
    lines.push_back(say(language, Word::reg_left_over,
                        {format_fine_length(advice.predicted_max, unit),
                         format_fine_length(advice.predicted_rms, unit)}));
    if (advice.shift_only && advice.least_apart > 0.0) {
        // Rounded up, as marks a little closer would not do.
        const std::string apart = format_length(std::ceil(advice.least_apart), unit);
        const bool one = advice.predicted.size() == 1;
        lines.push_back(
            say(language, one ? Word::reg_shift_only_one : Word::reg_shift_only, {apart}));
    }
    // A hundredth of a degree moves a mark half a metre away by less than 0.1 mm.
    if (!advice.reach.turning && std::abs(advice.turn_left) > 0.01 * rad_per_degree)
        lines.push_back(say(language, Word::reg_turn_left,
                            {format_fixed(degrees(std::abs(advice.turn_left)), 2) + "°"}));
    if (std::hypot(advice.move_left.x, advice.move_left.y) >= least_said)
        lines.push_back(say(language, Word::reg_move_left,
                            {offset_text(language, unit, advice.move_left)}));
    return lines;
}

std::vector<std::string> distortion_text(Language language, const Registration& registration) {
    const Distortion& found = registration.distortion;
    std::vector<std::string> lines;
    const bool known = found.along.known || found.across.known || found.skew.known || found.line.known;
    if (!known) return {std::string(word(language, Word::reg_growth_unknown))};
    const bool line_alone = found.line.known && !found.along.known && !found.across.known;
    if (stands_out(found.along))
        lines.push_back(part_text(language, Word::reg_growth_along, found.along));
    if (stands_out(found.across))
        lines.push_back(part_text(language, Word::reg_growth_across, found.across));
    if (line_alone && stands_out(found.line))
        lines.push_back(part_text(language, Word::reg_growth_line, found.line));
    if (stands_out(found.skew)) lines.push_back(part_text(language, Word::reg_skew, found.skew));
    if (lines.empty()) return {std::string(word(language, Word::reg_growth_none))};
    const Causes causes = causes_of(found);
    std::string named;
    for (int i = 0; i < causes.count; ++i)
        named += (i == 0 ? "" : "; ") +
                 std::string(word(language, cause_word(causes.kinds[static_cast<std::size_t>(i)])));
    if (!named.empty()) lines.push_back(say(language, Word::reg_causes, {named}));
    return lines;
}

std::vector<std::string> progress_text(Language language, LengthUnit unit, const Rounds& rounds,
                                       const PressProfile& press) {
    std::vector<std::string> lines;
    switch (rounds.progress) {
    case Progress::none: break;
    case Progress::converged: lines.emplace_back(word(language, Word::reg_progress_converged)); break;
    case Progress::improving: lines.emplace_back(word(language, Word::reg_progress_improving)); break;
    case Progress::stalled: lines.emplace_back(word(language, Word::reg_progress_stalled)); break;
    case Progress::diverging: lines.emplace_back(word(language, Word::reg_progress_diverging)); break;
    }
    for (const Adjuster& adjuster : press.adjusters) {
        const ScrewEstimate& screw = rounds.screws[index_of(adjuster.side)];
        if (!screw.known) continue;
        const std::string moved = format_fine_length(std::abs(screw.mm_per_turn), unit);
        const std::string give = format_fine_length(screw.deviation, unit);
        if (screw.sign_wrong)
            lines.push_back(say(language, Word::reg_sign_wrong, {adjuster.name}));
        else if (screw.differs)
            lines.push_back(say(language, Word::reg_differs,
                                {adjuster.name, moved, give, format_fine_length(adjuster.mm_per_turn, unit)}));
        else
            lines.push_back(say(language, Word::reg_measured, {adjuster.name, moved, give}));
    }
    return lines;
}

} // namespace carriageway
