#include "app/records/job_source.h"

#include <istream>

#include "app/records/exchange.h"
#include "app/records/job_link.h"
#include "app/records/library_text.h"

namespace carriageway {
namespace {

constexpr const char* stream_name = "-";
constexpr std::size_t most_read = largest_text + 1;  // one more, so that too much is seen as such

std::string read_stream(std::istream& in) {
    std::string bytes(most_read, '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    bytes.resize(static_cast<std::size_t>(in.gcount()));
    return bytes;
}

/// Whether a name can only be a file's.
bool names_file(const std::string& name) {
    const std::string ending = ".json";
    return name.size() > ending.size() &&
           name.compare(name.size() - ending.size(), ending.size(), ending) == 0;
}

std::optional<Job> read_or_complain(const Console& console, const std::string& subject,
                                    ReadJob read) {
    if (read) return std::move(read.job);
    console.complain(subject, fault_sentence(console.language, read.fault));
    return std::nullopt;
}

/// The one job of a name; `none_found` is said where there is none.
std::optional<SourcedJob> named_job(const Console& console, const std::string& name,
                                    const std::string& none_found) {
    const std::optional<Library> library = library_for(console, name);
    if (!library) return std::nullopt;
    const LibraryResult<std::vector<JobRow>> rows = library->named(name);
    if (!rows) {
        console.complain(name, fault_sentence(console.language, rows.fault()));
        return std::nullopt;
    }
    if (rows->empty()) {
        console.complain(name, none_found);
        return std::nullopt;
    }
    if (rows->size() > 1) {
        console.complain(
            name, say(console.language, Word::job_ambiguous, {std::to_string(rows->size())}));
        return std::nullopt;
    }
    LibraryResult<Job> job = library->open(rows->front().id);
    if (!job) {
        console.complain(name, fault_sentence(console.language, job.fault()));
        return std::nullopt;
    }
    return SourcedJob{std::move(*job), rows->front().id, false};
}

}  // namespace

std::optional<Library> library_for(const Console& console, const std::string& subject) {
    LibraryResult<Library> opened = console.services.open_library();
    if (opened) return std::move(*opened);
    console.complain(subject, fault_sentence(console.language, opened.fault()));
    return std::nullopt;
}

std::optional<Job> job_from_file(const Console& console, const std::string& name) {
    if (name == stream_name) {
        const std::string bytes = read_stream(console.services.in);
        return read_or_complain(console, console.text(Word::standard_input), read_job(bytes));
    }
    if (looks_like_link(name)) {
        return read_or_complain(console, subject_of(console, name), read_job_link(name));
    }
    std::string bytes;
    if (const std::optional<FileFault> fault = read_file(name, most_read, bytes)) {
        console.complain(name, fault_sentence(console.language, *fault));
        return std::nullopt;
    }
    return read_or_complain(console, name, read_job(bytes));
}

std::optional<SourcedJob> job_from_library(const Console& console, const std::string& name) {
    return named_job(console, name, say(console.language, Word::job_missing, {"carriageway list"}));
}

std::optional<SourcedJob> job_from(const Console& console, const std::string& name) {
    const bool link = looks_like_link(name);
    if (name != stream_name && !link && !names_file(name) && !is_there(name)) {
        return named_job(console, name, console.text(Word::file_or_job_missing));
    }
    std::optional<Job> job = job_from_file(console, name);
    if (!job) return std::nullopt;
    return SourcedJob{std::move(*job), std::nullopt, link};
}

std::string subject_of(const Console& console, const std::string& name) {
    return looks_like_link(name) ? console.text(Word::the_link) : name;
}

bool put_bytes(const Console& console, const std::string& name, std::string_view bytes,
               bool overwrite) {
    if (name == stream_name) {
        write_out(console, bytes);
        return true;
    }
    const std::optional<FileFault> fault = write_file(name, bytes, overwrite);
    if (!fault) return true;
    console.complain(name, fault_sentence(console.language, *fault));
    return false;
}

}  // namespace carriageway
