// What can go wrong with the library, as values: nothing of app/records/library.h throws but for
// lack of memory. The sentence for a person comes from the catalogue (library_text.h).
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace carriageway {

/// One failure of the library.
struct LibraryFault {
    enum class Kind {
        no_folder,      ///< the data folder is not known or can't be made, or nothing can in it
        read_only,      ///< the library can be read but not changed
        locked,         ///< another program held it for longer than the busy timeout
        corrupt,        ///< damaged, or not a library of this program; left as it is
        newer_version,  ///< written by a newer version of this program; left as it is
        disk_full,      ///< no room; what was stored before is still there
        store_full,     ///< a browser's storage has no room; what was stored before is still there
        store_denied,   ///< a browser keeps nothing for this page
        no_such_job,    ///< no job of that id, or it was removed
        no_such_press,  ///< no press profile of that id
        no_such_run,    ///< no run of that id
        no_such_trainee, ///< no person of that id
        no_such_call,   ///< no call of that id
        unreadable_job, ///< this one job (or press, edit, run) is damaged; others are not touched
        bad_name,       ///< empty, too long, or not UTF-8
        io,             ///< the system reported anything else
    };
    Kind kind = Kind::io;
    std::string detail; ///< for a report: what SQLite or the system said, in its own words
    std::string path;   ///< the file or folder concerned, UTF-8; empty in memory
    bool operator==(const LibraryFault&) const = default;
};

/// A value, or the failure that prevented it.
template <class T>
class LibraryResult {
  public:
    LibraryResult(T value) : held_(std::in_place_index<0>, std::move(value)) {}
    LibraryResult(LibraryFault fault) : held_(std::in_place_index<1>, std::move(fault)) {}

    explicit operator bool() const { return held_.index() == 0; }
    /// The value; only when there is one (std::bad_variant_access otherwise).
    T& operator*() { return std::get<0>(held_); }
    const T& operator*() const { return std::get<0>(held_); }
    T* operator->() { return &std::get<0>(held_); }
    const T* operator->() const { return &std::get<0>(held_); }
    /// The failure; only when there is one.
    const LibraryFault& fault() const { return std::get<1>(held_); }

  private:
    std::variant<T, LibraryFault> held_;
};

} // namespace carriageway
