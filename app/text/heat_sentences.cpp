#include "app/text/heat_sentences.h"

#include "app/text/measure.h"

namespace carriageway {

std::string temperature_text(Language language, double celsius) {
    return format_number(celsius, 0) + " " +
           quantity_unit_name(language, Quantity::temperature, LengthUnit::mm);
}

std::string steady_text(Language language, const HeatOutlook& outlook) {
    const std::string steady = temperature_text(language, outlook.steady);
    const std::string hottest = temperature_text(language, outlook.hottest);
    if (!outlook.steady_turn) return say(language, Word::heat_not_steady, {steady, hottest});
    return say(language, Word::heat_steady,
               {steady, std::to_string(*outlook.steady_turn), hottest});
}

std::string heat_warning_text(Language language, const HeatWarning& warning) {
    const auto said = [&](Word key) {
        return say(language, key, {temperature_text(language, warning.limit)});
    };
    switch (warning.kind) {
    case HeatWarningKind::sticking: return said(Word::heat_sticking);
    case HeatWarningKind::dye_migration: return said(Word::heat_dye);
    case HeatWarningKind::poor_adhesion: return said(Word::heat_adhesion);
    default: return {};
    }
}

} // namespace carriageway
