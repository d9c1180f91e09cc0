#include "app/text/paper_sentences.h"

#include <algorithm>

#include "app/text/sentences.h"
#include "core/recipe.h"

namespace carriageway {
namespace {

bool is_height(Field field) {
    return field == Field::height_left || field == Field::height_right ||
           field == Field::height_machine;
}

} // namespace

Word paper_field_word(Field field) {
    switch (field) {
    case Field::squeegee_hardness: return Word::item_blade_hardness;
    case Field::fabric_thickness: return Word::paper_mesh_thickness;
    case Field::finest_detail: return Word::paper_finest;
    case Field::flash_temperature: return Word::item_flash_temperature;
    case Field::dryer_temperature: return Word::paper_dryer_set;
    case Field::dryer_time: return Word::paper_dryer_time;
    default: return field_word(field);
    }
}

std::string paper_value(Language language, LengthUnit unit, const Job& job, Field field,
                        double value) {
    if (is_not_noted(field, value)) return std::string(word(language, Word::recipe_not_noted));
    const std::string number = paper_number(unit, job, field, value);
    const std::string name = paper_unit(language, unit, job, field);
    if (name.empty()) return number;
    return number + (info_of(field).quantity == Quantity::angle ? "" : " ") + name;
}

std::string paper_number(LengthUnit unit, const Job& job, Field field, double value) {
    if (is_stop(field)) return plain_ruler(job.press.ruler, value);
    if (is_not_noted(field, value)) return {};
    const bool metric = unit == LengthUnit::mm;
    const Quantity quantity = info_of(field).quantity;
    const double shown = value / shown_unit(quantity, unit);
    switch (quantity) {
    case Quantity::length:
        return is_height(field) ? plain_fine_length(value, unit) : plain_length(value, unit);
    case Quantity::speed: return format_fixed(shown, metric ? 2 : 1);
    case Quantity::angle: return format_number(shown, 1);
    case Quantity::pressure: return format_number(shown, metric ? 0 : 1);
    default: return plain_quantity(value, quantity, unit);
    }
}

std::string paper_unit(Language language, LengthUnit unit, const Job& job, Field field) {
    if (is_stop(field)) return std::string(length_unit_name(unit_of(job.press.ruler)));
    return quantity_unit_name(language, info_of(field).quantity, unit);
}

Word verdict_word(const HeadAssessment& head) {
    if (!head.fit) return Word::verdict_not_fit;
    const bool mind =
        std::any_of(head.findings.begin(), head.findings.end(),
                    [](const Finding& finding) { return finding.severity == Severity::mind; });
    return mind ? Word::paper_fit_mind : Word::verdict_fit;
}

} // namespace carriageway
