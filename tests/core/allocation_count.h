// Counts what the test executable takes from the heap, so that a test can show that a warm
// function takes nothing.
#pragma once

#include <cstddef>

namespace carriageway::tests {

/// Calls of operator new in this process so far, of all kinds.
std::size_t allocation_count();

} // namespace carriageway::tests
