#include "app/records/writer.h"

#include <algorithm>
#include <condition_variable>
#include <iterator>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace carriageway {

namespace {

// How long after a failure the writer tries again by itself; doubled each time up to the most.
// Ours: a lock or a full disk is a matter of seconds or of minutes.
constexpr std::chrono::milliseconds first_pause{2000};
constexpr std::chrono::milliseconds longest_pause{60000};

// Edits of a job that is waiting already go behind those, and its later snapshot replaces the
// earlier one: only the last is ever stored.
void add_to(std::vector<JobEdits>& batch, JobEdits&& more) {
    const auto same =
        std::find_if(batch.begin(), batch.end(),
                     [&](const JobEdits& waiting) { return waiting.id == more.id; });
    if (same == batch.end()) {
        batch.push_back(std::move(more));
        return;
    }
    std::move(more.edits.begin(), more.edits.end(), std::back_inserter(same->edits));
    same->snapshot = std::move(more.snapshot);
}

} // namespace

struct Writer::Shared {
    explicit Shared(LibraryPlace library_place, std::function<void()> changed)
        : place(std::move(library_place)), on_change(std::move(changed)) {}

    const LibraryPlace place;
    const std::function<void()> on_change;

    // Guarded by mutex.
    mutable std::mutex mutex;
    std::condition_variable work_came; ///< for the thread
    std::condition_variable tried;     ///< for flush()
    std::vector<JobEdits> waiting;     ///< not yet taken by the thread
    Ticket submitted = 0;
    Ticket acknowledged = 0;
    std::optional<LibraryFault> fault;
    std::uint64_t wanted_tries = 0;   ///< grows with each submit(), retry() and flush()
    std::uint64_t answered_tries = 0; ///< the wanted_tries that the last try began with
    bool ending = false;

    // Used by the thread alone once it runs.
    std::optional<Library> library;
    std::vector<JobEdits> batch; ///< taken, and not yet written
    std::chrono::milliseconds pause = first_pause;

    std::thread thread;

    void run();
    bool wait_for_work(std::unique_lock<std::mutex>& lock);
    std::optional<LibraryFault> write();
};

// True when there is something to try; false when the writer is to end.
bool Writer::Shared::wait_for_work(std::unique_lock<std::mutex>& lock) {
    const auto woken = [&] { return ending || wanted_tries != answered_tries; };
    if (batch.empty())
        work_came.wait(lock, woken);
    else
        work_came.wait_for(lock, pause, woken);
    return !ending || !batch.empty() || !waiting.empty();
}

// A connection that failed is opened anew at the next try, because what was wrong with the file
// (protected, moved away, replaced) sticks to it. One that has worked before is given that second
// chance at once.
std::optional<LibraryFault> Writer::Shared::write() {
    const bool opened_before = library.has_value();
    if (!library) {
        LibraryResult<Library> opened = Library::open(place);
        if (!opened) return opened.fault();
        library = std::move(*opened);
    }
    std::optional<LibraryFault> failed = library->append_all(batch);
    if (!failed) return std::nullopt;
    if (!place.memory.empty()) return failed; // closing it could be the end of it
    library.reset();
    return opened_before && failed->kind == LibraryFault::Kind::io ? write() : failed;
}

void Writer::Shared::run() {
    std::unique_lock<std::mutex> lock(mutex);
    while (wait_for_work(lock)) {
        for (JobEdits& job : waiting) add_to(batch, std::move(job));
        waiting.clear();
        const Ticket last = submitted;
        const std::uint64_t answering = wanted_tries;
        const bool last_try = ending;

        std::optional<LibraryFault> failed;
        if (!batch.empty()) {
            lock.unlock();
            failed = write();
            if (!failed) batch.clear();
            lock.lock();
        }
        answered_tries = answering;
        const bool changed = fault != failed || (!failed && acknowledged != last);
        if (!failed) acknowledged = last;
        pause = failed ? std::min(pause * (fault ? 2 : 1), longest_pause) : first_pause;
        fault = std::move(failed);
        tried.notify_all();
        if (changed && on_change) {
            lock.unlock();
            on_change();
            lock.lock();
        }
        if (last_try && fault) return;
    }
}

Writer::Writer(const Library& library, std::function<void()> on_change)
    : shared_(std::make_unique<Shared>(library.place(), std::move(on_change))) {
    // In memory the library lives only as long as somebody has it open.
    if (!library.kept())
        if (LibraryResult<Library> opened = Library::open(shared_->place))
            shared_->library = std::move(*opened);
    shared_->thread = std::thread([shared = shared_.get()] { shared->run(); });
}

Writer::~Writer() {
    {
        const std::lock_guard<std::mutex> lock(shared_->mutex);
        shared_->ending = true;
    }
    shared_->work_came.notify_one();
    shared_->thread.join();
}

Writer::Ticket Writer::submit(JobId job, LoggedEdit edit, Job snapshot) {
    JobEdits more{job, {}, std::move(snapshot)};
    more.edits.push_back(std::move(edit));
    Ticket ticket = 0;
    {
        const std::lock_guard<std::mutex> lock(shared_->mutex);
        add_to(shared_->waiting, std::move(more));
        ticket = ++shared_->submitted;
        ++shared_->wanted_tries;
    }
    shared_->work_came.notify_one();
    return ticket;
}

Writer::Ticket Writer::submitted() const {
    const std::lock_guard<std::mutex> lock(shared_->mutex);
    return shared_->submitted;
}

Writer::Ticket Writer::acknowledged() const {
    const std::lock_guard<std::mutex> lock(shared_->mutex);
    return shared_->acknowledged;
}

bool Writer::all_saved() const {
    const std::lock_guard<std::mutex> lock(shared_->mutex);
    return shared_->acknowledged == shared_->submitted;
}

std::optional<LibraryFault> Writer::fault() const {
    const std::lock_guard<std::mutex> lock(shared_->mutex);
    return shared_->fault;
}

void Writer::retry() {
    {
        const std::lock_guard<std::mutex> lock(shared_->mutex);
        ++shared_->wanted_tries;
    }
    shared_->work_came.notify_one();
}

std::unique_ptr<Autosave> platform_autosave(Library& library, std::function<void()> on_change) {
    return std::make_unique<Writer>(library, std::move(on_change));
}

LibraryOptions platform_library_options() { return {}; }

bool Writer::flush(std::chrono::milliseconds timeout) {
    std::unique_lock<std::mutex> lock(shared_->mutex);
    const Ticket target = shared_->submitted;
    if (shared_->acknowledged >= target) return true;
    const std::uint64_t asked = ++shared_->wanted_tries;
    shared_->work_came.notify_one();
    shared_->tried.wait_for(lock, timeout, [&] {
        return shared_->acknowledged >= target ||
               (shared_->answered_tries >= asked && shared_->fault);
    });
    return shared_->acknowledged >= target;
}

} // namespace carriageway
