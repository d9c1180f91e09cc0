// What was really set on the walk round the press, and what happened in the run: ticks, counts,
// stoppages, the first piece's approval. Kept in the job as it was told.
//
// Times are ms since 1970-01-01 00:00 UTC, given by whoever makes the edit: the core has no clock.
// 0: not noted.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace carriageway {

enum class Field; // core/fields.h

/// Who did a thing, and when.
struct Stamp {
    std::int64_t time = 0;
    std::string initials; ///< at most longest_initials bytes; may be empty
    bool operator==(const Stamp&) const = default;
};
inline constexpr std::size_t longest_initials = 16;

/// One number of one head (0: of the job) on the walk: whether it is set, and to what if not to
/// what was planned.
struct WalkMark {
    std::uint32_t head = 0; ///< id; 0: a number of the job
    Field field{};
    bool done = false;
    std::optional<double> real; ///< in the core's unit; nothing: as planned
    Stamp stamp;
    bool operator==(const WalkMark&) const = default;
};

/// A ticked step of the lists.
struct CheckTick {
    std::uint32_t item = 0; ///< id of the CheckItem
    Stamp stamp;
    bool operator==(const CheckTick&) const = default;
};

/// Why a press stood still (common practice, no source).
enum class StopReason {
    other, ink, blade, screen, registration, garments, air, machine, flash, pause,
    count, ///< how many there are; not a reason
};

struct Stoppage {
    double minutes = 0.0; ///< not negative
    StopReason reason = StopReason::other;
    std::string note;     ///< at most longest_name bytes (job.h)
    Stamp stamp;          ///< when it began
    bool operator==(const Stoppage&) const = default;
};

/// How many pieces had been printed, and how many of them spoiled, at a moment.
struct PieceCount {
    double printed = 0.0; ///< whole
    double spoiled = 0.0; ///< whole, at most `printed`
    Stamp stamp;
    bool operator==(const PieceCount&) const = default;
};

/// Of the first piece.
struct Approval {
    std::string by;      ///< empty: not approved
    std::string against; ///< a print, a picture, a sample
    std::int64_t time = 0;
    bool operator==(const Approval&) const = default;
};

struct RunRecord {
    std::vector<CheckTick> ticks; ///< in the order in which they were given, each item once
    std::vector<PieceCount> counts;
    std::vector<Stoppage> stoppages;
    Approval approval;
    std::string notes;
    bool operator==(const RunRecord&) const = default;
};

/// Most of each in a record. Ours: they only keep files small.
inline constexpr std::size_t most_walk_marks = 4000;
inline constexpr std::size_t most_counts = 1000;
inline constexpr std::size_t most_stoppages = 1000;
inline constexpr double most_minutes = 100'000.0;
inline constexpr double most_pieces_counted = 1e9;

} // namespace carriageway
