// Weighted linear least squares with a few hundred unknowns and sparse rows.
//
// The normal equations are summed row by row and solved by Cholesky's method. Squaring the
// design's condition costs twice its digits, so columns are brought to one scale here (and should
// be centred by the caller), and a caller who needs the last digits solves once more for what the
// residuals leave. Any text on numerical linear algebra.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <vector>

namespace carriageway {

/// Sum of weighted squares of rows over a fixed number of unknowns.
class NormalEquations {
  public:
    struct Entry {
        std::size_t column;
        double value;
    };

    explicit NormalEquations(std::size_t unknowns);

    std::size_t unknowns() const { return unknowns_; }

    /// Forgets the rows.
    void clear();

    /// Adds a row with a weight. A column may be named once only, and must be below unknowns().
    /// Cost: the square of the entries.
    void add(const Entry* entries, std::size_t count, double weight);
    void add(std::initializer_list<Entry> entries, double weight) {
        add(entries.begin(), entries.size(), weight);
    }

    /// Prepares solve() and inverse(). False when the rows leave an unknown open: when, given
    /// those before it, less than `least_share` of a column's square is its own. Cost: a sixth of
    /// the cube of the unknowns; less where unknowns that come first never share a row.
    bool factor();

    /// After factor(): the x for which matrix times x is `right`.
    std::vector<double> solve(std::vector<double> right) const;

    /// After factor(): the inverse, all of it, row after row. Cost: a third of the cube.
    std::vector<double> inverse() const;

    /// The design's condition may reach about the inverse of this share's root, 3e4, and the
    /// normal equations then still keep seven digits. Ours.
    static constexpr double least_share = 1e-9;

  private:
    double& at(std::size_t row, std::size_t column) { return matrix_[row * unknowns_ + column]; }

    std::size_t unknowns_;
    std::vector<double> matrix_; ///< lower half, row after row
    std::vector<double> factor_; ///< lower half of Cholesky's factor, of scaled columns
    std::vector<double> scale_;  ///< what each column is multiplied by
    std::vector<std::size_t> first_; ///< of each row of the factor, the first that is not zero
};

} // namespace carriageway
