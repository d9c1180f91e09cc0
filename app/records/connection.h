// One connection to a library's file, for the files that implement Library.
#pragma once

#include <exception>
#include <memory>
#include <new>
#include <optional>
#include <string>
#include <utility>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/library.h"
#include "app/records/sqlite_fault.h"
#include "app/records/word_search.h"

namespace carriageway {

/// Thrown within these files to leave a transaction with a fault; never beyond them.
struct LibraryStop {
    LibraryFault fault;
};
[[noreturn]] inline void stop(LibraryFault::Kind kind, std::string detail,
                              const std::string& path) {
    throw LibraryStop{{kind, std::move(detail), path}};
}

/// A folder of its own among the system's temporary ones, deleted with all that is in it.
class TemporaryFolder {
  public:
    /// Makes one; throws LibraryStop (`io`) when none can be made.
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    const std::string& path() const { return path_; }

  private:
    std::string path_;
};

struct Library::Connection {
    LibraryPlace place;
    std::string path; ///< the file; empty in memory
    std::optional<LibraryFault> write_fault;
    bool word_index = false; ///< search goes through FTS5

    // In this order: the database is closed before the copy that it reads is deleted.
    std::unique_ptr<TemporaryFolder> copy;
    std::unique_ptr<SQLite::Database> database;

    /// Runs `work` and returns what it returns, or the fault that made it throw. `work` reports a
    /// fault by throwing LibraryStop.
    template <class Work>
    auto guarded(Work&& work) const -> decltype(work());

    /// The same within a transaction, which is undone when `work` throws. Not writable, or its
    /// file has been moved away: a fault, and `work` is not run. Where only the word index is
    /// damaged it is made again, and `work` is run once more.
    template <class Work>
    auto changing(Work&& work) -> decltype(work());

    /// A fault of this library.
    LibraryFault fault(LibraryFault::Kind kind, std::string detail) const {
        return {kind, std::move(detail), path};
    }

    /// Whether another file, or none, stands where this one was opened.
    bool was_moved() const;
};

/// Opens the library in its folder, as Library::open() says. May throw LibraryStop and
/// SQLite::Exception.
std::unique_ptr<Library::Connection> open_library_file(const LibraryPlace& place);

/// Opens the library in memory that `place.memory` names, making it where there is none. Throws
/// SQLite::Exception.
std::unique_ptr<Library::Connection> open_library_memory(const LibraryPlace& place);

/// What Library::check() finds. May throw LibraryStop and SQLite::Exception.
std::optional<LibraryFault> fault_of_library(const Library::Connection& connection);

template <class Work>
auto Library::Connection::guarded(Work&& work) const -> decltype(work()) {
    try {
        return std::forward<Work>(work)();
    } catch (const LibraryStop& stop) {
        return stop.fault;
    } catch (const SQLite::Exception& failure) {
        return fault_from(failure, path, database.get());
    } catch (const std::bad_alloc&) {
        throw;
    } catch (const std::exception& failure) {
        return fault(LibraryFault::Kind::io, failure.what());
    }
}

template <class Work>
auto Library::Connection::changing(Work&& work) -> decltype(work()) {
    if (write_fault) return *write_fault;
    if (was_moved())
        return fault(LibraryFault::Kind::io, "the file was moved or deleted while it was open");
    const auto once = [&]() -> decltype(work()) {
        SQLite::Transaction transaction(*database, SQLite::TransactionBehavior::IMMEDIATE);
        auto result = work();
        transaction.commit();
        return result;
    };
    return guarded([&]() -> decltype(work()) {
        try {
            return once();
        } catch (const SQLite::Exception& failure) {
            if (!is_damaged_index(failure)) throw;
        }
        remake_word_index(*database);
        word_index = true;
        return once();
    });
}

} // namespace carriageway
