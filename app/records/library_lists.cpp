// Lists of the library: jobs by words, name and removal; press profiles; settings.
#include <algorithm>
#include <utility>

#include "app/records/connection.h"
#include "app/records/exchange.h"
#include "app/records/library.h"
#include "app/records/stored_job.h"
#include "app/records/word_search.h"

namespace carriageway {

namespace {

using Kind = LibraryFault::Kind;

constexpr const char* newest_first = " ORDER BY jobs.updated DESC, jobs.id DESC LIMIT ? OFFSET ?";

// SELECT `what` of the jobs that hold every word, its parameters bound; the caller binds those of
// `end` from `next` on.
struct Search {
    SQLite::Statement statement;
    int next = 1;
};

Search search_for(const Library::Connection& connection, bool word_index, const std::string& what,
                  const std::string& query, const char* end) {
    const std::vector<std::string> words = search_words(query);
    const bool by_index = word_index && !words.empty();
    std::string sql = "SELECT " + what;
    sql += by_index ? " FROM job_words JOIN jobs ON jobs.id = job_words.rowid "
                      "WHERE job_words MATCH ? AND jobs.removed IS NULL"
                    : " FROM jobs WHERE jobs.removed IS NULL";
    if (!by_index)
        for (std::size_t i = 0; i < words.size(); ++i)
            sql += " AND jobs.name || ' ' || jobs.colours || ' ' || jobs.press LIKE ? ESCAPE '\\'";
    Search search{SQLite::Statement(*connection.database, sql + end)};
    if (by_index) search.statement.bind(search.next++, index_expression(words));
    if (!by_index)
        for (const std::string& word : words)
            search.statement.bind(search.next++, like_pattern(word));
    return search;
}

void bind_page(SQLite::Statement& statement, int first, int limit, int offset) {
    statement.bind(first, std::max(limit, 0));
    statement.bind(first + 1, std::max(offset, 0));
}

std::vector<JobRow> rows_of(SQLite::Statement& statement) {
    std::vector<JobRow> rows;
    while (statement.executeStep()) rows.push_back(row_of(statement));
    return rows;
}

// Searches through the index, and once more without it when it turns out to be damaged: the next
// change of a job makes it again.
template <class Find>
auto searched(const Library::Connection& connection, Find&& find) -> decltype(find(true)) {
    return connection.guarded([&]() -> decltype(find(true)) {
        try {
            return find(connection.word_index);
        } catch (const SQLite::Exception& failure) {
            if (!is_damaged_index(failure)) throw;
        }
        return find(false);
    });
}

} // namespace

LibraryResult<std::vector<JobRow>> Library::list(const std::string& query, int limit,
                                                 int offset) const {
    return searched(*connection_, [&](bool by_index) -> LibraryResult<std::vector<JobRow>> {
        Search search = search_for(*connection_, by_index, job_columns, query, newest_first);
        bind_page(search.statement, search.next, limit, offset);
        return rows_of(search.statement);
    });
}

LibraryResult<std::int64_t> Library::count(const std::string& query) const {
    return searched(*connection_, [&](bool by_index) -> LibraryResult<std::int64_t> {
        Search search = search_for(*connection_, by_index, "count(*)", query, "");
        search.statement.executeStep();
        return std::int64_t{search.statement.getColumn(0).getInt64()};
    });
}

LibraryResult<std::vector<JobRow>> Library::named(const std::string& name) const {
    return connection_->guarded([&]() -> LibraryResult<std::vector<JobRow>> {
        SQLite::Statement found(*connection_->database,
                                std::string("SELECT ") + job_columns +
                                    " FROM jobs WHERE name = ? AND removed IS NULL "
                                    "ORDER BY updated DESC, id DESC");
        found.bind(1, name);
        return rows_of(found);
    });
}

LibraryResult<std::vector<JobRow>> Library::list_removed(int limit, int offset) const {
    return connection_->guarded([&]() -> LibraryResult<std::vector<JobRow>> {
        SQLite::Statement found(*connection_->database,
                                std::string("SELECT ") + job_columns +
                                    " FROM jobs WHERE removed IS NOT NULL "
                                    "ORDER BY removed DESC, id DESC LIMIT ? OFFSET ?");
        bind_page(found, 1, limit, offset);
        return rows_of(found);
    });
}

LibraryResult<JobRow> Library::row(JobId id) const {
    return connection_->guarded([&]() -> LibraryResult<JobRow> {
        need_job(*connection_, id, false);
        SQLite::Statement found(*connection_->database, std::string("SELECT ") + job_columns +
                                                            " FROM jobs WHERE id = ?");
        found.bind(1, id);
        found.executeStep();
        return row_of(found);
    });
}

// ---- press profiles ----

namespace {

[[noreturn]] void stop_at_press(const Library::Connection& connection, Kind kind, PressId id,
                                const char* why) {
    throw LibraryStop{connection.fault(kind, "press " + std::to_string(id) + why)};
}

void refuse_bad_press(const Library::Connection& connection, const PressProfile& press) {
    if (fault_of(press)) stop_at_press(connection, Kind::unreadable_job, 0, " was refused");
}

void bind_press(SQLite::Statement& statement, const PressProfile& press, Timestamp time) {
    const std::string text = write_press(press);
    statement.bind(1, press.name);
    statement.bind(2, press.stations);
    statement.bind(3, time);
    statement.bind(4, text);
    statement.bind(5, stored_checksum(text));
}

} // namespace

LibraryResult<std::vector<PressRow>> Library::presses() const {
    return connection_->guarded([&]() -> LibraryResult<std::vector<PressRow>> {
        SQLite::Statement found(*connection_->database,
                                "SELECT id, name, stations, updated FROM presses "
                                "ORDER BY name COLLATE NOCASE, id");
        std::vector<PressRow> rows;
        while (found.executeStep())
            rows.push_back({found.getColumn(0).getInt64(), found.getColumn(1).getString(),
                            found.getColumn(2).getInt(), found.getColumn(3).getInt64()});
        return rows;
    });
}

LibraryResult<PressProfile> Library::open_press(PressId id) const {
    return connection_->guarded([&]() -> LibraryResult<PressProfile> {
        SQLite::Statement found(*connection_->database,
                                "SELECT profile, checksum FROM presses WHERE id = ?");
        found.bind(1, id);
        if (!found.executeStep()) stop_at_press(*connection_, Kind::no_such_press, id, "");
        const std::string text = found.getColumn(0).getString();
        ReadPress read = read_press(text);
        if (stored_checksum(text) != found.getColumn(1).getInt64() || !read)
            stop_at_press(*connection_, Kind::unreadable_job, id, " is damaged");
        return std::move(*read.press);
    });
}

LibraryResult<PressId> Library::add_press(const PressProfile& press, Timestamp time) {
    return connection_->changing([&]() -> LibraryResult<PressId> {
        refuse_bad_press(*connection_, press);
        SQLite::Statement insert(*connection_->database,
                                 "INSERT INTO presses (name, stations, updated, profile, checksum) "
                                 "VALUES (?, ?, ?, ?, ?)");
        bind_press(insert, press, time);
        insert.exec();
        return PressId{connection_->database->getLastInsertRowid()};
    });
}

std::optional<LibraryFault> Library::change_press(PressId id, const PressProfile& press,
                                                  Timestamp time) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        refuse_bad_press(*connection_, press);
        SQLite::Statement update(*connection_->database,
                                 "UPDATE presses SET name = ?, stations = ?, updated = ?, "
                                 "profile = ?, checksum = ? WHERE id = ?");
        bind_press(update, press, time);
        update.bind(6, id);
        if (update.exec() == 0) stop_at_press(*connection_, Kind::no_such_press, id, "");
        return std::nullopt;
    });
}

std::optional<LibraryFault> Library::remove_press(PressId id) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        SQLite::Statement remove(*connection_->database, "DELETE FROM presses WHERE id = ?");
        remove.bind(1, id);
        if (remove.exec() == 0) stop_at_press(*connection_, Kind::no_such_press, id, "");
        return std::nullopt;
    });
}

// ---- settings ----

LibraryResult<std::optional<std::string>> Library::setting(const std::string& key) const {
    return connection_->guarded([&]() -> LibraryResult<std::optional<std::string>> {
        SQLite::Statement found(*connection_->database, "SELECT value FROM settings WHERE key = ?");
        found.bind(1, key);
        if (!found.executeStep()) return std::optional<std::string>();
        return std::optional<std::string>(found.getColumn(0).getString());
    });
}

std::optional<LibraryFault> Library::set_setting(const std::string& key,
                                                 const std::string& value) {
    return connection_->changing([&]() -> std::optional<LibraryFault> {
        SQLite::Statement set(*connection_->database,
                              "INSERT INTO settings (key, value) VALUES (?, ?) "
                              "ON CONFLICT (key) DO UPDATE SET value = excluded.value");
        set.bind(1, key);
        set.bind(2, value);
        set.exec();
        return std::nullopt;
    });
}

} // namespace carriageway
