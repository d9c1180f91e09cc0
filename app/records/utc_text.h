// Times for programs to read.
#pragma once

#include <string>

#include "app/records/library.h"

namespace carriageway {

/// A point of time, as in RFC 3339: "2025-11-25T10:24:00Z".
std::string utc_text(Timestamp time);

} // namespace carriageway
