// A simulated head with screws that have play, for the tests of registration.
//
// The screen is held as adjusters.h says; a screw's tip follows its dial with play: it stands
// anywhere within half the backlash of the dial and is pushed along only by the flank that touches.
#pragma once

#include <array>
#include <random>
#include <vector>

#include "core/advice.h"

namespace carriageway::bench {

/// A dial and the tip that it drives, in turns, positive clockwise.
struct Screw {
    double dial = 0.0;
    double tip = 0.0;
    double backlash = 0.0;

    void turn(double turns);
};

/// What the head and the reader of its marks are like.
struct Conditions {
    double backlash = 0.1;                   ///< turns
    double reading = 0.05;                   ///< half-width of a reading's error, mm
    double most_move = 3.0;                  ///< start: half-width of x and y, mm
    double most_turn = 0.5 * rad_per_degree; ///< start: half-width of the rotation
};

/// One head, set askew at random.
class Head {
  public:
    Head(std::vector<Adjuster> adjusters, const Conditions& conditions, std::mt19937_64& random);

    /// The true pose of the screen.
    RigidMotion pose() const;

    /// Where the marks print, read with the reading error.
    std::vector<MarkReading> read(const std::vector<Point>& marks);

    /// The largest true distance of a mark from its place.
    double worst(const std::vector<Point>& marks) const;

    /// Carries out the moves of an advice.
    void follow(const Advice& advice);

    /// Turns one screw, positive clockwise.
    void turn(std::size_t adjuster, double turns) { screws_.at(adjuster).turn(turns); }

  private:
    std::vector<Adjuster> adjusters_;
    std::vector<Screw> screws_;
    Conditions conditions_;
    std::mt19937_64* random_;
};

/// A left and a right screw 400 mm apart and one across, at the operator's end of the frame; 12
/// graduations and 1.25 mm a turn.
std::vector<Adjuster> three_screws(bool left_clockwise, bool right_clockwise,
                                   bool across_clockwise);

/// The corners of a 300 by 400 image at the frame's centre.
std::vector<Point> corner_marks();

/// A number with this half-width about 0.
double within(double half_width, std::mt19937_64& random);

} // namespace carriageway::bench
