// The fields of a print head.
#include "app/records/form_parts.h"

namespace carriageway {
namespace {

void describe_outline(Form& form, Outline& outline) {
    const NumberRange place = range_of(Field::image_offset_x);
    describe_list(form, "outline_mm", outline, {3, most_outline_corners}, [&](Point& corner) {
        form.list(
            "", 2, {2, 2, true}, [](std::size_t) {},
            [&](std::size_t i) { form.number("", i == 0 ? corner.x : corner.y, place); });
    });
}

// A rectangle's size is kept when the image is given an outline, for going back to it.
void describe_size_set_aside(const HeadNumbers& numbers) {
    Image& image = numbers.head.image;
    const Image fresh;
    bool there = image.width != fresh.width || image.length != fresh.length;
    numbers.form.optional_object("set_aside", there, [&] {
        numbers({Field::image_width, Field::image_length});
    });
}

void describe_round(Form& form, MarkRound& round) {
    describe_whole(form, "platen", round.platen, {0, most_number});
    describe_whole(form, "turn", round.turn, {0, most_number});
    describe_list(form, "marks", round.marks, {0, most_marks_a_round}, [&](MarkReading& mark) {
        form.object("", [&] {
            describe_place(form, "nominal_mm", mark.nominal);
            describe_place(form, "measured_mm", mark.measured);
        });
    });
    form.truth("read", round.read);
    describe_list(form, "turned", round.turned, {0, most_adjusters, true}, [&](double& turns) {
        form.number("", turns, {-most_turns, most_turns, 1.0, false, Quantity::turns});
    });
}

void describe_optional_head_parts(const HeadNumbers& numbers) {
    Form& form = numbers.form;
    Head& head = numbers.head;
    describe_part(form, "off_contact", head.heights, [&] {
        numbers({Field::height_left, Field::height_right, Field::height_machine});
    });
    describe_part(form, "pressure", head.pressure, [&] {
        numbers({Field::squeegee_pressure, Field::flood_pressure});
        form.truth("on_height_stop", head.pressure.on_height_stop);
    });
    describe_part(form, "deposit", head.deposit, [&] {
        numbers({Field::fabric_thickness, Field::stencil, Field::printed_share,
                 Field::finest_detail, Field::print_strokes});
    });
    describe_part(form, "wish", head.wish, [&] { describe_wish_members(form, head); });
    describe_part(form, "notes", head.notes, [&] {
        form.text("ink", head.notes.ink, any_note);
        form.text("stencil", head.notes.stencil, any_note);
    });
    describe_part(form, "registration", head.rounds, [&] { describe_rounds(form, head.rounds); });
}

} // namespace

void describe_image_members(Form& form, Head& head) {
    const HeadNumbers numbers{form, head};
    const std::size_t way = head.image.outline.empty() ? 0 : 1;
    const auto rectangle = [&] { numbers({Field::image_width, Field::image_length}); };
    const auto outline = [&] {
        describe_outline(form, head.image.outline);
        describe_size_set_aside(numbers);
    };
    form.one_of({{{"width_mm", "length_mm"}, rectangle}, {{"outline_mm"}, outline}}, way);
    numbers({Field::image_offset_x, Field::image_offset_y, Field::image_rotation});
}

void describe_stops_members(Form& form, Head& head) {
    HeadNumbers{form, head}({Field::operator_stop, Field::machine_stop});
}

void describe_wish_members(Form& form, Head& head) {
    const ColourWish usual;
    HeadNumbers{form, head}.noted({Field::print_order, Field::cool_after, Field::screen_on});
    form.optional_truth("flash_after", head.wish.flash_after, usual.flash_after);
    form.optional_truth("flash_together", head.wish.flash_together, usual.flash_together);
    form.optional_truth("wet_on_wet", head.wish.wet_on_wet, usual.wet_on_wet);
    form.optional_truth("pinned", head.wish.pinned, usual.pinned);
}

void describe_rounds(Form& form, std::vector<MarkRound>& rounds) {
    describe_list(form, "rounds", rounds, {0, most_rounds},
                  [&](MarkRound& round) { form.object("", [&] { describe_round(form, round); }); });
}

void describe_head_members(Form& form, Head& head) {
    const HeadNumbers numbers{form, head};
    describe_whole(form, "id", head.id, {1, most_head_id});
    describe_whole(form, "station", head.station, {1, most_stations});
    form.text("colour", head.colour, any_name);
    form.colour("ink", head.ink);
    form.object("screen", [&] {
        numbers({Field::screen_across, Field::screen_along, Field::screen_profile,
                 Field::mesh_count, Field::thread_diameter, Field::tension_along,
                 Field::tension_across});
    });
    form.object("image", [&] { describe_image_members(form, head); });
    form.object("squeegee", [&] {
        numbers({Field::squeegee_width, Field::squeegee_angle, Field::squeegee_gauge});
        numbers.noted({Field::squeegee_hardness});
        describe_optional_choice(form, "edge", head.squeegee.edge, blade_edges);
    });
    form.object("flood", [&] {
        numbers({Field::flood_width, Field::flood_angle, Field::flood_gauge});
        form.truth("winged", head.flood.winged);
    });
    describe_choice(form, "print_stroke", head.print_stroke, directions);
    numbers({Field::print_speed, Field::flood_speed});
    form.object("stops", [&] { describe_stops_members(form, head); });
    describe_optional_head_parts(numbers);
}

} // namespace carriageway
