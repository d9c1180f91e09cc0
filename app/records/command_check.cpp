// carriageway check: tables of heads, what to fix, then what was read at the press.
#include <ostream>

#include "app/records/command_check_readings.h"
#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/command_report.h"
#include "app/records/job_source.h"
#include "app/records/text_table.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

constexpr const char* nothing = "-";

std::string band_text(const Console& console, const Rect& band) {
    return say(console.language, Word::from_to,
               {plain_length(band.lo, console.unit), plain_length(band.hi, console.unit)});
}

std::vector<std::string> head_cells(const Console& console, const Job& job, const Head& head,
                                    const HeadAssessment& worked) {
    const Ruler& ruler = job.press.ruler;
    const bool moves = !worked.both_on;
    const auto length = [&](double mm) {
        return moves ? plain_length(mm, console.unit) : std::string(nothing);
    };
    return {
        std::to_string(head.station),
        printable(head.colour),
        length(worked.ends.travel()),
        moves ? band_text(console, worked.squeegee) : nothing,
        moves ? band_text(console, worked.flood) : nothing,
        length(worked.operator_run_past),
        length(worked.machine_run_past),
        plain_length(worked.separation, console.unit),
        plain_ruler(ruler, head.stops.operator_side),
        plain_ruler(ruler, head.stops.machine_side),
        console.text(worked.fit ? Word::verdict_fit : Word::verdict_not_fit),
    };
}

/// The table: two rows of headings, one of units, then the heads.
std::string heads_table(const Console& console, const Job& job, const Assessment& assessment) {
    const std::string unit(length_unit_name(console.unit));
    const std::string ruler_unit(length_unit_name(unit_of(job.press.ruler)));
    struct Column {
        Word heading;
        Word below; ///< Word::count: nothing
        std::string unit;
        bool numbers;
    };
    const Column columns[] = {
        {Word::column_head, Word::count, "", true},
        {Word::column_colour, Word::count, "", false},
        {Word::column_travel, Word::count, unit, true},
        {Word::column_squeegee, Word::column_band, unit, true},
        {Word::column_flood, Word::column_band, unit, true},
        {Word::column_past, Word::column_operator, unit, true},
        {Word::column_past, Word::column_machine, unit, true},
        {Word::column_apart, Word::count, unit, true},
        {Word::column_ruler, Word::column_operator, ruler_unit, true},
        {Word::column_ruler, Word::column_machine, ruler_unit, true},
        {Word::column_verdict, Word::count, "", false},
    };
    TextTable table;
    std::vector<std::string> headings, below, units;
    for (const Column& column : columns) {
        table.column(column.numbers);
        headings.push_back(console.text(column.heading));
        below.push_back(console.text(column.below));
        units.push_back(column.unit);
    }
    table.row(headings);
    table.row(below);
    table.row(units);
    for (std::size_t at = 0; at < job.heads.size(); ++at) {
        table.row(head_cells(console, job, job.heads[at], assessment.heads[at]));
    }
    return table.text();
}

std::string finding_lines(const Console& console, const Job& job, const HeadAssessment& head,
                          const Finding& finding) {
    const FindingText text = finding_text(console.language, console.unit, job, head, finding);
    std::string out = "  " + text.severity + ": " + text.title + '\n';
    out += "      " + text.why + '\n';
    if (!text.remedy.main.empty()) {
        out += "      → " + text.remedy.main;
        if (!text.remedy.detail.empty()) out += " (" + text.remedy.detail + ")";
        out += '\n';
    }
    return out;
}

} // namespace

std::string findings_text(const Console& console, const Job& job, const Assessment& assessment) {
    std::string out;
    for (std::size_t at = 0; at < job.heads.size(); ++at) {
        const HeadAssessment& head = assessment.heads[at];
        if (head.findings.empty()) continue;
        out += '\n' + printable(head_title(console.language, job.heads[at])) + '\n';
        for (const Finding& finding : head.findings) {
            out += finding_lines(console, job, head, finding);
        }
    }
    return out;
}

std::string verdict_text(const Console& console, const Job& job, const Assessment& assessment) {
    if (job.heads.empty()) return console.text(Word::no_heads) + '\n';
    return say(console.language, Word::heads_fit,
               {std::to_string(assessment.fit_heads), std::to_string(job.heads.size())}) +
           '\n';
}

int check_command(const Console& console, const Given& given) {
    const std::optional<SourcedJob> sourced = job_from(console, given.operands.front());
    if (!sourced) return exit_trouble;
    const Job& job = sourced->job;
    Assessment assessment;
    assess(job, assessment);
    const int status = assessment.fit ? exit_fit : exit_not_fit;
    if (console.json) {
        write_report(console.services.out, check_report(console, job, assessment));
        return status;
    }
    std::string out = printable(job.name);
    if (!job.press.name.empty()) out += " · " + printable(job.press.name);
    out += "\n\n";
    if (!job.heads.empty()) {
        out += heads_table(console, job, assessment) + console.text(Word::table_note) + "\n\n";
        out += contact_table(console, job, assessment) + console.text(Word::contact_note) + '\n';
    }
    out += findings_text(console, job, assessment);
    out += readings_text(console, job);
    out += '\n' + verdict_text(console, job, assessment);
    out += console.text(Word::caution) + '\n';
    write_out(console, out);
    return status;
}

} // namespace carriageway
