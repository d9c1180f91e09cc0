// Files that are opened or dropped: judged by their beginning and size before they are read.
#include <filesystem>
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "app/film.h"
#include "app/opened_file.h"
#include "app/records/exchange.h"
#include "tests/app/driver.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace std::string_literals;
namespace fs = std::filesystem;

namespace {

/// A file with this beginning and nothing but zero bytes after it, which take no room on most disks.
std::string file_of(const ScratchFolder& folder, const std::string& beginning, std::uintmax_t size) {
    const std::string path = folder.file("large");
    write_bytes(path, beginning);
    fs::resize_file(path, size);
    return path;
}

} // namespace

TEST_CASE("A film is known by its first bytes") {
    // PNG: ISO/IEC 15948, 5.2. TIFF: revision 6.0, section 2: the byte order and 42. BigTIFF has 43.
    CHECK(looks_like_film("\x89PNG\r\n\x1a\n and more"s));
    for (const std::string& tiff : {"II*\0"s, "MM\0*"s, "II+\0"s, "MM\0+"s})
        CHECK(looks_like_film(tiff + "more"));
    for (const std::string& other :
         {""s, "II"s, "II+"s, "MM+\0"s, "II\0+"s, "{\"carriageway_job\": 1}"s, "%PDF"s})
        CHECK_FALSE(looks_like_film(other));
}

TEST_CASE("A file of a job or a film is read whole up to its limit, and not at all above") {
    const ScratchFolder folder;
    const std::string text = "{\"a\": 1}\r\n\0 end"s;
    write_bytes(folder.file("small"), text);
    const OpenedFile small = open_to_read(folder.file("small"));
    CHECK(small.fault == OpenedFile::Fault::none);
    CHECK_FALSE(small.film);
    CHECK(small.bytes == text);
    write_bytes(folder.file("empty"), {});
    CHECK(open_to_read(folder.file("empty")).fault == OpenedFile::Fault::none);

    const OpenedFile most = open_to_read(file_of(folder, "{", largest_text));
    CHECK(most.fault == OpenedFile::Fault::none);
    CHECK(most.bytes.size() == largest_text);
    const OpenedFile job = open_to_read(file_of(folder, "{", largest_text + 1));
    CHECK(job.fault == OpenedFile::Fault::job_too_large);
    CHECK(job.bytes.empty());
    // A film may be larger than a job.
    const OpenedFile film = open_to_read(file_of(folder, "II+\0"s, largest_text + 1));
    CHECK(film.fault == OpenedFile::Fault::none);
    CHECK(film.film);
    CHECK(film.bytes.size() == largest_text + 1);
    const OpenedFile huge = open_to_read(file_of(folder, "II+\0"s, largest_film + 1));
    CHECK(huge.fault == OpenedFile::Fault::film_too_large);
    CHECK(huge.bytes.empty());

    CHECK(open_to_read(folder.path()).fault == OpenedFile::Fault::not_readable);
    CHECK(open_to_read(folder.file("none")).fault == OpenedFile::Fault::not_readable);
}

TEST_CASE("A dropped file that is too large is refused with its limit and changes nothing") {
    const ScratchFolder folder;
    Driver driver(phone);
    driver.tap("head/5");
    const Job before = driver.session().job();
    const JobId current = driver.session().current();
    driver.drop_file(file_of(folder, "{", largest_text + 1));
    CHECK(driver.find("notice").label.find(say(Language::english, Word::read_too_large,
                                               {"16777217", "16777216"})) != std::string::npos);
    driver.drop_file(file_of(folder, "MM\0+"s, largest_film + 1));
    CHECK(driver.find("notice").label.find(say(Language::english, Word::film_too_large, {"512"})) !=
          std::string::npos);
    CHECK(driver.session().current() == current);
    CHECK(driver.session().job() == before);
    CHECK_FALSE(driver.session().can_undo());
}
