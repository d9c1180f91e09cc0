// The tables of the library, and how an older library becomes one of today.
//
// A library says by `application_id` that it is one, and by `user_version` which step of
// `migrations()` it has been through. A step that has been released is never changed; a new table
// or column is a new step.
#pragma once

#include <cstdint>
#include <vector>

namespace SQLite {
class Database;
}

namespace carriageway {

/// "CwLb" in the header of the file.
inline constexpr std::int32_t library_application_id = 0x43774C62;

/// The version that this program writes, and the newest that it opens.
inline constexpr int library_version = 3;

/// One step of the library's history: SQL that makes version `to` out of `to` - 1.
struct Migration {
    int to = 0;
    const char* sql = "";
};

/// Every step, version 1 first.
const std::vector<Migration>& migrations();

/// Takes a library through every step above its own version in one transaction: all or none.
/// Throws SQLite::Exception.
void migrate(SQLite::Database& database, const std::vector<Migration>& steps);

/// `user_version` and `application_id` as the connection sees them. Throw SQLite::Exception.
int version_of(SQLite::Database& database);
std::int32_t application_of(SQLite::Database& database);

/// Whether there is no table, index, view or trigger. Throws SQLite::Exception.
bool is_blank(SQLite::Database& database);

/// Whether every table of a version is there. Throws SQLite::Exception.
bool has_every_table(SQLite::Database& database, int version = library_version);

/// Whether there are views or triggers beyond those of the word index (word_search.h): what stands
/// in a library is data and must not run anything. Throws SQLite::Exception.
bool has_strange_code(SQLite::Database& database);

} // namespace carriageway
