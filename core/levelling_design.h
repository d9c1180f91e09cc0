// The equations of one group of heads and platens: which unknowns a reading meets, and what the
// solution says of each part. Serves levelling_fit.h.
//
// Points are taken from their centre and in shares of their reach, so that the columns are of one
// size and nearly square to each other.
#pragma once

#include <array>
#include <vector>

#include "core/least_squares.h"
#include "core/levelling_fit.h"

namespace carriageway {

/// Unknowns: of each head, then of each platen, its terms in turn.
class LevelDesign {
  public:
    using Entry = NormalEquations::Entry;

    /// The task must stay as long as the design.
    explicit LevelDesign(const LevelTask& task);

    std::size_t unknowns() const { return terms_ * (task_.heads + task_.platens); }

    /// Unknowns that the rows can tell: a share of each term goes either way between all heads and
    /// all platens.
    std::size_t free_unknowns() const { return unknowns() - terms_; }

    /// The entries of a row, in place; returns how many.
    std::size_t entries_of(const LevelRow& row, std::array<Entry, 6>& entries) const;

    /// Adds the rows that keep the platens' mean at zero. They decide what no reading can, so that
    /// they are met whatever their weight is.
    void add_mean(NormalEquations& equations) const;

    /// What a row has of its own fitted value, given the inverse of the equations: 0 to 1.
    double leverage(const LevelRow& row, const std::vector<double>& inverse) const;

    /// A part's plane, heads first, in the head's axes.
    Plane plane_of(std::size_t part, const std::vector<double>& values) const;

    /// Its covariances as in LevelledPart, `variance` being that of a reading.
    std::array<double, 6> covariance_of(std::size_t part, const std::vector<double>& inverse,
                                        double variance) const;

  private:
    const LevelTask& task_;
    std::size_t terms_;
    Point centre_;
    double reach_ = 1.0; ///< largest distance of a point from the centre along x or y
    double mean_weight_ = 1.0;
};

} // namespace carriageway
