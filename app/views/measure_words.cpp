#include "app/views/measure_words.h"

#include <algorithm>
#include <cmath>

#include "app/text/sentences.h"

namespace carriageway {

namespace {

using F = Field;
using K = ReadingKind;
using W = Word;

/// The name of a screw as marked on the press.
std::string screw_name(const PressProfile& press, const ScrewPlace& screw) {
    if (screw.levels)
        return screw.index < press.level_screws.size() ? press.level_screws[screw.index].name : std::string();
    return screw.index < press.adjusters.size() ? press.adjusters[screw.index].name : std::string();
}

/// A number in the unit in which it is shown.
double shown(double value, Quantity quantity, LengthUnit unit) {
    const double length = unit == LengthUnit::mm ? 1.0 : mm_per_inch;
    switch (quantity) {
    case Quantity::length: return value / length;
    case Quantity::speed: return value / (unit == LengthUnit::mm ? 1000.0 : mm_per_inch);
    case Quantity::acceleration: return value / 1000.0;
    case Quantity::angle: return degrees(value);
    default: return value;
    }
}

/// Decimals with which a spread has one digit, two where it begins with a 1.
int decimals_of(double spread) {
    if (!(spread > 0.0) || !std::isfinite(spread)) return 4;
    const double place = std::floor(std::log10(spread));
    const double first = spread / std::pow(10.0, place);
    return std::clamp(static_cast<int>(-place) + (first < 1.95 ? 1 : 0), 0, 4);
}

Quantity quantity_of_value(const MeasuredValue& value) {
    return value.field == F::count ? Quantity::length : info_of(value.field).quantity;
}

} // namespace

std::string target_title(Language language, const PressProfile& press, const MeasureTarget& target) {
    if (target.screw)
        return capitalised(say(language, target.screw->levels ? W::measure_level_screw : W::measure_screw,
                               {screw_name(press, *target.screw)}));
    const Procedure& procedure = procedure_of(target);
    std::string title(word(language, field_word(procedure.fields[0])));
    // A least separation and how well it is known are one thing to a person.
    if (procedure.field_count > 1 && procedure.steps != Steps::lamps_out)
        title += " · " + std::string(word(language, field_word(procedure.fields[1])));
    return capitalised(title);
}

std::string present_value(Language language, LengthUnit unit, const PressProfile& press,
                          const MeasureTarget& target) {
    if (target.screw)
        return format_quantity(language, mm_per_turn(press, *target.screw).value_or(0.0), Quantity::length, unit);
    // Only read: one set of accessors serves both.
    PressProfile& read = const_cast<PressProfile&>(press);
    const Procedure& procedure = procedure_of(target);
    std::string text;
    for (int i = 0; i < procedure.field_count; ++i) {
        const Field field = procedure.fields[static_cast<std::size_t>(i)];
        if (procedure.steps == Steps::lamps_out && i > 0) break;
        if (i > 0) text += " · ";
        text += format_quantity(language, number_of(read, field), info_of(field).quantity, unit);
    }
    return text;
}

std::string reading_text(Language language, LengthUnit unit, const PressProfile& press,
                         const MeasureTarget& target, ReadingKind kind, double value) {
    if (on_ruler(target, kind)) return format_ruler(press.ruler, value);
    return format_quantity(language, value, reading_quantity(target, kind), unit);
}

std::string measured_text(Language language, LengthUnit unit, const MeasuredValue& value) {
    const Quantity quantity = quantity_of_value(value);
    if (!value.spread) return format_quantity(language, value.value, quantity, unit);
    const double spread = shown(value.spread->value, quantity, unit);
    const int decimals = decimals_of(spread);
    const std::string name = quantity_unit_name(language, quantity, unit);
    const auto with = [&](double number) {
        const std::string text = spread > 0.0 ? format_fixed(number, decimals) : format_number(number, decimals);
        if (quantity == Quantity::angle) return text + "°";
        return name.empty() ? text : text + " " + name;
    };
    return say(language, W::measure_value, {with(shown(value.value, quantity, unit)), with(spread)});
}

std::string result_text(Language language, LengthUnit unit, const Measured& result) {
    std::string text;
    for (const MeasuredValue& value : result.values) {
        if (value.field == F::separation_spread) continue;
        if (!text.empty()) text += " · ";
        text += measured_text(language, unit, value);
    }
    return text;
}

std::string refused_text(Language language, LengthUnit unit, const Taking& taking, const Measured& result) {
    const std::string_view kind = word(language, reading_word(taking.target, result.kind));
    switch (result.refusal) {
    case MeasuredRefusal::none: return {};
    case MeasuredRefusal::missing: {
        const Procedure& procedure = procedure_of(taking.target);
        int more = 1;
        for (int i = 0; i < procedure.needed_count; ++i) {
            const NeededReading& needed = procedure.needed[static_cast<std::size_t>(i)];
            if (needed.kind == result.kind)
                more = needed.least - static_cast<int>(taking.lists[static_cast<std::size_t>(i)].values.size());
        }
        return say(language, W::measure_refused_missing, {kind, std::to_string(more)});
    }
    case MeasuredRefusal::not_finite: return say(language, W::measure_refused_not_finite, {kind});
    case MeasuredRefusal::not_wanted:
        return capitalised(say(language, W::measure_refused_not_wanted, {kind}));
    case MeasuredRefusal::unequal_counts: return std::string(word(language, W::measure_refused_unequal));
    case MeasuredRefusal::no_difference: return std::string(word(language, W::measure_refused_alike));
    case MeasuredRefusal::impossible: return std::string(word(language, W::measure_refused_impossible));
    case MeasuredRefusal::outside_limits: {
        const MeasuredValue& value = result.values.back();
        if (value.field == F::count) return std::string(word(language, W::measure_refused_impossible));
        return say(language, W::measure_refused_outside,
                   {measured_text(language, unit, value), least_of(language, unit, value.field),
                    most_of(language, unit, value.field)});
    }
    }
    return {};
}

Word group_word(MeasureGroup group) {
    switch (group) {
    case MeasureGroup::sensors: return W::measure_group_sensors;
    case MeasureGroup::carriage: return W::measure_group_carriage;
    case MeasureGroup::pace: return W::measure_group_pace;
    case MeasureGroup::blades: return W::measure_group_blades;
    case MeasureGroup::adjusters: return W::measure_group_adjusters;
    case MeasureGroup::heights: return W::measure_group_heights;
    case MeasureGroup::readings: return W::measure_group_readings;
    case MeasureGroup::heat: return W::measure_group_heat;
    case MeasureGroup::count: break;
    }
    return W::count;
}

Word caution_word(Caution caution) {
    switch (caution) {
    case Caution::none: break;
    case Caution::hands_in_carriage: return W::caution_hands;
    case Caution::index_path: return W::caution_index_path;
    case Caution::isolated_and_bled: return W::caution_isolated;
    case Caution::lamps_alive: return W::caution_lamps;
    case Caution::hot_surface: return W::caution_hot;
    case Caution::solvents: return W::caution_solvents;
    }
    return W::count;
}

Word scheme_word(Scheme scheme) {
    switch (scheme) {
    case Scheme::none: break;
    case Scheme::bars: return W::scheme_bars;
    case Scheme::gap: return W::scheme_gap;
    case Scheme::stroke: return W::scheme_stroke;
    case Scheme::rule: return W::scheme_rule;
    case Scheme::holder: return W::scheme_holder;
    case Scheme::angle: return W::scheme_angle;
    case Scheme::gauge: return W::scheme_gauge;
    case Scheme::drop: return W::scheme_drop;
    case Scheme::screw: return W::scheme_screw;
    case Scheme::scatter: return W::scheme_scatter;
    case Scheme::heat:
    case Scheme::cooling: return W::scheme_heat;
    case Scheme::heights: return W::scheme_heights;
    case Scheme::cylinder: return W::scheme_cylinder;
    }
    return W::count;
}

} // namespace carriageway
