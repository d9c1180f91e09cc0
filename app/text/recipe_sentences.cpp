#include "app/text/recipe_sentences.h"

namespace carriageway {

Word recipe_word(RecipeItem item) {
    switch (item) {
    case RecipeItem::mesh: return Word::item_mesh;
    case RecipeItem::stencil_note: return Word::item_stencil_note;
    case RecipeItem::stencil_build_up: return Word::item_stencil_build_up;
    case RecipeItem::ink_note: return Word::item_ink_note;
    case RecipeItem::blade_hardness: return Word::item_blade_hardness;
    case RecipeItem::blade_edge: return Word::item_blade_edge;
    case RecipeItem::stroke_pattern: return Word::item_stroke_pattern;
    case RecipeItem::speeds: return Word::item_speeds;
    case RecipeItem::pressures: return Word::item_pressures;
    case RecipeItem::off_contact: return Word::item_off_contact;
    case RecipeItem::garment_name: return Word::item_garment_name;
    case RecipeItem::platen_size: return Word::item_platen_size;
    case RecipeItem::flash_dwell: return Word::item_flash_dwell;
    case RecipeItem::flash_temperature: return Word::item_flash_temperature;
    case RecipeItem::dryer: return Word::item_dryer;
    case RecipeItem::count: break;
    }
    return Word::count;
}

Word edge_word(BladeEdge edge) {
    switch (edge) {
    case BladeEdge::not_noted: return Word::edge_not_noted;
    case BladeEdge::square: return Word::edge_square;
    case BladeEdge::rounded: return Word::edge_rounded;
    case BladeEdge::single_bevel: return Word::edge_single_bevel;
    case BladeEdge::double_bevel: return Word::edge_double_bevel;
    }
    return Word::count;
}

std::string recipe_value(Language language, LengthUnit unit, Field field, double value) {
    if (is_not_noted(field, value)) return std::string(word(language, Word::recipe_not_noted));
    return format_quantity(language, value, info_of(field).quantity, unit);
}

} // namespace carriageway
