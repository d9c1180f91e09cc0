// Where libFuzzer hands over an input. Compiled once for each fuzzer, with its name.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

#include "tests/fuzz/inputs.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    try {
        carriageway::fuzz::CARRIAGEWAY_FUZZED(
            std::string_view(reinterpret_cast<const char*>(data), size));
    } catch (const carriageway::fuzz::Broken& broken) {
        std::fprintf(stderr, "broken: %s\n", broken.what());
        std::abort();
    }
    return 0;
}
