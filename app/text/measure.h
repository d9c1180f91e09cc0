// Numbers with units: written for a person, and read as a person types them.
//
// The decimal mark written is a point in every language: the same number is read off a ruler or a
// gauge, copied into tables and typed back, and a point is accepted everywhere the program is used.
// Reading takes a comma as well. The locale plays no part. Values in the core's units (units.h):
// mm, rad, s, mm/s.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "app/text/words.h"
#include "core/fields.h"

namespace carriageway {

/// In which unit lengths and speeds are shown, and what a bare number typed means.
enum class LengthUnit { mm, inch };

// ---- writing ----
// What is not finite or beyond 1e12 is written as "?". A value that rounds to zero has no sign.

/// A number with at most `decimals` (0 to 6) decimals, none of them a zero at the end.
std::string format_number(double value, int decimals);

/// A number with exactly `decimals` (0 to 6) decimals.
std::string format_fixed(double value, int decimals);

/// "44 mm", "0.5 mm": one decimal, none when it is zero. "3.46 in": two decimals.
std::string format_length(double mm, LengthUnit unit);
/// The same without the unit.
std::string plain_length(double mm, LengthUnit unit);
/// Gaps and shifts of fractions of a millimetre: "0.12 mm", to a hundredth; "0.005 in", to a
/// thousandth.
std::string format_fine_length(double mm, LengthUnit unit);
/// The same without the unit.
std::string plain_fine_length(double mm, LengthUnit unit);
/// "mm" or "in".
std::string_view length_unit_name(LengthUnit unit);

/// "15°", "12.5°".
std::string format_angle(double radians);

/// "0.60 m/s"; "23.6 in/s".
std::string format_speed(double mm_per_second, LengthUnit unit);

/// "1.2 s"; below a tenth of a second "15 ms".
std::string format_time(double seconds);

/// "93.4 %" of a share from 0 to 1. Rounded down, so that only the whole is called 100 %.
std::string format_share(double share);

/// How often something happens: "1 in 400 shirts", two digits of it; from a tenth "30 % of all
/// shirts"; below one in a million "less than 1 in 1000000 shirts". `chance` from 0 to 1.
std::string format_chance(Language language, double chance);

/// What a person reads on the ruler at `y` (mm), without a unit. On a ruler in inches whose marks
/// are halves, quarters, ... 64ths, as a fraction: "9 1/8"; otherwise with at most one decimal
/// (inches: two).
std::string plain_ruler(const Ruler& ruler, double y);
/// The same with its unit: "276 mm", "9 1/8 in".
std::string format_ruler(const Ruler& ruler, double y);
/// The ruler's own unit.
LengthUnit unit_of(const Ruler& ruler);

/// One of the unit that a number is shown in, in the core's unit: 25.4 for lengths in inches.
double shown_unit(Quantity quantity, LengthUnit unit);

/// Any number of a job, closely enough to be edited: at most four decimals and its unit. Lengths
/// and speeds follow `unit`, the others have one unit (fields.h; mesh count "threads/cm", gauges
/// "marks").
std::string format_quantity(Language language, double value, Quantity quantity, LengthUnit unit);
/// The same without the unit.
std::string plain_quantity(double value, Quantity quantity, LengthUnit unit);
/// The unit alone.
std::string quantity_unit_name(Language language, Quantity quantity, LengthUnit unit);

// ---- reading ----

/// Reads a length and returns mm. Numbers: 89, 8.9, 8,9, .5, 1/2, 3 1/2, 3-1/2, ½, 3½, with a sign
/// before them. Units: mm, cm, m, in (inch, inches, ", pulg, pulgada, pulgadas), ft (foot, feet, ',
/// pie, pies); feet may be followed by inches. A bare number is in `bare`.
///
/// Refused: anything else; more than 15 digits; a fraction over zero; what is more than 1e9 mm; and
/// a comma before exactly three digits ("1,500"), which could mean thousands as well.
std::optional<double> read_length(std::string_view text, LengthUnit bare);

/// Reads any number of a job as typed in its field and returns it in the core's unit. Without a
/// unit it is in the one that format_quantity() shows. Besides lengths: ° deg; m/s mm/s cm/s in/s;
/// s ms; µm um; N/cm; /cm, /in (threads).
std::optional<double> read_quantity(std::string_view text, Quantity quantity, LengthUnit bare);

/// Reads a plain number, written as for read_length() but without a unit.
std::optional<double> read_number(std::string_view text);

}  // namespace carriageway
