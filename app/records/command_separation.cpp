// carriageway separation: reads films, and puts one into a job as a head's image.
#include <cmath>
#include <ostream>

#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/exchange.h"
#include "app/records/job_source.h"
#include "app/records/separation.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

/// What the options ask for, once they are understood.
struct Wanted {
    SeparationOptions options;
    int station = 0;  ///< of the head whose image it becomes; 0: none
};

int bad_value(const Console& console, const std::string& value, const char* option,
              const std::string& use) {
    return console.misuse(say(console.language, Word::option_bad_value, {value, option, use}));
}

int read_wanted(const Console& console, const Given& given, Wanted& wanted) {
    if (given.width) {
        const FieldInfo& side = info_of(Field::image_width);
        wanted.options.width = read_length(*given.width, console.unit);
        if (!wanted.options.width || !accepts(Field::image_width, *wanted.options.width)) {
            return bad_value(console, *given.width, "--width",
                             say(console.language, Word::from_to,
                                 {format_length(side.least, console.unit),
                                  format_length(side.most, console.unit)}));
        }
    }
    // Into a job: all of it or none.
    const std::string missing = !given.into && (given.head || given.output) ? "--into"
                                : given.into && !given.head                 ? "--head"
                                : given.into && !given.output               ? "-o"
                                                                            : "";
    if (!missing.empty()) {
        return console.misuse(say(console.language, Word::operand_missing, {missing}));
    }
    if (!given.into) return exit_fit;
    if (given.operands.size() != 1) {
        return console.misuse(console.text(Word::separation_one_picture));
    }
    const std::optional<double> station = read_number(*given.head);
    for (int number = 1; number <= most_stations; ++number) {
        if (station && *station == number) wanted.station = number;
    }
    if (wanted.station != 0) return exit_fit;
    return bad_value(console, *given.head, "--head",
                     say(console.language, Word::from_to, {"1", std::to_string(most_stations)}));
}

Json picture_report(const std::string& file, const Separation& separation) {
    const auto micrometres = [](double mm) { return std::round(mm * 1e3) / 1e3; };
    const Rect& ink = separation.extent;
    Json report;
    report["file"] = file;
    report["width_px"] = separation.width;
    report["height_px"] = separation.height;
    report["width_mm"] = micrometres(separation.across);
    report["length_mm"] = micrometres(separation.along);
    report["ink_across_mm"] = {micrometres(ink.left), micrometres(ink.right)};
    report["ink_along_mm"] = {micrometres(ink.lo), micrometres(ink.hi)};
    report["ink_area_mm2"] = micrometres(separation.ink_area);
    report["printed_share"] = std::round(separation.printed_share * 1e6) / 1e6;
    report["specks"] = separation.specks;
    Json corners = Json::array();
    for (const Point& corner : separation.image.outline) {
        corners.push_back({micrometres(corner.x), micrometres(corner.y)});
    }
    report["outline_mm"] = std::move(corners);
    return report;
}

std::string picture_text(const Console& console, const std::string& file,
                         const Separation& separation) {
    const auto length = [&console](double mm) { return format_length(mm, console.unit); };
    std::string out = say(console.language, Word::separation_picture,
                          {printable(file), length(separation.across), length(separation.along),
                           std::to_string(separation.width), std::to_string(separation.height)});
    out += "; " + say(console.language, Word::separation_ink,
                      {length(separation.extent.width()), length(separation.extent.length()),
                       format_share(separation.printed_share),
                       std::to_string(separation.image.outline.size())});
    if (separation.specks > 0) {
        out += "; " + say(console.language, Word::separation_specks,
                          {std::to_string(separation.specks), length(separation.speck)});
    }
    return out + '\n';
}

/// Writes the job with the picture as its head's image; its report, or nothing after an error.
std::optional<Json> put_into(const Console& console, const Given& given, int station,
                             const Separation& separation, std::ostream& told) {
    std::optional<SourcedJob> sourced = job_from(console, *given.into);
    if (!sourced) return std::nullopt;
    Job& job = sourced->job;
    const Head* head = head_on(job, station);
    if (head == nullptr) {
        console.complain(subject_of(console, *given.into),
                         say(console.language, Word::no_head_on_station,
                             {std::to_string(station)}));
        return std::nullopt;
    }
    const std::string title = head_title(console.language, *head);
    apply(job, separation_edit(*head, separation));
    if (!put_bytes(console, *given.output, write_job(job), given.force)) return std::nullopt;
    if (!console.json) {
        told << say(console.language, Word::separation_set, {printable(title)}) << '\n';
    }
    Json report;
    report["job"] = job.name;
    report["station"] = station;
    report["output"] = *given.output;
    return report;
}

}  // namespace

int separation_command(const Console& console, const Given& given) {
    Wanted wanted;
    const int understood = read_wanted(console, given, wanted);
    if (understood != exit_fit) return understood;
    // The job itself may be on standard output; what is said about it then goes beside it.
    std::ostream& told = given.output == "-" ? console.services.err : console.services.out;
    int status = exit_fit;
    Json report = started_report();
    report["pictures"] = Json::array();
    for (const std::string& file : given.operands) {
        const ReadSeparation read = read_separation_file(file, wanted.options);
        if (!read) {
            status = console.complain(file,
                                      fault_sentence(console.language, console.unit, read.fault));
            continue;
        }
        report["pictures"].push_back(picture_report(file, *read.separation));
        if (!console.json) told << picture_text(console, file, *read.separation);
        if (wanted.station == 0) continue;
        std::optional<Json> into = put_into(console, given, wanted.station, *read.separation, told);
        if (!into) return exit_trouble;
        report["into"] = std::move(*into);
    }
    if (console.json) write_report(told, report);
    return status;
}

}  // namespace carriageway
