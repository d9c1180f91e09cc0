// What a person reads with a ruler, a loupe or a dial gauge on the press: printed marks and heights.
//
// Lengths mm; axes of the head (geometry.h). Kept in the job as they were read; registration.h,
// scatter.h and levelling.h work on them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/geometry.h"

namespace carriageway {

/// One registration mark: where it belongs and where it printed.
struct MarkReading {
    Point nominal;
    Point measured;
    bool operator==(const MarkReading&) const = default;
};

/// From where a mark belongs to where it printed.
inline Point error_of(const MarkReading& mark) {
    return {mark.measured.x - mark.nominal.x, mark.measured.y - mark.nominal.y};
}

/// The marks of one print under one head, read together.
struct MarkRound {
    int platen = 0; ///< the platen's number, 0: not noted
    int turn = 0;   ///< which turn of the table, 0: not noted
    std::vector<MarkReading> marks;
    std::vector<double> turned; ///< turns then given to each adjuster, in their order; may be empty
    bool read = false; ///< somebody has read it, even if every mark lies on its place
    bool operator==(const MarkRound&) const = default;
};

/// A height read between a platen and the screen of a head over it.
struct HeightReading {
    std::uint32_t platen = 0; ///< the platen's number, from 1
    std::uint32_t head = 0;   ///< id of the head
    double x = 0.0;           ///< where, in the head's axes
    double y = 0.0;
    double height = 0.0;      ///< gap from platen to screen
    bool operator==(const HeightReading&) const = default;
};

/// Most marks in a round, rounds under a head and heights in a job. Ours: they only keep files small.
inline constexpr std::size_t most_marks_a_round = 64;
inline constexpr std::size_t most_rounds = 200;
inline constexpr std::size_t most_height_readings = 4000;

} // namespace carriageway
