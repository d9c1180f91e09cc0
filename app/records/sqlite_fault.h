// SQLite's result codes as faults of the library.
#pragma once

#include <string>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/library_fault.h"

namespace carriageway {

/// What an extended result code of SQLite means, with its message as detail. `system_error` is the
/// errno behind it where it is known, and 0 otherwise.
LibraryFault fault_from_code(int extended_code, const std::string& message,
                             const std::string& path, int system_error = 0);

/// The same for an exception; `database` is the connection that it came from, or nullptr.
LibraryFault fault_from(const SQLite::Exception& failure, const std::string& path,
                        const SQLite::Database* database = nullptr);

/// What a check of the structure (`PRAGMA quick_check`, `integrity_check`) found. A page that could
/// not be read at that moment is `io`, and no damage: the check itself makes no difference.
LibraryFault fault_from_check(const std::string& found, const std::string& path);

/// Whether what is damaged is the full-text index alone, which can be made again.
bool is_damaged_index(const SQLite::Exception& failure);

} // namespace carriageway
