// The rigid motion that fits some marks: the core's closed form against Eigen's umeyama.
#include <Eigen/Geometry>
#include <cmath>

#include "core/rigid_motion.h"
#include "tests/bench/bench.h"
#include "tests/reference/seeded.h"

namespace carriageway::bench {

namespace {

constexpr int sets = 500;
constexpr int rounds = 31;

struct Case {
    std::vector<MarkReading> marks;
    Eigen::MatrixXd from, to; ///< the same, as Eigen wants them
};

/// Two to eight marks of a print that is a little off, read with an error.
std::vector<Case> make_cases() {
    std::vector<Case> cases;
    for (std::uint64_t number = 0; number < sets; ++number) {
        reference::Seeded random(seed, 6, number);
        const RigidMotion motion{random.between(-0.02, 0.02), random.between(-3.0, 3.0),
                                 random.between(-3.0, 3.0)};
        Case made;
        const int count = random.whole(2, 8);
        made.from.resize(2, count);
        made.to.resize(2, count);
        for (int i = 0; i < count; ++i) {
            MarkReading mark;
            mark.nominal = {random.between(-200.0, 200.0), random.between(-250.0, 250.0)};
            mark.measured = moved(motion, mark.nominal);
            mark.measured.x += random.between(-0.05, 0.05);
            mark.measured.y += random.between(-0.05, 0.05);
            made.from.col(i) << mark.nominal.x, mark.nominal.y;
            made.to.col(i) << mark.measured.x, mark.measured.y;
            made.marks.push_back(mark);
        }
        cases.push_back(std::move(made));
    }
    return cases;
}

} // namespace

std::vector<Ratio> registration_vs_eigen() {
    const std::vector<Case> cases = make_cases();
    for (const Case& each : cases) {
        const auto ours = best_motion(each.marks);
        const Eigen::Matrix3d theirs = Eigen::umeyama(each.from, each.to, false);
        must(ours && std::abs(std::sin(ours->motion.rotation) - theirs(1, 0)) < 1e-9 &&
                 std::abs(ours->motion.x - theirs(0, 2)) < 1e-7 &&
                 std::abs(ours->motion.y - theirs(1, 2)) < 1e-7,
             "the two sides fit different motions");
    }
    double sum = 0.0;
    const Pair pair = in_turn(
        rounds,
        [&] {
            for (const Case& each : cases) sum += best_motion(each.marks)->motion.x;
        },
        [&] {
            for (const Case& each : cases) {
                const Eigen::Matrix3d fit = Eigen::umeyama(each.from, each.to, false);
                sum += fit(0, 2);
            }
        });
    keep(sum);
    return {{"registration_vs_eigen", pair.ratio(), 1.0,
             "a fit: " + sides("core", median(pair.ours) / sets, "Eigen", median(pair.theirs) / sets)}};
}

} // namespace carriageway::bench
