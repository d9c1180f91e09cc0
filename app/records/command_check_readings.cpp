// The last part of carriageway check: what was read at the press, and what it comes to.
#include "app/records/command_check_readings.h"

#include "app/text/heat_sentences.h"
#include "app/text/registration_sentences.h"
#include "app/text/sentences.h"
#include "core/job_heat.h"
#include "core/job_levelling.h"

namespace carriageway {
namespace {

void add_line(std::string& out, int depth, const std::string& line) {
    out += std::string(static_cast<std::size_t>(depth), ' ') + printable(line) + '\n';
}

void add_heading(const Console& console, Word heading, std::string& out) {
    out += '\n' + console.text(heading) + '\n';
}

SaidVerdict said_of(const Console& console, const Job& job, const RoundsRead& read) {
    const double tolerance = job.registration.tolerance;
    if (!read.prints)
        return registration_verdict(console.language, console.unit, read.last, job.press,
                                    tolerance);
    if (const ScatterFault* fault = std::get_if<ScatterFault>(&read.prints->scatter))
        return {Tone::ask, console.text(Word::scatter_refused),
                fault_text(console.language, *fault, read.prints->readings)};
    return scatter_verdict(console.language, console.unit,
                           std::get<Scatter>(read.prints->scatter), tolerance);
}

/// "Left: 3 dial marks clockwise; Across: ..."; empty: nothing is to be turned.
std::string turns_text(const Console& console, const Job& job, const RoundsRead& read) {
    const HeadRegistration& last = read.last;
    if (read.prints || !last.read || last.verdict != RegistrationVerdict::turn) return {};
    std::string text;
    for (const ScrewAdvice& screw : std::get<Advice>(*last.advice).screws) {
        const SaidScrew said = screw_text(console.language, console.unit, screw,
                                          job.press.adjusters[screw.adjuster]);
        if (said.turn) text += (text.empty() ? "" : "; ") + said.title;
    }
    return text;
}

void add_registration(const Console& console, const Job& job, std::string& out) {
    bool first = true;
    for (const Head& head : job.heads) {
        if (head.rounds.empty()) continue;
        if (first) add_heading(console, Word::place_register, out);
        first = false;
        const RoundsRead read = rounds_read(job, head);
        const SaidVerdict said = said_of(console, job, read);
        add_line(out, 2, head_title(console.language, head) + ": " + said.title);
        add_line(out, 6, said.why);
        const std::string turns = turns_text(console, job, read);
        if (!turns.empty()) add_line(out, 6, "→ " + turns);
    }
}

/// One head or platen: whether it is out, how high it lies, and what to turn.
void add_part(const Console& console, const Job& job, const JobLevelling& found, bool head,
              std::size_t index, std::string& out) {
    const PartOff& part = (head ? found.heads : found.platens)[index];
    const auto lines = off_text(console.language, console.unit, part, head,
                                found.targets.tolerance);
    add_line(out, 2,
             part_name(job, console.language, part, head) + ": " + lines.front());
    for (std::size_t i = 1; i < lines.size(); ++i) add_line(out, 6, lines[i]);
    const std::string points = points_text(console.language, console.unit, part, head);
    if (!points.empty()) add_line(out, 6, points);
    if (head || !part.out) return;
    for (const std::string& turn : level_turns_text(
             console.language, platen_turns(job, found, index), job.press.level_screws))
        add_line(out, 6, "→ " + turn);
}

void add_levelling(const Console& console, const Job& job, std::string& out) {
    if (job.height_readings.empty()) return;
    const JobLevelling found = job_levelling(job);
    const SaidVerdict said = levelling_verdict(console.language, console.unit, job, found);
    add_heading(console, Word::reg_mode_heights, out);
    add_line(out, 2, said.title);
    add_line(out, 6, said.why);
    for (std::size_t i = 0; i < found.heads.size(); ++i)
        add_part(console, job, found, true, i, out);
    for (std::size_t i = 0; i < found.platens.size(); ++i)
        add_part(console, job, found, false, i, out);
    for (const StrayReading& stray : found.levelling.strays)
        add_line(out, 2, stray_text(job, console.language, console.unit, stray));
    if (found.levelling.groups.size() > 1)
        add_line(out, 2,
                 say(console.language, Word::level_groups,
                     {std::to_string(found.levelling.groups.size())}));
    // Levelling puts hands under an arm.
    if (found.out > 0) add_line(out, 2, console.text(Word::level_caution));
}

void add_heat(const Console& console, const Job& job, std::string& out) {
    const HeatOutlook outlook = heat_outlook(job);
    if (outlook.flashes == 0) return;
    add_heading(console, Word::section_heat, out);
    add_line(out, 2, steady_text(console.language, outlook));
    for (const HeatWarning& warning : outlook.warnings)
        if (const std::string text = heat_warning_text(console.language, warning); !text.empty())
            add_line(out, 2, text);
    if (!outlook.warnings.empty()) add_line(out, 2, console.text(Word::heat_limits_note));
}

} // namespace

std::string readings_text(const Console& console, const Job& job) {
    std::string out;
    add_registration(console, job, out);
    add_levelling(console, job, out);
    add_heat(console, job, out);
    return out;
}

} // namespace carriageway
