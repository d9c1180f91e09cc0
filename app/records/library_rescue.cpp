// How a damaged library is exchanged for its backup, so that being killed at any moment loses
// neither:
//
//   1. the backup is copied to library-restoring.db, brought up to date and read through;
//   2. library-restoring.txt says under which name the damaged one is kept: from here on the
//      exchange is gone on with by whoever opens the library next;
//   3. log, index and journal, then the library itself are renamed;
//   4. library-restoring.db becomes library.db;
//   5. library-restoring.txt is deleted.
//
// The log goes first: beside another library it would be taken for that one's.
#include "app/records/library_rescue.h"

#include <filesystem>
#include <system_error>

#include "app/records/connection.h"
#include "app/records/file_bytes.h"
#include "app/records/library_backup.h"
#include "app/records/schema.h"
#include "app/records/utc_text.h"

namespace carriageway {

namespace {

namespace fs = std::filesystem;
using Kind = LibraryFault::Kind;

constexpr const char* parts[] = {"-wal", "-shm", "-journal", ""};

/// The files of an exchange in one folder.
struct Exchange {
    explicit Exchange(const std::string& data) : folder(data) {}

    std::string folder;
    std::string file(const std::string& name) const {
        return utf8_of(path_of(folder) / path_of(name));
    }
    std::string library() const { return file("library.db"); }
    std::string copy() const { return file("library-restoring.db"); }
    std::string note() const { return file("library-restoring.txt"); }
};

bool there(const std::string& path) { return is_there(path); }

void rename_file(const std::string& from, const std::string& to) {
    fs::rename(path_of(from), path_of(to));
}

void delete_file(const std::string& path) {
    std::error_code ignored;
    fs::remove(path_of(path), ignored);
}

// A name that nothing has yet, whatever part of the library it is for.
std::string name_aside(const Exchange& exchange, const std::string& day) {
    for (int number = 1;; ++number) {
        std::string name = "library-damaged-" + day;
        if (number > 1) name += "-" + std::to_string(number);
        name += ".db";
        bool taken = false;
        for (const char* part : parts) taken |= there(exchange.file(name + part));
        if (!taken) return name;
    }
}

// Steps 3 to 5, as far as they have not been done.
Rescue exchange_files(const Exchange& exchange, const std::string& aside, const std::string& day) {
    if (there(exchange.copy())) {
        for (const char* part : parts)
            if (there(exchange.library() + part) && !there(exchange.file(aside + part)))
                rename_file(exchange.library() + part, exchange.file(aside + part));
        sync_folder(exchange.folder);
        rename_file(exchange.copy(), exchange.library());
        sync_folder(exchange.folder);
    }
    delete_file(exchange.note());
    return {exchange.file(aside), day};
}

// An exchange that was begun and not finished; nothing: there is none.
std::optional<Rescue> go_on(const Exchange& exchange) {
    std::string note;
    if (!there(exchange.note()) || read_file(exchange.note(), 1000, note)) return std::nullopt;
    const std::size_t line = note.find('\n');
    if (line == std::string::npos || !note.starts_with("library-damaged-") ||
        note.find_first_of("/\\") != std::string::npos)
        return std::nullopt; // not written by this program
    return exchange_files(exchange, note.substr(0, line), note.substr(line + 1, 10));
}

// Step 1 with one backup. False: it isn't good.
bool copy_good(const Exchange& exchange, const LibraryBackup& backup,
               const LibraryOptions& options) {
    for (const char* part : parts) delete_file(exchange.copy() + part);
    try {
        copy_library(backup.path, exchange.copy(), options);
        SQLite::Database copy(exchange.copy(), SQLite::OPEN_READWRITE);
        if (application_of(copy) != library_application_id) return false;
        copy.exec("PRAGMA synchronous = FULL");
        migrate(copy, migrations());
    } catch (const SQLite::Exception&) {
        return false; // the next older one
    }
    return !fault_of_file(exchange.copy());
}

// Puts the newest good backup in the damaged library's place; nothing: there is none.
std::optional<Rescue> exchange_for_backup(const Exchange& exchange, const LibraryOptions& options,
                                          Timestamp now) {
    for (const LibraryBackup& backup : backups_of(exchange.folder)) {
        if (!copy_good(exchange, backup, options)) continue;
        const std::string aside = name_aside(exchange, utc_text(now).substr(0, 10));
        if (write_file(exchange.note(), aside + "\n" + backup.day + "\n", true)) break;
        sync_folder(exchange.folder);
        return exchange_files(exchange, aside, backup.day);
    }
    for (const char* part : parts) delete_file(exchange.copy() + part);
    return std::nullopt;
}

bool is_damaged(const LibraryResult<Library>& opened) {
    return !opened && opened.fault().kind == Kind::corrupt;
}

} // namespace

OpenedLibrary open_or_rescue(const std::string& folder, const LibraryOptions& options,
                             Timestamp now) {
    const Exchange exchange(folder);
    const bool begun = !folder.empty() && there(exchange.note());
    if (!begun) {
        LibraryResult<Library> opened = Library::open(folder, options);
        if (!is_damaged(opened) || backups_of(folder).empty()) return {std::move(opened), {}};
    }
    std::optional<Rescue> rescue;
    try {
        const BackupTurn turn(folder);
        rescue = go_on(exchange);
        // Another program may have been faster.
        if (!rescue && is_damaged(Library::open(folder, options)))
            rescue = exchange_for_backup(exchange, options, now);
    } catch (const LibraryStop&) {
    } catch (const SQLite::Exception&) {
    } catch (const fs::filesystem_error&) {
        // As a folder that is write-protected: opening says what is wrong.
    }
    return {Library::open(folder, options), std::move(rescue)};
}

} // namespace carriageway
