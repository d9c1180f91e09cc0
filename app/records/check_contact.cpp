// The second table of carriageway check: heights, forces, ink and the length of the print.
#include "app/records/command_report.h"
#include "app/records/text_table.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

constexpr const char* nothing = "-";

/// A small length without its unit: hundredths of a millimetre, thousandths of an inch.
std::string fine(const Console& console, double mm) {
    const bool metric = console.unit == LengthUnit::mm;
    return format_fixed(metric ? mm : mm / mm_per_inch, metric ? 2 : 3);
}

std::string fine_or_nothing(const Console& console, const std::optional<MeshShift>& shift) {
    return shift ? fine(console, shift->total()) : std::string(nothing);
}

std::vector<std::string> cells(const Console& console, const Head& head, const HeadAssessment& worked) {
    const HeadContact& contact = worked.contact;
    const HeadDeposit& deposit = worked.deposit;
    return {
        std::to_string(head.station),
        fine(console, contact.gap.least),
        fine(console, contact.gap.most),
        contact.line_load ? format_fixed(*contact.line_load, 2) : nothing,
        contact.worst ? format_fixed(contact.worst->line_force, 2) : nothing,
        fine_or_nothing(console, contact.growth),
        fine_or_nothing(console, contact.beside_base),
        deposit.mesh ? format_fixed(deposit.film, 0) : nothing,
        deposit.ink ? format_fixed(deposit.ink->total(), 0) : nothing,
    };
}

} // namespace

std::string contact_table(const Console& console, const Job& job, const Assessment& assessment) {
    const std::string unit(length_unit_name(console.unit));
    struct Heading {
        Word heading;
        Word below; ///< Word::count: nothing
        const char* unit;
    };
    const Heading columns[] = {
        {Word::column_head, Word::count, ""},
        {Word::column_gap, Word::column_least, unit.c_str()},
        {Word::column_gap, Word::column_most, unit.c_str()},
        {Word::column_load, Word::count, "N/cm"},
        {Word::column_load, Word::column_needed, "N/cm"},
        {Word::column_longer, Word::column_film, unit.c_str()},
        {Word::column_longer, Word::column_base, unit.c_str()},
        {Word::column_wet_film, Word::count, "µm"},
        {Word::column_ink, Word::count, "cm³"},
    };
    TextTable table;
    std::vector<std::string> headings, below, units;
    for (const Heading& column : columns) {
        table.column(true);
        headings.push_back(console.text(column.heading));
        below.push_back(column.below == Word::count ? std::string() : console.text(column.below));
        units.push_back(column.unit);
    }
    table.row(headings);
    table.row(below);
    table.row(units);
    for (std::size_t at = 0; at < job.heads.size(); ++at)
        table.row(cells(console, job.heads[at], assessment.heads[at]));
    return table.text();
}

} // namespace carriageway
