#include "core/least_squares.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace carriageway {

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
    for (std::size_t i = 0; i < n; ++i) {
        double* row = &factor_[i * n];
        for (std::size_t k = 0; k <= i; ++k) row[k] *= scale_[i] * scale_[k];
        for (std::size_t k = 0; k < i; ++k) {
            const double* above = &factor_[k * n];
            double sum = row[k];
            for (std::size_t j = 0; j < k; ++j) sum -= row[j] * above[j];
            row[k] = sum / above[k];
        }
        double own = row[i];
        for (std::size_t j = 0; j < i; ++j) own -= row[j] * row[j];
        if (!(own > least_share)) return false;
        row[i] = std::sqrt(own);
    }
    return true;
}

std::vector<double> NormalEquations::solve(std::vector<double> right) const {
    const std::size_t n = unknowns_;
    assert(right.size() == n && factor_.size() == n * n);
    for (std::size_t i = 0; i < n; ++i) {
        double sum = right[i] * scale_[i];
        for (std::size_t k = 0; k < i; ++k) sum -= factor_[i * n + k] * right[k];
        right[i] = sum / factor_[i * n + i];
    }
    for (std::size_t i = n; i-- > 0;) {
        right[i] /= factor_[i * n + i];
        for (std::size_t k = 0; k < i; ++k) right[k] -= factor_[i * n + k] * right[i];
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
            double sum = 0.0;
            for (std::size_t j = k; j < i; ++j) sum += factor_[i * n + j] * column[j];
            column[i] = -sum / factor_[i * n + i];
        }
    }
    std::vector<double> result(n * n, 0.0);
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t k = 0; k <= i; ++k) {
            double sum = 0.0;
            for (std::size_t j = i; j < n; ++j) sum += columns[i * n + j] * columns[k * n + j];
            result[i * n + k] = result[k * n + i] = sum * scale_[i] * scale_[k];
        }
    return result;
}

} // namespace carriageway
