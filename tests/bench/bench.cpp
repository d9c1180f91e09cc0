#include "tests/bench/bench.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <limits>
#include <stdexcept>

namespace carriageway::bench {

namespace {

double time_of(clockid_t clock) {
    timespec now{};
    clock_gettime(clock, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

volatile double kept = 0.0;

} // namespace

double thread_time() { return time_of(CLOCK_THREAD_CPUTIME_ID); }
double clock_time() { return time_of(CLOCK_MONOTONIC); }

double median(std::vector<double> values) {
    if (values.empty()) return std::numeric_limits<double>::quiet_NaN();
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
}

double percentile(std::vector<double> values, double share) {
    if (values.empty()) return std::numeric_limits<double>::quiet_NaN();
    std::sort(values.begin(), values.end());
    const double rank = std::ceil(share * static_cast<double>(values.size()));
    return values[std::min(values.size(), static_cast<std::size_t>(std::max(1.0, rank))) - 1];
}

Pair in_turn(int rounds, const std::function<void()>& ours, const std::function<void()>& theirs) {
    const auto time = [](const std::function<void()>& work) {
        const double began = thread_time();
        work();
        return thread_time() - began;
    };
    ours();
    theirs();
    Pair pair;
    for (int i = 0; i < rounds; ++i) {
        if (i % 2 == 0) pair.ours.push_back(time(ours));
        pair.theirs.push_back(time(theirs));
        if (i % 2 == 1) pair.ours.push_back(time(ours));
    }
    return pair;
}

void keep(double value) { kept = value; }

std::string time_words(double seconds) {
    char words[40];
    if (seconds < 1e-6) std::snprintf(words, sizeof words, "%.3g ns", 1e9 * seconds);
    else if (seconds < 1e-3) std::snprintf(words, sizeof words, "%.3g us", 1e6 * seconds);
    else if (seconds < 1.0) std::snprintf(words, sizeof words, "%.3g ms", 1e3 * seconds);
    else std::snprintf(words, sizeof words, "%.3g s", seconds);
    return words;
}

std::string ratio_words(double ratio) {
    char words[40];
    std::snprintf(words, sizeof words, "%.3g", ratio);
    return words;
}

std::string sides(const char* ours, double our_time, const char* theirs, double their_time) {
    return std::string(ours) + ' ' + time_words(our_time) + ", " + theirs + ' ' +
           time_words(their_time);
}

void must(bool so, const char* otherwise) {
    if (!so) throw std::runtime_error(otherwise);
}

void must(bool so, const std::string& otherwise) { must(so, otherwise.c_str()); }

} // namespace carriageway::bench
