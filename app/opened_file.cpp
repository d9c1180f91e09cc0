#include "app/opened_file.h"

#include <filesystem>
#include <string_view>
#include <system_error>
#include <utility>

#include "app/film.h"
#include "app/records/exchange.h"
#include "app/records/file_bytes.h"

namespace carriageway {

namespace {

using Fault = OpenedFile::Fault;

constexpr std::size_t first_bytes = 16; ///< more than any film needs to be known by

} // namespace

OpenedFile open_to_read(const std::string& path) {
    namespace fs = std::filesystem;
    OpenedFile out;
    out.fault = Fault::not_readable;
    const fs::path from = path_of(path);
    std::error_code error;
    // A folder has no bytes, and a pipe no end that is known.
    if (!fs::is_regular_file(from, error)) return out;
    out.size = fs::file_size(from, error);
    if (error) return out;
    const OpenFile file = open_bytes(from);
    if (!file) return out;
    char first[first_bytes];
    const std::size_t known = std::fread(first, 1, first_bytes, file.get());
    if (std::ferror(file.get()) != 0) return out;
    out.film = looks_like_film(std::string_view(first, known));
    if (out.size > (out.film ? largest_film : largest_text)) {
        out.fault = out.film ? Fault::film_too_large : Fault::job_too_large;
        return out;
    }
    // At its size at once; what the file grew since isn't read, what it shrank is cut off.
    std::string bytes(static_cast<std::size_t>(out.size), '\0');
    std::rewind(file.get());
    bytes.resize(std::fread(bytes.data(), 1, bytes.size(), file.get()));
    if (std::ferror(file.get()) != 0) return out;
    out.bytes = std::move(bytes);
    out.fault = Fault::none;
    return out;
}

} // namespace carriageway
