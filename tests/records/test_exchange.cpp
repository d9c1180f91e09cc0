// Jobs, presses and edits written as text and read again.
#include <algorithm>
#include <array>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <cstring>
#include <limits>
#include <locale>
#include <nlohmann/json.hpp>
#include <set>

#include "app/records/exchange.h"
#include "app/records/form.h"
#include "app/records/job_form.h"
#include "app/text/words.h"
#include "tests/records/random_job.h"
#include "tests/samples.h"

using namespace carriageway;
using Kind = ReadFault::Kind;

namespace {

std::string why(const ReadFault& fault) {
    return fault_sentence(Language::english, fault);
}

// Equal as bits, so that the sign of zero counts as well.
bool same_bits(double a, double b) {
    return std::memcmp(&a, &b, sizeof a) == 0;
}

bool same_numbers(const Job& a, const Job& b) {
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const auto field = static_cast<Field>(i);
        if (info_of(field).owner != FieldOwner::head) {
            if (!same_bits(number_of(a, nullptr, field), number_of(b, nullptr, field))) return false;
            continue;
        }
        for (std::size_t h = 0; h < a.heads.size(); ++h) {
            if (!same_bits(number_of(a, &a.heads[h], field), number_of(b, &b.heads[h], field))) {
                return false;
            }
        }
    }
    return true;
}

class CommaForPoint : public std::numpunct<char> {
  protected:
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

}  // namespace

TEST_CASE("every accepted job is read back exactly as it was written") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed());
    std::size_t heads = 0;
    for (int i = 0; i < sample_count(2000); ++i) {
        const Job job = random.job();
        REQUIRE_FALSE(fault_of(job));
        const std::string text = write_job(job);
        const ReadJob read = read_job(text);
        INFO("job " << i << ": " << why(read.fault));
        REQUIRE(read);
        REQUIRE(*read.job == job);
        REQUIRE(same_numbers(*read.job, job));
        REQUIRE(write_job(*read.job) == text);
        heads += job.heads.size();
    }
    CHECK(heads > sample_count(2000));
}

TEST_CASE("every press profile is read back exactly as it was written") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed() + 1);
    for (int i = 0; i < sample_count(2000); ++i) {
        const PressProfile press = random.press();
        const ReadPress read = read_press(write_press(press));
        INFO("press " << i << ": " << why(read.fault));
        REQUIRE(read);
        REQUIRE(*read.press == press);
    }
}

TEST_CASE("edits of every kind are read back exactly as they were written") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed() + 2);
    std::array<int, std::variant_size_v<decltype(Edit::what)>> kinds{};
    for (int i = 0; i < 5000; ++i) {
        const Edit edit = random.edit();
        const std::string text = write_edit(edit);
        const ReadEdit read = read_edit(text);
        INFO("edit " << i << ": " << why(read.fault) << "\n" << text);
        REQUIRE(read);
        REQUIRE(*read.edit == edit);
        REQUIRE(std::count(text.begin(), text.end(), '\n') == 1);
        ++kinds[edit.what.index()];
    }
    for (const int count : kinds) CHECK(count > 0);
}

TEST_CASE("an edit's inverse undoes it after both were written and read") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed() + 3);
    int done = 0;
    for (int i = 0; i < sample_count(3000); ++i) {
        const Job before = random.job();
        Job job = before;
        const ReadEdit edit = read_edit(write_edit(random.edit()));
        REQUIRE(edit);
        const Applied applied = apply(job, *edit.edit);
        if (!applied) continue;
        const ReadEdit inverse = read_edit(write_edit(*applied.inverse));
        INFO("edit " << i << ": " << why(inverse.fault));
        REQUIRE(inverse);
        REQUIRE(apply(job, *inverse.edit));
        REQUIRE(job == before);
        ++done;
    }
    CHECK(done > sample_count(100));
}

TEST_CASE("every number of the table stands in a job file at its key, in its unit") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed() + 4);
    Job job = random.job();
    while (job.heads.size() < 2) job = random.job();
    for (Head& head : job.heads) head.image.outline.clear();
    // Angles that degrees give exactly, so that they stand there in degrees.
    for (Head& head : job.heads) {
        head.image.rotation = radians(-30.0);
        head.squeegee.angle = radians(12.5);
        head.flood.angle = radians(15.0);
    }
    job.press.angles = {radians(5.0), radians(25.0), radians(24.9), 30.0};
    // Numbers that are left out where they are 0.
    for (Head& head : job.heads) {
        head.squeegee.hardness = 70.0;
        head.wish.order = head.wish.cool_after = head.wish.screen_on = 1.0;
    }
    job.run.flash_temperature = job.run.dryer_temperature = job.run.dryer_time = 160.0;
    const auto json = nlohmann::json::parse(write_job(job));
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const FieldInfo& info = info_of(static_cast<Field>(i));
        std::string pointer = "/" + path_of(info.field, 1);
        for (const char mark : {'.', '['}) {
            std::replace(pointer.begin(), pointer.end(), mark, '/');
        }
        pointer.erase(std::remove(pointer.begin(), pointer.end(), ']'), pointer.end());
        INFO(pointer);
        const nlohmann::json::json_pointer at(pointer);
        REQUIRE(json.contains(at));
        CHECK(json.at(at).get<double>() * file_factor(info.quantity) ==
              number_of(job, &job.heads[1], info.field));
    }
}

TEST_CASE("degrees are written as a person would") {
    for (int tenths = -1800; tenths <= 1800; ++tenths) {
        const double angle = tenths / 10.0;
        const auto written = number_in_file(radians(angle), rad_per_degree);
        REQUIRE(written);
        CHECK(radians(*written) == radians(angle));
        CHECK(number_text(*written).size() <= number_text(angle).size());
    }
    CHECK(number_text(*number_in_file(radians(15.0), rad_per_degree)) == "15");
}

TEST_CASE("an angle that no number of degrees gives is written in radians") {
    Job job;
    job.uses.resize(10);
    job.heads.emplace_back();
    job.heads[0].id = 1;
    job.heads[0].station = 1;
    // Above 16 degrees neighbouring degrees are farther apart than neighbouring radians.
    double angle = radians(20.0);
    int steps = 0;
    while (number_in_file(angle, rad_per_degree) && ++steps < 1000) {
        angle = std::nextafter(angle, 1.0);
    }
    REQUIRE(steps < 1000);
    job.heads[0].squeegee.angle = angle;
    const std::string text = write_job(job);
    CHECK(text.find("\"angle_rad\": 0.349") != std::string::npos);
    const ReadJob read = read_job(text);
    INFO(why(read.fault));
    REQUIRE(read);
    CHECK(same_bits(read.job->heads[0].squeegee.angle, angle));
}

TEST_CASE("numbers are written short, without the locale, and read back exactly") {
    const std::locale before = std::locale::global(std::locale(std::locale(), new CommaForPoint));
    CHECK(number_text(600.0) == "600");
    CHECK(number_text(0.015) == "0.015");
    CHECK(number_text(-1234567.5) == "-1234567.5");
    CHECK(number_text(0.1 + 0.2) == "0.30000000000000004");
    CHECK(number_text(-0.0) == "-0.0");
    CHECK(number_text(1.0 / 3.0) == "0.3333333333333333");
    const ReadPress read = read_press(write_press(PressProfile{}));
    std::locale::global(before);
    REQUIRE(read);
    CHECK(*read.press == PressProfile{});
}

TEST_CASE("the size set aside beside an outline is kept") {
    Job job;
    job.uses.resize(10);
    job.heads.emplace_back();
    job.heads[0].id = 1;
    job.heads[0].station = 1;
    job.heads[0].image.outline = {{0, 0}, {100, 0}, {0, 100}};
    CHECK(write_job(job).find("set_aside") == std::string::npos);
    job.heads[0].image.width = 123.0;
    CHECK(write_job(job).find("set_aside") != std::string::npos);
    const ReadJob read = read_job(write_job(job));
    INFO(why(read.fault));
    REQUIRE(read);
    CHECK(*read.job == job);
}

TEST_CASE("damaged files are refused or read, never half read") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed() + 5);
    Job job = random.job();
    while (job.heads.size() < 2) job = random.job();
    const std::string whole = write_job(job);
    int refused = 0;
    for (int i = 0; i < sample_count(5000); ++i) {
        std::string text = whole;
        switch (random.below(4)) {
            case 0: text[random.below(text.size())] = static_cast<char>(random.below(256)); break;
            case 1: text.erase(random.below(text.size()), 1 + random.below(40)); break;
            case 2: text.resize(random.below(text.size())); break;
            default: {
                const std::string piece = text.substr(random.below(text.size()), random.below(60));
                text.insert(random.below(text.size()), piece);
            }
        }
        const ReadJob read = read_job(text);
        REQUIRE(read.job.has_value() == (read.fault.kind == Kind::none));
        if (read) {
            REQUIRE_FALSE(fault_of(*read.job));
            const ReadJob again = read_job(write_job(*read.job));
            REQUIRE(again);
            REQUIRE(*again.job == *read.job);
        } else {
            REQUIRE_FALSE(why(read.fault).empty());
            ++refused;
        }
    }
    CHECK(refused > sample_count(2500));
}

TEST_CASE("one document isn't taken for another") {
    const std::string press = write_press(PressProfile{});
    const ReadFault fault = read_job(press).fault;
    CHECK(fault.kind == Kind::wrong_document);
    CHECK(fault.found == press_key);
    CHECK(fault.expected == job_key);
    CHECK(read_edit(press).fault.kind == Kind::wrong_document);
    CHECK(read_press(write_edit({SetWinged{1, true}})).fault.kind == Kind::wrong_document);
}
