#include "app/text/measure.h"

#include <cmath>

#include "tests/fuzz/inputs.h"

namespace carriageway::fuzz {

void measure(std::string_view bytes) {
    if (const std::optional<double> number = read_number(bytes))
        demand(std::isfinite(*number), "a number that is none");
    for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::inch}) {
        if (const std::optional<double> length = read_length(bytes, unit))
            demand(std::isfinite(*length) && std::abs(*length) <= 1e9, "a length out of bounds");
        for (int kind = 0; kind <= static_cast<int>(Quantity::hardness); ++kind) {
            const auto quantity = static_cast<Quantity>(kind);
            const std::optional<double> value = read_quantity(bytes, quantity, unit);
            if (!value) continue;
            demand(std::isfinite(*value), "a quantity that is no number");
            for (const Language language : {Language::english, Language::spanish}) {
                const std::string shown = format_quantity(language, *value, quantity, unit);
                demand(!shown.empty(), "a quantity that is shown as nothing");
                // What is shown is what the field holds when it is opened again.
                if (shown.find('?') != std::string::npos) continue;
                const std::optional<double> again =
                    read_quantity(plain_quantity(*value, quantity, unit), quantity, unit);
                const double rounding = 0.00005001 * std::abs(shown_unit(quantity, unit));
                demand(again.has_value() || std::abs(*value) > 1e9 * shown_unit(quantity, unit),
                       "a quantity as it is shown can't be read");
                if (again)
                    demand(std::abs(*again - *value) <= rounding + 1e-12 * std::abs(*value),
                           "a quantity as it is shown is read as another");
            }
        }
    }
}

} // namespace carriageway::fuzz
