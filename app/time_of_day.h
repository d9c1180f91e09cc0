// The time of day, for what is kept with a date.
#pragma once

#include <chrono>

#include "app/records/library.h"

namespace carriageway {

inline Timestamp time_of_day() {
    return std::chrono::duration_cast<std::chrono::milliseconds>(
               std::chrono::system_clock::now().time_since_epoch())
        .count();
}

} // namespace carriageway
