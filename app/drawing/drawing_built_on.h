// What the drawing is built on: screen, printed sheets, codes to photograph, letters.
#pragma once

#include <vector>

#include "app/text/built_on.h"

namespace carriageway {

std::vector<BuiltOn> drawing_built_on();

} // namespace carriageway
