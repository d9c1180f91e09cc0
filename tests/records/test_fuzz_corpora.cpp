// What fuzzers were begun with and what they found (tests/fuzz/corpus), through the same functions
// without a fuzzer: nothing breaks what must hold.
#include <algorithm>
#include <filesystem>
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "tests/fuzz/inputs.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

const std::filesystem::path corpora = CARRIAGEWAY_SOURCE_DIR "/tests/fuzz/corpus";

void pass(const fuzz::Fuzzed& fuzzed, const std::string& bytes) {
    try {
        fuzzed.one_input(bytes);
        SUCCEED();
    } catch (const fuzz::Broken& broken) {
        FAIL_CHECK(broken.what());
    }
}

} // namespace

TEST_CASE("the kept inputs of all fuzzers break nothing", "[fuzz]") {
    for (const fuzz::Fuzzed& fuzzed : fuzz::all_fuzzed) {
        INFO(fuzzed.name);
        std::size_t inputs = 0;
        for (const auto& entry : std::filesystem::directory_iterator(corpora / fuzzed.name)) {
            INFO(entry.path().filename().string());
            const std::string bytes = bytes_of(entry.path().string());
            pass(fuzzed, bytes);
            // Also cut short, as files are that were not sent whole.
            pass(fuzzed, bytes.substr(0, bytes.size() / 2));
            ++inputs;
        }
        CHECK(inputs > 0);
    }
}

TEST_CASE("every corpus belongs to a fuzzer, and they stay small", "[fuzz]") {
    constexpr std::uintmax_t most_bytes = 200'000;
    std::uintmax_t bytes = 0;
    for (const auto& folder : std::filesystem::directory_iterator(corpora)) {
        const std::string name = folder.path().filename().string();
        INFO(name);
        CHECK(std::any_of(std::begin(fuzz::all_fuzzed), std::end(fuzz::all_fuzzed),
                          [&](const fuzz::Fuzzed& fuzzed) { return fuzzed.name == name; }));
        for (const auto& file : std::filesystem::directory_iterator(folder))
            bytes += file.file_size();
    }
    CHECK(bytes < most_bytes);
}
