// Autosave off the drawing path.
//
// submit() takes an edit and the job after it, and returns a ticket at once. A thread of its own,
// with a connection of its own, encodes what is waiting, writes it in one transaction and then
// acknowledges: every ticket up to acknowledged() is durable and survives a kill or a power cut.
// What fails stays waiting and is tried again at the next submit(), at retry(), and by itself after
// a while; nothing submitted is dropped while the writer lives.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>

#include "app/records/library.h"

namespace carriageway {

class Writer {
  public:
    /// Counts submissions from 1; 0 stands before all of them.
    using Ticket = std::uint64_t;

    /// Writes into the library that `library` has open, which may be closed before the writer is.
    /// `on_change` is called from the writer's thread, without any lock held, whenever
    /// acknowledged() or fault() has changed: it should wake the window and return.
    explicit Writer(const Library& library, std::function<void()> on_change = {});

    /// Tries once more to write what is waiting, then ends the thread. Call flush() before and
    /// look at what it returns: what can't be written now is lost.
    ~Writer();
    Writer(const Writer&) = delete;
    Writer& operator=(const Writer&) = delete;

    // All of the following may be called from any thread; none but flush() waits for the disk.

    /// Hands over an edit of a job and the job after it. Edits of one job must be submitted in the
    /// order in which they were applied. An edit of a job that has been purged meanwhile brings
    /// that job back: what a person is working on is not thrown away.
    Ticket submit(JobId job, LoggedEdit edit, Job snapshot);

    Ticket submitted() const;    ///< the last ticket given out
    Ticket acknowledged() const; ///< every ticket up to this one is durable
    bool all_saved() const;      ///< nothing is waiting

    /// Why what is waiting could not be written the last time; nothing once it could.
    std::optional<LibraryFault> fault() const;

    /// Tries again now, if something is waiting.
    void retry();

    /// Waits until everything submitted before is durable, trying again at once if something
    /// failed before. False when `timeout` has passed first, or when it fails again.
    bool flush(std::chrono::milliseconds timeout);

  private:
    struct Shared;
    std::unique_ptr<Shared> shared_;
};

} // namespace carriageway
