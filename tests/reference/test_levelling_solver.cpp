// Levelling against Eigen: the design is written down from the model (gap = plane of the head plus
// plane of the platen, platens with mean zero), without our centring, and solved by an orthogonal
// decomposition. And with readings spoilt on purpose.
#include <Eigen/Dense>
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <set>

#include "core/levelling.h"
#include "tests/reference/seeded.h"
#include "tests/reference/tally.h"

using namespace carriageway;
using namespace carriageway::reference;

namespace {

constexpr double scale = 250.0;    ///< mm: how far points reach, about
constexpr double tolerance = 1e-9; ///< of the heights

/// A press as it is, and the readings of it.
struct RandomPress {
    std::vector<Plane> heads;
    std::vector<Plane> platens;
    double scatter = 0.0;
    std::vector<HeightReading> readings;
};

Plane random_plane(Seeded& random, double middle) {
    return {middle + random.between(-0.5, 0.5), random.between(-0.003, 0.003),
            random.between(-0.003, 0.003)};
}

/// About normal: the sum of twelve uniform numbers.
double normal(Seeded& random) {
    double sum = -6.0;
    for (int i = 0; i < 12; ++i) sum += random.between(0.0, 1.0);
    return sum;
}

RandomPress random_press(Seeded& random, int most_heads, int most_platens, double read_share) {
    RandomPress press;
    const int heads = random.whole(1, most_heads), platens = random.whole(1, most_platens);
    for (int i = 0; i < heads; ++i) press.heads.push_back(random_plane(random, 4.0));
    for (int i = 0; i < platens; ++i) press.platens.push_back(random_plane(random, 0.0));
    press.scatter = std::pow(10.0, random.between(-3.0, -0.5));
    for (int h = 0; h < heads; ++h)
        for (int p = 0; p < platens; ++p) {
            if (!random.chance(read_share)) continue;
            for (int i = random.whole(1, 6); i > 0; --i) {
                const Point at{random.between(-scale, scale), random.between(-scale, scale)};
                const auto head = static_cast<std::size_t>(h);
                const auto platen = static_cast<std::size_t>(p);
                press.readings.push_back({static_cast<std::uint32_t>(p),
                                          static_cast<std::uint32_t>(h), at.x, at.y,
                                          press.heads[head].at(at) + press.platens[platen].at(at) +
                                              press.scatter * normal(random)});
            }
        }
    return press;
}

/// The readings of one of our groups, with its parts numbered through.
struct Design {
    Eigen::MatrixXd matrix; ///< the rows, then those that put the platens' mean at zero
    Eigen::VectorXd heights;
    Eigen::Index readings = 0;
    Eigen::Index terms = 1;
};

Design design_of(const std::vector<HeightReading>& readings,
                 const std::vector<std::uint32_t>& heads, const std::vector<std::uint32_t>& platens,
                 bool planes) {
    Design design;
    design.terms = planes ? 3 : 1;
    design.readings = static_cast<Eigen::Index>(readings.size());
    const auto place = [](const std::vector<std::uint32_t>& list, std::uint32_t number) {
        return std::find(list.begin(), list.end(), number) - list.begin();
    };
    const auto head_count = static_cast<Eigen::Index>(heads.size());
    const auto platen_count = static_cast<Eigen::Index>(platens.size());
    design.matrix.setZero(design.readings + design.terms,
                          design.terms * (head_count + platen_count));
    design.heights.setZero(design.readings + design.terms);
    for (Eigen::Index i = 0; i < design.readings; ++i) {
        const HeightReading& read = readings[static_cast<std::size_t>(i)];
        const double terms[3] = {1.0, read.x / scale, read.y / scale};
        const Eigen::Index head = place(heads, read.head);
        const Eigen::Index platen = head_count + place(platens, read.platen);
        for (Eigen::Index k = 0; k < design.terms; ++k) {
            design.matrix(i, design.terms * head + k) = terms[k];
            design.matrix(i, design.terms * platen + k) = terms[k];
        }
        design.heights(i) = read.height;
    }
    for (Eigen::Index k = 0; k < design.terms; ++k)
        for (Eigen::Index p = 0; p < platen_count; ++p)
            design.matrix(design.readings + k, design.terms * (head_count + p) + k) = 1.0;
    return design;
}

void compare_part(Tally& tally, std::uint64_t number, const LevelledPart& part,
                  const Eigen::VectorXd& solution, const Eigen::MatrixXd& covariance,
                  Eigen::Index at, Eigen::Index terms) {
    const double bound = tolerance * 5.0; // heights are about 5 mm
    tally.close(number, "offset", part.plane.offset, solution(at), bound);
    if (terms == 3) {
        tally.close(number, "tilt across", part.plane.tilt_x * scale, solution(at + 1), bound);
        tally.close(number, "tilt along", part.plane.tilt_y * scale, solution(at + 2), bound);
    }
    if (!part.errors_known) return;
    // At a corner, where all six covariances have a part.
    Eigen::Vector3d corner(1.0, 0.8, -0.6);
    const Eigen::VectorXd head = corner.head(terms);
    const double error =
        std::sqrt(std::max(0.0, head.dot(covariance.block(at, at, terms, terms) * head)));
    tally.close(number, "standard error", standard_error(part, {0.8 * scale, -0.6 * scale}), error,
                1e-7 * (1.0 + error));
}

/// One of our groups against Eigen.
void compare_group(Tally& tally, std::uint64_t number, const Levelling& ours, int index,
                   const std::vector<HeightReading>& all, double step) {
    const LevelGroup& group = ours.groups[static_cast<std::size_t>(index)];
    const bool planes = group.terms == LevelTerms::plane;
    std::vector<LevelledPart> heads, platens;
    std::vector<std::uint32_t> head_numbers, platen_numbers;
    for (const LevelledPart& part : ours.heads)
        if (part.group == index && part.known == group.terms) {
            heads.push_back(part);
            head_numbers.push_back(part.number);
        }
    for (const LevelledPart& part : ours.platens)
        if (part.group == index && part.known == group.terms) {
            platens.push_back(part);
            platen_numbers.push_back(part.number);
        }
    std::vector<HeightReading> readings;
    for (const HeightReading& read : all) {
        const auto in = [](const std::vector<std::uint32_t>& list, std::uint32_t one) {
            return std::find(list.begin(), list.end(), one) != list.end();
        };
        if (in(head_numbers, read.head) && in(platen_numbers, read.platen))
            readings.push_back(read);
    }
    const Design design = design_of(readings, head_numbers, platen_numbers, planes);
    const Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> decomposition(design.matrix);
    if (decomposition.rank() < design.matrix.cols())
        tally.disagree(number, "solved what Eigen finds open");
    const Eigen::MatrixXd inverse = decomposition.pseudoInverse();
    const Eigen::VectorXd solution = decomposition.solve(design.heights);
    const Eigen::VectorXd left = design.heights - design.matrix * solution;
    const Eigen::Index freedom = design.readings - design.matrix.cols() + design.terms;
    tally.close(number, "freedom", group.freedom, static_cast<double>(freedom), 0.0);
    double deviation = 0.0;
    if (freedom > 0)
        deviation = std::max(left.norm() / std::sqrt(static_cast<double>(freedom)),
                             step / std::sqrt(12.0));
    tally.close(number, "deviation", group.deviation, deviation, 1e-9);
    const Eigen::MatrixXd of_readings = inverse.leftCols(design.readings);
    const Eigen::MatrixXd covariance =
        deviation * deviation * of_readings * of_readings.transpose();
    heads.insert(heads.end(), platens.begin(), platens.end());
    for (std::size_t i = 0; i < heads.size(); ++i)
        compare_part(tally, number, heads[i], solution, covariance,
                     design.terms * static_cast<Eigen::Index>(i), design.terms);
    tally.count(planes ? "group of planes" : "group of offsets");
    tally.count("group without freedom", freedom == 0);
}

/// How many sets of parts hang together, by the rank of the design of offsets.
long sets_by_rank(const std::vector<HeightReading>& readings) {
    std::set<std::uint32_t> heads, platens;
    for (const HeightReading& read : readings) {
        heads.insert(read.head);
        platens.insert(read.platen);
    }
    const Design design = design_of(readings, {heads.begin(), heads.end()},
                                    {platens.begin(), platens.end()}, false);
    const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> decomposition(
        design.matrix.topRows(design.readings));
    return design.matrix.cols() - decomposition.rank();
}

void random_case(Tally& tally, std::uint64_t number, int most_heads, int most_platens) {
    Seeded random(run_seed(), 21, number);
    const RandomPress press =
        random_press(random, most_heads, most_platens, random.between(0.15, 1.2));
    if (press.readings.empty()) return;
    LevelSettings settings;
    settings.robust = false;
    const Levelling ours = level(press.readings, settings);
    if (ours.refusal != LevelRefusal::none) tally.disagree(number, "refused");
    tally.close(number, "groups", static_cast<double>(ours.groups.size()),
                static_cast<double>(sets_by_rank(press.readings)), 0.0);
    tally.count("press in several groups", ours.groups.size() > 1);
    for (std::size_t i = 0; i < ours.groups.size(); ++i) {
        const LevelGroup& group = ours.groups[i];
        tally.count("some parts with few points",
                    group.reason == LevelReason::few_points_of_some);
        tally.count("not solved", group.terms == LevelTerms::none);
        if (group.terms != LevelTerms::none)
            compare_group(tally, number, ours, static_cast<int>(i), press.readings,
                          settings.step);
    }
}

/// Spoils up to 8 % of the readings by 10 to 300 standard deviations of a reading; tells which.
std::set<std::size_t> spoil(RandomPress& press, Seeded& random) {
    const auto count = static_cast<int>(press.readings.size());
    std::set<std::size_t> spoilt;
    for (int i = random.whole(1, std::max(1, count * 8 / 100)); i > 0; --i) {
        const auto at = static_cast<std::size_t>(random.whole(0, count - 1));
        if (!spoilt.insert(at).second) continue;
        const double by = press.scatter * std::pow(10.0, random.between(1.0, 2.5));
        press.readings[at].height += random.chance(0.5) ? by : -by;
    }
    return spoilt;
}

/// A press of which every pair was read at five points, with spoilt readings.
void spoilt_case(Tally& tally, std::uint64_t number) {
    Seeded random(run_seed(), 22, number);
    RandomPress press;
    press.scatter = 0.03;
    const Point points[] = {{-200, -250}, {200, -250}, {0, 0}, {-200, 250}, {200, 250}};
    const int heads = random.whole(2, 8), platens = random.whole(2, 10);
    for (int i = 0; i < heads; ++i) press.heads.push_back(random_plane(random, 4.0));
    for (int i = 0; i < platens; ++i) press.platens.push_back(random_plane(random, 0.0));
    for (std::uint32_t h = 0; h < press.heads.size(); ++h)
        for (std::uint32_t p = 0; p < press.platens.size(); ++p)
            for (const Point& at : points)
                press.readings.push_back({p, h, at.x, at.y,
                                          press.heads[h].at(at) + press.platens[p].at(at) +
                                              press.scatter * normal(random)});
    const std::set<std::size_t> spoilt = spoil(press, random);
    const Levelling found = level(press.readings);
    std::set<std::size_t> named;
    for (const StrayReading& stray : found.strays) named.insert(stray.reading);
    bool all = true;
    for (std::size_t at : spoilt) {
        const bool seen = named.count(at) > 0;
        all = all && seen;
        tally.count("spoilt reading");
        tally.count("spoilt reading named", seen);
    }
    for (std::size_t at : named) tally.count("good reading named", spoilt.count(at) == 0);
    for (std::size_t i = 0; i < press.readings.size(); ++i)
        tally.count("good reading", spoilt.count(i) == 0);
    tally.count("press");
    tally.count("press with all named", all);
    tally.count("press not settled", !found.groups.at(0).settled);

    // The planes of heads are over the mean platen as it is.
    Plane mean;
    for (const Plane& platen : press.platens) mean.offset += platen.offset / platens;
    double sum_x = 0.0, sum_y = 0.0;
    for (const Plane& platen : press.platens) {
        sum_x += platen.tilt_x / platens;
        sum_y += platen.tilt_y / platens;
    }
    mean.tilt_x = sum_x;
    mean.tilt_y = sum_y;
    for (std::size_t h = 0; h < press.heads.size(); ++h)
        for (const Point& at : points) {
            const double off =
                found.heads[h].plane.at(at) - press.heads[h].at(at) - mean.at(at);
            tally.count("gap of a head");
            tally.count("gap of a head within three errors",
                        std::abs(off) <= 3.0 * standard_error(found.heads[h], at));
        }
}

} // namespace

TEST_CASE("levelling agrees with Eigen's orthogonal decomposition", "[property]") {
    constexpr int small = 1500, large = 20;
    Tally tally("levelling", 21);
    for (int i = 0; i < small; ++i) random_case(tally, static_cast<std::uint64_t>(i), 6, 7);
    for (int i = small; i < small + large; ++i)
        random_case(tally, static_cast<std::uint64_t>(i), 16, 18);
    tally.print();
    CHECK(tally.disagreements() == 0);
    for (const char* kind : {"group of planes", "group of offsets", "press in several groups",
                             "some parts with few points", "group without freedom"}) {
        INFO(kind);
        CHECK(tally.of(kind) >= small / 100);
    }
    CHECK(tally.of("not solved") == 0); // offsets of what hangs together can always be told
}

TEST_CASE("spoilt readings are named and good ones are not", "[property]") {
    constexpr int cases = 400;
    Tally tally("spoilt readings", 22);
    for (int i = 0; i < cases; ++i) spoilt_case(tally, static_cast<std::uint64_t>(i));
    tally.print();
    const auto share = [&tally](const char* part, const char* whole) {
        return static_cast<double>(tally.of(part)) / static_cast<double>(tally.of(whole));
    };
    CHECK(share("spoilt reading named", "spoilt reading") >= 0.98);
    CHECK(share("good reading named", "good reading") <= 0.002);
    CHECK(share("gap of a head within three errors", "gap of a head") >= 0.98);
    // Some of the presses have two heads or two platens, so that two readings at a point can
    // contradict each other with nothing to tell which is wrong.
    CHECK(tally.of("press not settled") <= cases / 100);
}
