// carriageway set: puts every stop where the stroke is the shortest good one.
#include <ostream>

#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/command_report.h"
#include "app/records/exchange.h"
#include "app/records/job_source.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

/// A job before and after its stops were set.
struct SetJob {
    Job before;
    Job after;
    Assessment assessment;  ///< of the job after
};

SetJob set_stops(Job job) {
    SetJob set;
    set.before = job;
    set.after = std::move(job);
    assess(set.after, set.assessment);
    if (const std::optional<Edit> edit = set_every_stop(set.after, set.assessment)) {
        apply(set.after, *edit);
        assess(set.after, set.assessment);
    }
    return set;
}

Json moved_report(const SetJob& set) {
    Json moved = Json::array();
    for (const Head& head : set.after.heads) {
        const Head* before = find_head(set.before, head.id);
        if (before == nullptr || before->stops == head.stops) continue;
        Json one;
        one["station"] = head.station;
        one["colour"] = head.colour;
        one["from"] = stops_report(set.before.press.ruler, before->stops);
        one["to"] = stops_report(set.after.press.ruler, head.stops);
        moved.push_back(std::move(one));
    }
    return moved;
}

std::string moved_text(const Console& console, const SetJob& set) {
    std::string out;
    for (const Head& head : set.after.heads) {
        const Head* before = find_head(set.before, head.id);
        if (before == nullptr || before->stops == head.stops) continue;
        const RemedyText move = stops_text(console.language, console.unit, set.after.press.ruler,
                                           before->stops, head.stops);
        if (move.main.empty()) continue;
        out += printable(head_title(console.language, head)) + ": " + move.main + " (" +
               move.detail + ")\n";
    }
    return out.empty() ? console.text(Word::every_stop_set) + '\n' : out;
}

}  // namespace

int set_command(const Console& console, const Given& given) {
    std::optional<SourcedJob> sourced = job_from(console, given.operands.front());
    if (!sourced) return exit_trouble;
    const SetJob set = set_stops(std::move(sourced->job));
    const std::string& output = *given.output;
    if (!put_bytes(console, output, write_job(set.after), given.force)) return exit_trouble;
    // The job itself may be on standard output; what is said about it then goes beside it.
    std::ostream& told = output == "-" ? console.services.err : console.services.out;
    if (console.json) {
        Json report = started_report();
        report["job"] = set.after.name;
        report["output"] = output;
        report["fit"] = set.assessment.fit;
        report["fit_heads"] = set.assessment.fit_heads;
        report["moved"] = moved_report(set);
        write_report(told, report);
    } else {
        told << moved_text(console, set) << findings_text(console, set.after, set.assessment)
             << verdict_text(console, set.after, set.assessment);
    }
    return set.assessment.fit ? exit_fit : exit_not_fit;
}

}  // namespace carriageway
