// carriageway import, export and list: jobs into, out of and in the library.
#include <algorithm>
#include <ostream>
#include <set>

#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/exchange.h"
#include "app/records/job_source.h"
#include "app/records/json_text.h"
#include "app/records/library_text.h"
#include "app/records/text_table.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

constexpr int page = 500;  ///< jobs asked for at once

/// A name cut to so many bytes, never within a character.
std::string cut(std::string name, std::size_t most) {
    if (name.size() <= most) return name;
    name.resize(most);
    name.resize(utf8_length(name));
    return name;
}

/// A name that no job of the library has: the job's own, or with "(2)", "(3)", ... behind it.
LibraryResult<std::string> free_name(const Library& library, const std::string& name) {
    std::string tried = name;
    for (int number = 2;; ++number) {
        const LibraryResult<std::vector<JobRow>> rows = library.named(tried);
        if (!rows) return rows.fault();
        if (rows->empty()) return tried;
        const std::string ending = " (" + std::to_string(number) + ")";
        tried = cut(name, static_cast<std::size_t>(longest_name) - ending.size()) + ending;
    }
}

/// Imports one file; its report, or nothing after saying why not as an error.
std::optional<Json> import_one(const Console& console, Library& library, const std::string& file) {
    std::optional<Job> job = job_from_file(console, file);
    if (!job) return std::nullopt;
    if (job->name.empty()) job->name = console.text(Word::untitled);
    const LibraryResult<std::string> name = free_name(library, job->name);
    if (name) job->name = *name;
    const LibraryResult<JobId> id =
        name ? library.create(*job, console.services.now()) : LibraryResult<JobId>(name.fault());
    if (!id) {
        console.complain(subject_of(console, file), fault_sentence(console.language, id.fault()));
        return std::nullopt;
    }
    if (!console.json) {
        write_out(console, say(console.language, Word::imported_as,
                               {printable(subject_of(console, file)), printable(job->name)}) +
                               '\n');
    }
    Json report;
    report["file"] = file;
    report["id"] = *id;
    report["name"] = job->name;
    return report;
}

std::optional<std::vector<JobRow>> all_rows(const Console& console, const Library& library,
                                            const std::string& search) {
    std::vector<JobRow> all;
    for (;;) {
        const LibraryResult<std::vector<JobRow>> rows =
            library.list(search, page, static_cast<int>(all.size()));
        if (!rows) {
            console.complain({}, fault_sentence(console.language, rows.fault()));
            return std::nullopt;
        }
        all.insert(all.end(), rows->begin(), rows->end());
        if (rows->size() < static_cast<std::size_t>(page)) return all;
    }
}

Json list_report(const std::vector<JobRow>& rows) {
    Json jobs = Json::array();
    for (const JobRow& row : rows) {
        Json one;
        one["id"] = row.id;
        one["name"] = row.name;
        one["press"] = row.press;
        one["colours"] = row.colours;
        one["heads"] = row.heads;
        one["created"] = utc_text(row.created);
        one["updated"] = utc_text(row.updated);
        jobs.push_back(std::move(one));
    }
    Json report = started_report();
    report["jobs"] = std::move(jobs);
    return report;
}

std::string list_text(const Console& console, const std::vector<JobRow>& rows,
                      const std::string& search) {
    if (rows.empty() && search.empty()) return console.text(Word::no_jobs) + '\n';
    if (rows.empty()) {
        return say(console.language, Word::no_jobs_found, {printable(search)}) + '\n';
    }
    TextTable table;
    for (const bool numbers : {false, false, true, false, false})
        table.column(numbers);
    table.row({console.text(Word::column_name), console.text(Word::column_press),
               console.text(Word::column_heads), console.text(Word::column_colours),
               console.text(Word::column_changed)});
    for (const JobRow& row : rows) {
        std::string changed = utc_text(row.updated).substr(0, 16);  // to the minute
        std::replace(changed.begin(), changed.end(), 'T', ' ');
        table.row({printable(row.name), printable(row.press), std::to_string(row.heads),
                   printable(row.colours), changed});
    }
    return table.text();
}

}  // namespace

int import_command(const Console& console, const Given& given) {
    std::optional<Library> library = library_for(console, {});
    if (!library) return exit_trouble;
    int status = exit_fit;
    Json imported = Json::array();
    for (const std::string& file : given.operands) {
        std::optional<Json> one = import_one(console, *library, file);
        if (one) {
            imported.push_back(std::move(*one));
        } else {
            status = exit_trouble;
        }
    }
    if (console.json) {
        Json report = started_report();
        report["imported"] = std::move(imported);
        write_report(console.services.out, report);
    }
    return status;
}

int export_command(const Console& console, const Given& given) {
    const std::optional<SourcedJob> sourced = job_from_library(console, given.operands.front());
    if (!sourced) return exit_trouble;
    const std::string& output = *given.output;
    if (!put_bytes(console, output, write_job(sourced->job), given.force)) return exit_trouble;
    if (!console.json) return exit_fit;
    Json report = started_report();
    report["job"] = sourced->job.name;
    report["id"] = *sourced->id;
    report["output"] = output;
    write_report(output == "-" ? console.services.err : console.services.out, report);
    return exit_fit;
}

int list_command(const Console& console, const Given& given) {
    const std::optional<Library> library = library_for(console, {});
    if (!library) return exit_trouble;
    const std::string search = given.search.value_or("");
    const std::optional<std::vector<JobRow>> rows = all_rows(console, *library, search);
    if (!rows) return exit_trouble;
    if (console.json) {
        write_report(console.services.out, list_report(*rows));
    } else {
        write_out(console, list_text(console, *rows, search));
    }
    return exit_fit;
}

}  // namespace carriageway
