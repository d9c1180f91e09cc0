// Makes backups of a library on a thread of its own.
#pragma once

#include <chrono>
#include <memory>

#include "app/records/backups.h"

namespace carriageway {

class BackupKeeper : public Backups {
  public:
    /// Of the library at `place`. The thread begins with the first edit of a day, and waits for
    /// `pause` first, so that it is not in the way of a start.
    BackupKeeper(LibraryPlace place, std::chrono::milliseconds pause);
    /// Gives up what is under way; half a backup is no backup.
    ~BackupKeeper() override;
    BackupKeeper(const BackupKeeper&) = delete;
    BackupKeeper& operator=(const BackupKeeper&) = delete;

    void used(Timestamp now) override;
    std::optional<LibraryFault> forget(const ErasedRow& row) override;
    std::optional<LibraryFault> fault() const override;

    /// Waits until nothing is under way; false after `timeout`. For tests.
    bool idle(std::chrono::milliseconds timeout) const;

  private:
    struct Shared;
    std::unique_ptr<Shared> shared_;
};

} // namespace carriageway
