// Runs of jobs: the line of what a job was each time a run of it was finished.
#include <string>

#include "app/records/connection.h"
#include "app/records/exchange.h"
#include "app/records/library.h"
#include "app/records/stored_job.h"
#include "app/records/stored_run.h"

namespace carriageway {

using Kind = LibraryFault::Kind;

LibraryResult<RunId> Library::add_run(JobId job, const Job& as_it_was, Timestamp ended) {
    if (const std::optional<JobFault> wrong = fault_of(as_it_was))
        return connection_->fault(Kind::unreadable_job,
                                  "a run was refused before it was stored, reason " +
                                      std::to_string(static_cast<int>(wrong->refusal)));
    return connection_->changing([&]() -> LibraryResult<RunId> {
        need_job(*connection_, job, false);
        return insert_run(*connection_, job, as_it_was, ended);
    });
}

LibraryResult<std::vector<RunRow>> Library::runs(JobId job) const {
    return connection_->guarded([&]() -> LibraryResult<std::vector<RunRow>> {
        need_job(*connection_, job, false);
        SQLite::Statement found(*connection_->database,
                                "SELECT id, job, began, ended, press, printed, spoiled, approved "
                                "FROM runs WHERE job = ? ORDER BY ended DESC, id DESC");
        found.bind(1, job);
        std::vector<RunRow> rows;
        while (found.executeStep())
            rows.push_back({found.getColumn(0).getInt64(), found.getColumn(1).getInt64(),
                            found.getColumn(2).getInt64(), found.getColumn(3).getInt64(),
                            found.getColumn(4).getString(),
                            static_cast<double>(found.getColumn(5).getInt64()),
                            static_cast<double>(found.getColumn(6).getInt64()),
                            found.getColumn(7).getString()});
        return rows;
    });
}

LibraryResult<Job> Library::open_run(RunId id) const {
    return connection_->guarded(
        [&]() -> LibraryResult<Job> { return stored_run(*connection_, id); });
}

std::optional<LibraryFault> Library::remove_run(RunId id) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        SQLite::Statement remove(*connection_->database, "DELETE FROM runs WHERE id = ?");
        remove.bind(1, id);
        if (remove.exec() == 0)
            throw LibraryStop{connection_->fault(Kind::no_such_run, "run " + std::to_string(id))};
        return std::nullopt;
    });
}

} // namespace carriageway
