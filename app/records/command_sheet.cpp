// carriageway sheet: the sheet that stays with a job (PDF), or a table of its heads (CSV).
#include <algorithm>
#include <ostream>

#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/job_source.h"
#include "app/records/job_table.h"
#include "app/records/link_base.h"

namespace carriageway {
namespace {

enum class Kind { pdf, csv };

/// What a name says it is to be, by what it ends with.
std::optional<Kind> kind_of(const std::string& name) {
    std::string end = name.size() < 4 ? std::string() : name.substr(name.size() - 4);
    for (char& letter : end)
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    if (end == ".pdf") return Kind::pdf;
    if (end == ".csv") return Kind::csv;
    return std::nullopt;
}

/// Fills in everything but the job; exit_fit when the options are understood.
int read_options(const Console& console, const Given& given, SheetRequest& request) {
    const auto bad = [&](const std::string& value, const char* option, const std::string& use) {
        return console.misuse(
            say(console.language, Word::option_bad_value, {printable(value), option, use}));
    };
    if (!kind_of(*given.output))
        return bad(*given.output, "--output", console.text(Word::sheet_output_kind));
    if (given.paper && *given.paper != "a4" && *given.paper != "letter")
        return bad(*given.paper, "--paper", "a4, letter");
    if (given.layout && *given.layout != "heads" && *given.layout != "table")
        return bad(*given.layout, "--layout", "heads, table");
    if (given.base && !usable_link_base(*given.base))
        return bad(*given.base, "--base", "https://..., http://...");
    request.letter = given.paper == "letter";
    request.page_a_head = given.layout != "table";
    request.link_base = given.base.value_or("");
    request.language = console.language;
    request.unit = console.unit;
    request.time = console.services.now();
    return exit_fit;
}

/// Says on the error stream which letters the paper has a plain one for: no trouble, but it has to
/// be known.
void warn_of(const Console& console, const std::vector<std::string>& letters) {
    if (letters.empty()) return;
    std::string all;
    for (const std::string& letter : letters) all += (all.empty() ? "" : " ") + letter;
    console.complain({}, say(console.language, Word::paper_unprintable, {all}));
}

void write_json(const Console& console, const Given& given, const SheetRequest& request,
                const DrawnSheet& drawn) {
    nlohmann::ordered_json report = started_report();
    report["job"] = request.job.name;
    report["output"] = *given.output;
    report["pages"] =
        drawn.pages > 0 ? nlohmann::ordered_json(drawn.pages) : nlohmann::ordered_json(nullptr);
    report["replaced"] = drawn.replaced;
    report["fit"] = drawn.fit;
    write_report(console.services.out, report);
}

} // namespace

int sheet_command(const Console& console, const Given& given) {
    SheetRequest request;
    const int status = read_options(console, given, request);
    if (status != exit_fit) return status;
    const std::string& name = given.operands.front();
    std::optional<SourcedJob> sourced = job_from(console, name);
    if (!sourced) return exit_trouble;
    request.job = std::move(sourced->job);
    DrawnSheet drawn;
    if (kind_of(*given.output) == Kind::csv) {
        Assessment assessment;
        assess(request.job, assessment);
        drawn.bytes = job_table(request.job, assessment, request.language, request.unit);
        drawn.fit = assessment.fit;
    } else {
        drawn = console.services.sheet(request);
        if (!drawn.trouble.empty())
            return console.complain(subject_of(console, name), drawn.trouble);
    }
    if (!put_bytes(console, *given.output, drawn.bytes, given.force)) return exit_trouble;
    warn_of(console, drawn.replaced);
    if (console.json) write_json(console, given, request, drawn);
    return drawn.fit ? exit_fit : exit_not_fit;
}

} // namespace carriageway
