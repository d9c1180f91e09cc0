// Whole files, read and written so that nothing is lost: a file that is being replaced keeps its
// old contents until the new ones are complete on the disk.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>

#include "app/text/words.h"

namespace carriageway {

/// Why a file could not be read or written.
struct FileFault {
    enum class Kind {
        system,     ///< what the system says
        is_folder,  ///< a folder stands where a file should
        exists,     ///< there is a file already, and it may not be overwritten
    };
    Kind kind = Kind::system;
    std::error_code error;  ///< for Kind::system
    bool writing = false;
};

/// The fault as a clause without a capital, to stand after the file's name.
std::string fault_sentence(Language language, const FileFault& fault);

/// A path as the system wants it, of one in UTF-8.
inline std::filesystem::path path_of(const std::string& utf8) {
    return std::u8string(utf8.begin(), utf8.end());
}

/// A path in UTF-8, of one as the system has it.
inline std::string utf8_of(const std::filesystem::path& path) {
    const std::u8string text = path.u8string();
    return {text.begin(), text.end()};
}

/// Whether anything has this name: a file, a folder, a pipe. `path` is UTF-8.
bool is_there(const std::string& path);

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
/// A file of the C library: its streams are a tenth of what the C++ ones weigh in the page.
using OpenFile = std::unique_ptr<std::FILE, CloseFile>;

/// Opens a file's bytes for reading; nullptr: errno says why not.
OpenFile open_bytes(const std::filesystem::path& path);

/// Goes to a byte, counted from the beginning; false where the file has no such place.
bool go_to(std::FILE* file, std::uint64_t offset);

/// Reads a file (or pipe, or device) into `bytes`, but no more than `most` bytes of it. `path` is
/// UTF-8.
std::optional<FileFault> read_file(const std::string& path, std::size_t most, std::string& bytes);

/// Writes a file as a whole: beside it under another name, onto the disk, then in its place. With
/// `overwrite` false a file that exists is left alone. A link is followed; a device or pipe is
/// written to as it is. `path` is UTF-8.
std::optional<FileFault> write_file(const std::string& path, std::string_view bytes,
                                    bool overwrite);

}  // namespace carriageway
