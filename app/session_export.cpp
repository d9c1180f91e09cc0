// Files for a person, written beside the library.
#include "app/session.h"

#include <cctype>
#include <filesystem>

#include "app/records/file_bytes.h"

namespace carriageway {

namespace {

/// A name that any file system takes.
std::string file_name_of(const std::string& name) {
    std::string out;
    for (const char c : name) {
        const bool plain = std::isalnum(static_cast<unsigned char>(c)) || c == '-' || c == '_';
        if (plain) out += c;
        else if (!out.empty() && out.back() != '-') out += '-';
        if (out.size() >= 60) break;
    }
    while (!out.empty() && out.back() == '-') out.pop_back();
    return out.empty() ? "job" : out;
}

} // namespace

std::optional<std::string> Session::export_bytes(const std::string& name,
                                                 const std::string& extension,
                                                 std::string_view bytes) {
    namespace fs = std::filesystem;
    std::error_code error;
    const fs::path folder = fs::path(folder_.empty() ? std::string(".") : folder_) / "exports";
    fs::create_directories(folder, error);
    fs::path path = folder / (file_name_of(name) + extension);
    for (int i = 2; fs::exists(path, error); ++i)
        path = folder / (file_name_of(name) + "-" + std::to_string(i) + extension);
    if (!write_file(path.string(), bytes, false)) return path.string();
    note({LibraryFault::Kind::io, "the file could not be written", path.string()});
    return std::nullopt;
}

} // namespace carriageway
