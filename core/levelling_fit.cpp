#include "core/levelling_fit.h"

#include <algorithm>
#include <cmath>

#include "core/least_squares.h"
#include "core/robust.h"

namespace carriageway {

namespace {

/// Rounds of the last part, in which strays are named. Ours: one or two are usual.
constexpr int most_namings = 20;
/// A robust fit has settled when no residual moves by more than this share of the scatter. Ours.
constexpr double settled_share = 1e-4;
/// A reading that decides its own fitted value to more than this is checked by nothing. Ours.
constexpr double most_leverage = 1.0 - 1e-6;
/// Solutions for what the residuals leave, to win back the digits that the normal equations lose.
constexpr int refinements = 2;

/// Tukey's weight, but never quite nothing: so that no part ever loses all its readings, when those
/// that are wrong have bent it away from those that are right. What is far out then still pulls a
/// hundredth of what it may pull by Huber's weight. The hundredth is ours.
double held_weight(double residual) {
    return std::max(tukey_weight(residual), 0.01 * huber_weight(residual));
}

/// The rows in centred coordinates that reach to 1, and the equations over all terms.
class GroupFit {
  public:
    GroupFit(const LevelTask& task, const LevelSettings& settings);

    LevelFit run();

  private:
    using Entry = NormalEquations::Entry;

    std::size_t count() const { return task_.rows.size(); }
    std::size_t parts() const { return task_.heads + task_.platens; }
    /// Unknowns that the rows can tell: a share of each term goes either way between all heads and
    /// all platens.
    std::size_t free_unknowns() const { return equations_.unknowns() - terms_; }

    /// The entries of a row, in place; returns how many.
    std::size_t entries_of(const LevelRow& row, std::array<Entry, 6>& entries) const;
    bool solve(const std::vector<double>& weights);
    void refresh_residuals();
    void reweight(double (*weight_of)(double), bool rescale);
    bool name_strays();
    bool score(const std::vector<double>& weights);
    double leverage(const LevelRow& row) const;
    double floor() const { return std::max(settings_.step / std::sqrt(12.0), rounding_); }
    LevelFit finished();
    std::array<double, 6> covariance_of(std::size_t part, double variance) const;
    Plane plane_of(std::size_t part) const;

    const LevelTask& task_;
    const LevelSettings& settings_;
    std::size_t terms_;
    NormalEquations equations_;
    Point centre_;
    double reach_ = 1.0;    ///< largest distance of a point from the centre along x or y
    double rounding_ = 0.0; ///< scatter below which heights differ by rounding alone
    double gauge_ = 1.0;    ///< weight of the rows that keep the platens' mean at zero
    double scatter_ = 0.0;
    std::vector<double> values_;
    std::vector<double> inverse_;
    LevelFit fit_;
};

GroupFit::GroupFit(const LevelTask& task, const LevelSettings& settings)
    : task_(task), settings_(settings), terms_(task.planes ? 3 : 1),
      equations_(terms_ * (task.heads + task.platens)) {
    const auto number = static_cast<double>(count());
    double largest = 0.0;
    for (const LevelRow& row : task.rows) {
        centre_.x += row.x / number;
        centre_.y += row.y / number;
        largest = std::max(largest, std::abs(row.height));
    }
    double reach = 0.0;
    for (const LevelRow& row : task.rows)
        reach = std::max({reach, std::abs(row.x - centre_.x), std::abs(row.y - centre_.y)});
    if (reach > 0.0) reach_ = reach;
    rounding_ = 1e-12 * largest;
    // As heavy as what a platen's own readings put on its unknowns.
    const auto platens = static_cast<double>(task.platens);
    gauge_ = number / (platens * platens);
}

std::size_t GroupFit::entries_of(const LevelRow& row, std::array<Entry, 6>& entries) const {
    const double values[3] = {1.0, (row.x - centre_.x) / reach_, (row.y - centre_.y) / reach_};
    const std::size_t head = terms_ * row.head;
    const std::size_t platen = terms_ * (task_.heads + row.platen);
    for (std::size_t k = 0; k < terms_; ++k) {
        entries[k] = {head + k, values[k]};
        entries[terms_ + k] = {platen + k, values[k]};
    }
    return 2 * terms_;
}

/// Solves with these weights; leaves everything as it was when they leave an unknown open.
bool GroupFit::solve(const std::vector<double>& weights) {
    std::array<Entry, 6> entries;
    equations_.clear();
    for (std::size_t i = 0; i < count(); ++i)
        if (weights[i] > 0.0)
            equations_.add(entries.data(), entries_of(task_.rows[i], entries), weights[i]);
    std::vector<Entry> mean(task_.platens);
    for (std::size_t k = 0; k < terms_; ++k) {
        for (std::size_t p = 0; p < task_.platens; ++p)
            mean[p] = {terms_ * (task_.heads + p) + k, 1.0};
        equations_.add(mean.data(), mean.size(), gauge_);
    }
    if (!equations_.factor()) return false;

    values_.assign(equations_.unknowns(), 0.0);
    refresh_residuals();
    for (int round = 0; round <= refinements; ++round) {
        std::vector<double> right(equations_.unknowns(), 0.0);
        for (std::size_t i = 0; i < count(); ++i) {
            if (!(weights[i] > 0.0)) continue;
            const std::size_t length = entries_of(task_.rows[i], entries);
            for (std::size_t k = 0; k < length; ++k)
                right[entries[k].column] += weights[i] * fit_.residuals[i] * entries[k].value;
        }
        const std::vector<double> step = equations_.solve(std::move(right));
        for (std::size_t k = 0; k < step.size(); ++k) values_[k] += step[k];
        refresh_residuals();
    }
    ++fit_.rounds;
    return true;
}

void GroupFit::refresh_residuals() {
    std::array<Entry, 6> entries;
    fit_.residuals.resize(count());
    for (std::size_t i = 0; i < count(); ++i) {
        const std::size_t length = entries_of(task_.rows[i], entries);
        double fitted = 0.0;
        for (std::size_t k = 0; k < length; ++k)
            fitted += values_[entries[k].column] * entries[k].value;
        fit_.residuals[i] = task_.rows[i].height - fitted;
    }
}

/// Solves again and again with weights from the residuals, until these stand still or the most
/// rounds are done, or the weights leave something open: the last solution then stands.
void GroupFit::reweight(double (*weight_of)(double), bool rescale) {
    std::vector<double> weights(count());
    for (int round = 0; round < settings_.most_rounds; ++round) {
        if (rescale) scatter_ = robust_deviation(fit_.residuals, free_unknowns());
        const double scatter = std::max(scatter_, floor());
        for (std::size_t i = 0; i < count(); ++i)
            weights[i] = weight_of(fit_.residuals[i] / scatter);
        const std::vector<double> before = fit_.residuals;
        if (!solve(weights)) return;
        double moved = 0.0;
        for (std::size_t i = 0; i < count(); ++i)
            moved = std::max(moved, std::abs(fit_.residuals[i] - before[i]));
        if (moved <= settled_share * scatter) return;
    }
}

double GroupFit::leverage(const LevelRow& row) const {
    std::array<Entry, 6> entries;
    const std::size_t length = entries_of(row, entries);
    const std::size_t n = equations_.unknowns();
    double sum = 0.0;
    for (std::size_t i = 0; i < length; ++i)
        for (std::size_t k = 0; k < length; ++k)
            sum += entries[i].value * entries[k].value *
                   inverse_[entries[i].column * n + entries[k].column];
    return sum;
}

/// Solves with weights that are 0 or 1 and works out scatter and scores. A kept reading is held
/// against the scatter of the others, one left out against the fit that it has no part in.
bool GroupFit::score(const std::vector<double>& weights) {
    if (!solve(weights)) return false;
    inverse_ = equations_.inverse();
    double squares = 0.0, used = 0.0;
    for (std::size_t i = 0; i < count(); ++i) {
        squares += weights[i] * fit_.residuals[i] * fit_.residuals[i];
        used += weights[i];
    }
    fit_.freedom = static_cast<int>(used) - static_cast<int>(free_unknowns());
    const double freedom = fit_.freedom;
    fit_.deviation = fit_.freedom > 0 ? std::max(std::sqrt(squares / freedom), floor()) : 0.0;
    fit_.scores.assign(count(), 0.0);
    for (std::size_t i = 0; i < count(); ++i) {
        const double residual = fit_.residuals[i];
        const double share = leverage(task_.rows[i]);
        const bool kept = weights[i] > 0.0;
        const double others = kept ? freedom - 1.0 : freedom;
        if (others < 1.0 || (kept && share > most_leverage)) continue;
        const double own = kept ? residual * residual / (1.0 - share) : 0.0;
        const double scatter =
            std::max(std::sqrt(std::max(0.0, squares - own) / others), floor());
        const double sure = std::sqrt(kept ? 1.0 - share : 1.0 + share);
        fit_.scores[i] = normal_score(residual / (scatter * sure), others);
    }
    return true;
}

/// Leaves out what lies too far out and takes back what then does not, until nothing changes.
/// Of several that are too far out, only those at least half as far as the farthest go at once: the
/// others may be pulled along. What is left out a second time stays out, so that it ends.
bool GroupFit::name_strays() {
    std::vector<double> weights(count());
    const double scatter = std::max(scatter_, floor());
    for (std::size_t i = 0; i < count(); ++i)
        weights[i] = std::abs(fit_.residuals[i]) <= settings_.stray_from * scatter ? 1.0 : 0.0;
    if (!score(weights)) {
        // The strays hold the group together: nothing can be said against them.
        std::fill(weights.begin(), weights.end(), 1.0);
        score(weights);
    }
    bool settled = false;
    std::vector<int> left_out(count());
    for (int round = 0; round < most_namings && !settled; ++round) {
        double farthest = settings_.stray_from;
        std::size_t worst = count();
        for (std::size_t i = 0; i < count(); ++i)
            if (weights[i] > 0.0 && std::abs(fit_.scores[i]) > farthest) {
                farthest = std::abs(fit_.scores[i]);
                worst = i;
            }
        const double from = std::max(settings_.stray_from, 0.5 * farthest);
        std::vector<double> next(count());
        for (std::size_t i = 0; i < count(); ++i) {
            const double bound = weights[i] > 0.0 ? from : settings_.stray_from;
            const bool out = std::abs(fit_.scores[i]) > bound || left_out[i] > 1;
            if (out && weights[i] > 0.0) ++left_out[i];
            next[i] = out ? 0.0 : 1.0;
        }
        settled = next == weights;
        if (settled) break;
        if (!score(next)) {
            // All of them at once would leave something open: the farthest alone, then.
            next = weights;
            if (worst < count()) next[worst] = 0.0;
            if (next == weights || !score(next)) break;
        }
        weights = std::move(next);
    }
    for (std::size_t i = 0; i < count(); ++i) fit_.kept[i] = weights[i] > 0.0;
    return settled;
}

/// A plane's terms from those of the centred coordinates.
Plane GroupFit::plane_of(std::size_t part) const {
    const double* own = &values_[terms_ * part];
    if (terms_ == 1) return {own[0], 0.0, 0.0};
    const double tilt_x = own[1] / reach_, tilt_y = own[2] / reach_;
    return {own[0] - tilt_x * centre_.x - tilt_y * centre_.y, tilt_x, tilt_y};
}

std::array<double, 6> GroupFit::covariance_of(std::size_t part, double variance) const {
    const std::size_t n = equations_.unknowns();
    // What the rows for the mean have put into the inverse: 1/(gauge·platens²) on each term.
    const auto platens = static_cast<double>(task_.platens);
    const double mean = 1.0 / (gauge_ * platens * platens);
    double own[3][3] = {};
    for (std::size_t i = 0; i < terms_; ++i)
        for (std::size_t k = 0; k < terms_; ++k)
            own[i][k] = inverse_[(terms_ * part + i) * n + terms_ * part + k] -
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

LevelFit GroupFit::finished() {
    const double variance = fit_.deviation * fit_.deviation;
    for (std::size_t part = 0; part < parts(); ++part) {
        fit_.planes.push_back(plane_of(part));
        fit_.covariances.push_back(covariance_of(part, variance));
    }
    fit_.solved = true;
    return std::move(fit_);
}

LevelFit GroupFit::run() {
    const std::vector<double> all(count(), 1.0);
    fit_.kept.assign(count(), true);
    if (!settings_.robust) {
        if (!score(all)) return {};
        return finished();
    }
    if (!solve(all)) return {};
    if (count() <= free_unknowns()) { // nothing left over to judge by
        score(all);
        return finished();
    }
    // Both only lead to a start from which the strays stand out: whether they have come to rest
    // doesn't matter.
    reweight(huber_weight, true);
    reweight(held_weight, false);
    fit_.settled = name_strays();
    return finished();
}

} // namespace

LevelFit fit_levels(const LevelTask& task, const LevelSettings& settings) {
    return GroupFit(task, settings).run();
}

} // namespace carriageway
