// What to ask next of somebody who stands at a press far away: a test that they make, or a number
// that they read out, whichever tells most about the cause.
//
// A test is worth what fault_finding.h says. A reading is taken as a test with two answers, "so"
// and "not so", for the causes that are measured by it: it answers rightly four times of five
// (`reading_is_right`, ours, judged), because a number that is read over the phone is now and then
// the wrong one.
#pragma once

#include <span>

#include "core/fault_finding.h"

namespace carriageway {

inline constexpr double reading_is_right = 0.8;

/// A number that was read out, or said not to be known: of a head, or with 0 of the job or press.
struct NumberRead {
    HeadId head = 0;
    Field field = Field::count;
    bool operator==(const NumberRead&) const = default;
};

struct CallQuestion {
    enum class Kind {
        test,   ///< `test` of the book
        number, ///< numbers are read out: numbers_with() of `field`, of `head`
    } kind = Kind::test;
    std::size_t test = 0;
    HeadId head = 0; ///< 0: of the job or its press
    Field field = Field::count;
    double bits = 0.0; ///< by how much the answer is expected to lessen the entropy of the shares
    std::vector<std::size_t> causes; ///< that it tells from the others, the likeliest first
};

/// Numbers that are read in one go with this one, itself among them: both stops, all heights.
std::vector<Field> numbers_with(Field field);

/// The questions that are left, the one first that tells most; equal ones: tests first, each in the
/// book's order. Tests that were answered are left out, and those of `skipped`; so are numbers of
/// which all of numbers_with() are among `read`. Numbers of a head are asked for the head that the
/// ranking is of, or else of each cause's own; where there is none, not at all. Those that tell
/// nothing (below `least_bits`) are left out.
std::vector<CallQuestion> best_questions(const FaultBook& book, const Ranking& ranking,
                                         std::span<const NumberRead> read,
                                         std::span<const std::size_t> skipped);

} // namespace carriageway
