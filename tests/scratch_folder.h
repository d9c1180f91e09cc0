// A folder for one test, deleted with all that is in it.
#pragma once

#include <filesystem>
#include <string>

class ScratchFolder {
  public:
    ScratchFolder(); ///< fails the test when none can be made
    ~ScratchFolder();
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;

    std::string path() const { return folder_.string(); }
    std::string file(const std::string& name) const { return (folder_ / name).string(); }

  private:
    std::filesystem::path folder_;
};

/// The bytes of a file; empty when it can't be read.
std::string bytes_of(const std::string& path);
void write_bytes(const std::string& path, const std::string& bytes);

/// Whether this system lets nobody move, remove or write to a file that somebody has open.
#ifdef _WIN32
inline constexpr bool open_files_are_locked = true;
#else
inline constexpr bool open_files_are_locked = false;
#endif
