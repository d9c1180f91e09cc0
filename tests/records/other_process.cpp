#include "tests/records/other_process.h"

#include <chrono>
#include <csignal>
#include <thread>

#include <catch2/catch_test_macros.hpp>
#include <sys/wait.h>
#include <unistd.h>

namespace {

int outcome_of(pid_t child) {
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 98;
}

} // namespace

int as_nobody(const std::function<int()>& body) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        if (::getuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0)) ::_exit(99);
        ::_exit(body());
    }
    return outcome_of(child);
}

int then_cut_off(const std::function<void()>& body) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        body();
        cut_off(97);
    }
    return outcome_of(child);
}

void cut_off(int outcome) { ::_exit(outcome); }

void killed_after(int microseconds, const std::function<void()>& body) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        body();
        ::raise(SIGKILL);
    }
    std::this_thread::sleep_for(std::chrono::microseconds(microseconds));
    ::kill(child, SIGKILL);
    CHECK(outcome_of(child) == 98);
}

void killed_at_work(int microseconds,
                    const std::function<void(const std::function<void()>& begun)>& body) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        body([&] {
            if (::write(ends[1], "b", 1) != 1) ::raise(SIGKILL);
        });
        ::raise(SIGKILL);
    }
    ::close(ends[1]);
    char begun = 0;
    CHECK(::read(ends[0], &begun, 1) == 1); // 0: it died before it began
    ::close(ends[0]);
    std::this_thread::sleep_for(std::chrono::microseconds(microseconds));
    ::kill(child, SIGKILL);
    CHECK(outcome_of(child) == 98);
}

int beside(const std::function<int()>& there, const std::function<void()>& here) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) ::_exit(there());
    here();
    return outcome_of(child);
}

Signal::Signal() { REQUIRE(::pipe(ends_) == 0); }

Signal::~Signal() {
    for (const int end : ends_) ::close(end);
}

void Signal::give() {
    if (::write(ends_[1], "s", 1) != 1) cut_off(96);
}

bool Signal::wait() {
    char given = 0;
    return ::read(ends_[0], &given, 1) == 1;
}
