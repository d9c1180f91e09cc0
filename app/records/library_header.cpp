#include "app/records/library_header.h"

#include <array>
#include <cstddef>
#include <cstring>
#include <filesystem>
#include <memory>
#include <system_error>
#include <vector>

#include <sqlite3.h>

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

// A file opened by SQLite's own layer. On POSIX systems closing any other handle of it would drop
// the locks of every connection that this program has to it, and another program that closes would
// take the log for nobody's and delete it (sqlite.org/howtocorrupt.html, 2.2).
class PlainFile {
  public:
    explicit PlainFile(const std::string& path) : name_(path + std::string(2, '\0')) {
        sqlite3_vfs* system = sqlite3_vfs_find(nullptr);
        room_.resize(static_cast<std::size_t>(system->szOsFile) / sizeof(std::max_align_t) + 1);
        constexpr int flags = SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB;
        int got = 0;
        const int result = system->xOpen(system, name_.c_str(), file(), flags, &got);
        open_ = result == SQLITE_OK && file()->pMethods != nullptr;
    }
    ~PlainFile() {
        if (file()->pMethods != nullptr) file()->pMethods->xClose(file());
    }
    PlainFile(const PlainFile&) = delete;
    PlainFile& operator=(const PlainFile&) = delete;

    bool read(char* bytes, int count) {
        return open_ && file()->pMethods->xRead(file(), bytes, count, 0) == SQLITE_OK;
    }

  private:
    sqlite3_file* file() { return reinterpret_cast<sqlite3_file*>(room_.data()); }
    std::string name_; ///< with the zeros behind it that SQLite expects
    std::vector<std::max_align_t> room_;
    bool open_ = false;
};

} // namespace

std::string newer_detail(std::int64_t version) {
    return "version " + std::to_string(version) + "; this program reads up to version " +
           std::to_string(library_version);
}

void look_at_header(const std::string& path) {
    std::error_code error;
    std::uintmax_t size = fs::file_size(path_of(path), error);
    if (error || size == 0) return;
    Header header{};
    const bool whole = size >= header.size();
    if (whole && !PlainFile(path).read(header.data(), static_cast<int>(header.size()))) return;
    if (!whole || std::memcmp(header.data(), "SQLite format 3", 16) != 0)
        stop(Kind::corrupt, "it does not begin as an SQLite file does", path);
    const std::int64_t version = signed_number(header, 60);
    const std::int64_t application = signed_number(header, 68);
    if (application == library_application_id && version > library_version)
        stop(Kind::newer_version, newer_detail(version), path);
    if (application != library_application_id && application != 0)
        stop(Kind::corrupt, "it is a database of another program", path);
    const std::uint64_t wanted = least_size(header, path);
    // After the header: another program may just have moved its log into the file.
    size = fs::file_size(path_of(path), error);
    if (!error && size < wanted)
        stop(Kind::corrupt,
             "it was cut short: " + std::to_string(size) + " of " + std::to_string(wanted) +
                 " bytes",
             path);
}

} // namespace carriageway
