#include "app/records/stored_job.h"

#include <algorithm>
#include <cstdint>
#include <random>

#include "app/records/checksum.h"
#include "app/records/exchange.h"

namespace carriageway {

using Kind = LibraryFault::Kind;

JobRow row_of(SQLite::Statement& statement) {
    JobRow row;
    row.id = statement.getColumn(0).getInt64();
    row.name = statement.getColumn(1).getString();
    row.press = statement.getColumn(2).getString();
    row.colours = statement.getColumn(3).getString();
    row.heads = statement.getColumn(4).getInt();
    row.created = statement.getColumn(5).getInt64();
    row.updated = statement.getColumn(6).getInt64();
    if (!statement.isColumnNull(7)) row.removed = statement.getColumn(7).getInt64();
    return row;
}

std::string colours_of(const Job& job) {
    std::string colours;
    for (const Head& head : job.heads) {
        if (!colours.empty()) colours += ", ";
        colours += head.colour;
    }
    return colours;
}

std::int64_t stored_checksum(const std::string& text, const std::string& more) {
    return static_cast<std::int64_t>(checksum_of(more, checksum_of(text)));
}

void need_job(const Library::Connection& connection, JobId id, bool listed) {
    SQLite::Statement found(*connection.database,
                            listed ? "SELECT 1 FROM jobs WHERE id = ? AND removed IS NULL"
                                   : "SELECT 1 FROM jobs WHERE id = ?");
    found.bind(1, id);
    if (!found.executeStep())
        throw LibraryStop{connection.fault(Kind::no_such_job, "job " + std::to_string(id))};
}

std::string stored_text(const Library::Connection& connection, JobId id) {
    const std::string what = "job " + std::to_string(id);
    SQLite::Statement found(*connection.database,
                            "SELECT text, checksum FROM snapshots WHERE job = ?");
    found.bind(1, id);
    if (!found.executeStep())
        throw LibraryStop{connection.fault(Kind::unreadable_job, what + ": its text is missing")};
    std::string text = found.getColumn(0).getString();
    if (stored_checksum(text) != found.getColumn(1).getInt64())
        throw LibraryStop{
            connection.fault(Kind::unreadable_job, what + ": its checksum is wrong")};
    return text;
}

Job stored_job(const Library::Connection& connection, JobId id) {
    ReadJob read = read_job(stored_text(connection, id));
    if (!read)
        throw LibraryStop{connection.fault(
            Kind::unreadable_job, "job " + std::to_string(id) + ": " + read.fault.path + ": " +
                                      read.fault.found)};
    return std::move(*read.job);
}

namespace {

// A clock that is far off makes poorer ids, none that are refused.
JobId new_job_id(const Library::Connection& connection, Timestamp time) {
    constexpr std::int64_t minutes = std::int64_t{1} << (job_id_bits - job_id_drawn_bits);
    const std::int64_t minute = std::clamp<std::int64_t>(time / 60'000, 0, minutes - 1);
    std::random_device random;
    SQLite::Statement taken(*connection.database, "SELECT 1 FROM jobs WHERE id = ?");
    for (;;) {
        const JobId drawn = random() & ((1u << job_id_drawn_bits) - 1u);
        const JobId id = minute << job_id_drawn_bits | drawn;
        if (id == 0) continue;
        taken.bind(1, id);
        if (!taken.executeStep()) return id;
        taken.reset();
    }
}

} // namespace

JobId insert_job(const Library::Connection& connection, JobId id, const Job& job, Timestamp time) {
    SQLite::Statement insert(*connection.database,
                             "INSERT INTO jobs (id, name, press, colours, heads, created, updated) "
                             "VALUES (?, ?, ?, ?, ?, ?, ?)");
    if (id == 0) id = new_job_id(connection, time);
    insert.bind(1, id);
    insert.bind(2, job.name);
    insert.bind(3, job.press.name);
    insert.bind(4, colours_of(job));
    insert.bind(5, static_cast<int>(job.heads.size()));
    insert.bind(6, time);
    insert.bind(7, time);
    insert.exec();

    const std::string text = write_job(job);
    SQLite::Statement snapshot(*connection.database,
                               "INSERT INTO snapshots (job, text, checksum) VALUES (?, ?, ?)");
    snapshot.bind(1, id);
    snapshot.bind(2, text);
    snapshot.bind(3, stored_checksum(text));
    snapshot.exec();
    return id;
}

namespace {

void insert_edits(const Library::Connection& connection, JobId id,
                  const std::vector<LoggedEdit>& edits) {
    SQLite::Statement last(*connection.database,
                           "SELECT coalesce(max(sequence), 0) FROM edits WHERE job = ?");
    last.bind(1, id);
    last.executeStep();
    std::int64_t sequence = last.getColumn(0).getInt64();
    SQLite::Statement insert(*connection.database,
                             "INSERT INTO edits (job, sequence, time, edit, inverse, checksum) "
                             "VALUES (?, ?, ?, ?, ?, ?)");
    for (const LoggedEdit& logged : edits) {
        const std::string edit = write_edit(logged.edit);
        const std::string inverse = write_edit(logged.inverse);
        insert.bind(1, id);
        insert.bind(2, ++sequence);
        insert.bind(3, logged.time);
        insert.bind(4, edit);
        insert.bind(5, inverse);
        insert.bind(6, stored_checksum(edit, inverse));
        insert.exec();
        insert.reset();
    }
}

} // namespace

bool update_job(const Library::Connection& connection, JobId id,
                const std::vector<LoggedEdit>& edits, const Job& snapshot) {
    SQLite::Statement update(*connection.database,
                             "UPDATE jobs SET name = ?, press = ?, colours = ?, heads = ?, "
                             "updated = max(updated, ?) WHERE id = ?");
    update.bind(1, snapshot.name);
    update.bind(2, snapshot.press.name);
    update.bind(3, colours_of(snapshot));
    update.bind(4, static_cast<int>(snapshot.heads.size()));
    update.bind(5, edits.empty() ? Timestamp{0} : edits.back().time);
    update.bind(6, id);
    if (update.exec() == 0) return false;

    const std::string text = write_job(snapshot);
    SQLite::Statement store(*connection.database,
                            "INSERT INTO snapshots (job, text, checksum) VALUES (?, ?, ?) "
                            "ON CONFLICT (job) DO UPDATE SET text = excluded.text, "
                            "checksum = excluded.checksum");
    store.bind(1, id);
    store.bind(2, text);
    store.bind(3, stored_checksum(text));
    store.exec();
    insert_edits(connection, id, edits);
    return true;
}

} // namespace carriageway
