#include "app/records/stored_run.h"

#include <cstdint>
#include <string>
#include <utility>

#include "app/records/exchange.h"
#include "app/records/stored_job.h"

namespace carriageway {

using Kind = LibraryFault::Kind;

namespace {

constexpr const char* run_columns =
    "id, job, began, ended, press, printed, spoiled, approved, checksum, text";

// Takes in one more time of a walk or a record; 0 is none.
void note_time(Timestamp& earliest, Timestamp time) {
    if (time > 0 && (earliest == 0 || time < earliest)) earliest = time;
}

Timestamp earliest_time(const Job& job) {
    Timestamp earliest = 0;
    for (const WalkMark& mark : job.walk) note_time(earliest, mark.stamp.time);
    for (const CheckTick& tick : job.record.ticks) note_time(earliest, tick.stamp.time);
    for (const PieceCount& count : job.record.counts) note_time(earliest, count.stamp.time);
    for (const Stoppage& stoppage : job.record.stoppages)
        note_time(earliest, stoppage.stamp.time);
    note_time(earliest, job.record.approval.time);
    return earliest;
}

// Of the text, and of whose run it is and when: neither follows from the text.
std::int64_t run_checksum(const std::string& text, JobId job, Timestamp ended) {
    return stored_checksum(text, std::to_string(job) + ' ' + std::to_string(ended));
}

// The job of a row of run_columns.
Job job_of(const Library::Connection& connection, SQLite::Statement& row) {
    const std::string what = "run " + row.getColumn(0).getString();
    const std::string text = row.getColumn(9).getString();
    const std::int64_t sum =
        run_checksum(text, row.getColumn(1).getInt64(), row.getColumn(3).getInt64());
    if (sum != row.getColumn(8).getInt64())
        throw LibraryStop{
            connection.fault(Kind::unreadable_job, what + ": its checksum is wrong")};
    ReadJob read = read_job(text);
    if (!read)
        throw LibraryStop{connection.fault(
            Kind::unreadable_job, what + ": " + read.fault.path + ": " + read.fault.found)};
    return std::move(*read.job);
}

bool belongs_to(SQLite::Statement& row, const Job& job) {
    const RunRow said = row_of_run(job);
    return row.getColumn(2).getInt64() == said.began &&
           row.getColumn(4).getString() == said.press &&
           static_cast<double>(row.getColumn(5).getInt64()) == said.printed &&
           static_cast<double>(row.getColumn(6).getInt64()) == said.spoiled &&
           row.getColumn(7).getString() == said.approved_by;
}

} // namespace

RunRow row_of_run(const Job& as_it_was) {
    RunRow row;
    row.began = earliest_time(as_it_was);
    row.press = as_it_was.press.name;
    if (!as_it_was.record.counts.empty()) {
        row.printed = as_it_was.record.counts.back().printed;
        row.spoiled = as_it_was.record.counts.back().spoiled;
    }
    row.approved_by = as_it_was.record.approval.by;
    return row;
}

RunId insert_run(const Library::Connection& connection, JobId job, const Job& as_it_was,
                 Timestamp ended) {
    const RunRow row = row_of_run(as_it_was);
    const std::string text = write_job(as_it_was);
    SQLite::Statement insert(*connection.database,
                             "INSERT INTO runs (job, began, ended, press, printed, spoiled, "
                             "approved, checksum, text) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert.bind(1, job);
    insert.bind(2, row.began);
    insert.bind(3, ended);
    insert.bind(4, row.press);
    insert.bind(5, static_cast<std::int64_t>(row.printed));
    insert.bind(6, static_cast<std::int64_t>(row.spoiled));
    insert.bind(7, row.approved_by);
    insert.bind(8, run_checksum(text, job, ended));
    insert.bind(9, text);
    insert.exec();
    return RunId{connection.database->getLastInsertRowid()};
}

Job stored_run(const Library::Connection& connection, RunId id) {
    SQLite::Statement found(*connection.database,
                            std::string("SELECT ") + run_columns + " FROM runs WHERE id = ?");
    found.bind(1, id);
    if (!found.executeStep())
        throw LibraryStop{connection.fault(Kind::no_such_run, "run " + std::to_string(id))};
    return job_of(connection, found);
}

std::optional<LibraryFault> fault_of_runs(const Library::Connection& connection) {
    SQLite::Statement found(*connection.database,
                            std::string("SELECT ") + run_columns + " FROM runs ORDER BY id");
    while (found.executeStep())
        if (!belongs_to(found, job_of(connection, found)))
            return connection.fault(Kind::corrupt, "run " + found.getColumn(0).getString() +
                                                       " is listed wrongly");
    return std::nullopt;
}

} // namespace carriageway
