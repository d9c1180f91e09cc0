#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "core/head_registration.h"
#include "core/scatter.h"
#include "tests/core/registration_bench.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr Spread reading{0.02, true};

/// What a simulated table does under one head.
struct Table {
    int platens = 6;
    int turns = 8;
    RigidMotion head;
    double scatter_x = 0.0; ///< standard deviations, mm
    double scatter_y = 0.0;
    double drift_y = 0.0; ///< mm a turn
    int off_platen = 0;   ///< 0: none
    Point off;
    double skip = 0.0; ///< chance that a print isn't read
};

std::vector<PlatenReading> read(const Table& table, double error, std::mt19937_64& random) {
    std::normal_distribution<double> normal;
    std::vector<PlatenReading> readings;
    for (int turn = 1; turn <= table.turns; ++turn)
        for (int platen = 1; platen <= table.platens; ++platen) {
            RigidMotion motion = table.head;
            motion.x += table.scatter_x * normal(random);
            motion.y += table.scatter_y * normal(random) + table.drift_y * turn;
            if (platen == table.off_platen) {
                motion.x += table.off.x;
                motion.y += table.off.y;
            }
            PlatenReading print{platen, turn, {}};
            for (const Point& at : bench::corner_marks()) {
                Point to = moved(motion, at);
                to.x += error * normal(random);
                to.y += error * normal(random);
                print.marks.push_back({at, to});
            }
            if (turn <= 2 ||
                !(std::uniform_real_distribution<double>(0.0, 1.0)(random) < table.skip))
                readings.push_back(print);
        }
    return readings;
}

Scatter apart(const std::vector<PlatenReading>& readings) {
    const auto result = scatter_of(readings, reading);
    REQUIRE(std::holds_alternative<Scatter>(result));
    return std::get<Scatter>(result);
}

ScatterFaultKind fault_in(const std::vector<PlatenReading>& readings,
                          const Spread& error = reading) {
    const auto result = scatter_of(readings, error);
    REQUIRE(std::holds_alternative<ScatterFault>(result));
    return std::get<ScatterFault>(result).kind;
}

bool has(const std::vector<ScatterSign>& signs, ScatterCause cause, int platen = 0) {
    for (const ScatterSign& sign : signs)
        if (sign.cause == cause && sign.platen == platen) return true;
    return false;
}

} // namespace

TEST_CASE("Head, platen and drift come out of readings without scatter", "[registration]") {
    std::mt19937_64 random(1);
    const auto readings =
        read({4, 5, {0.001, 0.5, -0.25}, 0.0, 0.0, 0.01, 3, {0.4, -0.2}, 0.0}, 0.0, random);
    const Scatter found = apart(readings);
    CHECK(found.platens == std::vector<int>{1, 2, 3, 4});
    CHECK(found.freedoms == 20 - 4 - 1);
    // The head is the mean of the three good platens, in the middle of the turns.
    CHECK(found.off == std::vector<std::size_t>{2});
    CHECK_THAT(found.x.head.value, WithinAbs(0.5, 1e-12));
    CHECK_THAT(found.y.head.value, WithinAbs(-0.25 + 0.01 * 3.0, 1e-12));
    CHECK_THAT(found.rotation.head.value, WithinAbs(0.001, 1e-12));
    CHECK_THAT(found.x.platens[2].value, WithinAbs(0.4, 1e-12));
    CHECK_THAT(found.x.platens[0].value, WithinAbs(0.0, 1e-12));
    CHECK_THAT(found.y.drift.value, WithinAbs(0.01, 1e-12));
    CHECK_THAT(found.x.drift.value, WithinAbs(0.0, 1e-12));
    CHECK_THAT(found.x.deviation, WithinAbs(0.0, 1e-12));
    // Standard errors come from the reading error, then: 0.02/√4 marks, over √15 prints; the platen
    // that is off against the 15 with its own 5.
    CHECK_THAT(found.x.head.error, WithinAbs(0.01 / std::sqrt(15.0), 1e-12));
    CHECK_THAT(found.x.platens[2].error, WithinAbs(0.01 * std::sqrt(1.0 / 5.0 + 1.0 / 15.0), 1e-12));
    const auto signs = signs_of(found);
    CHECK_FALSE(has(signs, ScatterCause::index_or_lock));
    CHECK(has(signs, ScatterCause::heat_or_drift));
    CHECK(has(signs, ScatterCause::platen_off, 3));
}

TEST_CASE("Prints before the adjusters were turned are of another setting", "[registration]") {
    const std::vector<MarkReading> marks{{{-100.0, 0.0}, {-99.0, 0.0}}, {{100.0, 0.0}, {101.0, 0.0}}};
    std::vector<MarkRound> rounds{{1, 1, marks, {}}, {2, 1, marks, {0.0, 0.0}}, {3, 1, marks, {}}};
    std::vector<std::size_t> places;
    CHECK(platen_readings(rounds, places).size() == 3);
    rounds[1].turned = {0.5, 0.0};
    CHECK(platen_readings(rounds, places).size() == 1);
    CHECK(places == std::vector<std::size_t>{2});
}

TEST_CASE("practice: what scatter, drift and one platen point to (common practice, no source)",
          "[registration]") {
    const auto seed = Catch::getSeed();
    std::mt19937_64 random(seed);
    INFO("seed " << seed);
    constexpr int runs = 400;
    int false_index = 0, false_drift = 0, false_platen = 0, index = 0, drift = 0, platen = 0;
    for (int i = 0; i < runs; ++i) {
        Table table;
        table.scatter_x = table.scatter_y = 0.05;
        table.skip = 0.2;
        const auto calm = signs_of(apart(read(table, reading.value, random)));
        false_index += has(calm, ScatterCause::index_or_lock) ? 1 : 0;
        false_drift += has(calm, ScatterCause::heat_or_drift) ? 1 : 0;
        for (int p = 1; p <= table.platens; ++p)
            false_platen += has(calm, ScatterCause::platen_off, p) ? 1 : 0;
        Table loose = table;
        loose.scatter_x = 0.2;
        index +=
            has(signs_of(apart(read(loose, reading.value, random))), ScatterCause::index_or_lock)
                ? 1
                : 0;
        table.drift_y = 0.03;
        table.off_platen = 2;
        table.off = {0.25, 0.0};
        const auto both = signs_of(apart(read(table, reading.value, random)));
        drift += has(both, ScatterCause::heat_or_drift) ? 1 : 0;
        platen += has(both, ScatterCause::platen_off, 2) ? 1 : 0;
    }
    INFO("false: index " << false_index << " drift " << false_drift << " platen " << false_platen
                         << "; found: index " << index << " drift " << drift << " platen "
                         << platen);
    // Three deviations: 0.27 % by chance for each of three numbers (index: one number, one side).
    CHECK(false_index <= runs / 50);
    CHECK(false_drift <= runs / 25);
    CHECK(false_platen <= 6 * runs / 25);
    CHECK(index >= 0.98 * runs);
    CHECK(drift >= 0.98 * runs);
    CHECK(platen >= 0.98 * runs);
}

TEST_CASE("Standard errors are those of repeated readings", "[registration]") {
    const auto seed = Catch::getSeed();
    std::mt19937_64 random(seed);
    INFO("seed " << seed);
    Table table;
    table.scatter_x = 0.1;
    // The same prints are missing every time: platen 1 was read early, platen 2 late.
    const auto kept = [](const PlatenReading& one) {
        return (one.platen != 1 || one.turn <= 3) && (one.platen != 2 || one.turn >= 6);
    };
    constexpr int runs = 4000;
    double squares[4]{}, said[4]{};
    for (int i = 0; i < runs; ++i) {
        auto all = read(table, 0.0, random);
        std::vector<PlatenReading> readings;
        for (const PlatenReading& one : all)
            if (kept(one)) readings.push_back(one);
        const Scatter found = apart(readings);
        const ScatterEstimate numbers[] = {found.x.head, found.x.drift, found.x.platens[0],
                                    found.x.platens[3]};
        for (int k = 0; k < 4; ++k) {
            squares[k] += numbers[k].value * numbers[k].value / runs;
            said[k] += numbers[k].error * numbers[k].error / runs;
        }
    }
    for (int k = 0; k < 4; ++k) {
        INFO("number " << k << ": seen " << std::sqrt(squares[k]) << ", said "
                       << std::sqrt(said[k]));
        CHECK(std::abs(std::sqrt(squares[k] / said[k]) - 1.0) < 0.05); // itself known to 1.1 %
    }
}

TEST_CASE("A single mark has no rotation to take apart", "[registration]") {
    std::mt19937_64 random(1);
    auto readings = read({}, 0.0, random);
    for (PlatenReading& one : readings) one.marks.resize(1);
    const Scatter found = apart(readings);
    CHECK_FALSE(found.rotation.known);
    CHECK(found.rotation.platens.empty());
    CHECK(signs_of(found).empty());
}

TEST_CASE("Readings that say nothing about scatter are refused", "[registration]") {
    using Kind = ScatterFaultKind;
    std::mt19937_64 random(1);
    const auto good = read({3, 3, {}, 0.0, 0.0, 0.0, 0, {}, 0.0}, 0.0, random);
    CHECK(fault_in({}) == Kind::too_few_platens);
    CHECK(fault_in(read({1, 9, {}, 0.0, 0.0, 0.0, 0, {}, 0.0}, 0.0, random)) ==
          Kind::too_few_platens);
    CHECK(fault_in(read({9, 2, {}, 0.0, 0.0, 0.0, 0, {}, 0.0}, 0.0, random)) ==
          Kind::too_few_turns);
    CHECK(fault_in(good, {0.0, true}) == Kind::reading_error);
    auto repeated = good;
    repeated.push_back(good[4]);
    CHECK(fault_in(repeated) == Kind::repeated);
    auto once = good;
    once.push_back(good[0]);
    once.back().platen = 7;
    CHECK(fault_in(once) == Kind::platen_once);
    auto other = good;
    other[5].marks[1].nominal.x += 1.0;
    CHECK(fault_in(other) == Kind::other_marks);
    other = good;
    other[0].marks.clear();
    CHECK(fault_in(other) == Kind::other_marks);
    auto broken = good;
    broken[3].marks[0].measured.y = std::numeric_limits<double>::quiet_NaN();
    CHECK(fault_in(broken) == Kind::not_readable);
    auto together = good;
    for (MarkReading& mark : together[2].marks) mark.measured = {1.0, 1.0};
    CHECK(fault_in(together) == Kind::not_readable);
    CHECK(std::holds_alternative<Scatter>(scatter_of(good, reading)));
}

TEST_CASE("Student's factor for few freedoms", "[registration]") {
    // JCGM 100:2008, table G.2 (from memory): p = 95.45 %, which is two normal deviations, wants
    // 13.97, 4.53, 3.31, 2.65, 2.28 and 2.13 for 1, 2, 3, 5, 10 and 20 freedoms.
    CHECK_THAT(student_factor(2.0, 1), WithinAbs(13.97, 0.005));
    CHECK_THAT(student_factor(2.0, 2), WithinAbs(4.53, 0.005));
    CHECK_THAT(student_factor(2.0, 3), WithinAbs(3.31, 0.005));
    CHECK_THAT(student_factor(2.0, 5), WithinAbs(2.65, 0.005));
    CHECK_THAT(student_factor(2.0, 10), WithinAbs(2.28, 0.005));
    CHECK_THAT(student_factor(2.0, 20), WithinAbs(2.13, 0.005));
    CHECK_THAT(student_factor(2.0, 10'000), WithinAbs(2.0, 0.001));
    CHECK(student_factor(2.0, 0) == student_factor(2.0, 1));
}
