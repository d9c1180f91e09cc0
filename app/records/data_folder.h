// Where this system keeps a program's data for one person.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "app/records/library_fault.h"

namespace carriageway {

/// Reads one environment variable as UTF-8; nothing when it is not set.
using Environment = std::function<std::optional<std::string>(const char* name)>;

/// The environment of this process.
Environment system_environment();

/// The folder for this program's data, as UTF-8; it need not exist yet.
///   Windows:   %APPDATA%\Carriageway
///   macOS:     $HOME/Library/Application Support/Carriageway
///   elsewhere: $XDG_DATA_HOME/carriageway when that is an absolute path, otherwise
///              $HOME/.local/share/carriageway (XDG Base Directory Specification 0.8)
/// None of the variables set: `no_folder`, whose detail is the variable to set.
LibraryResult<std::string> default_data_folder(const Environment& environment =
                                                   system_environment());

} // namespace carriageway
