#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <limits>
#include <set>
#include <string>
#include <string_view>

#include "core/fields.h"
#include "tests/core/sample_job.h"

using namespace carriageway;

namespace {

bool ends_with(std::string_view text, std::string_view ending) {
    return text.size() >= ending.size() && text.substr(text.size() - ending.size()) == ending;
}

std::string_view unit_of(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return "mm";
        case Quantity::thread:
            return "_um";
        case Quantity::angle:
            return "_deg";
        case Quantity::speed:
            return "_mm_per_s";
        case Quantity::acceleration:
            return "_mm_per_s2";
        case Quantity::time:
            return "_s";
        case Quantity::tension:
            return "_n_per_cm";
        case Quantity::mesh_count:
            return "_per_cm";
        case Quantity::marks:
            return "_marks";
        case Quantity::pressure:
            return "_kpa";
        case Quantity::share:
            return "_share";
        case Quantity::temperature:
            return "_c";
        case Quantity::warming:
            return "_c_per_s";
        case Quantity::volume:
            return "_cm3";
        case Quantity::turns:
            return "_turns";
        case Quantity::jerk:
            return "_mm_per_s3";
        case Quantity::hardness:
            return "_shore_a";
        case Quantity::ratio:
        case Quantity::count:
            return "";
    }
    return "no unit";
}

template <typename Visit>
void for_each_field(Visit visit) {
    for (int i = 0; i < static_cast<int>(Field::count); ++i)
        visit(static_cast<Field>(i));
}

}  // namespace

TEST_CASE("every field has a key of its own that names its unit", "[fields]") {
    std::set<std::pair<FieldOwner, std::string>> keys;
    for_each_field([&keys](Field field) {
        const FieldInfo& info = info_of(field);
        INFO(info.key);
        CHECK(info.field == field);
        CHECK(info.least < info.most);
        CHECK(keys.insert({info.owner, info.key}).second);
        const std::string_view key = info.key;
        // Travel per mark is a length that names the mark too.
        CHECK((ends_with(key, unit_of(info.quantity)) || ends_with(key, "mm_per_mark")));
    });
    CHECK(keys.size() == static_cast<std::size_t>(Field::count));
}

TEST_CASE("every field leads to a number of its own", "[fields]") {
    Job job = sample::one_head();
    Head& head = job.heads.front();
    double next = 1000.0;
    for_each_field([&](Field field) { number_of(job, &head, field) = next++; });
    next = 1000.0;
    const Job& fixed = job;
    for_each_field([&](Field field) {
        INFO(info_of(field).key);
        CHECK(number_of(fixed, &fixed.heads.front(), field) == next);
        if (info_of(field).owner == FieldOwner::press) CHECK(number_of(job.press, field) == next);
        next += 1.0;
    });
    CHECK(head.screen.across == 1000.0);
    CHECK(head.stops.machine_side ==
          1000.0 + static_cast<double>(static_cast<int>(Field::machine_stop)));
    CHECK(job.press.allowances.overtravel.value ==
          1000.0 + static_cast<double>(static_cast<int>(Field::overtravel_spread)));
}

TEST_CASE("the defaults are within the limits", "[fields]") {
    const Job job = sample::one_head();
    for_each_field([&job](Field field) {
        INFO(info_of(field).key);
        CHECK(accepts(field, number_of(job, &job.heads.front(), field)));
    });
}

TEST_CASE("limits belong to what is accepted, anything beyond or not finite does not", "[fields]") {
    for_each_field([](Field field) {
        const FieldInfo& info = info_of(field);
        INFO(info.key);
        CHECK(accepts(field, info.least));
        CHECK(accepts(field, info.most));
        CHECK_FALSE(accepts(field, std::nextafter(info.least, -1e9)));
        CHECK_FALSE(accepts(field, std::nextafter(info.most, 1e9)));
        CHECK_FALSE(accepts(field, std::numeric_limits<double>::quiet_NaN()));
        CHECK_FALSE(accepts(field, std::numeric_limits<double>::infinity()));
        CHECK_FALSE(accepts(field, -std::numeric_limits<double>::infinity()));
    });
}

TEST_CASE("files have degrees for angles and the core's own unit for the rest", "[fields]") {
    CHECK(std::abs(radians(15.0) / file_factor(Quantity::angle) - 15.0) < 1e-12);
    CHECK(file_factor(Quantity::length) == 1.0);
    CHECK(file_factor(Quantity::time) == 1.0);
    CHECK(std::string(info_of(Field::squeegee_angle).key) == "squeegee.angle_deg");
    CHECK(std::string(info_of(Field::print_speed).key) == "print_speed_mm_per_s");
    CHECK(std::string(info_of(Field::operator_stop).key) == "stops.operator_mm");
    CHECK(std::string(info_of(Field::squeegee_hardness).key) == "squeegee.hardness_shore_a");
    CHECK(std::string(info_of(Field::jerk).key) == "pace.jerk_mm_per_s3");
}

TEST_CASE("angles from 5 to 25 degrees are accepted (common practice, no source)", "[fields]") {
    CHECK(accepts(Field::squeegee_angle, radians(5.0)));
    CHECK(accepts(Field::squeegee_angle, radians(25.0)));
    CHECK(accepts(Field::flood_angle, radians(5.0)));
    CHECK(accepts(Field::flood_angle, radians(25.0)));
}

TEST_CASE("what was not noted or not limited is 0, and a whole number is whole", "[fields]") {
    for (Field field : {Field::squeegee_hardness, Field::flash_temperature, Field::dryer_temperature,
                        Field::dryer_time, Field::jerk, Field::print_order, Field::screen_on})
        CHECK(accepts(field, 0.0));
    for (Field field : {Field::print_order, Field::cool_after, Field::screen_on}) {
        CHECK(accepts(field, 2.0));
        CHECK_FALSE(accepts(field, 2.5));
    }
    // Shore A ends at 100 (ISO 48-4:2018, from memory).
    CHECK(accepts(Field::squeegee_hardness, 100.0));
    CHECK_FALSE(accepts(Field::squeegee_hardness, 101.0));
}
