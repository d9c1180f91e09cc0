// carriageway register: what to turn at each adjuster, from a file of marks.
#include <algorithm>
#include <cmath>
#include <istream>

#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/command_register_report.h"
#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"
#include "app/records/job_source.h"
#include "app/records/mark_file.h"
#include "app/text/registration_sentences.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* stream_name = "-";

/// What is asked, once it is read.
struct Asked {
    std::string subject; ///< what a message calls the marks
    ReadMarks marks;
    Job job;
    const Head* head = nullptr; ///< whose earlier rounds count; of `job`
};

/// What is told: a report, and the same in words.
struct Told {
    Json report = started_report();
    std::string words;
};

/// The job whose press is asked: the given one, else the demonstration's.
std::optional<Job> job_of(const Console& console, const Given& given) {
    if (given.job) {
        std::optional<SourcedJob> sourced = job_from(console, *given.job);
        if (!sourced) return std::nullopt;
        return std::move(sourced->job);
    }
    const std::string_view demo(reinterpret_cast<const char*>(embedded::demo_job),
                                embedded::demo_job_size);
    return read_job(demo).job;
}

/// One byte more than is taken is read, so that too much is seen as such.
std::optional<std::string> bytes_of(const Console& console, const std::string& name) {
    std::string bytes;
    if (name == stream_name) {
        bytes.resize(largest_mark_file + 1);
        console.services.in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        bytes.resize(static_cast<std::size_t>(console.services.in.gcount()));
        return bytes;
    }
    if (const auto fault = read_file(name, largest_mark_file + 1, bytes)) {
        console.complain(name, fault_sentence(console.language, *fault));
        return std::nullopt;
    }
    return bytes;
}

/// The station that --head names; 0: none is named; nothing after saying that it can't be one.
std::optional<int> station_of(const Console& console, const Given& given) {
    if (!given.head) return 0;
    const std::optional<double> number = read_number(*given.head);
    for (int station = 1; station <= most_stations; ++station)
        if (number && *number == station) return station;
    const std::string use =
        say(console.language, Word::from_to, {"1", std::to_string(most_stations)});
    console.misuse(say(console.language, Word::option_bad_value, {*given.head, "--head", use}));
    return std::nullopt;
}

/// Finds the head of `asked.job` on a station; 0: none is wanted.
bool find_head(const Console& console, const Given& given, int station, Asked& asked) {
    if (station == 0) return true;
    asked.head = head_on(asked.job, station);
    if (asked.head == nullptr) {
        const std::string name = given.job ? subject_of(console, *given.job) : asked.job.name;
        console.complain(
            name, say(console.language, Word::no_head_on_station, {std::to_string(station)}));
        return false;
    }
    if (!asked.marks.by_platen) return true;
    console.complain(asked.subject, console.text(Word::register_head_one_print));
    return false;
}

/// Reads the marks and the job; false after an error.
bool read_asked(const Console& console, const Given& given, Asked& asked) {
    const std::string& name = given.operands.front();
    const std::optional<int> station = station_of(console, given);
    if (!station) return false;
    const bool stream = name == stream_name;
    if (stream && given.job == stream_name) {
        console.misuse(
            say(console.language, Word::input_once, {console.text(Word::operand_marks), "--job"}));
        return false;
    }
    asked.subject = stream ? console.text(Word::standard_input) : name;
    const std::optional<std::string> bytes = bytes_of(console, name);
    if (!bytes) return false;
    asked.marks = read_marks(*bytes);
    if (!asked.marks) {
        console.complain(asked.subject, fault_sentence(console.language, asked.marks.fault));
        return false;
    }
    std::optional<Job> job = job_of(console, given);
    if (!job) return false;
    asked.job = std::move(*job);
    return find_head(console, given, *station, asked);
}

void add_lines(std::string& out, const std::vector<std::string>& lines) {
    for (const std::string& line : lines) out += "  " + printable(line) + '\n';
}

/// One print in words.
void say_print(const Console& console, const HeadRegistration& head, const Job& job,
               std::string& out) {
    const Registration& lies = std::get<Registration>(head.lies);
    const Advice& advice = std::get<Advice>(*head.advice);
    const SaidVerdict verdict = registration_verdict(console.language, console.unit, head,
                                                     job.press, job.registration.tolerance);
    out += verdict.title + '\n';
    add_lines(out, {verdict.why});
    if (!head.within) {
        for (const ScrewAdvice& screw : advice.screws) {
            const SaidScrew said = screw_text(console.language, console.unit, screw,
                                              job.press.adjusters[screw.adjuster]);
            out += printable(said.title) + '\n';
            add_lines(out, said.lines);
        }
        add_lines(out, left_over_text(console.language, console.unit, advice));
    }
    out += console.text(Word::reg_growth) + '\n';
    add_lines(out, distortion_text(console.language, lies));
}

/// One print: what to turn.
int register_print(const Console& console, const Asked& asked, Told& told) {
    const Job& job = asked.job;
    const double tolerance = job.registration.tolerance;
    std::vector<MarkRound> rounds;
    if (asked.head != nullptr) rounds = asked.head->rounds;
    rounds.push_back(asked.marks.rounds.front());
    HeadRegistration head = register_head(job.press, rounds, rounds.size() - 1, tolerance);
    head.read = true; // a file of marks has been read, even where every one lies on its place
    if (const RegistrationFault* fault = std::get_if<RegistrationFault>(&head.lies))
        return console.complain(asked.subject, fault_text(console.language, console.unit, *fault));
    if (const AdjusterFault* fault = std::get_if<AdjusterFault>(&*head.advice))
        return console.complain(asked.subject, fault_text(console.language, *fault, job.press));
    say_print(console, head, job, told.words);
    if (asked.head != nullptr) {
        told.words += console.text(Word::reg_rounds) + '\n';
        add_lines(told.words, {say(console.language, Word::reg_round_line,
                                   {std::to_string(rounds.size()),
                                    format_fine_length(head.sizes.back().max, console.unit),
                                    format_fine_length(head.sizes.back().rms, console.unit)})});
        add_lines(told.words,
                  progress_text(console.language, console.unit, head.judged, job.press));
    }
    add_print(told.report, head, job.press, tolerance, rounds.size());
    return head.within ? exit_fit : exit_not_fit;
}

/// Prints by platen and turn in words.
void say_scatter(const Console& console, const Scatter& scatter, double tolerance,
                 std::string& out) {
    const auto pair = [&](const ScatterEstimate& x, const ScatterEstimate& y) {
        return say(console.language, Word::scatter_pair,
                   {signed_length(x.value, console.unit), format_fine_length(x.error, console.unit),
                    signed_length(y.value, console.unit), format_fine_length(y.error, console.unit)});
    };
    const SaidVerdict verdict =
        scatter_verdict(console.language, console.unit, scatter, tolerance);
    out += verdict.title + '\n';
    if (verdict.tone != Tone::good) add_lines(out, {verdict.why});
    out += console.text(Word::scatter_head) + ": " + pair(scatter.x.head, scatter.y.head) + '\n';
    for (std::size_t i = 0; i < scatter.platens.size(); ++i)
        out += say(console.language, Word::scatter_platen, {std::to_string(scatter.platens[i])}) +
               ": " + pair(scatter.x.platens[i], scatter.y.platens[i]) + '\n';
    out += console.text(Word::scatter_drift) + ": " + pair(scatter.x.drift, scatter.y.drift) + '\n';
    out += console.text(Word::scatter_deviation) + ": " +
           say(console.language, Word::scatter_deviations,
               {format_fine_length(scatter.x.deviation, console.unit),
                format_fine_length(scatter.y.deviation, console.unit)}) +
           '\n';
}

/// Prints by platen and turn: what is whose.
int register_prints(const Console& console, const Asked& asked, Told& told) {
    const double tolerance = asked.job.registration.tolerance;
    const PlatenPrints prints = platen_prints(asked.job.press, asked.marks.rounds);
    if (const ScatterFault* fault = std::get_if<ScatterFault>(&prints.scatter))
        return console.complain(asked.subject,
                                fault_text(console.language, *fault, prints.readings));
    const Scatter& scatter = std::get<Scatter>(prints.scatter);
    const double error = farthest_error(prints.readings);
    const bool within = error <= tolerance;
    if (within) told.words += console.text(Word::reg_within) + '\n';
    add_lines(told.words,
              {say(console.language, Word::reg_within_why,
                   {format_fine_length(error, console.unit), format_fine_length(tolerance, console.unit)})});
    say_scatter(console, scatter, tolerance, told.words);
    add_scatter(told.report, scatter, error, tolerance);
    return within ? exit_fit : exit_not_fit;
}

} // namespace

int register_command(const Console& console, const Given& given) {
    Asked asked;
    if (!read_asked(console, given, asked)) return exit_trouble;
    Told told;
    told.report["press"] = asked.job.press.name;
    told.report["station"] = nullptr;
    told.words = printable(asked.job.press.name) + '\n';
    if (asked.head != nullptr) {
        told.report["station"] = asked.head->station;
        told.words += printable(head_title(console.language, *asked.head)) + '\n';
    }
    const int status = asked.marks.by_platen ? register_prints(console, asked, told)
                                             : register_print(console, asked, told);
    if (status == exit_trouble) return status;
    told.words += console.text(Word::caution) + '\n';
    if (console.json)
        write_report(console.services.out, told.report);
    else
        write_out(console, told.words);
    return status;
}

} // namespace carriageway
