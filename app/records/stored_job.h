// A job as rows of the library's tables: for the files that implement Library. Everything here
// throws SQLite::Exception, and LibraryStop where a job isn't there or can't be read.
#pragma once

#include <string>
#include <vector>

#include "app/records/connection.h"

namespace carriageway {

/// Columns of a JobRow in the order in which row_of() reads them.
inline constexpr const char* job_columns =
    "jobs.id, jobs.name, jobs.press, jobs.colours, jobs.heads, jobs.created, jobs.updated, "
    "jobs.removed";
JobRow row_of(SQLite::Statement& statement);

/// Names of the colours of a job's heads, ", " between them.
std::string colours_of(const Job& job);

/// Stops with `no_such_job` when there is none of this id; with `listed`, when it is removed too.
void need_job(const Library::Connection& connection, JobId id, bool listed);

/// The text of a job, checked against its checksum.
std::string stored_text(const Library::Connection& connection, JobId id);
Job stored_job(const Library::Connection& connection, JobId id);

/// Inserts a job; `id` 0 gives it a new id. Returns its id.
JobId insert_job(const Library::Connection& connection, JobId id, const Job& job, Timestamp time);

/// Puts a job in place of the one stored, and edits at the end of its history. False when there is
/// no such job.
bool update_job(const Library::Connection& connection, JobId id,
                const std::vector<LoggedEdit>& edits, const Job& snapshot);

/// A checksum as SQLite stores whole numbers.
std::int64_t stored_checksum(const std::string& text, const std::string& more = {});

} // namespace carriageway
