// Finding a job among 100,000 against finding one among 1,000, in libraries on disk.
#include "app/records/library.h"
#include "tests/bench/bench.h"
#include "tests/bench/made_library.h"
#include "tests/bench/scratch.h"
#include "tests/reference/seeded.h"

namespace carriageway::bench {

namespace {

constexpr int few = 1'000, many = 100'000; ///< jobs
constexpr int queries = 400;
constexpr int rows = 200; ///< that are asked for at once, as the program does

/// What a person types to find one job of a library that has this many: some or all of the words of
/// its name, the first letters of one, with or without a colour or a press, now and then a word that
/// is nowhere.
std::string query(reference::Seeded& random, int jobs) {
    const JobWords words = job_words(random.whole(0, jobs - 1));
    switch (random.whole(0, 5)) {
        case 0: return words.number;
        case 1: return words.customer + ' ' + words.number.substr(0, 3);
        case 2: return words.customer + ' ' + words.motif;
        case 3: return words.customer + ' ' + words.motif + ' ' + words.number.substr(0, 2);
        case 4: return words.number.substr(0, 4) + ' ' + words.press;
        default: return "zz" + words.number;
    }
}

double time(const Library& library, const std::string& query) {
    double least = 1e9;
    for (int again = 0; again < 3; ++again) {
        const double began = thread_time();
        const LibraryResult<std::vector<JobRow>> found = library.list(query, rows);
        least = std::min(least, thread_time() - began);
        must(bool(found), "the library can't be searched");
        keep(static_cast<double>(found->size()));
    }
    return least;
}

} // namespace

std::vector<Ratio> search_growth() {
    const Scratch small_folder("search-small"), large_folder("search-large");
    const Library small = made_library(small_folder.path(), few);
    const Library large = made_library(large_folder.path(), many);
    must(*small.count("") == few && *large.count("") == many, "jobs are missing");
    std::vector<double> of_small, of_large;
    for (std::uint64_t number = 0; number < queries; ++number) {
        reference::Seeded for_small(seed, 12, number), for_large(seed, 12, number);
        of_large.push_back(time(large, query(for_large, many)));
        of_small.push_back(time(small, query(for_small, few)));
    }
    const double p95_small = percentile(of_small, 0.95), p95_large = percentile(of_large, 0.95);
    return {{"search_growth", p95_large / p95_small, 3.0,
             "95th percentile: " + sides("of 100,000", p95_large, "of 1,000", p95_small) + "; median: " +
                 sides("of 100,000", median(of_large), "of 1,000", median(of_small))}};
}

} // namespace carriageway::bench
