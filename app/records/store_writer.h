// Autosave where a file lasts only once a store has taken it, as in a browser: no threads, the
// library's file lives in memory, and the store answers some time later.
//
// submit() writes into the library at once, in one transaction, and asks the store to keep the
// file. One request is under way at a time: what changes meanwhile goes with the next. A ticket is
// acknowledged when a request that began after it has been answered well.
#pragma once

#include <functional>
#include <vector>

#include "app/records/autosave.h"

namespace carriageway {

/// Where the library's file is kept between two runs of the program.
class Store {
  public:
    virtual ~Store() = default;
    /// Begins to keep the file as it is now. `StoreWriter::kept` is called when that has ended,
    /// never before this returns.
    virtual void keep() = 0;
};

class StoreWriter : public Autosave {
  public:
    /// Writes into `library`; both must outlive the writer. `on_change` is called whenever
    /// acknowledged() or fault() has changed.
    StoreWriter(Library& library, Store& store, std::function<void()> on_change = {});

    Ticket submit(JobId job, LoggedEdit edit, Job snapshot) override;
    void touch() override;
    Ticket submitted() const override { return submitted_; }
    Ticket acknowledged() const override { return acknowledged_; }
    bool all_saved() const override { return !dirty_ && !keeping_ && unwritten_.empty(); }
    std::optional<LibraryFault> fault() const override { return fault_; }
    void retry() override;
    /// Can't wait: begins what is due and says whether nothing is.
    bool flush(std::chrono::milliseconds) override;

    /// The store's answer to keep(): nothing, or why not.
    void kept(const std::optional<LibraryFault>& fault);
    /// The store may not be written any more (another page writes it): nothing is asked of it from
    /// now on, and nothing is acknowledged.
    void give_up() { given_up_ = true; }
    bool elsewhere() const override { return given_up_; }

  private:
    void begin();
    void changed() const;

    Library& library_;
    Store& store_;
    std::function<void()> on_change_;
    std::vector<JobEdits> unwritten_; ///< what the library itself refused
    Ticket submitted_ = 0;
    Ticket acknowledged_ = 0;
    Ticket asked_ = 0;    ///< the last ticket that the request under way covers
    bool dirty_ = false;  ///< the file differs from what the last request took
    bool keeping_ = false;
    bool given_up_ = false;
    std::optional<LibraryFault> fault_;
};

} // namespace carriageway
