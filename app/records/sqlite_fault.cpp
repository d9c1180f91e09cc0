#include "app/records/sqlite_fault.h"

#include <cerrno>
#include <cstdlib>

#include <sqlite3.h>

namespace carriageway {

namespace {

bool no_room(int system_error) {
#ifdef EDQUOT
    if (system_error == EDQUOT) return true;
#endif
    return system_error == ENOSPC;
}

LibraryFault::Kind kind_of(int extended_code, int system_error) {
    using Kind = LibraryFault::Kind;
    switch (extended_code) {
    case SQLITE_IOERR_SHMSIZE: // the shared index of the log could not grow
        return no_room(system_error) || system_error == 0 ? Kind::disk_full : Kind::io;
    default: break;
    }
    switch (extended_code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED: return Kind::locked;
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_AUTH: return Kind::read_only;
    case SQLITE_FULL: return Kind::disk_full;
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
    case SQLITE_FORMAT: return Kind::corrupt;
    default: return no_room(system_error) ? Kind::disk_full : Kind::io;
    }
}

} // namespace

LibraryFault fault_from_code(int extended_code, const std::string& message,
                             const std::string& path, int system_error) {
    return {kind_of(extended_code, system_error),
            message + " (SQLite " + std::to_string(extended_code) + ")", path};
}

LibraryFault fault_from(const SQLite::Exception& failure, const std::string& path,
                        const SQLite::Database* database) {
    const int code = failure.getExtendedErrorCode() > 0 ? failure.getExtendedErrorCode()
                                                        : failure.getErrorCode();
    const int system_error =
        database == nullptr ? 0 : sqlite3_system_errno(database->getHandle());
    return fault_from_code(code, failure.what(), path, system_error);
}

LibraryFault fault_from_check(const std::string& found, const std::string& path) {
    // SQLite's words: "unable to get the page. error code=N" and, of an overflow page or one of the
    // list of free ones, "failed to get page N". A page beyond the file's end is called otherwise.
    constexpr const char* sign = "error code=";
    const std::size_t at = found.find(sign);
    int code = SQLITE_CORRUPT;
    if (found.find("failed to get page") != std::string::npos) code = SQLITE_IOERR;
    if (at != std::string::npos)
        code = std::atoi(found.c_str() + at + std::char_traits<char>::length(sign));
    return fault_from_code(code, found, path);
}

bool is_damaged_index(const SQLite::Exception& failure) {
    return failure.getExtendedErrorCode() == SQLITE_CORRUPT_VTAB;
}

} // namespace carriageway
