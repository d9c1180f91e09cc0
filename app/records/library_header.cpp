#include "app/records/library_header.h"

#include <array>
#include <cstring>
#include <filesystem>
#include <system_error>

#include "app/records/connection.h"
#include "app/records/file_bytes.h"
#include "app/records/schema.h"

namespace carriageway {

namespace {

namespace fs = std::filesystem;
using Kind = LibraryFault::Kind;
using Header = std::array<char, 100>;

// Numbers of the header of an SQLite file, most significant byte first (sqlite.org/fileformat.html,
// 1.3).
std::uint32_t header_number(const Header& header, std::size_t at, std::size_t bytes = 4) {
    std::uint32_t number = 0;
    for (std::size_t i = at; i < at + bytes; ++i)
        number = (number << 8) | static_cast<unsigned char>(header[i]);
    return number;
}

std::int64_t signed_number(const Header& header, std::size_t at) {
    return static_cast<std::int32_t>(header_number(header, at));
}

bool is_there(const std::string& path) {
    std::error_code error;
    return fs::file_size(path_of(path), error) > 0 && !error;
}

// The bytes that the file should have at least; 0 when the header doesn't say, as while a log or a
// journal has more to say. SQLite itself notices missing pages, but fills up a part of one.
std::uint64_t least_size(const Header& header, const std::string& path) {
    if (header_number(header, 24) != header_number(header, 92)) return 0;
    if (is_there(path + "-wal") || is_there(path + "-journal")) return 0;
    const std::uint64_t page = header_number(header, 16, 2);
    return std::uint64_t{header_number(header, 28)} * (page == 1 ? 65536 : page);
}

} // namespace

std::string newer_detail(std::int64_t version) {
    return "version " + std::to_string(version) + "; this program reads up to version " +
           std::to_string(library_version);
}

void look_at_header(const std::string& path) {
    const OpenFile file = open_bytes(path_of(path));
    if (!file) return;
    Header header{};
    const std::size_t there = std::fread(header.data(), 1, header.size(), file.get());
    if (there == 0) return;
    if (there < header.size() || std::memcmp(header.data(), "SQLite format 3", 16) != 0)
        stop(Kind::corrupt, "it does not begin as an SQLite file does", path);
    const std::int64_t version = signed_number(header, 60);
    const std::int64_t application = signed_number(header, 68);
    if (application == library_application_id && version > library_version)
        stop(Kind::newer_version, newer_detail(version), path);
    if (application != library_application_id && application != 0)
        stop(Kind::corrupt, "it is a database of another program", path);
    const std::uint64_t wanted = least_size(header, path);
    std::error_code error;
    const std::uintmax_t size = fs::file_size(path_of(path), error);
    if (!error && size < wanted)
        stop(Kind::corrupt,
             "it was cut short: " + std::to_string(size) + " of " + std::to_string(wanted) + " bytes",
             path);
}

} // namespace carriageway
