// What the files, the library of jobs and the command line are built on.
#pragma once

#include <vector>

#include "app/text/built_on.h"

namespace carriageway {

/// Versions are of what runs: a shared library may be newer than the headers that were compiled.
std::vector<BuiltOn> records_built_on();

} // namespace carriageway
