// Numbers as people read and type them.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <clocale>
#include <cmath>
#include <limits>
#include <random>
#include <string>

#include "app/text/measure.h"
#include "core/units.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr LengthUnit mm = LengthUnit::mm;
constexpr LengthUnit inch = LengthUnit::inch;

struct Typed {
    const char* text;
    LengthUnit bare;
    double mm;
};

}  // namespace

// ---- writing ----

TEST_CASE("lengths are written with their unit") {
    CHECK(format_length(44.0, mm) == "44 mm");
    CHECK(format_length(0.5, mm) == "0.5 mm");
    CHECK(format_length(-12.25, mm) == "-12.3 mm");
    CHECK(format_length(43.96, mm) == "44 mm");
    CHECK(format_length(88.0, inch) == "3.46 in");
    CHECK(format_length(25.4, inch) == "1.00 in");
    CHECK(plain_length(44.0, mm) == "44");
    CHECK(plain_length(88.0, inch) == "3.46");
}

TEST_CASE("what rounds to nothing has no sign, and what is no number says so") {
    CHECK(format_length(-0.04, mm) == "0 mm");
    CHECK(format_length(-0.0, mm) == "0 mm");
    CHECK(format_length(-0.01, inch) == "0.00 in");
    CHECK(format_length(std::numeric_limits<double>::quiet_NaN(), mm) == "? mm");
    CHECK(format_length(std::numeric_limits<double>::infinity(), mm) == "? mm");
    CHECK(format_length(1e300, inch) == "? in");
    CHECK(format_fixed(999999999999.0, 6) == "999999999999.000000");
    CHECK(format_share(std::numeric_limits<double>::quiet_NaN()) == "? %");
}

TEST_CASE("angles, speeds, times and shares") {
    CHECK(format_angle(radians(15.0)) == "15°");
    CHECK(format_angle(radians(12.5)) == "12.5°");
    CHECK(format_speed(600.0, mm) == "0.60 m/s");
    CHECK(format_speed(600.0, inch) == "23.6 in/s");
    CHECK(format_time(1.234) == "1.2 s");
    CHECK(format_time(0.015) == "15 ms");
    CHECK(format_time(0.0) == "0.0 s");
    CHECK(format_share(1.0) == "100 %");
    CHECK(format_share(0.934) == "93.4 %");
    CHECK(format_share(0.99999) == "99.9 %");  // never the whole when some is missed
    CHECK(format_share(0.0) == "0 %");
    CHECK(format_share(0.3) == "30 %");  // 0.3 is stored a little below
}

TEST_CASE("chances are told in shirts") {
    CHECK(format_chance(Language::english, 0.0025) == "1 in 400 shirts");
    CHECK(format_chance(Language::spanish, 0.0025) == "1 de cada 400 camisetas");
    CHECK(format_chance(Language::english, 1.0 / 1234.0) == "1 in 1200 shirts");
    CHECK(format_chance(Language::english, 0.05) == "1 in 20 shirts");
    CHECK(format_chance(Language::english, 0.3) == "30 % of all shirts");
    CHECK(format_chance(Language::english, 0.9999) == "99 % of all shirts");
    CHECK(format_chance(Language::english, 1.0) == "every shirt");
    CHECK(format_chance(Language::english, 1e-9) == "less than 1 in 1000000 shirts");
    CHECK(format_chance(Language::english, 0.0) == "no shirt");
    CHECK(format_chance(Language::english, std::nan("")) == "no shirt");
}

TEST_CASE("a ruler shows what a person reads on it") {
    Ruler ruler;  // zero at -500, growing toward the machine
    CHECK(plain_ruler(ruler, -268.0) == "232");
    CHECK(format_ruler(ruler, -268.0) == "232 mm");
    CHECK(plain_ruler(ruler, -267.5) == "232.5");
    ruler.counts = Direction::toward_operator;
    ruler.zero = 500.0;
    CHECK(plain_ruler(ruler, 268.0) == "232");
    ruler.inches = true;
    ruler.graduation = mm_per_inch / 16.0;
    CHECK(plain_ruler(ruler, 500.0 - 9.125 * mm_per_inch) == "9 1/8");
    CHECK(format_ruler(ruler, 500.0 - 9.0 * mm_per_inch) == "9 in");
    CHECK(plain_ruler(ruler, 500.0 - 0.5 * mm_per_inch) == "1/2");
    CHECK(plain_ruler(ruler, 500.0) == "0");
    CHECK(plain_ruler(ruler, 500.0 + 1.25 * mm_per_inch) == "-1 1/4");
    CHECK(plain_ruler(ruler, 500.0 - 9.13 * mm_per_inch) == "9.13");  // between marks
    ruler.graduation = 0.1 * mm_per_inch;  // marks of tenths are read as tenths
    CHECK(plain_ruler(ruler, 500.0 - 9.5 * mm_per_inch) == "9.50");
}

TEST_CASE("any number of a job is written with the unit that it is typed in") {
    const Language english = Language::english;
    CHECK(format_quantity(english, 356.0, Quantity::length, mm) == "356 mm");
    CHECK(format_quantity(english, 1.5875, Quantity::length, mm) == "1.5875 mm");
    CHECK(format_quantity(english, 355.6, Quantity::length, inch) == "14 in");
    CHECK(format_quantity(english, radians(15.0), Quantity::angle, mm) == "15°");
    CHECK(format_quantity(english, 600.0, Quantity::speed, mm) == "0.6 m/s");
    CHECK(format_quantity(english, 8000.0, Quantity::acceleration, mm) == "8 m/s²");
    CHECK(format_quantity(english, 0.015, Quantity::time, mm) == "0.015 s");
    CHECK(format_quantity(english, 25.0, Quantity::tension, mm) == "25 N/cm");
    CHECK(format_quantity(english, 62.0, Quantity::mesh_count, mm) == "62 threads/cm");
    CHECK(format_quantity(Language::spanish, 62.0, Quantity::mesh_count, mm) == "62 hilos/cm");
    CHECK(format_quantity(english, 1.1, Quantity::marks, mm) == "1.1 marks");
    CHECK(format_quantity(english, 64.0, Quantity::thread, mm) == "64 µm");
}

TEST_CASE("the locale plays no part") {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    for (const char* name : {"de_DE.UTF-8", "es_ES.UTF-8", "fr_FR.UTF-8", "C.UTF-8"}) {
        if (std::setlocale(LC_ALL, name) == nullptr) continue;  // not installed here
        CHECK(format_length(0.5, mm) == "0.5 mm");
        CHECK(read_length("8.9 cm", mm) == 89.0);
    }
    std::setlocale(LC_ALL, before.c_str());
}

// ---- reading ----

TEST_CASE("lengths are read as people type them") {
    // 1 in = 25.4 mm, 1 ft = 12 in: exact by definition (NIST SP 811, B.8).
    const Typed typed = GENERATE(
        // bare numbers
        Typed{"89", mm, 89.0}, Typed{"89", inch, 2260.6}, Typed{"  89  ", mm, 89.0},
        Typed{"0", mm, 0.0}, Typed{"89.", mm, 89.0}, Typed{".5", mm, 0.5}, Typed{"007", mm, 7.0},
        Typed{"8,9", mm, 8.9}, Typed{"0,125", inch, 3.175}, Typed{"+12", mm, 12.0},
        Typed{"-12.5", mm, -12.5},
        Typed{"\xE2\x88\x92"
              "12.5",
              mm, -12.5},
        // units
        Typed{"89 mm", inch, 89.0}, Typed{"89mm", inch, 89.0}, Typed{"8.9 cm", inch, 89.0},
        Typed{"8,9 cm", mm, 89.0}, Typed{"0.089 m", mm, 89.0}, Typed{"89 MM", inch, 89.0},
        Typed{"3.5 in", mm, 88.9}, Typed{"3.5in.", mm, 88.9}, Typed{"3.5\"", mm, 88.9},
        Typed{"3.5\xE2\x80\xB3", mm, 88.9}, Typed{"3.5\xE2\x80\x9D", mm, 88.9},
        Typed{"3 inches", mm, 76.2}, Typed{"1 inch", mm, 25.4}, Typed{"2 pulgadas", mm, 50.8},
        Typed{"2 pulg.", mm, 50.8}, Typed{"2''", mm, 50.8}, Typed{"89\xC2\xA0mm", inch, 89.0},
        // fractions
        Typed{"3 1/2 in", mm, 88.9}, Typed{"3-1/2\"", mm, 88.9}, Typed{"3 - 1/2 in", mm, 88.9},
        Typed{"1/2 in", mm, 12.7}, Typed{"7/2 in", mm, 88.9}, Typed{"3 1/2", inch, 88.9},
        Typed{"3 1/2", mm, 3.5}, Typed{"\xC2\xBD in", mm, 12.7}, Typed{"3\xC2\xBD in", mm, 88.9},
        Typed{"3 \xC2\xBD\"", mm, 88.9}, Typed{"3\xE2\x85\x9B in", mm, 79.375},
        Typed{"3 1\xE2\x81\x84"
              "2 in",
              mm, 88.9},
        Typed{"-3 1/2 in", mm, -88.9}, Typed{"9 15/16 in", mm, 252.4125},
        Typed{"3\xE2\x80\x93"
              "1/2 in",
              mm, 88.9},
        // feet
        Typed{"1 ft", mm, 304.8}, Typed{"1.5 ft", mm, 457.2}, Typed{"1 ft 2 in", mm, 355.6},
        Typed{"1' 2\"", mm, 355.6}, Typed{"1'2\"", mm, 355.6}, Typed{"1' 2 1/2\"", mm, 368.3},
        Typed{"-1 ft 2 in", mm, -355.6}, Typed{"1 pie 2 pulgadas", mm, 355.6});
    INFO(typed.text);
    const std::optional<double> read = read_length(typed.text, typed.bare);
    REQUIRE(read.has_value());
    CHECK_THAT(*read, WithinAbs(typed.mm, 1e-9));
}

TEST_CASE("what is no length is refused") {
    const char* text = GENERATE(
        "", " ", "mm", "in", "abc", ".", ",", "-", "+", "--3", "+-3", "3 mm 4", "3 4", "12 34 mm",
        "3..5", "3.5.1", "3,5,1", "1,234.5", "1.234,5", "1,500", "12,345 mm", "1e3", "1e400",
        "0x10", "nan", "NaN", "inf", "Infinity", "-inf", "3 kg", "3 m/s", "3 mmm", "3-mm", "3 in 2",
        "1/0 in", "3 1/0 in", "3 3/2 in", "3 2/2 in", "1/", "/2", "3 1/", "3 /2", "1/2/3",
        "3 1/-2 in", "3.5 1/2 in", "\xC2\xBD\xC2\xBD in", "1 in 2 ft", "1 ft 12 in", "1.5 ft 2 in",
        "1' 2", "1 ft 2 mm", "1 ft -2 in", "3 in in", "1234567890123456", "9999999999",
        "0.1234567890123456", "1234567/8 in", "10000000 m", "3\n4", "3\x01", "\xFF", "\xC2",
        "\xE2\x82\xAC"
        "3",
        "3 mm\xE2\x80\x8B", "3;4", "3 mm.5");
    INFO(text);
    CHECK_FALSE(read_length(text, mm).has_value());
    CHECK_FALSE(read_length(text, inch).has_value());
}

TEST_CASE("text with a zero byte in it is refused") {
    CHECK_FALSE(read_length(std::string_view("3\0mm", 4), mm).has_value());
}

TEST_CASE("other quantities are read in their own units") {
    const auto read = [](const char* text, Quantity quantity, LengthUnit bare = mm) {
        const std::optional<double> value = read_quantity(text, quantity, bare);
        return value ? *value : std::nan("");
    };
    CHECK_THAT(read("15", Quantity::angle), WithinAbs(radians(15.0), 1e-12));
    CHECK_THAT(read("12,5°", Quantity::angle), WithinAbs(radians(12.5), 1e-12));
    CHECK_THAT(read("15 grados", Quantity::angle), WithinAbs(radians(15.0), 1e-12));
    CHECK_THAT(read("0.6", Quantity::speed), WithinAbs(600.0, 1e-9));
    CHECK_THAT(read("0.6 m/s", Quantity::speed, inch), WithinAbs(600.0, 1e-9));
    CHECK_THAT(read("24", Quantity::speed, inch), WithinAbs(609.6, 1e-9));
    CHECK_THAT(read("600 mm/s", Quantity::speed), WithinAbs(600.0, 1e-9));
    CHECK_THAT(read("8 m/s²", Quantity::acceleration), WithinAbs(8000.0, 1e-9));
    CHECK_THAT(read("8 m/s2", Quantity::acceleration), WithinAbs(8000.0, 1e-9));
    CHECK_THAT(read("15 ms", Quantity::time), WithinAbs(0.015, 1e-12));
    CHECK_THAT(read("25 N/cm", Quantity::tension), WithinAbs(25.0, 1e-12));
    CHECK_THAT(read("62", Quantity::mesh_count), WithinAbs(62.0, 1e-12));
    CHECK_THAT(read("62 threads/cm", Quantity::mesh_count), WithinAbs(62.0, 1e-12));
    CHECK_THAT(read("62/cm", Quantity::mesh_count), WithinAbs(62.0, 1e-12));
    // 120 threads a cm are 304.8 an inch: a trade magazine's table of mesh counts.
    CHECK_THAT(read("304.8/in", Quantity::mesh_count), WithinAbs(120.0, 1e-9));
    CHECK_THAT(read("64 µm", Quantity::thread), WithinAbs(64.0, 1e-12));
    CHECK_THAT(read("1,1 marcas", Quantity::marks), WithinAbs(1.1, 1e-12));
    CHECK_THAT(read("60000 mm/s³", Quantity::jerk), WithinAbs(60000.0, 1e-9));
    CHECK_THAT(read("60 m/s³", Quantity::jerk, inch), WithinAbs(60000.0, 1e-9));
    CHECK_THAT(read("60000", Quantity::jerk, inch), WithinAbs(60000.0, 1e-9));
    CHECK_THAT(read("70 Shore A", Quantity::hardness), WithinAbs(70.0, 1e-12));
    CHECK_THAT(read("72,5", Quantity::hardness), WithinAbs(72.5, 1e-12));
    CHECK_THAT(read("150 cm³", Quantity::volume), WithinAbs(150.0, 1e-12));
    CHECK(std::isnan(read("8 m/s²", Quantity::jerk)));
    CHECK(std::isnan(read("70 mm", Quantity::hardness)));
    CHECK(std::isnan(read("15 mm", Quantity::angle)));
    CHECK(std::isnan(read("15°", Quantity::length)));
    CHECK(std::isnan(read("0.6 s", Quantity::speed)));
    CHECK(std::isnan(read("nan", Quantity::time)));
}

TEST_CASE("plain numbers") {
    CHECK(read_number("15") == 15.0);
    CHECK(read_number("-0,5") == -0.5);
    CHECK(read_number("1/4") == 0.25);
    CHECK_FALSE(read_number("15 mm").has_value());
    CHECK_FALSE(read_number("15 marks").has_value());
    CHECK_FALSE(read_number("").has_value());
}

TEST_CASE("what is written reads back") {
    const std::uint32_t seed = Catch::getSeed();
    INFO("seed " << seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> any(-2000.0, 2000.0);
    const Quantity quantities[] = {Quantity::length,  Quantity::thread,     Quantity::angle,
                                   Quantity::speed,   Quantity::time,       Quantity::acceleration,
                                   Quantity::tension, Quantity::mesh_count, Quantity::marks,
                                   Quantity::jerk,    Quantity::hardness,   Quantity::volume};
    for (int round = 0; round < 2000; ++round) {
        for (const Quantity quantity : quantities) {
            for (const LengthUnit unit : {mm, inch}) {
                for (const Language language : {Language::english, Language::spanish}) {
                    const double value = any(random);
                    const std::string text = format_quantity(language, value, quantity, unit);
                    INFO(text);
                    const std::optional<double> back = read_quantity(text, quantity, mm);
                    REQUIRE(back.has_value());
                    // Four decimals of the unit shown: half of the last is at most 0.05 mm/s.
                    CHECK_THAT(*back, WithinAbs(value, 0.0501));
                }
            }
        }
    }
}

TEST_CASE("ruler readings in fractions read back") {
    Ruler ruler;
    ruler.inches = true;
    ruler.zero = 0.0;
    ruler.graduation = mm_per_inch / 32.0;
    for (int marks = 0; marks < 1280; ++marks) {
        const double y = ruler.graduation * marks;
        const std::string text = format_ruler(ruler, y);
        INFO(text);
        const std::optional<double> back = read_length(text, LengthUnit::mm);
        REQUIRE(back.has_value());
        CHECK_THAT(*back, WithinAbs(y, 1e-9));
    }
}

TEST_CASE("no typed text brings the reader down") {
    const std::uint32_t seed = Catch::getSeed();
    INFO("seed " << seed);
    std::mt19937 random(seed);
    const std::string letters = "0123456789 .,-+/'\"inmftcd\xC2\xBD\xB0\xE2\x85\x9B";
    std::uniform_int_distribution<std::size_t> pick(0, letters.size() - 1);
    std::uniform_int_distribution<int> size(0, 12);
    int accepted = 0;
    for (int round = 0; round < 200000; ++round) {
        std::string text;
        for (int left = size(random); left > 0; --left)
            text += letters[pick(random)];
        const std::optional<double> read = read_length(text, mm);
        if (!read) continue;
        ++accepted;
        if (!std::isfinite(*read) || std::abs(*read) > 1e9) FAIL(text);
    }
    CHECK(accepted > 100);
}
