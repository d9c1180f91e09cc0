// carriageway register: what to turn at each adjuster, from a file of marks.
#include <cmath>
#include <ostream>

#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"
#include "app/records/job_source.h"
#include "app/records/mark_file.h"
#include "app/text/registration_sentences.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

double rounded(double value) {
    return std::round(value * 1e6) / 1e6;
}

/// The job whose press is asked: the given one, else the demonstration's.
std::optional<Job> job_of(const Console& console, const Given& given) {
    if (given.job) {
        std::optional<SourcedJob> sourced = job_from(console, *given.job);
        if (!sourced) return std::nullopt;
        return std::move(sourced->job);
    }
    const std::string_view demo(reinterpret_cast<const char*>(embedded::demo_job), embedded::demo_job_size);
    return read_job(demo).job;
}

std::optional<std::string> bytes_for(const Console& console, const std::string& name) {
    std::string bytes;
    if (const auto fault = read_file(name, largest_mark_file + 1, bytes)) {
        console.complain(name, fault_sentence(console.language, *fault));
        return std::nullopt;
    }
    return bytes;
}

void add_part(std::string& out, const std::vector<std::string>& lines) {
    for (const std::string& line : lines) out += "  " + printable(line) + '\n';
}

Json advice_report(const Advice& advice, const PressProfile& press) {
    Json out;
    out["settled"] = advice.settled;
    out["predicted_rms_mm"] = rounded(advice.predicted_rms);
    out["predicted_max_mm"] = rounded(advice.predicted_max);
    out["rotation_not_reached_deg"] = rounded(degrees(advice.turn_left));
    Json screws = Json::array();
    for (const ScrewAdvice& screw : advice.screws) {
        Json one;
        one["name"] = press.adjusters[screw.adjuster].name;
        one["travel_mm"] = rounded(screw.travel);
        one["turns_clockwise"] = rounded(screw.turns);
        one["turns_deviation"] = rounded(screw.deviation);
        one["within_noise"] = screw.within_noise;
        one["graduations_clockwise"] = screw.graduations;
        Json moves = Json::array();
        for (int i = 0; i < screw.move_count; ++i) moves.push_back(screw.moves[static_cast<std::size_t>(i)]);
        one["moves_in_graduations"] = std::move(moves);
        screws.push_back(std::move(one));
    }
    out["adjusters"] = std::move(screws);
    return out;
}

Json part_report(const DistortionPart& part) {
    if (!part.known) return nullptr;
    Json out;
    out["value"] = rounded(part.value);
    out["deviation"] = rounded(part.deviation);
    out["stands_out"] = stands_out(part);
    return out;
}

/// One print: what to turn.
int register_marks_of(const Console& console, const std::string& file, const Job& job, const MarkRound& round,
                      Json& report, std::string& out) {
    const double tolerance = job.registration.tolerance;
    const std::vector<MarkRound> rounds{round};
    HeadRegistration head = register_head(job.press, rounds, 0, tolerance);
    head.read = true; // a file of marks has been read, even where every one lies on its place
    if (const RegistrationFault* fault = std::get_if<RegistrationFault>(&head.lies))
        return console.complain(file, fault_text(console.language, console.unit, *fault));
    const Registration& lies = std::get<Registration>(head.lies);
    if (const AdjusterFault* fault = std::get_if<AdjusterFault>(&*head.advice))
        return console.complain(file, fault_text(console.language, *fault, job.press));
    const Advice& advice = std::get<Advice>(*head.advice);
    const SaidVerdict verdict = registration_verdict(console.language, console.unit, head, job.press, tolerance);
    out += verdict.title + '\n' + "  " + verdict.why + '\n';
    if (!head.within) {
        for (const ScrewAdvice& screw : advice.screws) {
            const SaidScrew said =
                screw_text(console.language, console.unit, screw, job.press.adjusters[screw.adjuster]);
            out += printable(said.title) + '\n';
            add_part(out, said.lines);
        }
        add_part(out, left_over_text(console.language, console.unit, advice));
    }
    out += console.text(Word::reg_growth) + '\n';
    add_part(out, distortion_text(console.language, lies));
    report["rotation_deg"] = rounded(degrees(lies.fit.motion.rotation));
    report["x_mm"] = rounded(lies.fit.motion.x);
    report["y_mm"] = rounded(lies.fit.motion.y);
    report["error_rms_mm"] = rounded(lies.error_rms);
    report["error_max_mm"] = rounded(lies.error_max);
    report["residual_rms_mm"] = rounded(lies.residual_rms);
    report["residual_max_mm"] = rounded(lies.residual_max);
    report["within_tolerance"] = head.within;
    report["tolerance_mm"] = rounded(tolerance);
    report["growth_along"] = part_report(lies.distortion.along);
    report["growth_across"] = part_report(lies.distortion.across);
    report["skew_rad"] = part_report(lies.distortion.skew);
    report["advice"] = advice_report(advice, job.press);
    return head.within || advice.settled ? exit_fit : exit_not_fit;
}

Json estimate_report(const ScatterEstimate& x, const ScatterEstimate& y) {
    return {{"x_mm", rounded(x.value)}, {"x_error", rounded(x.error)}, {"y_mm", rounded(y.value)}, {"y_error", rounded(y.error)}};
}

/// Prints by platen and turn: what is whose.
int scatter_of_file(const Console& console, const std::string& file, const Job& job,
                    const std::vector<MarkRound>& rounds, Json& report, std::string& out) {
    std::vector<PlatenReading> readings;
    for (const MarkRound& round : rounds) readings.push_back({round.platen, round.turn, round.marks});
    const auto result = scatter_of(readings, job.press.readings.mark);
    if (const ScatterFault* fault = std::get_if<ScatterFault>(&result))
        return console.complain(file, fault_text(console.language, *fault, readings));
    const Scatter& scatter = std::get<Scatter>(result);
    const auto pair = [&](const ScatterEstimate& x, const ScatterEstimate& y) {
        return say(console.language, Word::scatter_pair,
                   {signed_length(x.value, console.unit), fine_length(x.error, console.unit),
                    signed_length(y.value, console.unit), fine_length(y.error, console.unit)});
    };
    const std::vector<std::string> signs = signs_text(console.language, scatter);
    out += console.text(signs.empty() ? Word::scatter_nothing : Word::scatter_signs) + '\n';
    add_part(out, signs);
    out += console.text(Word::scatter_head) + ": " + pair(scatter.x.head, scatter.y.head) + '\n';
    Json platens = Json::array();
    for (std::size_t i = 0; i < scatter.platens.size(); ++i) {
        const std::string number = std::to_string(scatter.platens[i]);
        out += say(console.language, Word::scatter_platen, {number}) + ": " +
               pair(scatter.x.platens[i], scatter.y.platens[i]) + '\n';
        Json one = estimate_report(scatter.x.platens[i], scatter.y.platens[i]);
        one["platen"] = scatter.platens[i];
        platens.push_back(std::move(one));
    }
    out += console.text(Word::scatter_drift) + ": " + pair(scatter.x.drift, scatter.y.drift) + '\n';
    out += console.text(Word::scatter_deviation) + ": " +
           say(console.language, Word::scatter_deviations,
               {fine_length(scatter.x.deviation, console.unit), fine_length(scatter.y.deviation, console.unit)}) +
           '\n';
    report["head"] = estimate_report(scatter.x.head, scatter.y.head);
    report["platens"] = std::move(platens);
    report["drift_a_turn"] = estimate_report(scatter.x.drift, scatter.y.drift);
    report["scatter_x_mm"] = rounded(scatter.x.deviation);
    report["scatter_y_mm"] = rounded(scatter.y.deviation);
    report["signs"] = signs;
    return signs.empty() ? exit_fit : exit_not_fit;
}

} // namespace

int register_command(const Console& console, const Given& given) {
    const std::string& file = given.operands.front();
    const std::optional<std::string> bytes = bytes_for(console, file);
    if (!bytes) return exit_trouble;
    const ReadMarks marks = read_marks(*bytes);
    if (!marks) return console.complain(file, fault_sentence(console.language, marks.fault));
    const std::optional<Job> job = job_of(console, given);
    if (!job) return exit_trouble;
    Json report = started_report();
    report["press"] = job->press.name;
    std::string out = printable(job->press.name) + '\n';
    const int status = marks.by_platen
                           ? scatter_of_file(console, file, *job, marks.rounds, report, out)
                           : register_marks_of(console, file, *job, marks.rounds.front(), report, out);
    if (status == exit_trouble) return status;
    out += console.text(Word::caution) + '\n';
    if (console.json) write_report(console.services.out, report);
    else write_out(console, out);
    return status;
}

} // namespace carriageway
