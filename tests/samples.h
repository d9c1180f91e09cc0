// How much a property test tries.
#pragma once

#include <cstdlib>

/// How many cases a property is tried on: those of the release, or a tenth of them where the
/// sanitizers look at every step of each, which takes ten times as long.
constexpr int sample_count(int of_release) {
#ifdef CARRIAGEWAY_FEWER_SAMPLES
    return of_release / 10;
#else
    return of_release;
#endif
}

/// The number that a variable of the environment asks for (tests/long/run); `otherwise` without it.
inline long asked_for(const char* variable, long otherwise) {
    const char* asked = std::getenv(variable);
    return asked != nullptr ? std::atol(asked) : otherwise;
}
