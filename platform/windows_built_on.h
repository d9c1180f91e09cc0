// What the window systems of this build are built on.
#pragma once

#include <vector>

#include "app/text/built_on.h"

namespace carriageway {

std::vector<BuiltOn> windows_built_on();

} // namespace carriageway
