// One thing of others that the program is built on, as it says of itself which it is.
#pragma once

#include <string>

namespace carriageway {

struct BuiltOn {
    std::string name;    ///< as it calls itself
    std::string version; ///< of what runs, or of the headers where it has nothing that runs; empty:
                         ///< it says none
    std::string licence; ///< SPDX identifier, as in platform/dependencies.txt
};

/// "SQLite 3.40.1 (blessing)".
inline std::string built_on_line(const BuiltOn& one) {
    return one.name + (one.version.empty() ? "" : " " + one.version) + " (" + one.licence + ")";
}

} // namespace carriageway
