// The fields of edits.
#include "app/records/form_parts.h"

namespace carriageway {
namespace {

const Choices note_names{"ink", "stencil", "garment", "run"};

void describe_edited_head(Form& form, HeadId& head) {
    describe_whole(form, "head", head, {0, most_head_id});
}

const Choices& field_names() {
    static const Choices names = [] {
        Choices made;
        for (int i = 0; i < static_cast<int>(Field::count); ++i) {
            made.push_back(info_of(static_cast<Field>(i)).key);
        }
        return made;
    }();
    return names;
}

void describe(Form& form, SetNumber& edit) {
    describe_edited_head(form, edit.head);
    describe_choice(form, "field", edit.field, field_names());
    if (edit.field >= Field::count) return;
    const NumberRange range = range_of(edit.field);
    if (range.quantity == Quantity::angle) {
        describe_angle(form, "value_deg", edit.value, range);
    } else {
        form.number("value", edit.value, range);
    }
}
void describe(Form& form, SetStops& edit) {
    describe_edited_head(form, edit.head);
    Head head;
    head.stops = edit.stops;
    describe_stops_members(form, head);
    edit.stops = head.stops;
}
void describe(Form& form, SetName& edit) {
    describe_edited_head(form, edit.head);
    form.text("name", edit.name, any_name);
}
void describe(Form& form, SetInk& edit) {
    describe_edited_head(form, edit.head);
    form.colour("ink", edit.ink);
}
void describe(Form& form, SetPrintStroke& edit) {
    describe_edited_head(form, edit.head);
    describe_choice(form, "print_stroke", edit.direction, directions);
}
void describe(Form& form, SetWinged& edit) {
    describe_edited_head(form, edit.head);
    form.truth("winged", edit.winged);
}
void describe(Form& form, SetImage& edit) {
    describe_edited_head(form, edit.head);
    Head head;
    head.image = std::move(edit.image);
    form.object("image", [&] { describe_image_members(form, head); });
    edit.image = std::move(head.image);
}
void describe(Form& form, AddHead& edit) { describe_head_members(form, edit.head); }
void describe(Form& form, RemoveHead& edit) { describe_edited_head(form, edit.head); }
void describe(Form& form, MoveHead& edit) {
    describe_edited_head(form, edit.head);
    describe_whole(form, "station", edit.station, {1, most_stations});
}
void describe(Form& form, SetUse& edit) {
    describe_whole(form, "station", edit.station, {1, most_stations});
    describe_choice(form, "use", edit.use, station_uses);
}
void describe(Form& form, SetPress& edit) {
    form.object("press", [&] { describe_press(form, edit.press); });
    describe_uses(form, edit.uses, {any_number.least, any_number.most, true});
}
void describe(Form& form, SetGarment& edit) { describe_choice(form, "kind", edit.kind, garments); }
void describe(Form& form, SetBaseHead& edit) { describe_edited_head(form, edit.head); }
void describe(Form& form, SetHeightStop& edit) {
    describe_edited_head(form, edit.head);
    form.truth("on", edit.on);
}
void describe(Form& form, SetRounds& edit) {
    describe_edited_head(form, edit.head);
    describe_rounds(form, edit.rounds);
}
void describe(Form& form, SetHeightReadings& edit) {
    describe_height_readings(form, edit.readings);
}
void describe(Form& form, SetColourWish& edit) {
    describe_edited_head(form, edit.head);
    Head head;
    head.wish = edit.wish;
    describe_wish_members(form, head);
    edit.wish = head.wish;
}
void describe(Form& form, SetBladeEdge& edit) {
    describe_edited_head(form, edit.head);
    describe_choice(form, "edge", edit.edge, blade_edges);
}
void describe(Form& form, SetNote& edit) {
    describe_edited_head(form, edit.head);
    describe_choice(form, "note", edit.note, note_names);
    form.text("text", edit.text, any_name);
}
void describe(Form& form, SetWalkMark& edit) {
    describe_walk_mark_members(form, edit.mark);
    form.truth("there", edit.there);
}
void describe(Form& form, SetWalk& edit) { describe_walk(form, "marks", edit.marks); }
void describe(Form& form, SetRecord& edit) { describe_record_members(form, edit.record); }

template <typename Kind>
Way way_of(Form& form, Edit& edit, const char* key) {
    return {{key}, [&form, &edit, key] {
                if (!std::holds_alternative<Kind>(edit.what)) edit.what = Kind{};
                form.object(key, [&] { describe(form, std::get<Kind>(edit.what)); });
            }};
}

Way way_of_together(Form& form, Edit& edit) {
    return {{"together"}, [&form, &edit] {
                if (!std::holds_alternative<Together>(edit.what)) edit.what = Together{};
                describe_list(
                    form, "together", std::get<Together>(edit.what).edits, any_number,
                    [&form](Edit& part) { form.object("", [&] { describe_edit(form, part); }); });
            }};
}

} // namespace

void describe_edit(Form& form, Edit& edit) {
    // In the order of the variant.
    const std::size_t kind = edit.what.index();
    form.one_of({way_of<SetNumber>(form, edit, "set_number"),
                 way_of<SetStops>(form, edit, "set_stops"),
                 way_of<SetName>(form, edit, "set_name"),
                 way_of<SetInk>(form, edit, "set_ink"),
                 way_of<SetPrintStroke>(form, edit, "set_print_stroke"),
                 way_of<SetWinged>(form, edit, "set_winged"),
                 way_of<SetImage>(form, edit, "set_image"),
                 way_of<AddHead>(form, edit, "add_head"),
                 way_of<RemoveHead>(form, edit, "remove_head"),
                 way_of<MoveHead>(form, edit, "move_head"),
                 way_of<SetUse>(form, edit, "set_use"),
                 way_of<SetPress>(form, edit, "set_press"),
                 way_of<SetGarment>(form, edit, "set_garment"),
                 way_of<SetBaseHead>(form, edit, "set_base_head"),
                 way_of<SetHeightStop>(form, edit, "set_height_stop"),
                 way_of<SetRounds>(form, edit, "set_rounds"),
                 way_of<SetHeightReadings>(form, edit, "set_height_readings"),
                 way_of<SetColourWish>(form, edit, "set_colour_wish"),
                 way_of<SetBladeEdge>(form, edit, "set_blade_edge"),
                 way_of<SetNote>(form, edit, "set_note"),
                 way_of<SetWalkMark>(form, edit, "set_walk_mark"),
                 way_of<SetWalk>(form, edit, "set_walk"),
                 way_of<SetRecord>(form, edit, "set_record"),
                 way_of_together(form, edit)},
                kind);
}

} // namespace carriageway
