// The library of the browser: SQLite's file lies in memory and the page keeps it.
#pragma once

#include <string>

namespace carriageway {

/// Folder of the library in the module's file system; the page puts the kept file there before the
/// program starts.
inline constexpr const char* library_folder = "/library";

/// The page's answer to page::keep(): "", "full", "denied" or "failed: words".
void library_kept(const std::string& trouble);

/// Another page writes the library from now on.
void library_given_up();

/// Asks for everything that is waiting to be kept; false while something is.
bool library_flushed();

} // namespace carriageway
