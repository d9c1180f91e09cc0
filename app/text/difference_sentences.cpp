#include "app/text/difference_sentences.h"

#include <cstdio>

#include "app/text/recipe_sentences.h"
#include "app/text/sentences.h"
#include "core/recipe.h"

namespace carriageway {
namespace {

Word part_word(JobPart part) {
    switch (part) {
    case JobPart::colour: return Word::compare_colour;
    case JobPart::ink: return Word::compare_ink;
    case JobPart::print_stroke: return Word::compare_print_stroke;
    case JobPart::winged: return Word::compare_winged;
    case JobPart::height_stop: return Word::compare_height_stop;
    case JobPart::blade_edge: return Word::item_blade_edge;
    case JobPart::image:
    case JobPart::outline: return Word::compare_outline;
    case JobPart::flash_after: return Word::compare_flash_after;
    case JobPart::flash_together: return Word::compare_flash_together;
    case JobPart::wet_on_wet: return Word::compare_wet_on_wet;
    case JobPart::pinned: return Word::compare_pinned;
    case JobPart::ink_note: return Word::item_ink_note;
    case JobPart::stencil_note: return Word::item_stencil_note;
    case JobPart::name: return Word::compare_name;
    case JobPart::garment_kind: return Word::compare_garment_kind;
    case JobPart::garment_name: return Word::item_garment_name;
    case JobPart::base_head: return Word::compare_base_head;
    case JobPart::press: return Word::compare_press;
    case JobPart::run_notes: return Word::compare_run_notes;
    default: return Word::compare_other;
    }
}

/// The word that a choice stands at; `value` is its place in the enumeration.
Word choice_word(JobPart part, double value) {
    const int index = static_cast<int>(value);
    switch (part) {
    case JobPart::print_stroke: return direction_word(static_cast<Direction>(index));
    case JobPart::blade_edge: return edge_word(static_cast<BladeEdge>(index));
    case JobPart::garment_kind:
        return index == 0 ? Word::garment_t_shirt : Word::garment_fleece;
    default: return index != 0 ? Word::yes : Word::no;
    }
}

std::string or_not_noted(Language language, const std::string& text) {
    return text.empty() ? std::string(word(language, Word::recipe_not_noted)) : text;
}

std::string number_text_of(Language language, LengthUnit unit, const Job& job, Field field,
                           const std::optional<double>& value) {
    if (!value || is_not_noted(field, *value))
        return std::string(word(language, Word::recipe_not_noted));
    if (is_stop(field)) return format_ruler(job.press.ruler, *value);
    return format_quantity(language, *value, info_of(field).quantity, unit);
}

std::string station_text(Language language, const std::optional<double>& station) {
    return station ? say(language, Word::compare_station_number,
                         {format_number(*station, 0)})
                   : std::string("–");
}

std::string choice_text(Language language, JobPart part,
                        const std::optional<double>& value) {
    if (!value) return std::string(word(language, Word::recipe_not_noted));
    if (part == JobPart::ink) {
        char hex[16];
        std::snprintf(hex, sizeof hex, "#%06X", static_cast<unsigned>(*value));
        return hex;
    }
    return std::string(word(language, choice_word(part, *value)));
}

std::string base_text(Language language, const Job& job, const std::optional<double>& id) {
    const Head* head = find_head(job, static_cast<HeadId>(id.value_or(0.0)));
    return head ? head_title(language, *head) : std::string("–");
}

} // namespace

SaidDifference difference_text(Language language, LengthUnit unit, const Job& a, const Job& b,
                               const JobDifference& difference) {
    const auto text = [&](Word key) { return std::string(word(language, key)); };
    switch (difference.kind) {
    case DifferenceKind::number:
        return {text(field_word(difference.field)),
                number_text_of(language, unit, a, difference.field, difference.a),
                number_text_of(language, unit, b, difference.field, difference.b)};
    case DifferenceKind::text:
        return {text(part_word(difference.part)), or_not_noted(language, difference.text_a),
                or_not_noted(language, difference.text_b)};
    case DifferenceKind::choice:
        if (difference.part == JobPart::base_head)
            return {text(part_word(difference.part)), base_text(language, a, difference.a),
                    base_text(language, b, difference.b)};
        return {text(part_word(difference.part)),
                choice_text(language, difference.part, difference.a),
                choice_text(language, difference.part, difference.b)};
    case DifferenceKind::station:
        return {text(Word::compare_station), station_text(language, difference.a),
                station_text(language, difference.b)};
    case DifferenceKind::use: {
        const auto use = [&](const std::optional<double>& value) {
            return value ? text(use_word(static_cast<StationUse>(static_cast<int>(*value))))
                         : std::string("–");
        };
        return {say(language, Word::compare_use, {std::to_string(difference.station)}),
                use(difference.a), use(difference.b)};
    }
    case DifferenceKind::outline:
        return {text(Word::compare_outline), text(Word::compare_one), text(Word::compare_another)};
    case DifferenceKind::head_only_in_a:
        return {text(Word::compare_head), text(Word::compare_there), text(Word::compare_not_there)};
    case DifferenceKind::head_only_in_b:
        return {text(Word::compare_head), text(Word::compare_not_there), text(Word::compare_there)};
    }
    return {};
}

std::string difference_owner(Language language, const Job& a, const Job& b,
                             const JobDifference& difference) {
    if (const Head* head = find_head(a, difference.head_a)) return head_title(language, *head);
    if (const Head* head = find_head(b, difference.head_b)) return head_title(language, *head);
    return std::string(word(language, Word::compare_job));
}

} // namespace carriageway
