// A finished run as a row of the library: for the files that implement Library. Everything here
// throws SQLite::Exception, and LibraryStop where it says so.
#pragma once

#include <optional>

#include "app/records/connection.h"

namespace carriageway {

/// What a list shows of a run that left a job like this; without id, job and ended.
RunRow row_of_run(const Job& as_it_was);

/// Inserts a run; returns its id. The job must be there.
RunId insert_run(const Library::Connection& connection, JobId job, const Job& as_it_was,
                 Timestamp ended);

/// The job as it was, checked against its checksum. Stops with `no_such_run` or `unreadable_job`.
Job stored_run(const Library::Connection& connection, RunId id);

/// The first run that can't be read, or is listed otherwise than its job says; nothing when all are
/// as they were stored. Stops with `unreadable_job`.
std::optional<LibraryFault> fault_of_runs(const Library::Connection& connection);

} // namespace carriageway
