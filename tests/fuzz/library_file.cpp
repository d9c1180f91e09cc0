// A library of which anything may be wrong. The first byte of an input says what the rest is:
//   'f'  the whole file
//   '1' … '3'  changes to the file of a sound library of that version (tests/records/library_version_N.sql
//        with small pages): each is three bytes of an offset, a length from 0 to 255 and so many bytes
//   's'  statements of SQL that are done to the sound library of the newest version
// Whatever comes of it is refused and left as it is, byte for byte, or can be used.
#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>

#include "app/records/call_log.h"
#include "app/records/library.h"
#include "app/records/library_rescue.h"
#include "app/records/library_text.h"
#include "app/records/trainees.h"
#include "tests/fuzz/inputs.h"
#include "tests/fuzz/sound_job.h"

namespace carriageway::fuzz {
namespace {

namespace fs = std::filesystem;

constexpr int oldest = 1;
constexpr int newest = 3;

/// A folder of this process, in memory where there is such a place: durability is waited for.
const fs::path& folder() {
    static const struct Folder {
        fs::path path;
        Folder() {
            const fs::path memory = "/dev/shm";
            const fs::path top = fs::is_directory(memory) ? memory : fs::temp_directory_path();
            std::random_device random;
            do path = top / ("carriageway-fuzz-" + std::to_string(random()));
            while (!fs::create_directory(path));
        }
        ~Folder() {
            std::error_code ignored;
            fs::remove_all(path, ignored);
        }
    } made;
    return made.path;
}

fs::path file() { return folder() / "library.db"; }

void empty_folder() {
    for (const fs::directory_entry& entry : fs::directory_iterator(folder()))
        fs::remove_all(entry.path());
}

std::string read_file(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

void write_file(std::string_view bytes) {
    std::ofstream stream(file(), std::ios::binary | std::ios::trunc);
    stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

/// The bytes of a sound library as an earlier version left it.
const std::string& sound_library(int version) {
    static std::array<std::string, newest + 1> made;
    std::string& bytes = made[static_cast<std::size_t>(version)];
    if (!bytes.empty()) return bytes;
    const std::string statements =
        read_file(std::string(CARRIAGEWAY_SOURCE_DIR "/tests/records/library_version_") +
                  std::to_string(version) + ".sql");
    demand(!statements.empty(), "the library of an earlier version is not there");
    empty_folder();
    {
        SQLite::Database database(file(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec("PRAGMA page_size = 512");
        database.exec(statements);
    }
    return bytes = read_file(file());
}

std::string changed(std::string bytes, std::string_view changes) {
    constexpr std::size_t head = 4;
    while (changes.size() >= head) {
        std::size_t offset = 0;
        for (std::size_t i = 0; i < 3; ++i)
            offset = offset << 8 | static_cast<unsigned char>(changes[i]);
        const std::size_t length =
            std::min<std::size_t>(static_cast<unsigned char>(changes[3]), changes.size() - head);
        offset %= bytes.size();
        const std::size_t fits = std::min(length, bytes.size() - offset);
        bytes.replace(offset, fits, changes.substr(head, fits));
        changes.remove_prefix(head + length);
    }
    return bytes;
}

/// Other files are none of theirs, nor are settings that would make one.
int allowed(void*, int what, const char*, const char*, const char*, const char*) {
    return what == SQLITE_ATTACH || what == SQLITE_DETACH || what == SQLITE_PRAGMA ? SQLITE_DENY
                                                                                   : SQLITE_OK;
}

int enough(void*) { return 1; }

/// Does what can be done of the statements, within bounds.
void obey(const std::string& statements) {
    constexpr int longest_value = 200'000;
    constexpr int most_steps = 200'000;
    SQLite::Database database(file(), SQLite::OPEN_READWRITE);
    sqlite3* handle = database.getHandle();
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, longest_value);
    sqlite3_limit(handle, SQLITE_LIMIT_ATTACHED, 0);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 1, nullptr);
    sqlite3_set_authorizer(handle, allowed, nullptr);
    sqlite3_progress_handler(handle, most_steps, enough, nullptr);
    sqlite3_exec(handle, statements.c_str(), nullptr, nullptr, nullptr);
}

/// Every way in which a person meets what is stored. What is refused there has a sentence.
void use(Library& library) {
    const std::optional<LibraryFault> wrong = library.check();
    const auto said = [](const LibraryFault& fault) {
        demand(!fault_sentence(Language::english, fault).empty(), "a refusal without a sentence");
    };
    if (wrong) said(*wrong);
    if (const auto rows = library.list("", 20); !rows) said(rows.fault());
    else
        for (const JobRow& row : *rows) {
            if (const auto job = library.open(row.id); !job) said(job.fault());
            else demand(!fault_of(*job), "core refuses a job out of a library");
            if (const auto history = library.history(row.id); !history) said(history.fault());
            if (const auto runs = library.runs(row.id); runs)
                for (const RunRow& run : *runs) (void)library.open_run(run.id);
        }
    (void)library.list("blue", 20);
    (void)library.list_removed(20);
    if (const auto presses = library.presses(); presses)
        for (const PressRow& press : *presses) (void)library.open_press(press.id);
    (void)library.setting(setting_key::last_job);
    (void)group_summary(library);
    if (const auto people = trainees(library); people)
        for (const TraineeRow& person : *people) (void)export_trainee(library, person.id);
    (void)calls(library, 20);

    const LibraryResult<JobId> made = library.create(sound_job(), 1'000'000);
    if (!made) return said(made.fault());
    const LibraryResult<Job> kept = library.open(*made);
    demand(kept && *kept == sound_job(), "what was stored isn't there");
    if (const auto fault = library.rename(*made, "renamed", 1'000'001)) said(*fault);
    if (const auto fault = library.remove(*made, 1'000'002)) said(*fault);
}

} // namespace

void library_file(std::string_view bytes) {
    if (bytes.empty()) return;
    const std::string_view rest = bytes.substr(1);
    std::string stored;
    if (bytes[0] == 'f') stored = rest;
    else if (bytes[0] >= '0' + oldest && bytes[0] <= '0' + newest)
        stored = changed(sound_library(bytes[0] - '0'), rest);
    else if (bytes[0] == 's') stored = sound_library(newest);
    else return;
    empty_folder();
    write_file(stored);
    if (bytes[0] == 's') {
        obey(std::string(rest));
        stored = read_file(file());
    }
    if (LibraryResult<Library> library = Library::open(folder().string())) return use(*library);
    demand(read_file(file()) == stored, "a refused library was written over");
    const OpenedLibrary opened = open_or_rescue(folder().string(), {}, 1'000'000);
    demand(!opened.library && !opened.rescue, "a library came back out of nothing");
    demand(!fault_sentence(Language::spanish, opened.library.fault()).empty(),
           "a refusal without a sentence");
    demand(read_file(file()) == stored, "a refused library was written over");
}

} // namespace carriageway::fuzz
