#include "app/records/file_bytes.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <random>

#ifdef _WIN32
#include <io.h>
#else
#include <unistd.h>
#endif

namespace carriageway {
namespace {

namespace fs = std::filesystem;

FileFault system_fault(std::error_code error, bool writing) {
    return {FileFault::Kind::system, error, writing};
}
FileFault errno_fault(bool writing) {
    const int number = errno != 0 ? errno : EIO;
    return system_fault({number, std::generic_category()}, writing);
}

/// Opens for writing; with `only_new`, only a file that isn't there yet.
OpenFile open_for_writing(const fs::path& path, bool only_new) {
#ifdef _WIN32
    return OpenFile(_wfopen(path.c_str(), only_new ? L"wbx" : L"wb"));
#else
    return OpenFile(std::fopen(path.c_str(), only_new ? "wbx" : "wb"));
#endif
}

/// Writes all of it, onto the disk where `durable`. False: errno says why not.
bool write_all(OpenFile file, std::string_view bytes, bool durable) {
    errno = 0;
    if (std::fwrite(bytes.data(), 1, bytes.size(), file.get()) != bytes.size()) return false;
    if (std::fflush(file.get()) != 0) return false;
#ifdef _WIN32
    if (durable && _commit(_fileno(file.get())) != 0) return false;
#else
    if (durable && fsync(fileno(file.get())) != 0) return false;
#endif
    return std::fclose(file.release()) == 0;
}

/// A new file beside `target` that is deleted again unless it took the target's place.
class Beside {
  public:
    explicit Beside(const fs::path& target) : target_(target) {
        std::random_device random;
        for (int tries = 0; tries < 100; ++tries) {
            fs::path name = target.parent_path() / ".carriageway-";
            name += std::to_string(random());
            errno = 0;
            file_ = open_for_writing(name, true);
            if (file_ != nullptr) {
                name_ = name;
                return;
            }
            if (errno != EEXIST) return;
        }
    }
    ~Beside() {
        std::error_code ignored;
        if (!name_.empty()) fs::remove(name_, ignored);
    }
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;

    bool made() const { return file_ != nullptr; }
    bool write(std::string_view bytes) { return write_all(std::move(file_), bytes, true); }

    /// Puts it in the target's place, whether or not something is there.
    std::optional<FileFault> replace() {
        std::error_code error;
        const fs::file_status old = fs::status(target_, error);
        if (fs::is_regular_file(old)) fs::permissions(name_, old.permissions(), error);
        fs::rename(name_, target_, error);
        if (error) return system_fault(error, true);
        name_.clear();
        return std::nullopt;
    }
    /// Puts it there only if nothing is: a second name for the file can't be given to one that
    /// exists. Where the disk knows no second names, the place is looked at before.
    std::optional<FileFault> place() {
        std::error_code error;
        fs::create_hard_link(name_, target_, error);
        if (!error) return std::nullopt;
        if (fs::exists(target_)) return FileFault{FileFault::Kind::exists, {}, true};
        return replace();
    }

  private:
    fs::path target_;
    fs::path name_;
    OpenFile file_;
};

std::string_view system_clause(Language language, const FileFault& fault) {
    const std::error_code& error = fault.error;
    if (error == std::errc::no_such_file_or_directory || error == std::errc::not_a_directory) {
        return word(language, fault.writing ? Word::file_no_folder : Word::file_missing);
    }
    if (error == std::errc::permission_denied || error == std::errc::operation_not_permitted) {
        return word(language, Word::file_denied);
    }
    if (error == std::errc::no_space_on_device) return word(language, Word::file_disk_full);
    if (error == std::errc::read_only_file_system) return word(language, Word::file_read_only);
    if (error == std::errc::is_a_directory) return word(language, Word::file_is_folder);
    return {};
}

} // namespace

std::string fault_sentence(Language language, const FileFault& fault) {
    if (fault.kind == FileFault::Kind::is_folder) {
        return std::string(word(language, Word::file_is_folder));
    }
    if (fault.kind == FileFault::Kind::exists) {
        return std::string(word(language, Word::file_exists));
    }
    const std::string_view clause = system_clause(language, fault);
    if (!clause.empty()) return std::string(clause);
    return say(language, Word::file_failed, {fault.error.message()});
}

OpenFile open_bytes(const fs::path& path) {
#ifdef _WIN32
    return OpenFile(_wfopen(path.c_str(), L"rb"));
#else
    return OpenFile(std::fopen(path.c_str(), "rb"));
#endif
}

bool go_to(std::FILE* file, std::uint64_t offset) {
#ifdef _WIN32
    return _fseeki64(file, static_cast<std::int64_t>(offset), SEEK_SET) == 0;
#else
    return fseeko(file, static_cast<off_t>(offset), SEEK_SET) == 0;
#endif
}

bool is_there(const std::string& path) {
    std::error_code error;
    return fs::status(path_of(path), error).type() != fs::file_type::not_found;
}

std::optional<FileFault> read_file(const std::string& path, std::size_t most, std::string& bytes) {
    bytes.clear();
    const fs::path file_path = path_of(path);
    std::error_code error;
    const fs::file_status status = fs::status(file_path, error);
    if (status.type() == fs::file_type::not_found) {
        return system_fault(std::make_error_code(std::errc::no_such_file_or_directory), false);
    }
    if (status.type() == fs::file_type::none) return system_fault(error, false);
    if (fs::is_directory(status)) return FileFault{FileFault::Kind::is_folder, {}, false};
    errno = 0;
    const OpenFile file = open_bytes(file_path);
    if (!file) return errno_fault(false);
    constexpr std::size_t step = 65536;
    while (bytes.size() < most && std::feof(file.get()) == 0 && std::ferror(file.get()) == 0) {
        const std::size_t before = bytes.size();
        const std::size_t wanted = std::min(step, most - before);
        bytes.resize(before + wanted);
        bytes.resize(before + std::fread(bytes.data() + before, 1, wanted, file.get()));
    }
    if (std::ferror(file.get()) != 0) return errno_fault(false);
    return std::nullopt;
}

std::optional<FileFault> write_file(const std::string& path, std::string_view bytes,
                                    bool overwrite) {
    fs::path target = path_of(path);
    std::error_code error;
    const fs::file_status status = fs::status(target, error);
    if (fs::is_directory(status)) return FileFault{FileFault::Kind::is_folder, {}, true};
    // A link that leads nowhere is somebody's as well.
    const bool exists = fs::exists(status) || fs::is_symlink(fs::symlink_status(target, error));
    if (fs::exists(status) && !fs::is_regular_file(status)) {
        errno = 0;
        OpenFile device = open_for_writing(target, false);
        if (device == nullptr || !write_all(std::move(device), bytes, false)) {
            return errno_fault(true);
        }
        return std::nullopt;
    }
    if (exists && !overwrite) return FileFault{FileFault::Kind::exists, {}, true};
    if (exists) {
        const fs::path followed = fs::canonical(target, error);
        if (!error) target = followed;
    }
    errno = 0;
    Beside beside(target);
    if (!beside.made() || !beside.write(bytes)) return errno_fault(true);
    return overwrite ? beside.replace() : beside.place();
}

} // namespace carriageway
