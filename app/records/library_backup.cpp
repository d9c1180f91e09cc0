#include "app/records/library_backup.h"

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <system_error>

#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>

#ifndef _WIN32
#include <fcntl.h>
#include <unistd.h>
#endif

#include "app/records/connection.h"
#include "app/records/file_bytes.h"
#include "app/records/schema.h"
#include "app/records/utc_text.h"

namespace carriageway {

namespace {

namespace fs = std::filesystem;
using Kind = LibraryFault::Kind;

// What a backup leaves free on the disk: edits come first. Ours.
constexpr std::uintmax_t room_left = 16u * 1024u * 1024u;

// How long one program's backup may keep another one waiting. Ours.
constexpr int longest_turn = 10'000; // ms

fs::path backup_folder(const std::string& folder) { return path_of(folder) / "backups"; }

// The number and day of "library-12-2025-11-25.db"; number 0: it is none.
LibraryBackup named_backup(const fs::path& path) {
    const std::string name = utf8_of(path.filename());
    constexpr std::string_view begin = "library-";
    constexpr std::string_view end = "-0000-00-00.db";
    LibraryBackup backup{utf8_of(path), {}, 0};
    if (name.size() <= begin.size() + end.size() || !name.starts_with(begin) ||
        !name.ends_with(".db"))
        return backup;
    const char* first = name.data() + begin.size();
    const char* last = name.data() + name.size() - end.size();
    const auto [stop, error] = std::from_chars(first, last, backup.number);
    const bool whole = error == std::errc{} && stop == last && *stop == '-';
    if (!whole || backup.number < 1) backup.number = 0;
    backup.day = name.substr(name.size() - end.size() + 1, 10);
    return backup;
}

fs::path path_of_backup(const std::string& folder, std::int64_t number, const std::string& day) {
    return backup_folder(folder) / ("library-" + std::to_string(number) + "-" + day + ".db");
}

void need_room(const std::string& library, const std::string& folder) {
    std::error_code error;
    std::uintmax_t size = fs::file_size(path_of(library), error);
    if (error) stop(Kind::io, error.message(), library);
    const std::uintmax_t log = fs::file_size(path_of(library + "-wal"), error);
    if (!error) size += log;
    const fs::space_info space = fs::space(path_of(folder), error);
    if (!error && space.available < size + room_left)
        stop(Kind::disk_full, "a backup would leave too little room", library);
}

// A name that is gone when this is, with the journal that SQLite may have left beside it.
struct Unfinished {
    fs::path path;
    ~Unfinished() {
        std::error_code ignored;
        for (const char* end : {"", "-wal", "-shm", "-journal"}) {
            fs::path name = path;
            fs::remove(name += end, ignored);
        }
    }
};

void delete_oldest(const std::string& folder) {
    const std::vector<LibraryBackup> all = backups_of(folder);
    std::error_code ignored;
    for (std::size_t i = most_backups; i < all.size(); ++i)
        fs::remove(path_of(all[i].path), ignored);
}

int asks_to_stop(void* stop) { return static_cast<const std::atomic<bool>*>(stop)->load(); }

BackupOutcome backup_in_turn(const LibraryPlace& place, Timestamp now,
                             const std::atomic<bool>* stopping) {
    const std::vector<LibraryBackup> before = backups_of(place.folder);
    const std::string day = utc_text(now).substr(0, 10);
    if (!before.empty() && before.front().day == day) return BackupOutcome::made_today;
    const std::string library = utf8_of(path_of(place.folder) / "library.db");
    need_room(library, place.folder);

    const Unfinished made{backup_folder(place.folder) / "unfinished.db"};
    { const Unfinished left_behind{made.path}; } // by a program that was killed
    copy_library(library, utf8_of(made.path), place.options);
    if (const std::optional<LibraryFault> wrong = fault_of_file(utf8_of(made.path), stopping)) {
        if (stopping != nullptr && *stopping) return BackupOutcome::stopped;
        throw LibraryStop{{wrong->kind, wrong->detail, library}};
    }
    const std::int64_t number = before.empty() ? 1 : before.front().number + 1;
    fs::rename(made.path, path_of_backup(place.folder, number, day));
    sync_folder(utf8_of(backup_folder(place.folder)));
    delete_oldest(place.folder);
    return BackupOutcome::made;
}

// Faults as Connection::guarded() makes them, without a connection.
template <class Work>
auto guarded(const std::string& path, Work&& work) -> decltype(work()) {
    Library::Connection nowhere;
    nowhere.path = path;
    return nowhere.guarded(std::forward<Work>(work));
}

} // namespace

void sync_folder(const std::string& folder) {
#ifdef _WIN32
    (void)folder; // a rename is on the disk when it returns, as far as Windows says
#else
    const int opened = ::open(folder.c_str(), O_RDONLY | O_CLOEXEC);
    if (opened < 0) return;
    ::fsync(opened);
    ::close(opened);
#endif
}

std::vector<LibraryBackup> backups_of(const std::string& folder) {
    std::vector<LibraryBackup> all;
    std::error_code error;
    for (fs::directory_iterator entry(backup_folder(folder), error), end; !error && entry != end;
         entry.increment(error)) {
        LibraryBackup backup = named_backup(entry->path());
        if (backup.number > 0) all.push_back(std::move(backup));
    }
    std::sort(all.begin(), all.end(), [](const LibraryBackup& a, const LibraryBackup& b) {
        return a.number > b.number;
    });
    return all;
}

BackupTurn::BackupTurn(const std::string& folder) {
    const fs::path place = backup_folder(folder);
    std::error_code error;
    fs::create_directories(place, error);
    held_ = std::make_unique<SQLite::Database>(utf8_of(place / "turn.db"),
                                               SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE,
                                               longest_turn);
    held_->exec("BEGIN EXCLUSIVE");
}

BackupTurn::~BackupTurn() = default;

void copy_library(const std::string& from, const std::string& to, const LibraryOptions& options) {
    SQLite::Database source(from, SQLite::OPEN_READWRITE, options.busy_timeout, options.vfs);
    // Whoever only copies moves nothing out of the log.
    sqlite3_db_config(source.getHandle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, nullptr);
    SQLite::Database target(to, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, 0, options.vfs);
    target.exec("PRAGMA synchronous = FULL");
    // All in one step: it sees one state, and holds up nobody who writes to a log.
    if (SQLite::Backup(target, source).executeStep() != SQLITE_DONE)
        stop(Kind::locked, "another program held it", from);
    SQLite::Statement alone(target, "PRAGMA journal_mode = DELETE"); // one file holds it all
    alone.executeStep();
}

std::optional<LibraryFault> fault_of_file(const std::string& path, const std::atomic<bool>* stop) {
    Library::Connection connection;
    connection.path = path;
    return connection.guarded([&]() -> std::optional<LibraryFault> {
        connection.database = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READONLY);
        SQLite::Database& database = *connection.database;
        // Every hundred steps of SQLite's machine: the queries are small. It does not write there.
        if (stop != nullptr)
            sqlite3_progress_handler(database.getHandle(), 100, asks_to_stop,
                                     const_cast<std::atomic<bool>*>(stop));
        if (application_of(database) != library_application_id ||
            version_of(database) != library_version || !has_every_table(database) ||
            has_strange_code(database))
            return connection.fault(Kind::corrupt, "it is no library of today");
        return fault_of_library(connection);
    });
}

LibraryResult<BackupOutcome> make_backup(const LibraryPlace& place, Timestamp now,
                                         const std::atomic<bool>* stop) {
    return guarded(place.folder, [&]() -> LibraryResult<BackupOutcome> {
        const BackupTurn turn(place.folder);
        return backup_in_turn(place, now, stop);
    });
}

std::optional<LibraryFault> forget_in_backups(const std::string& folder, const ErasedRow& row) {
    if (backups_of(folder).empty()) return std::nullopt;
    return guarded(folder, [&]() -> std::optional<LibraryFault> {
        const BackupTurn turn(folder);
        for (const LibraryBackup& backup : backups_of(folder)) {
            SQLite::Database database(backup.path, SQLite::OPEN_READWRITE);
            database.exec("PRAGMA foreign_keys = ON; PRAGMA synchronous = FULL; "
                          "PRAGMA secure_delete = ON");
            const bool nobody = row.kind == ErasedRow::Kind::of_nobody;
            SQLite::Statement erase(
                database, nobody ? "DELETE FROM attempts WHERE trainee IS NULL"
                          : row.kind == ErasedRow::Kind::call
                              ? "DELETE FROM calls WHERE id = ?1 AND ifnull(?2, time) = time"
                              : "DELETE FROM trainees WHERE id = ?1 AND "
                                "ifnull(?2, created) = created");
            if (!nobody) {
                erase.bind(1, row.id);
                if (row.time) erase.bind(2, *row.time); // unbound: NULL
            }
            erase.exec();
        }
        return std::nullopt;
    });
}

} // namespace carriageway
