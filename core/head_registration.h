// What the rounds of one head come to: how the print lies, what to turn, and whether it gets there.
//
// Everything that a view, a table or a report says of a head's registration, worked out once.
#pragma once

#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "core/advice.h"
#include "core/readings.h"
#include "core/rounds.h"
#include "core/scatter.h"

namespace carriageway {

/// Errors of one round, mm.
struct RoundSize {
    bool read = false;     ///< see is_read()
    bool answered = false; ///< the marks gave a registration: the sizes below are known
    double rms = 0.0;
    double max = 0.0;
};

/// What a round comes to.
enum class RegistrationVerdict {
    no_answer,    ///< the marks or the adjusters have a fault
    within,       ///< every mark is within the tolerance
    no_adjusters, ///< beyond it, and the profile has none
    turn,         ///< beyond it, and screws are to be turned
    leave,        ///< beyond it, but by what turning doesn't take out: growth, less than a dial
                  ///< mark, or what no adjuster reaches
    read_finer,   ///< beyond it, but not beyond what the reading error makes by chance
};

/// One head's registration, from one of its rounds.
struct HeadRegistration {
    bool read = false; ///< see is_read()
    std::variant<Registration, RegistrationFault> lies; ///< of the round looked at
    std::optional<std::variant<Advice, AdjusterFault>> advice; ///< where it is answered
    bool within = false; ///< every mark is within the tolerance
    std::vector<RoundSize> sizes; ///< of every round
    Rounds judged; ///< rounds up to the one looked at, those of single platens left out
    RegistrationVerdict verdict = RegistrationVerdict::no_answer; ///< whether `read` or not
};

/// Whether a round's marks have been read: somebody says so, or one of them lies off its place. A
/// fresh round stands on its nominal places.
bool is_read(const MarkRound& round);

/// Whether a round is one of several platens' and turns' prints, between which nobody turns.
bool is_of_platen(const MarkRound& round);

/// The play of a press's adjusters before a round: taken up once a turn has been advised and made,
/// as every advised move ends clockwise.
Play play_of(const PressProfile& press, std::span<const MarkRound> before);

/// Works out a head from its rounds, looking at the one at `index` (out of range: an empty one).
/// `tolerance` in mm.
HeadRegistration register_head(const PressProfile& press, std::span<const MarkRound> rounds,
                               std::size_t index, double tolerance);

/// The turns that an advice asks for at each adjuster, in their order, positive clockwise.
std::vector<double> advised_turns(const Advice& advice, std::span<const Adjuster> adjusters);

/// The readings of several platens among a head's rounds since its adjusters were turned last: what
/// was read before is of another setting. `places` gets their places in the list.
std::vector<PlatenReading> platen_readings(std::span<const MarkRound> rounds,
                                           std::vector<std::size_t>& places);

/// The same with what they come to.
struct PlatenPrints {
    std::vector<PlatenReading> readings;
    std::vector<std::size_t> places; ///< of the readings among the rounds
    std::variant<Scatter, ScatterFault> scatter; ///< without readings a fault
};
PlatenPrints platen_prints(const PressProfile& press, std::span<const MarkRound> rounds);

} // namespace carriageway
