// Random numbers for property tests: the same on every machine, and every case by itself.
#pragma once

#include <cstdint>

namespace carriageway::reference {

/// The seed of this run: the environment variable CARRIAGEWAY_SEED where it is set, otherwise the
/// seed that the test runner prints at its start.
std::uint64_t run_seed();

/// A small generator (splitmix64: Steele, Lea and Flood, 2014). One is made for each case from the
/// run's seed, the test's number and the case's number, so that a case can be repeated alone.
class Seeded {
  public:
    Seeded(std::uint64_t seed, std::uint64_t test, std::uint64_t number)
        : state_(mixed(seed + mixed(test + mixed(number)))) {}

    std::uint64_t next() { return mixed(state_ += step); }

    /// A number from `lo` up to, but not including, `hi`.
    double between(double lo, double hi) {
        return lo + (hi - lo) * (static_cast<double>(next() >> 11) * 0x1p-53);
    }

    /// A whole number from `lo` to `hi`, both included.
    int whole(int lo, int hi) {
        const auto count = static_cast<std::uint64_t>(hi - lo + 1);
        return lo + static_cast<int>(next() % count);
    }

    /// True with this chance.
    bool chance(double of_one) { return between(0.0, 1.0) < of_one; }

  private:
    static constexpr std::uint64_t step = 0x9e3779b97f4a7c15u;

    static std::uint64_t mixed(std::uint64_t z) {
        z += step;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
        return z ^ (z >> 31);
    }

    std::uint64_t state_;
};

} // namespace carriageway::reference
