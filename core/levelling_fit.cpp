#include "core/levelling_fit.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/least_squares.h"
#include "core/levelling_design.h"
#include "core/robust.h"

namespace carriageway {

namespace {

/// Rounds of the last part, in which strays are named. Ours: one or two are usual.
constexpr int most_namings = 20;
/// A robust fit has settled when no residual moves by more than this share of the scatter. Ours.
constexpr double settled_share = 1e-4;
/// A reading that decides its own fitted value to more than this is checked by nothing. Ours.
constexpr double most_leverage = 1.0 - 1e-6;
/// Share of the heights that rounding may leave.
constexpr double rounding_share = 1e-12;
/// Solutions for what the residuals leave, to win back the digits that the normal equations lose.
constexpr int refinements = 2;

/// Tukey's weight, but never quite nothing: so that no part ever loses all its readings, when those
/// that are wrong have bent it away from those that are right. What is far out then still pulls a
/// hundredth of what it may pull by Huber's weight. The hundredth is ours.
double held_weight(double residual) {
    return std::max(tukey_weight(residual), 0.01 * huber_weight(residual));
}

/// One group on its way through plain, robust and plain fit.
class GroupFit {
  public:
    GroupFit(const LevelTask& task, const LevelSettings& settings)
        : task_(task), settings_(settings), design_(task), equations_(design_.unknowns()) {
        double largest = 0.0;
        for (const LevelRow& row : task.rows) largest = std::max(largest, std::abs(row.height));
        // Never zero: scores are shares of it.
        least_scatter_ = std::max({settings.step / std::sqrt(12.0), rounding_share * largest,
                                   std::numeric_limits<double>::min()});
    }

    LevelFit run();

  private:
    std::size_t count() const { return task_.rows.size(); }
    bool solve(const std::vector<double>& weights);
    void refresh_residuals();
    void reweight(double (*weight_of)(double), bool rescale);
    bool name_strays();
    bool score(const std::vector<double>& weights);
    LevelFit finished();

    const LevelTask& task_;
    const LevelSettings& settings_;
    LevelDesign design_;
    NormalEquations equations_;
    double least_scatter_ = 0.0; ///< heights differ by this without meaning anything
    double scatter_ = 0.0;       ///< of the readings, as far as the robust fit has come
    std::vector<double> values_;
    std::vector<double> inverse_;
    LevelFit fit_;
};

/// Solves with these weights; leaves everything as it was when they leave an unknown open.
bool GroupFit::solve(const std::vector<double>& weights) {
    std::array<LevelDesign::Entry, 6> entries;
    equations_.clear();
    for (std::size_t i = 0; i < count(); ++i)
        if (weights[i] > 0.0)
            equations_.add(entries.data(), design_.entries_of(task_.rows[i], entries), weights[i]);
    design_.add_mean(equations_);
    if (!equations_.factor()) return false;

    values_.assign(equations_.unknowns(), 0.0);
    refresh_residuals();
    for (int round = 0; round <= refinements; ++round) {
        std::vector<double> right(equations_.unknowns(), 0.0);
        for (std::size_t i = 0; i < count(); ++i) {
            if (!(weights[i] > 0.0)) continue;
            const std::size_t length = design_.entries_of(task_.rows[i], entries);
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
    std::array<LevelDesign::Entry, 6> entries;
    fit_.residuals.resize(count());
    for (std::size_t i = 0; i < count(); ++i) {
        const std::size_t length = design_.entries_of(task_.rows[i], entries);
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
        if (rescale) scatter_ = robust_deviation(fit_.residuals, design_.free_unknowns());
        const double scatter = std::max(scatter_, least_scatter_);
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
    fit_.freedom = static_cast<int>(used) - static_cast<int>(design_.free_unknowns());
    const double freedom = fit_.freedom;
    fit_.deviation =
        fit_.freedom > 0 ? std::max(std::sqrt(squares / freedom), least_scatter_) : 0.0;
    fit_.scores.assign(count(), 0.0);
    for (std::size_t i = 0; i < count(); ++i) {
        const double residual = fit_.residuals[i];
        const double share = design_.leverage(task_.rows[i], inverse_);
        const bool kept = weights[i] > 0.0;
        const double others = kept ? freedom - 1.0 : freedom;
        if (others < 1.0 || (kept && share > most_leverage)) continue;
        const double own = kept ? residual * residual / (1.0 - share) : 0.0;
        const double scatter =
            std::max(std::sqrt(std::max(0.0, squares - own) / others), least_scatter_);
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
    const double scatter = std::max(scatter_, least_scatter_);
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

LevelFit GroupFit::finished() {
    const double variance = fit_.deviation * fit_.deviation;
    for (std::size_t part = 0; part < task_.heads + task_.platens; ++part) {
        fit_.planes.push_back(design_.plane_of(part, values_));
        fit_.covariances.push_back(design_.covariance_of(part, inverse_, variance));
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
    if (count() <= design_.free_unknowns()) { // nothing left over to judge by
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
