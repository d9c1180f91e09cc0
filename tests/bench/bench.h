// What every measure of the benchmarks uses: a clock, medians, ratios with their limits.
//
// Each measure gives a ratio of two things measured in turn in the same run, so that how fast or
// how busy the machine is falls out of it; counts (of frames, of allocations) are given as they are.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace carriageway::bench {

/// One figure and the most that it may be.
struct Ratio {
    std::string name;
    double value = 0.0;
    double limit = 0.0;
    std::string detail; ///< the two sides, in words
    bool over() const { return !(value <= limit); } ///< also where it isn't a number
};

/// What gives one figure or several that come of the same run. Trouble ends as an exception.
struct Measure {
    const char* name; ///< of the family, to be named on the command line
    std::vector<Ratio> (*run)();
};

/// Seconds of processor time of this thread so far: what other programs do is not in it.
double thread_time();

/// Seconds on a clock that only goes forward.
double clock_time();

/// The middle one of some numbers, of an even count the mean of the middle two. Not a number where
/// there are none.
double median(std::vector<double> values);

/// The least of them that `share` of them do not exceed. Not a number where there are none.
double percentile(std::vector<double> values, double share);

/// Two sides measured in turn.
struct Pair {
    std::vector<double> ours, theirs; ///< s of processor time, one of each a round
    /// Median of ours over median of theirs.
    double ratio() const { return median(ours) / median(theirs); }
};

/// Runs both sides once unmeasured, then `rounds` times in turn, which goes first changing each
/// round.
Pair in_turn(int rounds, const std::function<void()>& ours, const std::function<void()>& theirs);

/// What work comes to goes here, so that a compiler can't leave the work out.
void keep(double value);

/// A time in words, in the unit that suits it.
std::string time_words(double seconds);
/// A ratio to three digits.
std::string ratio_words(double ratio);

/// "ours 1.2 us, theirs 3.4 us"
std::string sides(const char* ours, double our_time, const char* theirs, double their_time);

/// Ends the measure with a sentence where something isn't so.
void must(bool so, const char* otherwise);
void must(bool so, const std::string& otherwise);

inline constexpr unsigned seed = 20261125; ///< of every random number here

// The families, one file each.
std::vector<Ratio> assess_vs_geos();
std::vector<Ratio> set_vs_glpk();
std::vector<Ratio> press_assess_growth();
std::vector<Ratio> placement_growth();
std::vector<Ratio> registration_vs_eigen();
std::vector<Ratio> frame_vs_demo();
std::vector<Ratio> coverage_allocations();
std::vector<Ratio> search_growth();
std::vector<Ratio> first_frame_vs_bare();
std::vector<Ratio> idle();

} // namespace carriageway::bench
