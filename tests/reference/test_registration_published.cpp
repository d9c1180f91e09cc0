// Registration against published values and Eigen's fit. The source stands beside each check;
// "computed" is our arithmetic from the source's formula.
#include <Eigen/Geometry>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <vector>

#include "core/advice.h"
#include "core/scatter.h"
#include "tests/reference/seeded.h"
#include "tests/reference/tally.h"

using namespace carriageway;
using namespace carriageway::reference;
using Catch::Matchers::WithinAbs;

namespace {

using Marks = std::vector<MarkReading>;

Eigen::Matrix3d by_umeyama(const Marks& marks) {
    // Rows of any number: with two fixed, GCC 12 sees reads past the end that are not there.
    Eigen::MatrixXd from(2, static_cast<Eigen::Index>(marks.size()));
    Eigen::MatrixXd to = from;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const auto column = static_cast<Eigen::Index>(i);
        from.col(column) << marks[i].nominal.x, marks[i].nominal.y;
        to.col(column) << marks[i].measured.x, marks[i].measured.y;
    }
    return Eigen::umeyama(from, to, false);
}

ErrorSize residual_size(const Marks& marks, const RigidFit& fit) {
    std::vector<Point> left;
    for (const MarkReading& mark : marks) left.push_back(residual_of(fit, mark));
    return size_of(left);
}

/// Checks one row, and that Eigen's fit says the same.
void check_row(const Marks& marks, double angle, Point move, double rms) {
    const RigidFit fit = best_motion(marks).value();
    CHECK_THAT(
        degrees(fit.motion.rotation),
        WithinAbs(angle, 5e-7 * std::pow(10.0, std::floor(std::log10(std::abs(angle))) + 1.0)));
    CHECK_THAT(fit.motion.x, WithinAbs(move.x, 5e-7));
    CHECK_THAT(fit.motion.y, WithinAbs(move.y, 5e-7));
    CHECK_THAT(residual_size(marks, fit).rms, WithinAbs(rms, 5e-7));
    const Eigen::Matrix3d reference = by_umeyama(marks);
    CHECK_THAT(std::cos(fit.motion.rotation), WithinAbs(reference(0, 0), 1e-12));
    CHECK_THAT(std::sin(fit.motion.rotation), WithinAbs(reference(1, 0), 1e-12));
    CHECK_THAT(fit.motion.x, WithinAbs(reference(0, 2), 1e-10));
    CHECK_THAT(fit.motion.y, WithinAbs(reference(1, 2), 1e-10));
}

const Marks corners{{{-150, -200}, {-149.45, -199.02}},
                    {{150, -200}, {150.52, -198.58}},
                    {{150, 200}, {149.85, 201.43}},
                    {{-150, 200}, {-150.18, 200.93}}};
const Marks across{{{-150, 0}, {-149.2, 0.4}}, {{150, 0}, {150.79, -0.65}}};
const Marks paper{{{0, 0}, {0, 0}}, {{1, 0}, {-1, 0}}, {{0, 2}, {0, 2}}};

} // namespace

TEST_CASE("fits of marks", "[published][registration]") {
    // Umeyama 1991, IEEE PAMI 13(4):376-380: formula, and the points of its example (without
    // scale: computed). The mirrored triangle has a best rotation all the same.
    check_row(paper, -33.6901, {-0.980484, 0.296867}, 0.787245);
    // Computed from the same formula: two marks, then four.
    check_row(across, -0.200541, {0.795, -0.125}, 0.004081);
    check_row(corners, 0.0964891, {0.185, 1.190}, 0.032070);
    CHECK_THAT(residual_size(corners, best_motion(corners).value()).max, WithinAbs(0.050735, 5e-7));
}

TEST_CASE("checked readings give the same fits", "[published][registration]") {
    for (const Marks& marks : {across, corners}) {
        const auto result = register_marks(marks, {0.05, false});
        REQUIRE(std::holds_alternative<Registration>(result));
        CHECK(std::get<Registration>(result).fit.motion == best_motion(marks)->motion);
    }
    // The paper's points are mirrored: a print can't be.
    const auto mirrored = register_marks(paper, {0.001, false});
    REQUIRE(std::holds_alternative<RegistrationFault>(mirrored));
    CHECK(std::get<RegistrationFault>(mirrored).kind == RegistrationFaultKind::mirrored);
}

TEST_CASE("a reflected square has no rotation", "[published][registration]") {
    // Computed: C = S = 0.
    const Marks square{{{0, 0}, {1, 1}}, {{1, 0}, {1, 2}}, {{1, 1}, {2, 2}}, {{0, 1}, {2, 1}}};
    CHECK_FALSE(best_motion(square).has_value());
    const auto result = register_marks(square, {0.001, false});
    REQUIRE(std::holds_alternative<RegistrationFault>(result));
    CHECK(std::get<RegistrationFault>(result).kind == RegistrationFaultKind::no_rotation);
}

TEST_CASE("travel of screws", "[published][registration]") {
    // Pitches of ISO 261 and ISO 262 (public parts table): M8 1.25, M6 1, M10 1.5; of 1/4-28 UNF
    // (Mechanical Engineer's Data Handbook) an inch by 28. Travel computed.
    const auto travel = [](double pitch, int dial, int graduations) {
        Adjuster screw;
        screw.mm_per_turn = pitch;
        screw.graduations = dial;
        const double moved_by = travel_of(screw, graduations);
        CHECK_THAT(turns_for(screw, moved_by) * dial, WithinAbs(graduations, 1e-12));
        return moved_by;
    };
    CHECK_THAT(travel(1.25, 12, 1), WithinAbs(0.10417, 5e-6));              // 30 degrees
    CHECK_THAT(travel(1.0, 8, 1), WithinAbs(0.12500, 5e-6));                // 1/8 turn
    CHECK_THAT(travel(1.5, 36, 1), WithinAbs(0.041667, 5e-7));              // 10 degrees
    CHECK_THAT(travel(mm_per_inch / 28.0, 4, 1), WithinAbs(0.22679, 5e-6)); // 1/4 turn
    CHECK(travel(1.25, 12, -12) == -1.25);
}

TEST_CASE("two adjusters turn a screen", "[published][registration]") {
    // Computed: 400 mm apart and 0.2 mm different, 0.028648 degrees, 0.0900 mm at 180 mm.
    Adjuster left, right;
    left.x = -200.0;
    right.x = 200.0;
    right.side = AdjusterSide::right;
    left.y = right.y = -300.0;
    const std::vector<Adjuster> pair{left, right};
    const RigidMotion pose = pose_of(pair, {-0.1, 0.1, 0.0}).value();
    CHECK_THAT(degrees(pose.rotation), WithinAbs(0.028648, 5e-7));
    CHECK_THAT(180.0 * std::sin(pose.rotation), WithinAbs(0.0900, 5e-5));
    const BySide back = travel_for(pair, pose);
    CHECK_THAT(back[0], WithinAbs(-0.1, 1e-12));
    CHECK_THAT(back[1], WithinAbs(0.1, 1e-12));
}

TEST_CASE("factors of Student's distribution", "[published][registration]") {
    // JCGM 100:2008, H.1.6: 99 % and 16 freedoms want 2.92. 2.575829 normal deviations cover 99 %.
    CHECK_THAT(student_factor(2.575829, 16), WithinAbs(2.92, 0.005));
    for (int freedoms = 1; freedoms <= 200; ++freedoms)
        for (const double normal : {0.5, 1.0, 2.0, 3.0, 4.0}) {
            const double beyond = 0.5 * std::erfc(normal / std::sqrt(2.0));
            const boost::math::students_t student(freedoms);
            const double reference = boost::math::quantile(complement(student, beyond));
            INFO(freedoms << " freedoms, " << normal);
            CHECK(std::abs(student_factor(normal, freedoms) / reference - 1.0) < 1e-9);
        }
}

TEST_CASE("what a sum of squares exceeds by chance", "[published][registration]") {
    // Boost's chi-square at the share that a normal error exceeds two standard deviations. Wilson
    // and Hilferty's cube is off by 2.4 % for one freedom and by less for more.
    const double beyond = std::erfc(std::sqrt(2.0));
    for (int freedoms = 1; freedoms <= 2 * static_cast<int>(most_marks); ++freedoms) {
        const boost::math::chi_squared squares(freedoms);
        const double reference = boost::math::quantile(complement(squares, beyond));
        INFO(freedoms << " freedoms");
        CHECK(std::abs(chance_limit(freedoms) / reference - 1.0) < 0.03);
    }
    CHECK(chance_limit(0) == 0.0);
}

TEST_CASE("fits agree with Eigen's", "[registration]") {
    constexpr std::uint64_t test = 6001;
    constexpr std::uint64_t cases = 100'000;
    Tally tally("registration against Eigen's umeyama", test);
    for (std::uint64_t number = 0; number < cases; ++number) {
        Seeded random(run_seed(), test, number);
        const double size = random.between(50.0, 500.0);
        const double noise = random.chance(0.2) ? 0.0 : random.between(0.0, 2.0);
        // A few as they must never be: turned by anything.
        const double most = random.chance(0.1) ? 3.14 : 0.02;
        const RigidMotion motion{random.between(-most, most), random.between(-20.0, 20.0),
                                 random.between(-20.0, 20.0)};
        Marks marks(static_cast<std::size_t>(random.whole(2, 12)));
        for (MarkReading& mark : marks) {
            mark.nominal = {random.between(-0.5, 0.5) * size, random.between(-0.5, 0.5) * size};
            mark.measured = moved(motion, mark.nominal);
            mark.measured.x += random.between(-noise, noise);
            mark.measured.y += random.between(-noise, noise);
        }
        const auto fit = best_motion(marks);
        if (!fit) {
            tally.disagree(number, "no fit");
            continue;
        }
        tally.count(marks.size() == 2 ? "two marks" : "more marks");
        tally.count("without noise", noise == 0.0);
        const Eigen::Matrix3d reference = by_umeyama(marks);
        constexpr double tolerance = 1e-9;
        const double c = std::cos(fit->motion.rotation), s = std::sin(fit->motion.rotation);
        tally.close(number, "cosine", c, reference(0, 0), tolerance);
        tally.close(number, "minus sine", -s, reference(0, 1), tolerance);
        tally.close(number, "sine", s, reference(1, 0), tolerance);
        tally.close(number, "cosine below", c, reference(1, 1), tolerance);
        tally.close(number, "x by size", fit->motion.x / size, reference(0, 2) / size, tolerance);
        tally.close(number, "y by size", fit->motion.y / size, reference(1, 2) / size, tolerance);
        tally.count("compared");
    }
    tally.print();
    CHECK(tally.of("compared") == static_cast<long>(cases));
    CHECK(tally.of("two marks") > 5'000);
    CHECK(tally.disagreements() == 0);
}
