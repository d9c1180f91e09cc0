// Opening a library for a person: one that is damaged is put aside, and its newest good backup
// takes its place.
#pragma once

#include <optional>
#include <string>

#include "app/records/library.h"
#include "app/text/words.h"

namespace carriageway {

/// What became of a damaged library.
struct Rescue {
    std::string damaged; ///< where it is now, UTF-8; its log is beside it
    std::string day;     ///< the day (UTC) of the backup in its place, "2025-11-25"
    bool operator==(const Rescue&) const = default;
};

struct OpenedLibrary {
    LibraryResult<Library> library;
    std::optional<Rescue> rescue;
};

/// Opens a library as Library::open() does. A damaged one is renamed with its log, never changed or
/// deleted, and a copy of the newest backup that reads through is opened instead; with no such
/// backup it is left where it is, and `library` is the fault. A newer one is left alone. Killed
/// at any moment, it is gone on with at the next call. In a browser: Library::open().
OpenedLibrary open_or_rescue(const std::string& folder, const LibraryOptions& options,
                             Timestamp now);

/// What a person should know of it: where the damaged file is, and which day's backup this is.
std::string rescue_sentence(Language language, const Rescue& rescue);

} // namespace carriageway
