#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <random>
#include <string>

#include "core/rate_steps.h"
#include "tests/core/rate_samples.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;

namespace {

constexpr int cases = 10'000;
constexpr double print_time = 514.0 / 600.0 + 600.0 / 8000.0;
constexpr double flood_time = 514.0 / 700.0 + 700.0 / 8000.0;

/// The steps as letters, with the number of their stroke.
std::string letters(const std::vector<RateStep>& steps) {
    std::string text;
    for (const RateStep& step : steps) {
        switch (step.kind) {
            case StepKind::lower: text += 'v'; break;
            case StepKind::drop: text += 'd'; break;
            case StepKind::flood: text += 'F'; break;
            case StepKind::print: text += 'P'; break;
            case StepKind::empty: text += 'e'; break;
            case StepKind::dwell: text += '-'; break;
            case StepKind::lift: text += '^'; break;
            default: text += '?'; break;
        }
        if (step.stroke > 0) text += std::to_string(step.stroke);
    }
    return text;
}

std::string letters_of(const HeadPace& head, double index) {
    std::vector<RateStep> steps;
    head_steps(head, index, steps);
    return letters(steps);
}

/// The head's time by watching it: where the carriage stands and what is still to do say what it
/// does next.
double watched(const HeadPace& head, double index) {
    const double print = stroke_time(head.distance, print_limits(head));
    const double flood = stroke_time(head.distance, flood_limits(head));
    int prints = head.prints, floods = head.floods;
    if (prints == 0 && floods == 0) return 0.0;
    bool far = false, down = false;
    double now = 0.0;
    const auto come_down = [&] {
        if (!down) now = std::max(now, index) + head.lower;
        down = true;
    };
    if (!(head.floods_while_indexing && floods > 0)) come_down();
    while (prints > 0 || floods > 0 || far) {
        if (!far) {
            now += floods > 0 ? head.drop + flood : flood;
            if (floods > 0) --floods;
        } else {
            come_down();
            const bool works = prints > floods; // the last floods are each printed
            now += works ? head.drop + print : print;
            if (works) --prints;
        }
        now += head.dwell;
        far = !far;
    }
    return now + head.lift - index;
}

} // namespace

TEST_CASE("A head's time by hand", "[rate_steps]") {
    HeadPace head = sample_head();
    // Down, two drops, flood, print, up.
    const double all = 0.25 + 0.2 + flood_time + 0.2 + print_time + 0.3;
    CHECK_THAT(all, WithinAbs(2.703452, 5e-7));
    CHECK_THAT(head_seconds(head, 2.0), WithinAbs(all, 1e-12));
    CHECK(flood_in_index(head) == 0.0);
    // Flooded within 2 s of index, and with what is left of it after 0.5 s.
    head.floods_while_indexing = true;
    CHECK_THAT(flood_in_index(head), WithinAbs(0.2 + flood_time, 1e-12));
    CHECK_THAT(head_seconds(head, 2.0), WithinAbs(0.25 + 0.2 + print_time + 0.3, 1e-12));
    CHECK_THAT(head_seconds(head, 0.5), WithinAbs(all - 0.5, 1e-12));
    // Print-flood-print, the first flood within the index: of two pairs one flood is hidden.
    head.prints = head.floods = 2;
    head.dwell = 0.1;
    CHECK_THAT(head_seconds(head, 2.0),
               WithinAbs(0.25 + 3 * 0.2 + flood_time + 2 * print_time + 3 * 0.1 + 0.3, 1e-12));
    // A head without strokes stays up.
    head.prints = head.floods = 0;
    CHECK(head_seconds(head, 2.0) == 0.0);
    CHECK(letters_of(head, 2.0).empty());
}

TEST_CASE("The order of a head's work", "[rate_steps]") {
    HeadPace head = sample_head();
    CHECK(letters_of(head, 2.0) == "vd1F1d2P2^");
    head.floods_while_indexing = true;
    CHECK(letters_of(head, 2.0) == "d1F1vd2P2^");
    head.prints = head.floods = 2;
    CHECK(letters_of(head, 2.0) == "d1F1vd2P2d3F3d4P4^");
    head.floods_while_indexing = false;
    head.dwell = 0.1;
    CHECK(letters_of(head, 2.0) == "vd1F1-1d2P2-2d3F3-3d4P4-4^");
    head.dwell = 0.0;
    head.floods = 1; // printed again without fresh ink
    CHECK(letters_of(head, 2.0) == "vd1F1d2P2e3d4P4^");
    head.floods = 2;
    head.prints = 1; // flooded twice
    CHECK(letters_of(head, 2.0) == "vd1F1e2d3F3d4P4^");
    head.floods = 0;
    CHECK(letters_of(head, 2.0) == "ve1d2P2^");
}

TEST_CASE("Steps start where the last one ended", "[rate_steps]") {
    HeadPace head = sample_head();
    std::vector<RateStep> steps;
    head_steps(head, 2.0, steps);
    REQUIRE(steps.size() == 6);
    CHECK(steps.front().start == 2.0);
    CHECK_THAT(steps[2].start, WithinAbs(2.45, 1e-12));
    CHECK_THAT(steps[2].length, WithinAbs(flood_time, 1e-12));
    head.floods_while_indexing = true;
    head_steps(head, 2.0, steps);
    CHECK(steps.front().start == 0.0);
    CHECK(steps[2].kind == StepKind::lower);
    CHECK(steps[2].start == 2.0); // waits for the table
    head_steps(head, 0.5, steps);
    CHECK_THAT(steps[2].start, WithinAbs(0.2 + flood_time, 1e-12)); // waits for the flood
}

TEST_CASE("10,000 heads take the time that they are seen to take", "[rate_steps]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::uniform_real_distribution<double> index_of(0.2, 3.0);
    std::vector<RateStep> steps;
    int hidden = 0, outlasting = 0, uneven = 0;
    for (int i = 0; i < cases; ++i) {
        CAPTURE(i);
        const HeadPace head = random_head(random);
        const double index = index_of(random);
        const double seconds = head_seconds(head, index);
        CHECK_THAT(seconds, WithinAbs(watched(head, index), 1e-11));
        head_steps(head, index, steps);
        double end = 0.0;
        for (const RateStep& step : steps) {
            CHECK(step.length > 0.0);
            CHECK(step.start >= end - 1e-12);
            end = step.end();
        }
        if (!steps.empty()) CHECK_THAT(std::max(end, index) - index, WithinAbs(seconds, 1e-11));
        const double early = flood_in_index(head);
        hidden += early > 0.0 && early <= index ? 1 : 0;
        outlasting += early > index ? 1 : 0;
        uneven += head.prints != head.floods ? 1 : 0;
    }
    for (const int kind : {hidden, outlasting, uneven}) CHECK(kind >= cases / 50);
}

TEST_CASE("The slopes of a head's time are those of its time", "[rate_steps]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::uniform_real_distribution<double> index_of(0.2, 3.0);
    int looked_at = 0;
    for (int i = 0; i < cases; ++i) {
        CAPTURE(i);
        const HeadPace head = random_head(random);
        const double index = index_of(random);
        const HeadSlope slope = head_slope(head, index);
        const auto matches = [&](double HeadPace::*number, double ours, double step) {
            HeadPace less = head, more = head;
            less.*number -= step;
            more.*number += step;
            if (less.*number <= 0.0) return;
            const double now = head_seconds(head, index);
            const double below = (now - head_seconds(less, index)) / step;
            const double above = (head_seconds(more, index) - now) / step;
            // Where the forms of a stroke meet, or the flood just fills the index, there is no one
            // slope; elsewhere both sides agree but for rounding and bend.
            if (std::abs(above - below) > 1e-4 * std::abs(above) + 1e-7) return;
            ++looked_at;
            CHECK_THAT(ours, WithinAbs(0.5 * (above + below), 1e-4 * std::abs(above) + 2e-7));
        };
        matches(&HeadPace::distance, slope.distance, 1e-3);
        matches(&HeadPace::print_speed, slope.print_speed, 1e-3);
        matches(&HeadPace::flood_speed, slope.flood_speed, 1e-3);
        matches(&HeadPace::drop, slope.drop, 1e-6);
        matches(&HeadPace::dwell, slope.dwell, 1e-6);
        matches(&HeadPace::lower, slope.lower, 1e-6);
        matches(&HeadPace::lift, slope.lift, 1e-6);
    }
    CHECK(looked_at >= 5 * cases); // of seven each, dwells being 0 in half of them
}

TEST_CASE("The carriage moves without a jump and ends where it began", "[rate_steps]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::vector<RateStep> steps;
    for (int i = 0; i < 300; ++i) {
        CAPTURE(i);
        const HeadPace head = random_head(random);
        const double index = 0.8;
        head_steps(head, index, steps);
        const double end = index + head_seconds(head, index);
        const double fastest = std::max(head.print_speed, head.flood_speed);
        constexpr double step = 2e-3;
        double last = 0.0, farthest = 0.0;
        for (double time = 0.0; time < end + 0.1; time += step) {
            const CarriageMoment moment = carriage_moment(head, steps, time);
            if (std::abs(moment.place - last) > fastest * step * (1.0 + 1e-9)) {
                CAPTURE(time, last, moment.place);
                FAIL_CHECK("the carriage jumps");
            }
            if (moment.speed != 0.0) {
                const bool out = moment.doing == StepKind::flood ||
                                 (moment.doing == StepKind::empty && moment.speed > 0.0);
                const bool back = moment.doing == StepKind::print ||
                                  (moment.doing == StepKind::empty && moment.speed < 0.0);
                CHECK((out || back));
                CHECK((moment.doing != StepKind::flood || moment.speed > 0.0));
                CHECK((moment.doing != StepKind::print || moment.speed < 0.0));
            }
            last = moment.place;
            farthest = std::max(farthest, moment.place);
        }
        CHECK_THAT(last, WithinAbs(0.0, 1e-9));
        if (!steps.empty()) CHECK_THAT(farthest, WithinAbs(head.distance, fastest * step));
        CHECK(carriage_moment(head, steps, -1.0).doing == StepKind::index);
        CHECK(carriage_moment(head, steps, std::nan("")).doing == StepKind::index);
        if (!steps.empty()) CHECK(carriage_moment(head, steps, end + 9.0).doing == StepKind::wait);
    }
}
