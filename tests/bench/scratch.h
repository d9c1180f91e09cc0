// A folder for one measure among the system's temporary ones, deleted with all that is in it.
#pragma once

#include <filesystem>
#include <string>
#include <system_error>

#include <unistd.h>

namespace carriageway::bench {

class Scratch {
public:
    explicit Scratch(const std::string& name)
        : folder_(std::filesystem::temp_directory_path() /
                  ("carriageway-bench-" + std::to_string(getpid()) + '-' + name)) {
        std::filesystem::create_directories(folder_);
    }
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    std::string path() const { return folder_.string(); }

private:
    std::filesystem::path folder_;
};

} // namespace carriageway::bench
