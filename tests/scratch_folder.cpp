#include "tests/scratch_folder.h"

#include <fstream>
#include <iterator>
#include <random>
#include <system_error>

#include <catch2/catch_test_macros.hpp>

namespace fs = std::filesystem;

ScratchFolder::ScratchFolder() {
    // Not drawn from the tests' seed: two runs with one seed must not share a folder.
    std::random_device random;
    folder_ = fs::temp_directory_path() / ("carriageway-test-" + std::to_string(random()));
    REQUIRE(fs::create_directory(folder_));
}

ScratchFolder::~ScratchFolder() {
    std::error_code ignored;
    fs::permissions(folder_, fs::perms::owner_all, ignored);
    fs::remove_all(folder_, ignored);
}

std::string bytes_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void write_bytes(const std::string& path, const std::string& bytes) {
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    REQUIRE(file.flush());
}
