// What a session hands its edits to, so that no frame waits for a disk: Writer (writer.h) with a
// thread of its own, or StoreWriter (store_writer.h) where there are none.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>

#include "app/records/library.h"

namespace carriageway {

class Autosave {
  public:
    /// Counts submissions from 1; 0 stands before all of them.
    using Ticket = std::uint64_t;

    virtual ~Autosave() = default;

    /// Hands over an edit of a job and the job after it. Edits of one job must be submitted in the
    /// order in which they were applied. An edit of a job that has been purged meanwhile brings
    /// that job back: what a person is working on is not thrown away.
    virtual Ticket submit(JobId job, LoggedEdit edit, Job snapshot) = 0;

    /// The library itself was changed, not through submit().
    virtual void touch() {}

    virtual Ticket submitted() const = 0;    ///< the last ticket given out
    virtual Ticket acknowledged() const = 0; ///< every ticket up to this one is durable
    virtual bool all_saved() const = 0;      ///< nothing is waiting

    /// Why what is waiting could not be written the last time; nothing once it could.
    virtual std::optional<LibraryFault> fault() const = 0;

    /// Tries again now, if something is waiting.
    virtual void retry() = 0;

    /// Waits, where that is possible, until everything submitted before is durable, trying again at
    /// once if something failed before. False when it isn't yet, or when it fails again.
    virtual bool flush(std::chrono::milliseconds timeout) = 0;

    /// Somebody else writes the library now: nothing more can be changed here.
    virtual bool elsewhere() const { return false; }
};

/// The autosave of this platform, and how it opens a library.
std::unique_ptr<Autosave> platform_autosave(Library& library, std::function<void()> on_change);
LibraryOptions platform_library_options();

} // namespace carriageway
