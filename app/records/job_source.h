// Where the command line takes a job from: a file, standard input, or the library.
#pragma once

#include <optional>
#include <string>

#include "app/records/console.h"
#include "app/records/file_bytes.h"

namespace carriageway {

/// A job and, where it is one of the library's, its id there.
struct SourcedJob {
    Job job;
    std::optional<JobId> id;
    bool from_link = false;
};

/// The job that `name` stands for: "-", a link (job_link.h), a file, or else the name of a job in
/// the library. Nothing when there is none, after saying so as an error.
std::optional<SourcedJob> job_from(const Console& console, const std::string& name);

/// The job in a file or a link, or in standard input for "-"; not looked for in the library.
std::optional<Job> job_from_file(const Console& console, const std::string& name);

/// What a message calls it: a link is too long to be repeated.
std::string subject_of(const Console& console, const std::string& name);

/// The job of the library with exactly this name.
std::optional<SourcedJob> job_from_library(const Console& console, const std::string& name);

/// The library; nothing when it can't be used, after saying so as an error about `subject`.
std::optional<Library> library_for(const Console& console, const std::string& subject);

/// Writes bytes to a file, or to standard output for "-". False after saying why not as an error.
bool put_bytes(const Console& console, const std::string& name, std::string_view bytes,
               bool overwrite);

}  // namespace carriageway
