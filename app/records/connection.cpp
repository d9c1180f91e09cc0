#include "app/records/connection.h"

#include <cerrno>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <random>
#include <system_error>

#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>

#include "app/records/file_bytes.h"
#include "app/records/library_header.h"
#include "app/records/schema.h"
#include "app/records/word_search.h"

namespace carriageway {

namespace {

namespace fs = std::filesystem;
using Kind = LibraryFault::Kind;

// Up to this size the whole structure of the file is checked at each opening, so that a damaged
// library is found before it is written to. Ours: about a tenth of a second.
constexpr std::uintmax_t checked_at_opening = 16u * 1024u * 1024u;

void make_folder(const std::string& folder) {
    if (folder.empty()) stop(Kind::no_folder, "no data folder is given", folder);
    std::error_code error;
    fs::create_directories(path_of(folder), error);
    std::error_code ignored;
    if (!fs::is_directory(path_of(folder), ignored))
        stop(Kind::no_folder, error ? error.message() : "it is not a folder", folder);
}

// As a URI, so that SQLite can be told how to open it.
std::string uri_of(const std::string& path, const char* parameters) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string uri = "file:";
#ifdef _WIN32
    if (path.size() > 1 && path[1] == ':') uri += '/';
#endif
    for (char c : path) {
        const auto byte = static_cast<unsigned char>(c);
#ifdef _WIN32
        if (c == '\\') {
            uri += '/';
            continue;
        }
#endif
        if (c == '%' || c == '?' || c == '#' || byte < 0x20) {
            uri += '%';
            uri += digits[byte >> 4];
            uri += digits[byte & 15];
        } else {
            uri += c;
        }
    }
    return uri + parameters;
}

std::unique_ptr<SQLite::Database> connect(const LibraryPlace& place, const std::string& name,
                                          int flags) {
    auto database = std::make_unique<SQLite::Database>(name, flags, place.options.busy_timeout,
                                                       place.options.vfs);
    // Until it is known to be in order, closing it must not move its log into it.
    sqlite3_db_config(database->getHandle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, nullptr);
    sqlite3_db_config(database->getHandle(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    // With a rollback journal a change is complete when the journal's name is gone from the disk,
    // and only EXTRA waits for that; with a log it is the same as FULL.
    // What is deleted is overwritten: a person who is erased leaves no bytes behind.
    // (trusted_schema = OFF would keep our own triggers from the full-text index of SQLite 3.40;
    // examine() lets no others in.)
    database->exec("PRAGMA cell_size_check = ON; "
                   "PRAGMA foreign_keys = ON; PRAGMA synchronous = EXTRA; "
                   "PRAGMA secure_delete = ON; PRAGMA temp_store = MEMORY;");
    return database;
}

void check_structure(SQLite::Database& database, const std::string& path) {
    std::error_code error;
    const std::uintmax_t size = fs::file_size(path_of(path), error);
    if (error || size > checked_at_opening) return;
    const std::string found = database.execAndGet("PRAGMA quick_check(1)").getString();
    if (found != "ok") throw LibraryStop{fault_from_check(found, path)};
}

// Whether the file may be used; throws when not. True for one that is still to be made.
bool examine(SQLite::Database& database, const std::string& path) {
    const int version = version_of(database);
    const std::int32_t application = application_of(database);
    if (application == 0 && version == 0 && is_blank(database)) return true;
    if (application != library_application_id)
        stop(Kind::corrupt, "it is a database of another program", path);
    if (version > library_version) stop(Kind::newer_version, newer_detail(version), path);
    if (version < 1) stop(Kind::corrupt, "version " + std::to_string(version), path);
    check_structure(database, path);
    if (!has_every_table(database, version)) stop(Kind::corrupt, "a table is missing", path);
    if (has_strange_code(database))
        stop(Kind::corrupt, "it has views or triggers that are not the library's", path);
    return version < library_version;
}

void set_journal(SQLite::Database& database, LibraryOptions::Journal journal) {
    const bool log = journal == LibraryOptions::Journal::write_ahead;
    SQLite::Statement statement(database, log ? "PRAGMA journal_mode = WAL"
                                              : "PRAGMA journal_mode = DELETE");
    statement.executeStep(); // where there can be no log it stays a rollback journal: slower only
    database.exec("PRAGMA journal_size_limit = 4194304");
}

void open_for_writing(Library::Connection& connection) {
    connection.database = connect(connection.place, connection.path,
                                  SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Database& database = *connection.database;
    examine(database, connection.path);
    if (sqlite3_db_readonly(database.getHandle(), "main") != 0)
        stop(Kind::read_only, "the file is write-protected", connection.path);
    set_journal(database, connection.place.options.journal);
    try {
        // Says whether it can be written before anybody relies on it. Somebody else writing just
        // now is no obstacle: a change waits for its turn.
        SQLite::Transaction trial(database, SQLite::TransactionBehavior::IMMEDIATE);
    } catch (const SQLite::Exception& failure) {
        if (failure.getErrorCode() != SQLITE_BUSY) throw;
    }
    migrate(database, migrations());
    connection.word_index = prepare_word_index(database, connection.place.options.word_index);
    sqlite3_db_config(database.getHandle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 0, nullptr);
}

// As filesystem::copy_file does, which brings all of C++'s streams into the page.
void copy_bytes(const fs::path& from, const fs::path& to) {
    errno = 0;
    const OpenFile source = open_bytes(from);
    const std::string name = to.string();
    std::string part(1u << 16, '\0');
    OpenFile target(source ? std::fopen(name.c_str(), "wbx") : nullptr);
    bool good = target != nullptr;
    while (good && std::feof(source.get()) == 0) {
        const std::size_t count = std::fread(part.data(), 1, part.size(), source.get());
        good = std::ferror(source.get()) == 0 &&
               std::fwrite(part.data(), 1, count, target.get()) == count;
    }
    good = target != nullptr && std::fclose(target.release()) == 0 && good;
    if (good) return;
    const std::error_code error(errno != 0 ? errno : EIO, std::generic_category());
    throw fs::filesystem_error("copy", from, to, error);
}

// Copies a file that a connection is to write to, if there is one with anything in it.
bool copy_to_write(const fs::path& from, const fs::path& to) {
    std::error_code error;
    const std::uintmax_t size = fs::file_size(from, error);
    if (error || size == 0) return false;
    copy_bytes(from, to);
    std::error_code ignored; // a copy keeps the protection, and here it is in the way
    fs::permissions(to, fs::perms::owner_write, fs::perm_options::add, ignored);
    return true;
}

// Where SQLite can't write beside the file, as in a folder that is write-protected: the file alone
// when there is neither log nor journal, otherwise a copy of all. What stands in the log was saved
// too, and what the journal undoes was not.
void connect_apart(Library::Connection& connection, const LibraryFault& reason) {
    const fs::path file = path_of(connection.path);
    try {
        auto folder = std::make_unique<TemporaryFolder>();
        const std::string copied = folder->path() + "/library.db";
        bool beside = false;
        for (const char* end : {"-wal", "-journal"})
            beside |= copy_to_write(path_of(connection.path + end), path_of(copied + end));
        if (beside) {
            copy_to_write(file, path_of(copied));
            connection.copy = std::move(folder);
            connection.database = connect(connection.place, copied, SQLite::OPEN_READWRITE);
            return;
        }
    } catch (const fs::filesystem_error&) {
        throw LibraryStop{reason}; // no room for a copy either
    }
    connection.database = connect(connection.place, uri_of(connection.path, "?mode=ro&immutable=1"),
                                  SQLite::OPEN_READONLY | SQLite::OPEN_URI);
}

// An older library that can't be written is read as it would be today: from a copy in memory that
// is brought up to date in its place.
void read_brought_up(Library::Connection& connection, const LibraryFault& reason) {
    std::unique_ptr<SQLite::Database> today =
        connect(connection.place, ":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    const int copied = SQLite::Backup(*today, *connection.database).executeStep();
    if (copied != SQLITE_DONE) throw LibraryStop{reason}; // somebody else is at it
    migrate(*today, migrations());
    connection.database = std::move(today);
    connection.copy.reset();
}

void open_for_reading(Library::Connection& connection, const LibraryFault& reason) {
    connection.database.reset();
    bool unmade = false;
    try {
        connection.database = connect(connection.place, uri_of(connection.path, "?mode=ro"),
                                      SQLite::OPEN_READONLY | SQLite::OPEN_URI);
        unmade = examine(*connection.database, connection.path);
    } catch (const SQLite::Exception& failure) {
        const int code = failure.getErrorCode();
        if (code != SQLITE_CANTOPEN && code != SQLITE_READONLY && code != SQLITE_IOERR) throw;
        connection.database.reset();
        connect_apart(connection, reason);
        unmade = examine(*connection.database, connection.path);
    }
    if (unmade && version_of(*connection.database) < 1) throw LibraryStop{reason}; // nothing yet
    if (unmade) read_brought_up(connection, reason);
    connection.write_fault = reason;
    connection.word_index =
        connection.place.options.word_index && has_word_index(*connection.database);
}

// Why it can't be written, when reading may get round that; other failures are thrown on.
LibraryFault reason_to_read(LibraryFault fault, bool cannot_open, const std::string& folder) {
    std::error_code error;
    const bool there = fs::exists(path_of(fault.path), error);
    if (!there && !error && (cannot_open || fault.kind == Kind::read_only))
        stop(Kind::no_folder, fault.detail, folder);
    if (cannot_open && fault.kind == Kind::io) fault.kind = Kind::read_only;
    if (fault.kind != Kind::read_only && fault.kind != Kind::disk_full && fault.kind != Kind::io)
        throw LibraryStop{fault};
    return fault;
}

} // namespace

TemporaryFolder::TemporaryFolder() {
    std::random_device random;
    std::error_code error;
    const fs::path parent = fs::temp_directory_path(error);
    for (int tries = 0; !error && tries < 10; ++tries) {
        const fs::path folder = parent / ("carriageway-" + std::to_string(random()));
        if (!fs::create_directory(folder, error)) continue;
        fs::permissions(folder, fs::perms::owner_all, error);
        path_ = utf8_of(folder);
        return;
    }
    stop(Kind::io, error ? error.message() : "no temporary folder can be made", utf8_of(parent));
}

TemporaryFolder::~TemporaryFolder() {
    std::error_code ignored;
    fs::remove_all(path_of(path_), ignored);
}

bool Library::Connection::was_moved() const {
    int moved = 0;
    sqlite3_file_control(database->getHandle(), "main", SQLITE_FCNTL_HAS_MOVED, &moved);
    return moved != 0;
}

std::unique_ptr<Library::Connection> open_library_file(const LibraryPlace& place) {
    auto connection = std::make_unique<Library::Connection>();
    connection->place = place;
    make_folder(place.folder);
    connection->path = utf8_of(path_of(place.folder) / "library.db");
    look_at_header(connection->path);
    LibraryFault fault;
    bool cannot_open = false;
    try {
        open_for_writing(*connection);
        return connection;
    } catch (const LibraryStop& stopped) {
        fault = stopped.fault;
    } catch (const SQLite::Exception& failure) {
        fault = fault_from(failure, connection->path, connection->database.get());
        cannot_open = failure.getErrorCode() == SQLITE_CANTOPEN;
    }
    open_for_reading(*connection, reason_to_read(fault, cannot_open, place.folder));
    return connection;
}

std::unique_ptr<Library::Connection> open_library_memory(const LibraryPlace& place) {
    auto connection = std::make_unique<Library::Connection>();
    connection->place = place;
    connection->database =
        connect(place, uri_of(place.memory, "?vfs=memdb"),
                SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE | SQLite::OPEN_URI);
    migrate(*connection->database, migrations());
    connection->word_index = prepare_word_index(*connection->database, place.options.word_index);
    return connection;
}

} // namespace carriageway
