// What a session asks of backups: BackupKeeper (backup_keeper.h), or nothing in a browser.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>

#include "app/records/library.h"

namespace carriageway {

/// What was erased for good. An id alone may mean somebody else in a library that was brought back.
struct ErasedRow {
    enum class Kind { person, of_nobody, call };
    Kind kind = Kind::person;
    std::int64_t id = 0;
    /// When the person was added, or the call began; nothing where that isn't known any more.
    std::optional<Timestamp> time;
};

class Backups {
  public:
    virtual ~Backups() = default;

    /// An edit was made at this time: a new day's first leads to a backup, off this thread.
    virtual void used(Timestamp now) = 0;

    /// Takes what was erased out of all backups, and waits for it.
    virtual std::optional<LibraryFault> forget(const ErasedRow& row) = 0;

    /// Why the last backup was not made; nothing once one was.
    virtual std::optional<LibraryFault> fault() const = 0;
};

/// Those of this platform for a library in a folder; nullptr where there are none.
std::unique_ptr<Backups> platform_backups(const Library& library);

} // namespace carriageway
