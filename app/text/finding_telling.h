// What the texts of one finding are made of; shared by the files that word findings.
#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include "app/text/sentences.h"

namespace carriageway {

/// Everything that the texts of one finding are made of.
struct Telling {
    Language language;
    LengthUnit unit;
    const Job& job;
    const Head* head;  ///< nullptr when the job has no such head
    const HeadAssessment& worked;
    const Finding& finding;

    std::string plain(Word key) const { return spare_text(word(language, key)); }

    /// A length that is never shown as none when there is some.
    std::string length(double mm) const {
        const double smallest = unit == LengthUnit::mm ? 0.1 : 0.01 * mm_per_inch;
        if (mm > 0.0 && mm < 0.5 * smallest) {
            return say(language, Word::quantity_less_than, {format_length(smallest, unit)});
        }
        return format_length(mm, unit);
    }
    std::string value() const { return length(std::abs(finding.value)); }
    std::string limit() const { return length(finding.limit); }
    std::string_view side() const {
        const bool across_arm = finding.kind == FindingKind::side_meets_frame;
        const bool both_sides = across_arm && finding.side == Side::both;
        return word(language, both_sides ? Word::at_both_sides : side_word(finding.side));
    }
    bool along() const {
        return finding.side == Side::operator_side || finding.side == Side::machine_side;
    }
    bool across() const { return finding.side == Side::left || finding.side == Side::right; }
    bool of_flood() const { return finding.part == Part::flood; }
};

/// Title, why and label; the rest is the same for every kind.
struct Saying {
    std::string title;
    std::string why;
    std::string label;
};

/// Texts of findings about heights, air, tension, detail and the length of the print.
Saying contact_saying(const Telling& telling);

} // namespace carriageway
