// carriageway rate: how fast a job runs, which station sets the rate and what a change is worth.
#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/command_rate_report.h"
#include "app/records/job_source.h"
#include "app/records/text_table.h"
#include "app/text/rate_sentences.h"
#include "app/text/rate_words.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

constexpr int decimals = 2; ///< of seconds, as in the sentences

void add_lines(std::string& out, const std::vector<std::string>& lines) {
    for (const std::string& line : lines)
        if (!line.empty()) out += "  " + printable(line) + '\n';
}

/// Lines under a heading; nothing where there are none.
void add_part(const Console& console, Word heading, const std::vector<std::string>& lines,
              std::string& out) {
    if (lines.empty()) return;
    out += '\n' + console.text(heading) + '\n';
    add_lines(out, lines);
}

/// What is done at a station: a head's colour, or what the station is for.
std::string work_text(const Console& console, const Job& job, const JobPace& pace,
                      const StationPace& station) {
    const Head* head = head_on(job, station.station);
    if (head != nullptr && station.kind == StationKind::print)
        return head->colour.empty() ? console.text(Word::head) : head->colour;
    return console.text(kind_word(station.kind, handled_together(pace.plan)));
}

/// Every station with its time and its wait, the slowest marked in words.
std::string stations_table(const Console& console, const Job& job, const JobPace& pace) {
    TextTable table;
    for (const bool numbers : {true, false, true, true, false}) table.column(numbers);
    table.row({console.text(Word::column_station), console.text(Word::column_work),
               console.text(Word::column_time), console.text(Word::column_waits), ""});
    table.row({"", "", "s", "s", ""});
    for (const StationPace& station : pace.rate.stations)
        table.row({std::to_string(station.station),
                   printable(work_text(console, job, pace, station)),
                   format_fixed(station.seconds, decimals), format_fixed(station.idle, decimals),
                   station.slowest ? console.text(Word::rate_mark_slowest) : std::string()});
    return table.text();
}

/// What a change is worth, station by station and then the table's turn.
std::string worth_part(const Console& console, const Job& job, const JobPace& pace) {
    std::string out;
    for (std::size_t place = 0; place < pace.plan.stations.size(); ++place) {
        const std::vector<std::string> lines =
            worth_lines(console.language, console.unit, pace, place);
        if (lines.empty()) continue;
        out += "  " + printable(station_name(console.language, job, pace.plan, place)) + '\n';
        for (const std::string& line : lines) out += "    " + printable(line) + '\n';
    }
    add_lines(out, {joint_text(console.language, pace),
                    index_worth_text(console.language, console.unit, pace)});
    return out;
}

/// A job that runs, in words.
std::string rate_words(const Console& console, const Job& job, const JobPace& pace) {
    const Language language = console.language;
    std::string out = rate_text(language, pace.rate) + " · " + dozens_text(language, pace.rate) +
                      '\n' + printable(cycle_text(language, pace)) + '\n';
    const SaidStation slowest = slowest_text(language, job, pace);
    out += printable(slowest.title) + '\n';
    add_lines(out, slowest.why);
    out += '\n' + stations_table(console, job, pace);
    out += '\n' + console.text(Word::rate_worth) + '\n' + worth_part(console, job, pace);
    add_part(console, Word::rate_run, run_text(language, job, pace), out);
    add_part(console, Word::rate_range, range_text(language, pace), out);
    const std::string notes[] = {handling_text(language, pace),
                                 heat_cycle_text(language, job, pace)};
    for (const std::string& note : notes)
        if (!note.empty()) out += '\n' + note + '\n';
    return out;
}

} // namespace

int rate_command(const Console& console, const Given& given) {
    const std::string& name = given.operands.front();
    const std::optional<SourcedJob> sourced = job_from(console, name);
    if (!sourced) return exit_trouble;
    const Job& job = sourced->job;
    Assessment assessment;
    assess(job, assessment);
    const JobPace pace = job_pace(job, assessment);
    // Numbers that a job may hold, but that come to no time at all, are no verdict on its heads.
    if (pace.rate.fault)
        return console.complain(subject_of(console, name), console.text(Word::rate_fault));
    const int status = pace.runs() ? exit_fit : exit_not_fit;
    if (console.json) {
        write_report(console.services.out, rate_report(job, pace));
        return status;
    }
    std::string out = printable(job.name);
    if (!job.press.name.empty()) out += " · " + printable(job.press.name);
    out += "\n\n";
    if (pace.runs()) {
        out += rate_words(console, job, pace);
    } else {
        out += console.text(Word::rate_none) + '\n';
        add_lines(out, no_rate_text(console.language, job, pace));
    }
    out += '\n' + console.text(Word::caution) + '\n';
    write_out(console, out);
    return status;
}

} // namespace carriageway
