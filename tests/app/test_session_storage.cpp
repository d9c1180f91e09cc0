// What a person is told of storage: a library that was damaged, a home folder that can't be written.
#include <chrono>
#include <filesystem>
#include <thread>

#include <catch2/catch_test_macros.hpp>
#include <sys/wait.h>
#include <unistd.h>

#include "app/records/library_backup.h"
#include "app/records/library_rescue.h"
#include "app/session.h"
#include "tests/app/driver.h"
#include "tests/records/odd_names.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
namespace fs = std::filesystem;

namespace {

constexpr Timestamp today = 1'700'000'000'000; // 2023-11-14

std::unique_ptr<Session> session_in(const std::string& folder) {
    return std::make_unique<Session>(folder, [] {}, [] { return today; }, Language::spanish);
}

/// 0 when a session works without a library that it could write: as a person without root's rights.
int works_unstored(const std::string& folder) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        if (::getuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0)) ::_exit(99);
        const std::unique_ptr<Session> session = session_in(folder);
        if (session->trouble().empty()) ::_exit(1);
        if (session->save_state() == SaveState::saved) ::_exit(2);
        const Job before = session->job();
        if (before.heads.empty()) ::_exit(3);
        if (session->commit(Edit{SetStops{before.heads.front().id, {-201.0, 200.0}}})) ::_exit(4);
        if (session->job() == before || !session->undo() || !(session->job() == before)) ::_exit(5);
        if (session->save_state() == SaveState::saved) ::_exit(6);
        ::_exit(0);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 98;
}

} // namespace

TEST_CASE("With a home folder that can't be written the program starts, works and says so",
          "[storage]") {
    const ScratchFolder home;
    fs::permissions(home.path(), fs::perms(0555));
    CHECK(works_unstored(home.file(".local/share/carriageway")) == 0);
    CHECK(works_unstored(home.path()) == 0);
    fs::permissions(home.path(), fs::perms(0755));
    write_bytes(home.file("taken"), "a file where the folder should be");
    CHECK(works_unstored(home.file("taken")) == 0);
    CHECK(bytes_of(home.file("taken")) == "a file where the folder should be");
    Driver driver(phone, home.file("taken"));
    CHECK_FALSE(driver.session().trouble().empty());
    CHECK(driver.session().save_state() == SaveState::not_kept);
    driver.tap("head/6");
}

TEST_CASE("A damaged library's backup is opened with all in it, and the person is told",
          "[storage]") {
    const ScratchFolder folder;
    JobId job = 0;
    {
        const std::unique_ptr<Session> session = session_in(folder.path());
        job = session->current();
        REQUIRE(session->rename(job, "In the backup"));
        REQUIRE(session->flush());
        REQUIRE(make_backup({folder.path(), "", {}}, today - 86'400'000));
        CHECK(session->rescued().empty());
    }
    write_bytes(folder.file("library.db"), "no library");
    const std::unique_ptr<Session> session = session_in(folder.path());
    CHECK(session->trouble().empty());
    CHECK(session->current() == job);
    CHECK(session->job().name == "In the backup");
    CHECK(session->rescued().find("2023-11-13") != std::string::npos);
    CHECK(session->rescued().find(folder.file("library-damaged-2023-11-14.db")) !=
          std::string::npos);
    CHECK(session->rescued().find("copia de seguridad") != std::string::npos);
    CHECK(bytes_of(folder.file("library-damaged-2023-11-14.db")) == "no library");
    REQUIRE_FALSE(session->commit(Edit{SetName{0, "Goes on"}}));
    REQUIRE(session->flush());
    CHECK(session->save_state() == SaveState::saved);
}

TEST_CASE("When no backup can be made the person is told, once", "[storage]") {
    const ScratchFolder folder;
    write_bytes(folder.file("backups"), "a file where the folder should be");
    const std::unique_ptr<Session> session = session_in(folder.path());
    REQUIRE_FALSE(session->commit(Edit{SetName{0, "Saved, not backed up"}}));
    std::string told;
    for (int tenths = 0; told.empty() && tenths < 300; ++tenths) {
        std::this_thread::sleep_for(std::chrono::milliseconds(100));
        told = session->backup_trouble();
    }
    CHECK(told.find("copia de seguridad") != std::string::npos);
    CHECK(told.find(folder.path()) != std::string::npos);
    CHECK(session->backup_trouble().empty());
    REQUIRE(session->flush());
    CHECK(session->save_state() == SaveState::saved);
    CHECK(bytes_of(folder.file("backups")) == "a file where the folder should be");
}

TEST_CASE("A person who is erased is erased from the backups, too", "[storage]") {
    const ScratchFolder folder;
    const std::unique_ptr<Session> session = session_in(folder.path());
    REQUIRE(session->add_trainee("Quillfeather"));
    REQUIRE(make_backup({folder.path(), "", {}}, today));
    const std::string backup = backups_of(folder.path()).front().path;
    REQUIRE(bytes_of(backup).find("Quillfeather") != std::string::npos);
    REQUIRE_FALSE(session->erase_trainee(session->practised_by().who.id));
    CHECK(bytes_of(backup).find("Quillfeather") == std::string::npos);
    CHECK_FALSE(fault_of_file(backup));
}

TEST_CASE("Jobs of odd names are drawn in every list, and exported under plain file names",
          "[storage]") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    for (const std::string& name : odd_names()) {
        INFO("name " << name);
        Job job = demo_job();
        job.name = name;
        job.press.name = name;
        for (Head& head : job.heads) head.colour = name;
        REQUIRE(driver.session().open_new(job));
        driver.settle();
        const auto path = driver.session().export_job(driver.session().current());
        REQUIRE(path);
        CHECK(fs::path(*path).parent_path() == fs::path(folder.file("exports")));
        for (const char c : fs::path(*path).filename().string())
            CHECK(static_cast<unsigned char>(c) > ' ');
    }
    driver.tap("head/6");
    driver.tap("place/jobs");
    driver.settle();
    CHECK(driver.session().rows().size() == odd_names().size() + 1);
}
