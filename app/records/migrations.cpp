#include <algorithm>
#include <iterator>
#include <string>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/schema.h"

namespace carriageway {

int version_of(SQLite::Database& database) {
    return database.execAndGet("PRAGMA user_version").getInt();
}

std::int32_t application_of(SQLite::Database& database) {
    return database.execAndGet("PRAGMA application_id").getInt();
}

bool is_blank(SQLite::Database& database) {
    return database.execAndGet("SELECT count(*) FROM sqlite_schema").getInt() == 0;
}

namespace {

struct Table {
    const char* name;
    int since; ///< the first version that has it
};
constexpr Table tables[] = {{"presses", 1}, {"jobs", 1},     {"snapshots", 1},
                            {"edits", 1},   {"settings", 1}, {"runs", 2},
                            {"trainees", 3}, {"attempts", 3}, {"sign_offs", 3},
                            {"calls", 3}};

} // namespace

bool has_every_table(SQLite::Database& database, int version) {
    return std::all_of(std::begin(tables), std::end(tables), [&](const Table& table) {
        return table.since > version || database.tableExists(table.name);
    });
}

bool has_strange_code(SQLite::Database& database) {
    return database
               .execAndGet("SELECT count(*) FROM sqlite_schema WHERE type = 'view' OR "
                           "(type = 'trigger' AND name NOT IN ('job_words_added', "
                           "'job_words_deleted', 'job_words_changed'))")
               .getInt() > 0;
}

void migrate(SQLite::Database& database, const std::vector<Migration>& steps) {
    if (steps.empty() || version_of(database) >= steps.back().to) return;
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    // Read again under the lock: another program may have been faster.
    int version = version_of(database);
    for (const Migration& step : steps) {
        if (step.to <= version) continue;
        database.exec(step.sql);
        version = step.to;
    }
    database.exec("PRAGMA application_id = " + std::to_string(library_application_id));
    database.exec("PRAGMA user_version = " + std::to_string(version));
    transaction.commit();
}

} // namespace carriageway
