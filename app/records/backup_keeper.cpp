#include "app/records/backup_keeper.h"

#include <atomic>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <utility>

#include "app/records/library_backup.h"

namespace carriageway {

namespace {

// After the first edit of a day: a start has other things to do. Ours.
constexpr std::chrono::milliseconds usual_pause{3000};

std::int64_t day_of(Timestamp time) { return time / 86'400'000; }

} // namespace

struct BackupKeeper::Shared {
    LibraryPlace place;
    std::chrono::milliseconds pause{0};

    mutable std::mutex mutex;
    mutable std::condition_variable changed;
    std::optional<Timestamp> wanted; ///< of the edit that leads to the next backup
    std::optional<LibraryFault> fault;
    bool working = false;
    std::atomic<bool> ending{false};

    std::int64_t last_day = -1; ///< of the last edit; used by the session's thread alone
    std::thread thread;

    void run();
};

void BackupKeeper::Shared::run() {
    std::unique_lock<std::mutex> lock(mutex);
    for (;;) {
        changed.wait(lock, [&] { return ending || wanted; });
        if (!ending) changed.wait_for(lock, pause, [&] { return ending.load(); });
        if (ending) return;
        const Timestamp now = *wanted;
        wanted.reset();
        working = true;
        lock.unlock();
        const LibraryResult<BackupOutcome> made = make_backup(place, now, &ending);
        lock.lock();
        working = false;
        fault = made ? std::nullopt : std::optional(made.fault());
        changed.notify_all();
    }
}

BackupKeeper::BackupKeeper(LibraryPlace place, std::chrono::milliseconds pause)
    : shared_(std::make_unique<Shared>()) {
    shared_->place = std::move(place);
    shared_->pause = pause;
}

BackupKeeper::~BackupKeeper() {
    {
        const std::lock_guard<std::mutex> lock(shared_->mutex);
        shared_->ending = true;
    }
    shared_->changed.notify_all();
    if (shared_->thread.joinable()) shared_->thread.join();
}

void BackupKeeper::used(Timestamp now) {
    if (day_of(now) == shared_->last_day) return;
    shared_->last_day = day_of(now);
    {
        const std::lock_guard<std::mutex> lock(shared_->mutex);
        shared_->wanted = now;
    }
    if (shared_->thread.joinable()) shared_->changed.notify_all();
    else shared_->thread = std::thread([shared = shared_.get()] { shared->run(); });
}

std::optional<LibraryFault> BackupKeeper::forget(const ErasedRow& row) {
    return forget_in_backups(shared_->place.folder, row);
}

std::optional<LibraryFault> BackupKeeper::fault() const {
    const std::lock_guard<std::mutex> lock(shared_->mutex);
    return shared_->fault;
}

bool BackupKeeper::idle(std::chrono::milliseconds timeout) const {
    std::unique_lock<std::mutex> lock(shared_->mutex);
    return shared_->changed.wait_for(lock, timeout,
                                     [&] { return !shared_->wanted && !shared_->working; });
}

std::unique_ptr<Backups> platform_backups(const Library& library) {
    if (!library.kept() || !library.can_write()) return nullptr;
    return std::make_unique<BackupKeeper>(library.place(), usual_pause);
}

} // namespace carriageway
