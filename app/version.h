// Which Carriageway this is, and what it is built on.
#pragma once

#include <string>
#include <vector>

#include "app/text/built_on.h"

namespace carriageway {

/// As in CMakeLists.txt: "0.1.0".
std::string program_version();

/// All but the window systems, which are not the program's.
std::vector<BuiltOn> program_built_on();

} // namespace carriageway
