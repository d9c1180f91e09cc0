#include "app/records/library.h"

#include <algorithm>
#include <atomic>
#include <utility>

#include "app/records/connection.h"
#include "app/records/exchange.h"
#include "app/records/schema.h"
#include "app/records/stored_job.h"
#include "app/records/stored_practice.h"
#include "app/records/stored_run.h"

namespace carriageway {

using Kind = LibraryFault::Kind;

Library::Library(std::unique_ptr<Connection> connection) : connection_(std::move(connection)) {}
Library::Library(Library&&) noexcept = default;
Library& Library::operator=(Library&&) noexcept = default;
Library::~Library() = default;

LibraryResult<Library> Library::open(const std::string& folder, const LibraryOptions& options) {
    return open(LibraryPlace{folder, "", options});
}

LibraryResult<Library> Library::open(const LibraryPlace& place) {
    // Faults of opening carry their own path; this one is for what the system throws.
    Connection nowhere;
    nowhere.path = place.folder;
    return nowhere.guarded([&]() -> LibraryResult<Library> {
        return Library(place.memory.empty() ? open_library_file(place)
                                            : open_library_memory(place));
    });
}

Library Library::in_memory() {
    static std::atomic<int> made{0};
    LibraryPlace place;
    place.memory = "/carriageway-library-" + std::to_string(++made);
    return Library(open_library_memory(place));
}

bool Library::can_write() const { return !connection_->write_fault; }
bool Library::kept() const { return connection_->place.memory.empty(); }
const std::string& Library::path() const { return connection_->path; }
const LibraryPlace& Library::place() const { return connection_->place; }
const std::optional<LibraryFault>& Library::write_fault() const {
    return connection_->write_fault;
}

LibraryResult<Job> Library::open(JobId id) const {
    return connection_->guarded([&]() -> LibraryResult<Job> {
        need_job(*connection_, id, true);
        return stored_job(*connection_, id);
    });
}

LibraryResult<JobId> Library::create(const Job& job, Timestamp time) {
    if (const std::optional<JobFault> wrong = fault_of(job))
        return connection_->fault(Kind::unreadable_job,
                                  "refused before it was stored, reason " +
                                      std::to_string(static_cast<int>(wrong->refusal)));
    return connection_->changing([&]() -> LibraryResult<JobId> {
        return insert_job(*connection_, 0, job, time);
    });
}

namespace {

// The edit that renames, with the job renamed; stops with `bad_name`.
LoggedEdit name_job(const Library::Connection& connection, Job& job, const std::string& name,
                    Timestamp time) {
    const bool blank = std::all_of(name.begin(), name.end(), [](char c) { return c == ' '; });
    const Edit edit{SetName{0, name}};
    Applied applied;
    if (!blank) applied = apply(job, edit);
    if (!applied) throw LibraryStop{connection.fault(Kind::bad_name, name)};
    return {edit, std::move(*applied.inverse), time};
}

} // namespace

LibraryResult<JobId> Library::duplicate(JobId id, const std::string& name, Timestamp time) {
    return connection_->changing([&]() -> LibraryResult<JobId> {
        need_job(*connection_, id, true);
        Job job = stored_job(*connection_, id);
        name_job(*connection_, job, name, time);
        return insert_job(*connection_, 0, job, time);
    });
}

std::optional<LibraryFault> Library::rename(JobId id, const std::string& name, Timestamp time) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        need_job(*connection_, id, true);
        Job job = stored_job(*connection_, id);
        const LoggedEdit edit = name_job(*connection_, job, name, time);
        update_job(*connection_, id, {edit}, job);
        return std::nullopt;
    });
}

std::optional<LibraryFault> Library::remove(JobId id, Timestamp time) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        need_job(*connection_, id, false);
        SQLite::Statement update(*connection_->database,
                                 "UPDATE jobs SET removed = ? WHERE id = ? AND removed IS NULL");
        update.bind(1, time);
        update.bind(2, id);
        update.exec();
        return std::nullopt;
    });
}

std::optional<LibraryFault> Library::restore(JobId id) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        need_job(*connection_, id, false);
        SQLite::Statement update(*connection_->database,
                                 "UPDATE jobs SET removed = NULL WHERE id = ?");
        update.bind(1, id);
        update.exec();
        return std::nullopt;
    });
}

LibraryResult<int> Library::purge(Timestamp before) {
    return connection_->changing([&]() -> LibraryResult<int> {
        SQLite::Statement remove(*connection_->database, "DELETE FROM jobs WHERE removed <= ?");
        remove.bind(1, before);
        return remove.exec();
    });
}

std::optional<LibraryFault> Library::append_edits(JobId id, const std::vector<LoggedEdit>& edits,
                                                  const Job& snapshot) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        if (!update_job(*connection_, id, edits, snapshot))
            throw LibraryStop{connection_->fault(Kind::no_such_job, "job " + std::to_string(id))};
        return std::nullopt;
    });
}

std::optional<LibraryFault> Library::append_all(const std::vector<JobEdits>& batch) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        for (const JobEdits& job : batch) {
            if (update_job(*connection_, job.id, job.edits, job.snapshot)) continue;
            const Timestamp time = job.edits.empty() ? 0 : job.edits.front().time;
            insert_job(*connection_, job.id, job.snapshot, time);
            update_job(*connection_, job.id, job.edits, job.snapshot);
        }
        return std::nullopt;
    });
}

namespace {

std::vector<LoggedEdit> stored_history(const Library::Connection& connection, JobId id) {
    need_job(connection, id, false);
    SQLite::Statement found(*connection.database,
                            "SELECT sequence, time, edit, inverse, checksum FROM edits "
                            "WHERE job = ? ORDER BY sequence");
    found.bind(1, id);
    std::vector<LoggedEdit> edits;
    while (found.executeStep()) {
        const std::string text = found.getColumn(2).getString();
        const std::string undone_by = found.getColumn(3).getString();
        ReadEdit edit = read_edit(text);
        ReadEdit inverse = read_edit(undone_by);
        if (stored_checksum(text, undone_by) != found.getColumn(4).getInt64() || !edit || !inverse)
            throw LibraryStop{connection.fault(Kind::unreadable_job,
                                               "job " + std::to_string(id) + ": edit " +
                                                   found.getColumn(0).getString() +
                                                   " is damaged")};
        edits.push_back(
            {std::move(*edit.edit), std::move(*inverse.edit), found.getColumn(1).getInt64()});
    }
    return edits;
}

} // namespace

LibraryResult<std::vector<LoggedEdit>> Library::history(JobId id) const {
    return connection_->guarded([&]() -> LibraryResult<std::vector<LoggedEdit>> {
        return stored_history(*connection_, id);
    });
}

namespace {

bool belongs_to(const JobRow& row, const Job& job) {
    return row.name == job.name && row.press == job.press.name && row.colours == colours_of(job) &&
           row.heads == static_cast<int>(job.heads.size());
}

} // namespace

std::optional<LibraryFault> fault_of_library(const Library::Connection& connection) {
    SQLite::Database& database = *connection.database;
    const std::string found = database.execAndGet("PRAGMA integrity_check(1)").getString();
    if (found != "ok") return fault_from_check(found, connection.path);
    SQLite::Statement strays(database, "PRAGMA foreign_key_check");
    if (strays.executeStep())
        return connection.fault(Kind::corrupt,
                                "rows belong to a job or a person that is not there");
    SQLite::Statement jobs(database, std::string("SELECT ") + job_columns + " FROM jobs");
    while (jobs.executeStep()) {
        const JobRow row = row_of(jobs);
        if (!belongs_to(row, stored_job(connection, row.id)))
            return connection.fault(Kind::corrupt,
                                    "job " + std::to_string(row.id) + " is listed wrongly");
        stored_history(connection, row.id);
    }
    if (const std::optional<LibraryFault> wrong = fault_of_runs(connection)) return wrong;
    if (const std::optional<LibraryFault> wrong = fault_of_practice(connection)) return wrong;
    return fault_of_calls(connection);
}

std::optional<LibraryFault> Library::check() const {
    return connection_->guarded([&]() { return fault_of_library(*connection_); });
}

} // namespace carriageway
