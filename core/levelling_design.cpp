#include "core/levelling_design.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

LevelDesign::LevelDesign(const LevelTask& task) : task_(task), terms_(task.planes ? 3 : 1) {
    const auto count = static_cast<double>(task.rows.size());
    for (const LevelRow& row : task.rows) {
        centre_.x += row.x / count;
        centre_.y += row.y / count;
    }
    double reach = 0.0;
    for (const LevelRow& row : task.rows)
        reach = std::max({reach, std::abs(row.x - centre_.x), std::abs(row.y - centre_.y)});
    if (reach > 0.0) reach_ = reach;
    // As heavy as what a platen's own readings put on its unknowns.
    const auto platens = static_cast<double>(task.platens);
    mean_weight_ = count / (platens * platens);
}

std::size_t LevelDesign::entries_of(const LevelRow& row, std::array<Entry, 6>& entries) const {
    const double values[3] = {1.0, (row.x - centre_.x) / reach_, (row.y - centre_.y) / reach_};
    const std::size_t head = terms_ * row.head;
    const std::size_t platen = terms_ * (task_.heads + row.platen);
    for (std::size_t k = 0; k < terms_; ++k) {
        entries[k] = {head + k, values[k]};
        entries[terms_ + k] = {platen + k, values[k]};
    }
    return 2 * terms_;
}

void LevelDesign::add_mean(NormalEquations& equations) const {
    std::vector<Entry> mean(task_.platens);
    for (std::size_t k = 0; k < terms_; ++k) {
        for (std::size_t p = 0; p < task_.platens; ++p)
            mean[p] = {terms_ * (task_.heads + p) + k, 1.0};
        equations.add(mean.data(), mean.size(), mean_weight_);
    }
}

double LevelDesign::leverage(const LevelRow& row, const std::vector<double>& inverse) const {
    std::array<Entry, 6> entries;
    const std::size_t length = entries_of(row, entries);
    const std::size_t n = unknowns();
    double sum = 0.0;
    for (std::size_t i = 0; i < length; ++i)
        for (std::size_t k = 0; k < length; ++k)
            sum += entries[i].value * entries[k].value *
                   inverse[entries[i].column * n + entries[k].column];
    return sum;
}

/// A plane's terms from those of the centred coordinates.
Plane LevelDesign::plane_of(std::size_t part, const std::vector<double>& values) const {
    const double* own = &values[terms_ * part];
    if (terms_ == 1) return {own[0], 0.0, 0.0};
    const double tilt_x = own[1] / reach_, tilt_y = own[2] / reach_;
    return {own[0] - tilt_x * centre_.x - tilt_y * centre_.y, tilt_x, tilt_y};
}

std::array<double, 6> LevelDesign::covariance_of(std::size_t part,
                                                 const std::vector<double>& inverse,
                                                 double variance) const {
    const std::size_t n = unknowns();
    // What the rows for the mean have put into the inverse: 1/(weight·platens²) on each term.
    const auto platens = static_cast<double>(task_.platens);
    const double mean = 1.0 / (mean_weight_ * platens * platens);
    double own[3][3] = {};
    for (std::size_t i = 0; i < terms_; ++i)
        for (std::size_t k = 0; k < terms_; ++k)
            own[i][k] = inverse[(terms_ * part + i) * n + terms_ * part + k] -
                        (i == k ? mean : 0.0);
    const double x = -centre_.x / reach_, y = -centre_.y / reach_, unit = 1.0 / reach_;
    if (terms_ == 1) return {std::max(0.0, variance * own[0][0]), 0.0, 0.0, 0.0, 0.0, 0.0};
    const double turn[3][3] = {{1.0, x, y}, {0.0, unit, 0.0}, {0.0, 0.0, unit}};
    double result[3][3] = {};
    for (int a = 0; a < 3; ++a)
        for (int b = 0; b < 3; ++b)
            for (int i = 0; i < 3; ++i)
                for (int k = 0; k < 3; ++k) result[a][b] += turn[a][i] * own[i][k] * turn[b][k];
    return {variance * result[0][0], variance * result[0][1], variance * result[0][2],
            variance * result[1][1], variance * result[1][2], variance * result[2][2]};
}

} // namespace carriageway
