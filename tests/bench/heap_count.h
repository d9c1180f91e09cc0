// Counts what this executable takes from the heap, whoever asks: C++ and C alike, its own code and
// the libraries'.
#pragma once

namespace carriageway::bench {

/// Calls of malloc, calloc, realloc and the aligned ones so far, on any thread. operator new and
/// Dear ImGui end there.
long heap_count();

} // namespace carriageway::bench
