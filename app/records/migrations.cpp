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

bool has_every_table(SQLite::Database& database) {
    return database
               .execAndGet("SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name IN "
                           "('presses', 'jobs', 'snapshots', 'edits', 'settings')")
               .getInt() == 5;
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
