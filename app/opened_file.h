// A file that a person opens or drops on the window: judged by its first bytes and its size before
// it is read, so that one of any size costs nothing.
#pragma once

#include <cstdint>
#include <string>

namespace carriageway {

/// What came of opening a file.
struct OpenedFile {
    enum class Fault {
        none,
        not_readable,   ///< not there, not allowed, or no plain file
        job_too_large,  ///< no film, and above largest_text (app/records/exchange.h)
        film_too_large, ///< above largest_film (app/film.h)
    };
    Fault fault = Fault::none;
    bool film = false;      ///< it starts like a film; otherwise it is taken to be a job
    std::uint64_t size = 0; ///< of the file, bytes; with a fault of size too
    std::string bytes;      ///< the whole file; empty with a fault
};

/// Reads a job's file or a film's as a whole. `path` is UTF-8.
OpenedFile open_to_read(const std::string& path);

} // namespace carriageway
