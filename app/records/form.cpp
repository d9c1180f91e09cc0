#include "app/records/form.h"

#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

namespace carriageway {

std::string number_text(double value) {
    if (!std::isfinite(value)) return "null";
    std::string text = nlohmann::json(value).dump();
    const bool whole = text.size() > 2 && text.compare(text.size() - 2, 2, ".0") == 0;
    // The sign of zero would be lost with its point: JSON readers take "-0" for an integer.
    if (whole && text != "-0.0") text.resize(text.size() - 2);
    return text;
}

std::optional<double> number_in_file(double value, double factor) {
    if (factor == 1.0 || value == 0.0) return value;
    // Division and multiplication round once each, so a number that reads back exactly is at most
    // a few doubles away from the quotient.
    constexpr int neighbours = 4;
    constexpr double infinity = std::numeric_limits<double>::infinity();
    double number = value / factor;
    for (int i = 0; i < neighbours; ++i) number = std::nextafter(number, -infinity);
    std::optional<double> best;
    std::size_t best_length = 0;
    for (int i = 0; i <= 2 * neighbours; ++i) {
        if (number * factor == value) {
            const std::size_t length = number_text(number).size();
            if (!best || length < best_length) {
                best = number;
                best_length = length;
            }
        }
        number = std::nextafter(number, infinity);
    }
    return best;
}

double limit_in_file(double limit, double factor) {
    return number_in_file(limit, factor).value_or(std::nextafter(limit / factor, 0.0));
}

}  // namespace carriageway
