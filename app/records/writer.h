// Autosave off the drawing path.
//
// submit() takes an edit and the job after it, and returns a ticket at once. A thread of its own,
// with a connection of its own, encodes what is waiting, writes it in one transaction and then
// acknowledges: every ticket up to acknowledged() is durable and survives a kill or a power cut.
// What fails stays waiting and is tried again at the next submit(), at retry(), and by itself after
// a while; nothing submitted is dropped while the writer lives.
#pragma once

#include <functional>
#include <memory>

#include "app/records/autosave.h"

namespace carriageway {

class Writer : public Autosave {
  public:
    /// Writes into the library that `library` has open, which may be closed before the writer is.
    /// `on_change` is called from the writer's thread, without any lock held, whenever
    /// acknowledged() or fault() has changed: it should wake the window and return.
    explicit Writer(const Library& library, std::function<void()> on_change = {});

    /// Tries once more to write what is waiting, then ends the thread. Call flush() before and
    /// look at what it returns: what can't be written now is lost.
    ~Writer() override;
    Writer(const Writer&) = delete;
    Writer& operator=(const Writer&) = delete;

    // All of the following may be called from any thread; none but flush() waits for the disk.

    Ticket submit(JobId job, LoggedEdit edit, Job snapshot) override;
    Ticket submitted() const override;
    Ticket acknowledged() const override;
    bool all_saved() const override;
    std::optional<LibraryFault> fault() const override;
    void retry() override;
    bool flush(std::chrono::milliseconds timeout) override;

  private:
    struct Shared;
    std::unique_ptr<Shared> shared_;
};

} // namespace carriageway
