// The library: press profiles, jobs, every edit of a job as history, its runs, and settings, kept
// in `library.db` of a data folder; and the people who practise (trainees.h) and calls (call_log.h).
//
// A change is durable when the function that makes it returns without a fault (write-ahead log,
// synchronous=EXTRA). Times come from the caller: the library has no clock. One object is used by
// one thread at a time; other threads and programs open their own on the same folder. Edits made
// while drawing go through Writer (writer.h) instead, so that no frame waits for the disk.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/records/library_fault.h"
#include "core/edit.h"

namespace carriageway {

/// Names a job for as long as it exists: above 0, below 2^job_id_bits, and unlike any other's of its
/// library. Another library's may have it by chance alone (2^-27 for two jobs of the same minute), so
/// that an edit meant for one job doesn't meet another where a library stands in this one's place. The upper bits are the minute in which the job was made, so that the
/// word index grows at its end and finds neighbours together; the rest is drawn at random. (In
/// libraries made before 27 November 2026 all bits are drawn.) The bits are those that a number in
/// JSON keeps everywhere.
using JobId = std::int64_t;
inline constexpr int job_id_bits = 53;
inline constexpr int job_id_drawn_bits = 27; ///< the lower ones: minutes up to the year 2097

using PressId = std::int64_t;   ///< above 0; never used again in its library
using RunId = std::int64_t;     ///< above 0; never used again in its library
using Timestamp = std::int64_t; ///< ms since 1970-01-01 00:00 UTC

/// A job as a list shows it.
struct JobRow {
    JobId id = 0;
    std::string name;
    std::string press;   ///< name of its press profile
    std::string colours; ///< names of its heads' colours in the order of their stations, ", " between
    int heads = 0;
    Timestamp created = 0;
    Timestamp updated = 0;
    std::optional<Timestamp> removed; ///< set while it waits for purge() or restore()
    bool operator==(const JobRow&) const = default;
};

/// A press profile as a list shows it.
struct PressRow {
    PressId id = 0;
    std::string name;
    int stations = 0;
    Timestamp updated = 0;
    bool operator==(const PressRow&) const = default;
};

/// One edit as history keeps it.
struct LoggedEdit {
    Edit edit;
    Edit inverse; ///< what apply() returned
    Timestamp time = 0;
    bool operator==(const LoggedEdit&) const = default;
};

/// A finished run of a job as a list shows it: what the job's walk and record said by then.
struct RunRow {
    RunId id = 0;
    JobId job = 0;
    Timestamp began = 0;     ///< the earliest time that was noted; 0: none was
    Timestamp ended = 0;
    std::string press;       ///< name of its press profile
    double printed = 0.0;    ///< pieces, whole: the last count; without one 0
    double spoiled = 0.0;    ///< of them, whole
    std::string approved_by; ///< the first piece; empty: nobody
    bool operator==(const RunRow&) const = default;
};

/// Keys of settings that the program uses.
namespace setting_key {
inline constexpr const char* theme = "theme";
inline constexpr const char* language = "language";
inline constexpr const char* units = "units";
inline constexpr const char* last_job = "last_job";
inline constexpr const char* text_scale = "text_scale";
inline constexpr const char* initials = "initials";
inline constexpr const char* link_base = "link_base";
inline constexpr const char* paper = "paper";
inline constexpr const char* paper_layout = "paper_layout";
inline constexpr const char* first_steps = "first_steps";
inline constexpr const char* trainee = "trainee"; ///< the id of who practises, never a name
} // namespace setting_key

/// How a library is opened.
struct LibraryOptions {
    enum class Journal {
        write_ahead, ///< readers and a writer at once; needs shared memory
        rollback,    ///< journal_mode=DELETE, where the system has none (a browser)
    };
    Journal journal = Journal::write_ahead;
    int busy_timeout = 1000; ///< ms to wait for another program's lock before `locked`
    /// False: search as where SQLite has no FTS5, for a word anywhere and with accents as typed.
    bool word_index = true;
    std::string vfs;         ///< name of a registered SQLite VFS; empty: the default one
};

/// Where a library is, and how it is opened.
struct LibraryPlace {
    std::string folder; ///< UTF-8; empty in memory
    std::string memory; ///< what names a library in memory within this program; empty otherwise
    LibraryOptions options;
};

/// Edits of one job, oldest first, and the job after the last of them.
struct JobEdits {
    JobId id = 0;
    std::vector<LoggedEdit> edits;
    Job snapshot;
};

class Library {
  public:
    /// Opens `folder`/library.db, making folder and library where there are none, and bringing an
    /// older library up to date in one transaction. One that can't be written is opened for
    /// reading (see can_write()), an older one as a copy in memory. A damaged or newer library is
    /// left as it is, byte for byte. `folder` is UTF-8.
    static LibraryResult<Library> open(const std::string& folder,
                                       const LibraryOptions& options = {});

    static LibraryResult<Library> open(const LibraryPlace& place);

    /// A library that lives as long as anything has it open. Keeps nothing.
    static Library in_memory();

    Library(Library&&) noexcept;
    Library& operator=(Library&&) noexcept;
    ~Library();

    bool can_write() const; ///< false: opened for reading; every change returns write_fault()
    bool kept() const;      ///< false: in memory, gone at the end of the program
    const std::string& path() const; ///< the file, UTF-8; empty in memory

    /// Why it was opened for reading alone (`read_only` or `disk_full`); nothing when it can be
    /// written. A later open(place()) may find that it can.
    const std::optional<LibraryFault>& write_fault() const;

    /// How another thread or a later try opens the same library.
    const LibraryPlace& place() const;

    // ---- jobs ----

    /// Jobs that are not removed and hold every word of `query` at the beginning of a word of
    /// their name, colours or press, whatever the case and accents; an empty query finds all. Last
    /// changed first. Punctuation is ignored. `limit` and `offset` count jobs; negative: 0.
    LibraryResult<std::vector<JobRow>> list(const std::string& query, int limit,
                                            int offset = 0) const;
    /// How many jobs list() would find without a limit.
    LibraryResult<std::int64_t> count(const std::string& query) const;
    /// Jobs of exactly this name that are not removed, last changed first.
    LibraryResult<std::vector<JobRow>> named(const std::string& name) const;
    /// Jobs that were removed and can be restored, last removed first.
    LibraryResult<std::vector<JobRow>> list_removed(int limit, int offset = 0) const;

    /// The job as last saved. Removed: `no_such_job`. Damaged: `unreadable_job`.
    LibraryResult<Job> open(JobId id) const;
    /// Its row, removed or not.
    LibraryResult<JobRow> row(JobId id) const;

    /// Stores a new job; its history is empty.
    LibraryResult<JobId> create(const Job& job, Timestamp time);
    /// Stores a copy under another name; its history is empty, and it has no runs.
    LibraryResult<JobId> duplicate(JobId id, const std::string& name, Timestamp time);
    /// Renames a job by an edit like any other, so history holds it and undo can take it back.
    std::optional<LibraryFault> rename(JobId id, const std::string& name, Timestamp time);
    /// Takes a job out of the list; restore() brings it back until it is purged. Doing either
    /// twice is no fault.
    std::optional<LibraryFault> remove(JobId id, Timestamp time);
    std::optional<LibraryFault> restore(JobId id);
    /// Deletes for good every job removed at or before `before`, runs and all; returns how many.
    LibraryResult<int> purge(Timestamp before);

    /// Appends edits to a job's history and stores `snapshot`, the job after the last of them, in
    /// one transaction: all or nothing.
    std::optional<LibraryFault> append_edits(JobId id, const std::vector<LoggedEdit>& edits,
                                             const Job& snapshot);
    /// The same for several jobs, all in one transaction. A job that was purged meanwhile comes back
    /// as it is in its snapshot: what a person is working on is not thrown away.
    std::optional<LibraryFault> append_all(const std::vector<JobEdits>& batch);

    /// Edits of a job, oldest first: the job as created, changed by each `edit` in turn, is the job
    /// as saved; changed back by each `inverse` from the last, it is the job as created.
    LibraryResult<std::vector<LoggedEdit>> history(JobId id) const;

    // ---- runs ----

    /// Stores what a job was when a run of it was finished. Whether the job has been removed makes
    /// no difference to its runs; purged: `no_such_job`. A job that fault_of() refuses:
    /// `unreadable_job`.
    LibraryResult<RunId> add_run(JobId job, const Job& as_it_was, Timestamp ended);
    /// Runs of a job, the last ended first.
    LibraryResult<std::vector<RunRow>> runs(JobId job) const;
    /// The job as it was then. Damaged: `unreadable_job`, and the job itself is not touched.
    LibraryResult<Job> open_run(RunId id) const;
    /// Deletes it for good: whoever may want it back keeps open_run() and adds it again.
    std::optional<LibraryFault> remove_run(RunId id);

    // ---- press profiles ----

    LibraryResult<std::vector<PressRow>> presses() const; ///< by name
    LibraryResult<PressProfile> open_press(PressId id) const;
    LibraryResult<PressId> add_press(const PressProfile& press, Timestamp time);
    std::optional<LibraryFault> change_press(PressId id, const PressProfile& press, Timestamp time);
    /// Jobs keep the copy of the profile that they were set with.
    std::optional<LibraryFault> remove_press(PressId id);

    // ---- settings ----

    /// Nothing when it was never set.
    LibraryResult<std::optional<std::string>> setting(const std::string& key) const;
    std::optional<LibraryFault> set_setting(const std::string& key, const std::string& value);

    // ---- the file itself ----

    /// Reads the whole library: its structure, every job, edit and run and their checksums, all that
    /// was practised, and calls. Slow on a large one: off the drawing path.
    std::optional<LibraryFault> check() const;

    struct Connection; ///< for the library's own files (connection.h)
    Connection& connection() { return *connection_; } ///< likewise
    const Connection& connection() const { return *connection_; }

  private:
    explicit Library(std::unique_ptr<Connection> connection);
    std::unique_ptr<Connection> connection_;
};

} // namespace carriageway
