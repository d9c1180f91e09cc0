#include "core/scatter.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <set>
#include <utility>

#include "core/registration.h"

namespace carriageway {

namespace {

using Kind = ScatterFaultKind;

/// One print, as numbers: a turn of the table, a platen, and how the print lies.
struct Print {
    std::size_t platen = 0; ///< place in Scatter::platens
    double turn = 0.0;
    double x = 0.0;
    double y = 0.0;
    double rotation = 0.0;
};

bool same_marks(const PlatenReading& a, const PlatenReading& b) {
    return std::equal(a.marks.begin(), a.marks.end(), b.marks.begin(), b.marks.end(),
                      [](const MarkReading& one, const MarkReading& other) {
                          return one.nominal == other.nominal;
                      });
}

bool readable(const PlatenReading& reading) {
    const auto near = [](const Point& point) {
        return std::abs(point.x) <= farthest_mark && std::abs(point.y) <= farthest_mark;
    };
    return std::all_of(reading.marks.begin(), reading.marks.end(), [&](const MarkReading& mark) {
        return near(mark.nominal) && near(mark.measured);
    });
}

/// What is wrong with a reading by itself or beside the first.
std::optional<ScatterFault> reading_fault(std::span<const PlatenReading> readings) {
    if (readings.size() > most_platen_readings)
        return ScatterFault{Kind::too_many, 0, static_cast<double>(readings.size()),
                            static_cast<double>(most_platen_readings)};
    std::set<std::pair<int, int>> seen;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const PlatenReading& one = readings[i];
        if (!readable(one)) return ScatterFault{Kind::not_readable, i, 0.0, 0.0};
        if (one.marks.empty() || !same_marks(one, readings.front()))
            return ScatterFault{Kind::other_marks, i, 0.0, 0.0};
        if (!seen.insert({one.platen, one.turn}).second)
            return ScatterFault{Kind::repeated, i, 0.0, 0.0};
    }
    return std::nullopt;
}

/// Whether there are enough readings to tell things apart.
std::optional<ScatterFault> number_fault(std::span<const PlatenReading> readings,
                                         const std::vector<int>& platens) {
    std::set<int> turns;
    for (const PlatenReading& one : readings) turns.insert(one.turn);
    const auto few = [](Kind kind, std::size_t value, int limit) {
        return ScatterFault{kind, 0, static_cast<double>(value), static_cast<double>(limit)};
    };
    if (platens.size() < static_cast<std::size_t>(least_platens))
        return few(Kind::too_few_platens, platens.size(), least_platens);
    if (turns.size() < static_cast<std::size_t>(least_turns))
        return few(Kind::too_few_turns, turns.size(), least_turns);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const auto times = std::count_if(
            readings.begin(), readings.end(),
            [&](const PlatenReading& other) { return other.platen == readings[i].platen; });
        if (times < 2) return ScatterFault{Kind::platen_once, i, 0.0, 0.0};
    }
    return std::nullopt;
}

/// What the readings' turns and platens make of any number read with them.
struct Design {
    std::vector<double> counts; ///< readings of each platen
    std::vector<double> turns;  ///< mean turn of each platen
    double middle = 0.0;        ///< mean turn of the platens
    double squares = 0.0;       ///< Σ (turn − mean turn of its platen)²
};

Design design_of(const std::vector<Print>& prints, std::size_t platens) {
    Design design{std::vector<double>(platens), std::vector<double>(platens)};
    for (const Print& print : prints) {
        design.counts[print.platen] += 1.0;
        design.turns[print.platen] += print.turn;
    }
    for (std::size_t p = 0; p < platens; ++p) {
        design.turns[p] /= design.counts[p];
        design.middle += design.turns[p] / static_cast<double>(platens);
    }
    for (const Print& print : prints)
        design.squares += std::pow(print.turn - design.turns[print.platen], 2);
    return design;
}

/// Least squares of one number. The head is what it is over the good platens.
ScatterPart part_of(const std::vector<Print>& prints, const Design& design, int freedoms,
                    const std::vector<bool>& good, double Print::*number, double reading) {
    const std::size_t platens = design.counts.size();
    const auto count = static_cast<double>(std::count(good.begin(), good.end(), true));
    std::vector<double> means(platens);
    for (const Print& print : prints)
        means[print.platen] += print.*number / design.counts[print.platen];
    double products = 0.0;
    for (const Print& print : prints)
        products +=
            (print.turn - design.turns[print.platen]) * (print.*number - means[print.platen]);
    ScatterPart part;
    part.known = true;
    part.drift.value = products / design.squares;
    double squares = 0.0;
    for (const Print& print : prints)
        squares += std::pow(print.*number - means[print.platen] -
                                part.drift.value * (print.turn - design.turns[print.platen]),
                            2);
    part.deviation = std::sqrt(squares / freedoms);
    part.reading = reading;
    const double deviation = std::max(part.deviation, reading);
    part.drift.error = deviation / std::sqrt(design.squares);
    // Each platen's mean as it would be in the middle of the turns.
    double shares = 0.0; // Σ 1/readings: variance of the sum of the good platens' means
    for (std::size_t p = 0; p < platens; ++p) {
        means[p] -= part.drift.value * (design.turns[p] - design.middle);
        if (!good[p]) continue;
        part.head.value += means[p] / count;
        shares += 1.0 / design.counts[p];
    }
    part.head.error = deviation * std::sqrt(shares) / count;
    for (std::size_t p = 0; p < platens; ++p) {
        const double own = 1.0 / design.counts[p];
        const double means_variance =
            good[p] ? own * std::pow(1.0 - 1.0 / count, 2) + (shares - own) / (count * count)
                    : own + shares / (count * count);
        const double by_drift = part.drift.error * (design.turns[p] - design.middle);
        part.platens.push_back({means[p] - part.head.value,
                                std::hypot(deviation * std::sqrt(means_variance), by_drift)});
    }
    return part;
}

/// A print's motion, told at the middle of its marks.
std::optional<Print> print_of(const PlatenReading& reading, const std::vector<int>& platens) {
    const std::optional<RigidFit> fit = best_motion(reading.marks);
    if (!fit) return std::nullopt;
    const auto place = std::lower_bound(platens.begin(), platens.end(), reading.platen);
    return Print{static_cast<std::size_t>(place - platens.begin()),
                 static_cast<double>(reading.turn), fit->measured_centre.x - fit->nominal_centre.x,
                 fit->measured_centre.y - fit->nominal_centre.y, fit->motion.rotation};
}

/// The share of Student's distribution between −t and t, t = √freedoms·tan θ.
double student_share(double theta, int freedoms) {
    const double cosine = std::cos(theta), square = cosine * cosine;
    const bool odd = freedoms % 2 == 1;
    double term = odd ? cosine : 1.0, sum = 0.0;
    for (int k = odd ? 2 : 1; k < freedoms; k += 2) {
        sum += term;
        term *= square * k / (k + 1.0);
    }
    const double share = std::sin(theta) * sum;
    return odd ? (theta + share) * 2.0 / std::numbers::pi : share;
}

/// What the good platens come to together, for each of the three parts.
struct GoodPlatens {
    double count = 0.0;
    std::array<double, 3> sums{};
};

std::array<const ScatterPart*, 3> parts_of(const Scatter& scatter) {
    return {&scatter.x, &scatter.y, &scatter.rotation};
}

GoodPlatens good_platens(const Scatter& scatter, const std::vector<bool>& good) {
    GoodPlatens found;
    for (std::size_t p = 0; p < good.size(); ++p) {
        if (!good[p]) continue;
        found.count += 1.0;
        for (std::size_t i = 0; i < found.sums.size(); ++i)
            if (const ScatterPart& part = *parts_of(scatter)[i]; part.known)
                found.sums[i] += part.platens[p].value;
    }
    return found;
}

/// How far a good platen `p` stands off the mean of the other good ones, in `factor` standard
/// errors: the largest of its numbers. An offset's own error is that against the mean of all.
double off_good(const Scatter& scatter, const GoodPlatens& good, std::size_t p, double factor) {
    const auto all = static_cast<double>(scatter.platens.size());
    const double others = good.count - 1.0;
    double largest = 0.0;
    for (std::size_t i = 0; i < good.sums.size(); ++i) {
        const ScatterPart& part = *parts_of(scatter)[i];
        if (!part.known) continue;
        const ScatterEstimate& own = part.platens[p];
        const double mean = (good.sums[i] - own.value) / others;
        const double error = own.error * std::sqrt((1.0 + 1.0 / others) / (1.0 - 1.0 / all));
        largest = std::max(largest, std::abs(own.value - mean) / (factor * error));
    }
    return largest;
}

/// Platens that stand off the others, rising. One after the other, the worst first, and each against
/// those that are left: one bent platen would otherwise put all others off their common mean. Fewer
/// than half can be off, since then nobody could say which are right.
std::vector<std::size_t> platens_off(const Scatter& scatter, double factor) {
    std::vector<bool> good(scatter.platens.size(), true);
    std::vector<std::size_t> off;
    while (2 * (off.size() + 1) < good.size()) {
        const GoodPlatens together = good_platens(scatter, good);
        std::size_t worst = good.size();
        double largest = 1.0;
        for (std::size_t p = 0; p < good.size(); ++p) {
            const double beyond = good[p] ? off_good(scatter, together, p, factor) : 0.0;
            if (!(beyond > largest)) continue;
            largest = beyond;
            worst = p;
        }
        if (worst == good.size()) break;
        good[worst] = false;
        off.push_back(worst);
    }
    std::sort(off.begin(), off.end());
    return off;
}

} // namespace

std::variant<Scatter, ScatterFault> scatter_of(std::span<const PlatenReading> readings,
                                               const Spread& reading_error) {
    const double reading = standard_deviation(reading_error);
    if (!std::isfinite(reading) || !(reading > 0.0))
        return ScatterFault{Kind::reading_error, 0, reading, 0.0};
    if (const auto fault = reading_fault(readings)) return *fault;
    Scatter scatter;
    for (const PlatenReading& one : readings) scatter.platens.push_back(one.platen);
    std::sort(scatter.platens.begin(), scatter.platens.end());
    scatter.platens.erase(std::unique(scatter.platens.begin(), scatter.platens.end()),
                          scatter.platens.end());
    if (const auto fault = number_fault(readings, scatter.platens)) return *fault;
    std::vector<Print> prints;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const std::optional<Print> print = print_of(readings[i], scatter.platens);
        if (!print) return ScatterFault{Kind::not_readable, i, 0.0, 0.0};
        prints.push_back(*print);
    }
    // Every platen twice or more: readings ≥ 2·platens ≥ platens + 2, so one freedom at least.
    scatter.freedoms = static_cast<int>(prints.size() - scatter.platens.size()) - 1;
    const RigidFit first = *best_motion(readings.front().marks);
    scatter.centre = first.nominal_centre;
    const Design design = design_of(prints, scatter.platens.size());
    const double centre = reading / std::sqrt(static_cast<double>(readings.front().marks.size()));
    std::vector<bool> good(scatter.platens.size(), true);
    const auto take_apart = [&] {
        const auto part = [&](double Print::*number, double own) {
            return part_of(prints, design, scatter.freedoms, good, number, own);
        };
        scatter.x = part(&Print::x, centre);
        scatter.y = part(&Print::y, centre);
        if (first.turns) scatter.rotation = part(&Print::rotation, reading / first.spread);
    };
    take_apart();
    scatter.off = platens_off(scatter, student_factor(sign_deviations, scatter.freedoms));
    for (const std::size_t p : scatter.off) good[p] = false;
    if (!scatter.off.empty()) take_apart();
    return scatter;
}

std::vector<ScatterSign> signs_of(const Scatter& scatter) {
    std::vector<ScatterSign> signs;
    if (scatter.freedoms < 1) return signs;
    // The logarithm of a standard deviation with ν freedoms varies by about √(1/2ν), of the ratio
    // of two by √(1/ν).
    const double ratio = std::exp(sign_deviations / std::sqrt(scatter.freedoms));
    if (scatter.x.deviation > ratio * std::max(scatter.y.deviation, scatter.y.reading))
        signs.push_back({ScatterCause::index_or_lock, 0});
    const double factor = student_factor(sign_deviations, scatter.freedoms);
    const auto any = [&scatter, factor](auto estimate_of) {
        for (const ScatterPart* part : {&scatter.x, &scatter.y, &scatter.rotation}) {
            if (!part->known) continue;
            const ScatterEstimate estimate = estimate_of(*part);
            if (std::abs(estimate.value) > factor * estimate.error) return true;
        }
        return false;
    };
    if (any([](const ScatterPart& part) { return part.drift; }))
        signs.push_back({ScatterCause::heat_or_drift, 0});
    for (const std::size_t p : scatter.off)
        signs.push_back({ScatterCause::platen_off, scatter.platens[p]});
    return signs;
}

double head_offset(const Scatter& scatter) {
    return std::hypot(scatter.x.head.value, scatter.y.head.value);
}

double student_factor(double normal, int freedoms) {
    const int v = std::max(1, freedoms);
    const double share = std::erf(normal / std::numbers::sqrt2);
    double lo = 0.0, hi = 0.5 * std::numbers::pi;
    constexpr int halvings = 60; // beyond the digits of a double
    for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (lo + hi);
        (student_share(middle, v) < share ? lo : hi) = middle;
    }
    return std::sqrt(static_cast<double>(v)) * std::tan(0.5 * (lo + hi));
}

} // namespace carriageway
