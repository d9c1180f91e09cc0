// Random numbers of the exercises: the same on every machine, which the standard library's
// distributions aren't.
//
// SplitMix64: G. L. Steele, D. Lea, C. H. Flood, "Fast Splittable Pseudorandom Number Generators",
// OOPSLA 2014; its constants from memory.
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace carriageway {

class ExerciseRandom {
public:
    explicit ExerciseRandom(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next() {
        std::uint64_t z = (state_ += 0x9E3779B97F4A7C15u);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
        return z ^ (z >> 31);
    }

    /// 0 up to, not including, `count`, which must be above 0. The remainder's bias is below one in
    /// 10^15 for the few things that are chosen from here.
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(next() % count); }

    /// A whole number, both ends included.
    int whole(int least, int most) {
        return least + static_cast<int>(below(static_cast<std::size_t>(most - least) + 1));
    }

    /// A multiple of `step`, from least to most: a number that a person would set.
    double stepped(double least, double most, double step) {
        const int steps = static_cast<int>((most - least) / step + 0.5);
        return least + step * whole(0, steps);
    }

    bool chance(int in, int of) { return whole(1, of) <= in; }

    template <class T> const T& one_of(const std::vector<T>& all) { return all[below(all.size())]; }

    /// Fisher and Yates.
    template <class T> void shuffle(std::vector<T>& all) {
        for (std::size_t i = all.size(); i > 1; --i) std::swap(all[i - 1], all[below(i)]);
    }

private:
    std::uint64_t state_;
};

} // namespace carriageway
