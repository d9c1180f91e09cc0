#include "tests/bench/made_library.h"

#include <cstdint>

#include "app/records/connection.h"
#include "app/records/stored_job.h"
#include "core/edit.h"
#include "tests/bench/bench.h"

namespace carriageway::bench {

namespace {

constexpr const char* colours[] = {"White", "Black", "Red", "Royal blue", "Gold", "Kelly green", "Orange"};
constexpr const char* motifs[] = {"front", "back", "sleeve", "hood", "pocket", "tote", "jersey", "apron"};
constexpr Timestamp minute = 60'000, first_time = 1'600'000'000'000;

/// Spreads numbers that follow one another, so that neighbours share nothing.
std::uint32_t spread(std::uint32_t number) {
    number = (number ^ 0x9e3779b9u) * 0x85ebca6bu;
    number = (number ^ (number >> 13)) * 0xc2b2ae35u;
    return number ^ (number >> 16);
}

/// A word that can be spoken, one of some ten thousand.
std::string word_from(std::uint32_t bits) {
    constexpr const char* consonants = "bdfgklmnprstv";
    constexpr const char* vowels = "aeiou";
    std::string word;
    for (int i = 0; i < 3; ++i) {
        word += consonants[bits % 13];
        bits /= 13;
        word += vowels[bits % 5];
        bits /= 5;
    }
    return word;
}

Job job_of(int number) {
    const std::uint32_t bits = spread(static_cast<std::uint32_t>(number) + 1'000'000u);
    const JobWords words = job_words(number);
    Job job;
    job.name = words.name();
    job.press.name = words.press;
    job.uses.resize(static_cast<std::size_t>(job.press.stations));
    for (std::uint32_t i = 0; i < 2 + bits % 2; ++i) {
        Head head;
        head.id = i + 1;
        head.station = static_cast<int>(i + 2);
        head.colour = colours[(bits / 7 + 2 * i) % 7];
        job.heads.push_back(head);
    }
    return job;
}

} // namespace

JobWords job_words(int number) {
    const std::uint32_t bits = spread(static_cast<std::uint32_t>(number));
    return {word_from(bits % 8000), motifs[bits / 8000 % 8], std::to_string(100'000 + number),
            std::string("Press ") + (bits % 3 == 0 ? "east" : bits % 3 == 1 ? "west" : "north")};
}

Library made_library(const std::string& folder, int jobs) {
    LibraryResult<Library> made = Library::open(folder);
    must(bool(made), "no library can be made");
    must(!fault_of(job_of(0)), "the job that is stored is refused");
    Library::Connection& connection = made->connection();
    const LibraryResult<bool> filled = connection.changing([&]() -> LibraryResult<bool> {
        for (int i = 0; i < jobs; ++i) insert_job(connection, 0, job_of(i), first_time + i * minute);
        return true;
    });
    must(bool(filled), "the library can't be filled");
    must(!made->set_setting(setting_key::first_steps, "done"), "a setting can't be stored");
    return std::move(*made);
}

} // namespace carriageway::bench
