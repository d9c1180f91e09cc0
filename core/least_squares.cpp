#include "core/least_squares.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace carriageway {

namespace {

/// Sum of products, in four parts: they don't wait for one another, so it runs twice as fast.
double product_of(const double* a, const double* b, std::size_t count) {
    double sums[4] = {};
    std::size_t i = 0;
    for (; i + 4 <= count; i += 4)
        for (std::size_t k = 0; k < 4; ++k) sums[k] += a[i + k] * b[i + k];
    for (; i < count; ++i) sums[0] += a[i] * b[i];
    return (sums[0] + sums[1]) + (sums[2] + sums[3]);
}

} // namespace

NormalEquations::NormalEquations(std::size_t unknowns)
    : unknowns_(unknowns), matrix_(unknowns * unknowns, 0.0) {}

void NormalEquations::clear() { std::fill(matrix_.begin(), matrix_.end(), 0.0); }

void NormalEquations::add(const Entry* entries, std::size_t count, double weight) {
    for (std::size_t i = 0; i < count; ++i) {
        assert(entries[i].column < unknowns_);
        for (std::size_t k = 0; k <= i; ++k) {
            const std::size_t row = std::max(entries[i].column, entries[k].column);
            const std::size_t column = std::min(entries[i].column, entries[k].column);
            at(row, column) += weight * entries[i].value * entries[k].value;
        }
    }
}

bool NormalEquations::factor() {
    const std::size_t n = unknowns_;
    scale_.assign(n, 0.0);
    for (std::size_t i = 0; i < n; ++i) {
        if (!(at(i, i) > 0.0)) return false;
        scale_[i] = 1.0 / std::sqrt(at(i, i));
    }
    factor_ = matrix_;
    first_.assign(n, 0);
    for (std::size_t i = 0; i < n; ++i) {
        double* row = &factor_[i * n];
        // What is zero from the left on stays so: rows of unknowns that don't meet cost nothing.
        while (row[first_[i]] == 0.0) ++first_[i];
        for (std::size_t k = first_[i]; k <= i; ++k) row[k] *= scale_[i] * scale_[k];
        for (std::size_t k = first_[i]; k < i; ++k) {
            const double* above = &factor_[k * n];
            const std::size_t from = std::max(first_[i], first_[k]);
            if (from < k) row[k] -= product_of(row + from, above + from, k - from);
            row[k] /= above[k];
        }
        const std::size_t from = first_[i];
        const double own = row[i] - product_of(row + from, row + from, i - from);
        if (!(own > least_share)) return false;
        row[i] = std::sqrt(own);
    }
    return true;
}

std::vector<double> NormalEquations::solve(std::vector<double> right) const {
    const std::size_t n = unknowns_;
    assert(right.size() == n && factor_.size() == n * n);
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t from = first_[i];
        const double known = product_of(&factor_[i * n + from], &right[from], i - from);
        right[i] = (right[i] * scale_[i] - known) / factor_[i * n + i];
    }
    for (std::size_t i = n; i-- > 0;) {
        right[i] /= factor_[i * n + i];
        for (std::size_t k = first_[i]; k < i; ++k) right[k] -= factor_[i * n + k] * right[i];
    }
    for (std::size_t i = 0; i < n; ++i) right[i] *= scale_[i];
    return right;
}

std::vector<double> NormalEquations::inverse() const {
    const std::size_t n = unknowns_;
    assert(factor_.size() == n * n);
    // The factor's inverse, kept by rows of its transpose so that all sums run along memory:
    // row k holds column k of the inverse from the diagonal on.
    std::vector<double> columns(n * n, 0.0);
    for (std::size_t k = 0; k < n; ++k) {
        double* column = &columns[k * n];
        column[k] = 1.0 / factor_[k * n + k];
        for (std::size_t i = k + 1; i < n; ++i) {
            const std::size_t from = std::max(k, first_[i]);
            if (from >= i) continue;
            column[i] = -product_of(&factor_[i * n + from], column + from, i - from) /
                        factor_[i * n + i];
        }
    }
    std::vector<double> result(n * n, 0.0);
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t k = 0; k <= i; ++k) {
            const double sum = product_of(&columns[i * n + i], &columns[k * n + i], n - i);
            result[i * n + k] = result[k * n + i] = sum * scale_[i] * scale_[k];
        }
    return result;
}

} // namespace carriageway
