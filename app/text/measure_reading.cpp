#include <cmath>
#include <cstddef>

#include "app/text/measure.h"
#include "app/text/unit_names.h"
#include "core/units.h"

namespace carriageway {
namespace {

constexpr double largest_read = 1e9;  // in the core's unit
constexpr int most_digits = 15;       // so that a decimal is the double nearest to it

// ---- characters ----

struct Spelling {
    const char* typed;
    const char* plain;
};

// What keyboards and copied text have in place of plain characters.
constexpr Spelling spellings[] = {
    {"\xC2\xA0", " "},        {"\xE2\x80\x89", " "},    {"\xE2\x80\xAF", " "},
    {"\xE2\x88\x92", "-"},    {"\xE2\x80\x93", "-"},    {"\xE2\x81\x84", "/"},
    {"\xE2\x80\xB3", "\""},   {"\xE2\x80\x9D", "\""},   {"\xE2\x80\xB2", "'"},
    {"\xE2\x80\x99", "'"},    {"\xC2\xB5", "u"},        {"\xCE\xBC", "u"},
    {"\xC2\xB0", "deg"},      {"\xC2\xBA", "deg"},      {"\xC2\xB2", "^2"},
    {"\xC2\xB3", "^3"},
    {"\xC2\xBC", " 1/4"},     {"\xC2\xBD", " 1/2"},     {"\xC2\xBE", " 3/4"},
    {"\xE2\x85\x93", " 1/3"}, {"\xE2\x85\x94", " 2/3"}, {"\xE2\x85\x9B", " 1/8"},
    {"\xE2\x85\x9C", " 3/8"}, {"\xE2\x85\x9D", " 5/8"}, {"\xE2\x85\x9E", " 7/8"},
};

bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}

/// The text in plain lower-case characters; nothing when it has others.
std::optional<std::string> plain_text(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const char letter = text.front();
        if (letter > ' ' && letter < '\x7F') {
            out += letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
            text.remove_prefix(1);
            continue;
        }
        if (letter == ' ' || letter == '\t') {
            out += ' ';
            text.remove_prefix(1);
            continue;
        }
        std::size_t taken = 0;
        for (const Spelling& spelling : spellings) {
            const std::string_view typed = spelling.typed;
            if (text.substr(0, typed.size()) == typed) {
                out += spelling.plain;
                taken = typed.size();
                break;
            }
        }
        if (taken == 0) return std::nullopt;
        text.remove_prefix(taken);
    }
    return out;
}

// ---- numbers ----

/// A text that is read from its front.
class Reader {
  public:
    explicit Reader(std::string_view text) : rest_(text) {}

    std::string_view rest() const { return rest_; }
    bool at_digit() const { return !rest_.empty() && is_digit(rest_.front()); }

    void skip_spaces() {
        while (take(' ')) {
        }
    }
    bool take(char letter) {
        if (rest_.empty() || rest_.front() != letter) return false;
        rest_.remove_prefix(1);
        return true;
    }
    /// The digits that come next, perhaps none.
    std::string_view digits() {
        std::size_t count = 0;
        while (count < rest_.size() && is_digit(rest_[count]))
            ++count;
        const std::string_view found = rest_.substr(0, count);
        rest_.remove_prefix(count);
        return found;
    }

  private:
    std::string_view rest_;
};

double value_of(std::string_view digits) {
    double value = 0.0;
    for (const char digit : digits)
        value = value * 10.0 + (digit - '0');
    return value;
}

/// "1/2" with the numerator already read. `below_one`: it follows a whole number.
std::optional<double> fraction(Reader& reader, std::string_view above, bool below_one) {
    if (!reader.take('/')) return std::nullopt;
    const std::string_view below = reader.digits();
    if (above.empty() || below.empty() || above.size() > 6 || below.size() > 6) return std::nullopt;
    const double denominator = value_of(below);
    const double numerator = value_of(above);
    if (denominator == 0.0 || (below_one && numerator >= denominator)) return std::nullopt;
    return numerator / denominator;
}

/// What stands behind a decimal mark, whole digits being read.
std::optional<double> decimal(Reader& reader, std::string_view whole, bool comma) {
    const std::string_view parts = reader.digits();
    if (whole.empty() && parts.empty()) return std::nullopt;
    if (whole.size() + parts.size() > most_digits) return std::nullopt;
    // "1,500" means one and a half to some and fifteen hundred to others.
    if (comma && parts.size() == 3 && value_of(whole) > 0.0) return std::nullopt;
    double scale = 1.0;
    for (std::size_t count = 0; count < parts.size(); ++count)
        scale *= 10.0;
    // Both are exact below 2^53, so the quotient is the double nearest to what was typed.
    return (value_of(whole) * scale + value_of(parts)) / scale;
}

/// A number without a sign, up to where its unit starts. `whole` says whether it was one.
std::optional<double> amount(Reader& reader, bool& is_whole) {
    is_whole = false;
    const std::string_view whole = reader.digits();
    if (whole.size() > most_digits) return std::nullopt;
    if (reader.take('.')) return decimal(reader, whole, false);
    if (reader.take(',')) return decimal(reader, whole, true);
    if (whole.empty()) return std::nullopt;
    if (!reader.rest().empty() && reader.rest().front() == '/') {
        Reader ahead = reader;
        ahead.take('/');
        if (!ahead.at_digit()) {  // a unit such as /cm
            is_whole = true;
            return value_of(whole);
        }
        return fraction(reader, whole, false);
    }
    Reader ahead = reader;
    ahead.skip_spaces();
    if (ahead.take('-')) ahead.skip_spaces();
    if (ahead.at_digit()) {
        const std::string_view above = ahead.digits();
        const std::optional<double> part = fraction(ahead, above, true);
        if (!part) return std::nullopt;
        reader = ahead;
        return value_of(whole) + *part;
    }
    is_whole = true;
    return value_of(whole);
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
    return text;
}

// ---- units ----

/// One of the unit of this name, in the core's; an abbreviation may end in a point.
std::optional<double> unit_value(std::string_view name, Quantity quantity) {
    name = trimmed(name);
    if (name.size() > 1 && name.back() == '.') name.remove_suffix(1);
    for (const UnitName& unit : unit_names) {
        if (unit.quantity == quantity && name == unit.name) return unit.in_core;
    }
    return std::nullopt;
}

/// "1 ft 2 in" with the feet read: the mm of both; `rest` starts with the unit of the feet.
std::optional<double> feet_and_inches(double feet, std::string_view rest) {
    std::size_t end = 0;
    while (end < rest.size() && rest[end] != ' ' && !is_digit(rest[end]))
        ++end;
    const std::optional<double> foot = unit_value(rest.substr(0, end), Quantity::length);
    if (!foot || *foot != mm_per_foot) return std::nullopt;
    Reader reader(rest.substr(end));
    reader.skip_spaces();
    bool is_whole = false;
    const std::optional<double> inches = amount(reader, is_whole);
    if (!inches || *inches >= 12.0) return std::nullopt;
    const std::optional<double> inch = unit_value(reader.rest(), Quantity::length);
    if (!inch || *inch != mm_per_inch) return std::nullopt;
    return feet * mm_per_foot + *inches * mm_per_inch;
}

/// The value without its sign.
std::optional<double> unsigned_quantity(Reader reader, Quantity quantity, LengthUnit bare) {
    bool is_whole = false;
    const std::optional<double> number = amount(reader, is_whole);
    if (!number) return std::nullopt;
    const std::string_view unit = trimmed(reader.rest());
    if (unit.empty()) return *number * shown_unit(quantity, bare);
    if (const std::optional<double> one = unit_value(unit, quantity)) return *number * *one;
    if (quantity == Quantity::length && is_whole) return feet_and_inches(*number, unit);
    return std::nullopt;
}

std::optional<double> signed_value(std::string_view text, Quantity quantity, LengthUnit bare) {
    const std::optional<std::string> plain = plain_text(text);
    if (!plain) return std::nullopt;
    Reader reader(*plain);
    reader.skip_spaces();
    const bool negative = reader.take('-');
    if (!negative) reader.take('+');
    reader.skip_spaces();
    const std::optional<double> value = unsigned_quantity(reader, quantity, bare);
    if (!value || !(*value <= largest_read)) return std::nullopt;
    return negative && *value != 0.0 ? -*value : *value;
}

}  // namespace

std::optional<double> read_length(std::string_view text, LengthUnit bare) {
    return signed_value(text, Quantity::length, bare);
}

std::optional<double> read_quantity(std::string_view text, Quantity quantity, LengthUnit bare) {
    return signed_value(text, quantity, bare);
}

std::optional<double> read_number(std::string_view text) {
    for (const char letter : text) {  // words of marks are units as well
        if ((letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z')) {
            return std::nullopt;
        }
    }
    return signed_value(text, Quantity::marks, LengthUnit::mm);
}

}  // namespace carriageway
