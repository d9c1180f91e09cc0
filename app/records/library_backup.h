// Backups of the library: `backups` beside it holds what the library was on the last days of use.
//
// A backup is a library in one file, library-NUMBER-DAY.db. The number grows by one each time, so
// that the newest is known even where the clock was set back; the day (UTC) is for people. One that
// bears its name is good: it was copied under another name, read through as Library::check() does,
// and brought onto the disk before it was given the name. Not in a browser.
#pragma once

#include <atomic>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/records/backups.h"
#include "app/records/library.h"

namespace SQLite {
class Database;
}

namespace carriageway {

/// As many days of use are kept. Ours.
inline constexpr std::size_t most_backups = 5;

struct LibraryBackup {
    std::string path; ///< UTF-8
    std::string day;  ///< "2025-11-25"
    std::int64_t number = 0;
};

/// The backups of the library in `folder`, the newest first.
std::vector<LibraryBackup> backups_of(const std::string& folder);

enum class BackupOutcome {
    made,
    made_today, ///< there is one of this day already
    stopped,    ///< because `stop` became true
};

/// Makes a backup of the library in its folder and deletes the oldest beyond most_backups. Takes as
/// long as Library::check(). Where the library is damaged, in part or as a whole, there is no new
/// backup and the old ones stay: the fault. So where it would leave no room on the disk.
LibraryResult<BackupOutcome> make_backup(const LibraryPlace& place, Timestamp now,
                                         const std::atomic<bool>* stop = nullptr);

/// Deletes a row from every backup, bytes and all: what a person has erased doesn't come back.
std::optional<LibraryFault> forget_in_backups(const std::string& folder, const ErasedRow& row);

// ---- for library_rescue.cpp ----

/// Lets one program at a time work on the backups of a folder: as long as it lives. Throws
/// SQLite::Exception where another one doesn't let go.
class BackupTurn {
  public:
    explicit BackupTurn(const std::string& folder);
    ~BackupTurn();
    BackupTurn(const BackupTurn&) = delete;
    BackupTurn& operator=(const BackupTurn&) = delete;

  private:
    std::unique_ptr<SQLite::Database> held_;
};

/// Copies a library as it stands, log and all, into a new file that is complete on the disk. Throws
/// SQLite::Exception, or LibraryStop where it is locked.
void copy_library(const std::string& from, const std::string& to, const LibraryOptions& options);

/// What is wrong with a file as a library of today; nothing: it can be used.
std::optional<LibraryFault> fault_of_file(const std::string& path,
                                          const std::atomic<bool>* stop = nullptr);

/// Brings names in a folder onto the disk, where the system has that.
void sync_folder(const std::string& folder);

} // namespace carriageway
