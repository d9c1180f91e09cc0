// The program asks nothing of a network: whatever it does is done by a process that the system kills
// where it makes a socket to one.
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <fcntl.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include "app/drawing/png_file.h"
#include "app/records/job_link.h"
#include "tests/app/driver.h"
#include "tests/no_internet.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
namespace fs = std::filesystem;

namespace {

constexpr int cannot_forbid = 90;
constexpr int threw = 91;

/// How a process ended.
struct Ended {
    int outcome = -1; ///< of one that ended by itself
    int signal = 0;   ///< that killed it
};

/// Runs `body` in a child that can't reach a network.
Ended without_internet(const std::function<int()>& body) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        int outcome = cannot_forbid;
        try {
            if (forbid_internet()) outcome = body();
        } catch (...) {
            outcome = threw;
        }
        ::_exit(outcome);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    Ended ended;
    if (WIFEXITED(status)) ended.outcome = WEXITSTATUS(status);
    if (WIFSIGNALED(status)) ended.signal = WTERMSIG(status);
    return ended;
}

void skip_where_it_cannot_be_forbidden() {
    if (without_internet([] { return 0; }).outcome == cannot_forbid)
        SKIP("this system can't forbid a process its sockets");
}

int socket_of(int family) {
    const int made = ::socket(family, SOCK_DGRAM, 0);
    if (made >= 0) ::close(made);
    return made >= 0 ? 0 : 1;
}

/// The program that was built with these tests.
std::string program() {
    return (fs::read_symlink("/proc/self/exe").parent_path().parent_path() / "app" / "carriageway")
        .string();
}

/// Runs the program without a network, its library in `folder`; what it prints is thrown away.
Ended run_program(const std::string& folder, std::vector<std::string> words) {
    return without_internet([&] {
        ::setenv("XDG_DATA_HOME", folder.c_str(), 1);
        ::setenv("HOME", folder.c_str(), 1);
        const int nowhere = ::open("/dev/null", O_RDWR);
        for (int stream = 0; stream < 2; ++stream) ::dup2(nowhere, stream);
        words.insert(words.begin(), program());
        std::vector<char*> arguments;
        for (std::string& word : words) arguments.push_back(word.data());
        arguments.push_back(nullptr);
        ::execv(arguments[0], arguments.data());
        return threw;
    });
}

/// Starts, edits, exports, prints, opens a link and a file, draws.
int work(const std::string& folder) {
    Driver driver(phone, folder);
    driver.program().act(SetEveryStop{});
    driver.settle();
    driver.program().act(Undo{});
    driver.program().act(ExportJob{driver.session().current()});
    driver.program().act(MakePaper{false});
    driver.program().act(MakePaper{true});
    driver.settle();
    driver.program().act(ShareJob{driver.session().current()});
    driver.settle();
    driver.open_link("https://example.org/#" + job_link_fragment(driver.session().job()));
    driver.program().act(KeepVisit{});
    driver.settle();
    driver.drop_file(CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json");
    const bool drawn = !write_png(driver.painted(), folder + "/picture.png");
    const bool saved = driver.session().flush();
    return drawn && saved && fs::exists(folder + "/exports") ? 0 : 1;
}

} // namespace

TEST_CASE("a process that may not reach a network is killed where it tries", "[internet]") {
    skip_where_it_cannot_be_forbidden();
    CHECK(without_internet([] { return socket_of(AF_UNIX); }).outcome == 0);
    for (const int family : {AF_INET, AF_INET6}) {
        INFO("family " << family);
        CHECK(without_internet([&] { return socket_of(family); }).signal == SIGSYS);
    }
}

TEST_CASE("the program works without ever turning to a network", "[internet]") {
    skip_where_it_cannot_be_forbidden();
    const ScratchFolder folder;
    const Ended ended = without_internet([&] { return work(folder.path()); });
    CHECK(ended.signal == 0);
    CHECK(ended.outcome == 0);
}

// Its windows: platform/linux/check-windows.
TEST_CASE("no command of the program turns to a network", "[internet]") {
    skip_where_it_cannot_be_forbidden();
    if (!fs::exists(program())) SKIP("there is no program beside these tests");
    const ScratchFolder folder;
    const std::string demo = CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json";
    struct Run {
        std::vector<std::string> words;
        int outcome;
    };
    const std::vector<Run> runs{
        {{"--version"}, 0},
        {{"check", demo}, 1},
        {{"set", demo, "-o", folder.file("set.json")}, 0},
        {{"check", folder.file("set.json"), "--json"}, 0},
        {{"picture", demo, "-o", folder.file("picture.png")}, 0},
        {{"sheet", folder.file("set.json"), "-o", folder.file("sheet.pdf")}, 0},
        {{"stations", demo}, 0},
        {{"rate", folder.file("set.json")}, 0},
        {{"link", demo}, 0},
        {{"import", demo}, 0},
        {{"list"}, 0},
    };
    for (const Run& run : runs) {
        INFO(run.words.front());
        const Ended ended = run_program(folder.path(), run.words);
        CHECK(ended.signal == 0);
        CHECK(ended.outcome == run.outcome);
    }
    CHECK(fs::exists(folder.file("picture.png")));
    CHECK(fs::exists(folder.file("sheet.pdf")));
}
