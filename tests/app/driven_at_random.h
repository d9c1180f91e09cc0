// The program used without sense or rest: random taps, drags, keys, text, places, languages, sizes,
// links and files, from a seed.
#pragma once

#include <cstdint>
#include <random>
#include <string>

#include "tests/app/driver.h"

namespace carriageway {

class DrivenAtRandom {
  public:
    /// `folder` is where the driver's library is; a job file is written there to be dropped.
    DrivenAtRandom(Driver& driver, const std::string& folder, std::uint32_t seed);

    /// Does one thing, and lets the program come to rest. What was done, for a message.
    std::string once();

  private:
    std::size_t below(std::size_t count);
    float share(); ///< 0 to 1
    const Thing* any_thing(bool (*wanted)(const Thing&));
    Vec within(const Thing& thing); ///< a place where a finger meets it, if anything does
    std::string touch();
    std::string drag();
    std::string press_key();
    std::string type();
    std::string assist();
    std::string turn_wheel();
    std::string go_somewhere();
    std::string change_looks();
    std::string take_in();

    Driver& driver_;
    std::string job_file_;
    std::mt19937 random_;
};

} // namespace carriageway
