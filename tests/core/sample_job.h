// Jobs for tests: one that is right, worked out by hand, and random ones.
#pragma once

#include <cstdint>
#include <random>

#include "core/edit.h"
#include "core/job.h"

namespace carriageway::sample {

/// One head, id 1 on station 1, as the headers' defaults have it: a 300 x 400 image at the frame's
/// centre, printed toward the operator, every station open.
///
/// By hand, mm. Overtravel 600 mm/s: 0.015 s x 600 + 600^2 / 16000 = 31.5 at the operator end, 700
/// mm/s: 41.125 at the machine end. So the carriage rests 4 + 30 - 31.5 = 2.5 beyond the operator
/// stop toward the machine and -4 - 30 + 41.125 = 7.125 beyond the machine stop. The edges stand
/// 15 + 65 sin 15 deg = 31.8232 either side of the carriage: squeegee toward the machine, flood
/// toward the operator. No drop is lost. Opening +-355.5 along, platen -249.5 to 309.5.
Job one_head();

/// Distance of either edge of one_head() from the carriage reference.
double edge();

/// Random numbers whose seed a test prints with INFO.
class Random {
  public:
    explicit Random(std::uint64_t seed) : source_(seed) {}
    double between(double lo, double hi);
    int whole(int lo, int hi);  ///< both included
    bool chance(double of_one);

  private:
    std::mt19937_64 source_;
};

/// A job with numbers as presses have them; heads of every kind, right and wrong.
Job likely_job(Random& random, int heads);

/// A job with numbers anywhere within their fields' limits, often on a limit: accepted, but
/// mostly nonsense.
Job wild_job(Random& random, int heads);

/// A number that a field accepts, sometimes one of its limits.
double wild_number(Random& random, Field field);

/// An outline with `corners` corners on a circle of random radii: simple, often not convex.
Outline star(Random& random, int corners, double radius);

}  // namespace carriageway::sample
