#include "app/text/measure.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "core/units.h"

namespace carriageway {
namespace {

constexpr double largest_shown = 1e12;
constexpr int most_decimals = 6;

std::string with_unit(std::string number, std::string_view unit) {
    if (unit.empty()) return number;
    number += ' ';
    number += unit;
    return number;
}

double power_of_ten(int exponent) {
    double power = 1.0;
    for (int count = 0; count < exponent; ++count)
        power *= 10.0;
    return power;
}

/// "9 1/8" of a whole number of 64ths.
std::string fraction_text(std::int64_t sixty_fourths) {
    std::string out = sixty_fourths < 0 ? "-" : "";
    const std::int64_t size = std::abs(sixty_fourths);
    std::int64_t above = size % 64;
    std::int64_t below = 64;
    while (above != 0 && above % 2 == 0) {
        above /= 2;
        below /= 2;
    }
    if (size / 64 != 0 || above == 0) out += std::to_string(size / 64);
    if (above != 0) {
        if (size / 64 != 0) out += ' ';
        out += std::to_string(above) + "/" + std::to_string(below);
    }
    return out;
}

/// Whether the marks of a ruler are binary parts of an inch, down to 64ths.
bool counts_fractions(const Ruler& ruler) {
    if (!ruler.inches) return false;
    const double parts = 64.0 * ruler.graduation / mm_per_inch;
    return parts > 0.5 && std::abs(parts - std::round(parts)) < 1e-6;
}

}  // namespace

std::string format_fixed(double value, int decimals) {
    if (!std::isfinite(value) || std::abs(value) > largest_shown) return "?";
    const int places = std::clamp(decimals, 0, most_decimals);
    const std::int64_t scale = static_cast<std::int64_t>(power_of_ten(places));
    // Whole part and rest apart: multiplied as a whole, a large number would lose its last digits.
    const double size = std::abs(value);
    std::int64_t whole = static_cast<std::int64_t>(size);
    std::int64_t parts =
        std::llround((size - static_cast<double>(whole)) * static_cast<double>(scale));
    if (parts == scale) {
        ++whole;
        parts = 0;
    }
    std::string out = value < 0.0 && (whole != 0 || parts != 0) ? "-" : "";
    out += std::to_string(whole);
    if (places > 0) {
        const std::string rest = std::to_string(parts);
        out += '.';
        out.append(static_cast<std::size_t>(places) - rest.size(), '0');
        out += rest;
    }
    return out;
}

std::string format_number(double value, int decimals) {
    std::string out = format_fixed(value, decimals);
    if (out.find('.') == std::string::npos) return out;
    while (out.back() == '0')
        out.pop_back();
    if (out.back() == '.') out.pop_back();
    return out;
}

std::string plain_fine_length(double mm, LengthUnit unit) {
    const bool metric = unit == LengthUnit::mm;
    return format_number(metric ? mm : mm / mm_per_inch, metric ? 2 : 3);
}

std::string format_fine_length(double mm, LengthUnit unit) {
    return with_unit(plain_fine_length(mm, unit), length_unit_name(unit));
}

std::string_view length_unit_name(LengthUnit unit) {
    return unit == LengthUnit::mm ? "mm" : "in";
}

std::string plain_length(double mm, LengthUnit unit) {
    return unit == LengthUnit::mm ? format_number(mm, 1) : format_fixed(mm / mm_per_inch, 2);
}

std::string format_length(double mm, LengthUnit unit) {
    return with_unit(plain_length(mm, unit), length_unit_name(unit));
}

std::string format_angle(double radians) {
    return format_number(degrees(radians), 1) + "°";
}

std::string format_speed(double mm_per_second, LengthUnit unit) {
    if (unit == LengthUnit::mm) return with_unit(format_fixed(mm_per_second / 1000.0, 2), "m/s");
    return with_unit(format_fixed(mm_per_second / mm_per_inch, 1), "in/s");
}

std::string format_time(double seconds) {
    if (seconds != 0.0 && std::abs(seconds) < 0.1) {
        return with_unit(format_number(seconds * 1000.0, 0), "ms");
    }
    return with_unit(format_fixed(seconds, 1), "s");
}

std::string format_share(double share) {
    if (!std::isfinite(share)) return "? %";
    // A share that is a tenth of a percent but for rounding of its calculation counts as that.
    return with_unit(format_number(std::floor(share * 1000.0 + 1e-6) / 10.0, 1), "%");
}

std::string format_chance(Language language, double chance) {
    if (!(chance > 0.0)) return std::string(word(language, Word::chance_never));
    if (chance >= 1.0) return std::string(word(language, Word::chance_always));
    if (chance >= 0.1) {
        const std::string percent = format_number(std::floor(chance * 100.0 + 1e-6), 0);
        return say(language, Word::chance_share, {with_unit(percent, "%")});
    }
    if (chance < 1e-6) return say(language, Word::chance_rare, {"1000000"});
    const double shirts = 1.0 / chance;
    double step = 1.0;
    while (shirts / step >= 100.0)
        step *= 10.0;
    const double rounded = std::round(shirts / step) * step;
    return say(language, Word::chance_one_in, {format_number(rounded, 0)});
}

LengthUnit unit_of(const Ruler& ruler) {
    return ruler.inches ? LengthUnit::inch : LengthUnit::mm;
}

std::string plain_ruler(const Ruler& ruler, double y) {
    const double reading = ruler_reading(ruler, y);
    if (!std::isfinite(reading) || std::abs(reading) > largest_shown) return "?";
    if (!ruler.inches) return format_number(reading, 1);
    if (counts_fractions(ruler)) {
        const double parts = reading * 64.0;
        if (std::abs(parts - std::round(parts)) < 1e-3) return fraction_text(std::llround(parts));
    }
    return format_fixed(reading, 2);
}

std::string format_ruler(const Ruler& ruler, double y) {
    return with_unit(plain_ruler(ruler, y), length_unit_name(unit_of(ruler)));
}

double shown_unit(Quantity quantity, LengthUnit unit) {
    const bool metric = unit == LengthUnit::mm;
    switch (quantity) {
        case Quantity::length:
            return metric ? 1.0 : mm_per_inch;
        case Quantity::speed:
            return metric ? 1000.0 : mm_per_inch;
        case Quantity::angle:
            return rad_per_degree;
        case Quantity::acceleration:
            return 1000.0;
        case Quantity::pressure:
            return metric ? 1.0 : kpa_per_psi;
        case Quantity::share:
            return 0.01;
        case Quantity::thread:
        case Quantity::time:
        case Quantity::tension:
        case Quantity::mesh_count:
        case Quantity::marks:
        case Quantity::ratio:
        case Quantity::count:
        case Quantity::temperature:
        case Quantity::warming:
        case Quantity::volume:
        case Quantity::turns:
        case Quantity::jerk:
        case Quantity::hardness:
            break;
    }
    return 1.0;
}

std::string plain_quantity(double value, Quantity quantity, LengthUnit unit) {
    return format_number(value / shown_unit(quantity, unit), 4);
}

std::string quantity_unit_name(Language language, Quantity quantity, LengthUnit unit) {
    switch (quantity) {
        case Quantity::length:
            return std::string(length_unit_name(unit));
        case Quantity::thread:
            return "µm";
        case Quantity::angle:
            return "°";
        case Quantity::speed:
            return unit == LengthUnit::mm ? "m/s" : "in/s";
        case Quantity::acceleration:
            return "m/s²";
        case Quantity::time:
            return "s";
        case Quantity::tension:
            return "N/cm";
        case Quantity::mesh_count:
            return std::string(word(language, Word::unit_per_cm));
        case Quantity::marks:
            return std::string(word(language, Word::unit_marks));
        case Quantity::pressure:
            return unit == LengthUnit::mm ? "kPa" : "psi";
        case Quantity::share:
            return "%";
        case Quantity::temperature:
            return "°C";
        case Quantity::warming:
            return "°C/s";
        case Quantity::volume:
            return "cm³";
        case Quantity::turns:
            return std::string(word(language, Word::unit_turns));
        case Quantity::jerk:
            return "mm/s³";
        case Quantity::hardness:
            return "Shore A";
        case Quantity::ratio:
        case Quantity::count:
            return {};
    }
    return {};
}

std::string format_quantity(Language language, double value, Quantity quantity, LengthUnit unit) {
    const std::string number = plain_quantity(value, quantity, unit);
    if (quantity == Quantity::angle) return number + "°";
    return with_unit(number, quantity_unit_name(language, quantity, unit));
}

}  // namespace carriageway
