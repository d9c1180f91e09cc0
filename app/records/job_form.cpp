#include "app/records/job_form.h"

#include <cstring>
#include <limits>

#include "app/records/exchange.h"
#include "core/job_check.h"

namespace carriageway {
namespace {

constexpr std::int64_t most_head_id = std::numeric_limits<HeadId>::max();

// Of lists that core doesn't limit; most_values does.
constexpr ListSize any_number{0, most_values};

const Choices uses{"open", "load", "unload", "flash", "cool"};
const Choices directions{"toward_operator", "toward_machine"};
const Choices turnings{"clockwise", "counter_clockwise"};
const Choices garments{"t_shirt", "fleece"};
const Choices adjuster_sides{"left", "right", "across"};

const char* last_part(const char* key) {
    const char* dot = std::strrchr(key, '.');
    return dot == nullptr ? key : dot + 1;
}

NumberRange range_of(Field field) {
    const FieldInfo& info = info_of(field);
    return {info.least, info.most, file_factor(info.quantity), false, info.quantity};
}

// An angle is given in degrees; one that no number of degrees gives exactly in radians.
void describe_angle(Form& form, const char* key, double& value, const NumberRange& range) {
    const std::string stem(key, std::strlen(key) - std::strlen("deg"));
    const std::string in_radians = stem + "rad";
    NumberRange plain = range;
    plain.factor = 1.0;
    const std::size_t way = number_in_file(value, range.factor) ? 0 : 1;
    form.one_of({{{key}, [&] { form.number(key, value, range); }},
                 {{in_radians.c_str()}, [&] { form.number(in_radians.c_str(), value, plain); }}},
                way);
}

void describe_number(Form& form, double& value, Field field) {
    const char* key = last_part(info_of(field).key);
    const NumberRange range = range_of(field);
    if (range.quantity == Quantity::angle) {
        describe_angle(form, key, value, range);
    } else {
        form.number(key, value, range);
    }
}

template <typename Enum>
void describe_choice(Form& form, const char* key, Enum& value, const Choices& choices) {
    auto index = static_cast<std::size_t>(value);
    form.choice(key, index, choices);
    value = static_cast<Enum>(index);
}

template <typename Whole>
void describe_whole(Form& form, const char* key, Whole& value, const WholeRange& range) {
    std::int64_t number = value;
    form.whole(key, number, range);
    value = static_cast<Whole>(number);
}

template <typename Item, typename Describe>
void describe_list(Form& form, const char* key, std::vector<Item>& items, const ListSize& size,
                   Describe describe) {
    form.list(
        key, items.size(), size, [&](std::size_t count) { items.resize(count); },
        [&](std::size_t i) { describe(items[i]); });
}

void describe_uses(Form& form, std::vector<StationUse>& stations, const ListSize& size) {
    describe_list(form, "stations", stations, size,
                  [&](StationUse& use) { describe_choice(form, "", use, uses); });
}

// ---- press ----

/// Numbers of a press, by their field.
struct PressNumbers {
    Form& form;
    PressProfile& press;
    void operator()(std::initializer_list<Field> fields) const {
        for (const Field field : fields) describe_number(form, number_of(press, field), field);
    }
};

void describe_spread(const PressNumbers& numbers, const char* key, Field field, bool& measured) {
    numbers.form.object(key, [&] {
        numbers({field});
        numbers.form.truth("measured", measured);
    });
}

void describe_sensors(const PressNumbers& numbers) {
    Sensors& sensors = numbers.press.sensors;
    numbers({Field::operator_sensor, Field::machine_sensor, Field::bar_length, Field::sensor_reach,
             Field::sensor_hysteresis, Field::sensor_latency, Field::separation_margin});
    numbers.form.truth("separation_measured", sensors.separation_measured);
    numbers({Field::measured_separation});
    describe_spread(numbers, "separation_spread", Field::separation_spread,
                    sensors.separation_spread.measured);
}

void describe_allowances(const PressNumbers& numbers) {
    Allowances& allowances = numbers.press.allowances;
    numbers({Field::frame_clearance, Field::platen_inset, Field::least_bead});
    describe_spread(numbers, "stop_spread", Field::stop_spread, allowances.stop.measured);
    describe_spread(numbers, "screen_spread", Field::screen_spread, allowances.screen.measured);
    describe_spread(numbers, "image_spread", Field::image_spread, allowances.image.measured);
    describe_spread(numbers, "overtravel_spread", Field::overtravel_spread,
                    allowances.overtravel.measured);
}

void describe_adjuster(Form& form, Adjuster& adjuster) {
    form.object("", [&] {
        form.text("name", adjuster.name);
        describe_choice(form, "side", adjuster.side, adjuster_sides);
        form.number("x_mm", adjuster.x, range_of(Field::image_offset_x));
        form.number("y_mm", adjuster.y, range_of(Field::image_offset_y));
        form.number("mm_per_turn", adjuster.mm_per_turn,
                    {0.0, most_mm_per_turn, 1.0, true, Quantity::length});
        describe_whole(form, "graduations", adjuster.graduations, {1, most_dial_marks});
        form.truth("clockwise_positive", adjuster.clockwise_positive);
    });
}

/// An object that a file may leave out: it then stands as in a new job. Written when it differs.
template <typename Part>
void describe_part(Form& form, const char* key, const Part& part,
                   const std::function<void()>& members) {
    bool there = !(part == Part{});
    form.optional_object(key, there, members);
}

void describe_readings(const PressNumbers& numbers) {
    Readings& readings = numbers.press.readings;
    numbers({Field::adjuster_backlash});
    describe_spread(numbers, "mark_spread", Field::mark_spread, readings.mark.measured);
    describe_spread(numbers, "height_spread", Field::height_spread, readings.height.measured);
}

void describe_level_screw(Form& form, LevelScrew& screw) {
    form.object("", [&] {
        form.text("name", screw.name);
        form.number("x_mm", screw.x, range_of(Field::image_offset_x));
        form.number("y_mm", screw.y, range_of(Field::image_offset_y));
        form.number("mm_per_turn", screw.mm_per_turn,
                    {0.0, most_mm_per_turn, 1.0, true, Quantity::length});
        form.truth("clockwise_raises", screw.clockwise_raises);
    });
}

void describe_mesh(Form& form, MeshRow& mesh) {
    constexpr double most_um = 10000.0;
    const auto number = [&](const char* key, double& value, double most, Quantity quantity) {
        form.number(key, value, {0.0, most, 1.0, true, quantity});
    };
    form.object("", [&] {
        number("mesh_per_cm", mesh.threads_per_cm, info_of(Field::mesh_count).most,
               Quantity::mesh_count);
        number("thread_um", mesh.thread, info_of(Field::thread_diameter).most, Quantity::thread);
        number("opening_um", mesh.opening, most_um, Quantity::thread);
        number("open_share", mesh.share, 1.0, Quantity::share);
        number("thickness_um", mesh.thickness, info_of(Field::fabric_thickness).most,
               Quantity::thread);
        number("volume_cm3_per_m2", mesh.volume, most_um, Quantity::ratio);
        mesh.source = SourceKind::user;
    });
}

void describe_optional_press_parts(const PressNumbers& numbers) {
    Form& form = numbers.form;
    PressProfile& press = numbers.press;
    describe_part(form, "cylinders", press.cylinders, [&] {
        numbers({Field::squeegee_bore, Field::squeegee_cylinders, Field::flood_bore,
                 Field::flood_cylinders});
    });
    describe_part(form, "edge_heights", press.edge_heights,
                  [&] { numbers({Field::squeegee_zero_height, Field::flood_zero_height}); });
    describe_part(form, "height_points", press.height_points, [&] {
        numbers({Field::height_across, Field::height_operator_y, Field::height_machine_y});
    });
    describe_part(form, "readings", press.readings, [&] { describe_readings(numbers); });
    describe_part(form, "warming", press.warming, [&] {
        numbers({Field::ambient, Field::warming_rate, Field::cooling_time});
    });
    describe_part(form, "meshes", press.meshes, [&] {
        describe_list(form, "rows", press.meshes, {0, most_meshes},
                      [&](MeshRow& mesh) { describe_mesh(form, mesh); });
    });
    describe_part(form, "levelling", press.level_screws, [&] {
        describe_list(form, "screws", press.level_screws, {0, most_adjusters},
                      [&](LevelScrew& screw) { describe_level_screw(form, screw); });
    });
}

void describe_press_parts(const PressNumbers& numbers) {
    Form& form = numbers.form;
    form.object("ruler", [&] {
        numbers({Field::ruler_zero});
        describe_choice(form, "counts", numbers.press.ruler.counts, directions);
        numbers({Field::ruler_graduation});
        form.truth("inches", numbers.press.ruler.inches);
    });
    form.object("sensors", [&] { describe_sensors(numbers); });
    form.object("carriage", [&] {
        numbers({Field::range_lo, Field::range_hi, Field::acceleration, Field::fastest,
                 Field::drop_time, Field::drop_dwell});
    });
    form.object("squeegee_holder", [&] {
        numbers({Field::squeegee_pivot_offset, Field::squeegee_pivot_height,
                 Field::squeegee_half_depth});
    });
    form.object("flood_holder", [&] {
        numbers({Field::flood_pivot_offset, Field::flood_pivot_height, Field::flood_half_depth});
    });
    form.object("squeegee_gauge", [&] {
        numbers({Field::squeegee_mm_per_mark, Field::squeegee_lowest_mark,
                 Field::squeegee_highest_mark, Field::squeegee_mark_step});
    });
    form.object("flood_gauge", [&] {
        numbers({Field::flood_mm_per_mark, Field::flood_lowest_mark, Field::flood_highest_mark,
                 Field::flood_mark_step});
    });
    form.object("angles", [&] {
        numbers({Field::least_angle, Field::most_angle, Field::wings_flat_angle,
                 Field::wing_length});
    });
    form.object("allowances", [&] { describe_allowances(numbers); });
}

// ---- head ----

/// Numbers of a head, by their field.
struct HeadNumbers {
    Form& form;
    Head& head;
    void operator()(std::initializer_list<Field> fields) const {
        Job without;  // the numbers of a head don't depend on its job
        for (const Field field : fields) {
            describe_number(form, number_of(without, &head, field), field);
        }
    }
};

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
    numbers.form.optional_object("set_aside", there,
                                 [&] { numbers({Field::image_width, Field::image_length}); });
}

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

void describe_place(Form& form, const char* key, Point& point) {
    const NumberRange place = range_of(Field::image_offset_x);
    form.list(
        key, 2, {2, 2, true}, [](std::size_t) {},
        [&](std::size_t i) { form.number("", i == 0 ? point.x : point.y, place); });
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

void describe_rounds(Form& form, std::vector<MarkRound>& rounds) {
    describe_list(form, "rounds", rounds, {0, most_rounds}, [&](MarkRound& round) {
        form.object("", [&] { describe_round(form, round); });
    });
}

void describe_height_readings(Form& form, std::vector<HeightReading>& readings) {
    describe_list(form, "readings", readings, {0, most_height_readings}, [&](HeightReading& read) {
        form.object("", [&] {
            describe_whole(form, "platen", read.platen, {1, most_number});
            describe_whole(form, "head", read.head, {1, most_head_id});
            Point at{read.x, read.y};
            describe_place(form, "at_mm", at);
            read.x = at.x;
            read.y = at.y;
            form.number("height_mm", read.height,
                        {-most_height, most_height, 1.0, false, Quantity::length});
        });
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
    describe_part(form, "registration", head.rounds, [&] { describe_rounds(form, head.rounds); });
}

void describe_head_members(Form& form, Head& head) {
    const HeadNumbers numbers{form, head};
    describe_whole(form, "id", head.id, {1, most_head_id});
    describe_whole(form, "station", head.station, {1, most_stations});
    form.text("colour", head.colour);
    form.colour("ink", head.ink);
    form.object("screen", [&] {
        numbers({Field::screen_across, Field::screen_along, Field::screen_profile,
                 Field::mesh_count, Field::thread_diameter, Field::tension_along,
                 Field::tension_across});
    });
    form.object("image", [&] { describe_image_members(form, head); });
    form.object("squeegee", [&] {
        numbers({Field::squeegee_width, Field::squeegee_angle, Field::squeegee_gauge});
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

// ---- edits ----

void describe_edited_head(Form& form, HeadId& head) {
    describe_whole(form, "head", head, {0, most_head_id});
}

const char* field_name(Field field) {
    return info_of(field).key;
}

const Choices& field_names() {
    static const Choices names = [] {
        Choices made;
        for (int i = 0; i < static_cast<int>(Field::count); ++i) {
            made.push_back(field_name(static_cast<Field>(i)));
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
    form.text("name", edit.name);
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
void describe(Form& form, AddHead& edit) {
    describe_head_members(form, edit.head);
}
void describe(Form& form, RemoveHead& edit) {
    describe_edited_head(form, edit.head);
}
void describe(Form& form, MoveHead& edit) {
    describe_edited_head(form, edit.head);
    describe_whole(form, "station", edit.station, {1, most_stations});
}
void describe(Form& form, SetUse& edit) {
    describe_whole(form, "station", edit.station, {1, most_stations});
    describe_choice(form, "use", edit.use, uses);
}
void describe(Form& form, SetPress& edit) {
    form.object("press", [&] { describe_press(form, edit.press); });
    describe_uses(form, edit.uses, {any_number.least, any_number.most, true});
}
void describe(Form& form, SetGarment& edit) {
    describe_choice(form, "kind", edit.kind, garments);
}
void describe(Form& form, SetBaseHead& edit) {
    describe_edited_head(form, edit.head);
}
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
                describe_list(form, "together", std::get<Together>(edit.what).edits,
                              any_number, [&form](Edit& part) {
                                  form.object("", [&] { describe_edit(form, part); });
                              });
            }};
}

}  // namespace

void describe_press(Form& form, PressProfile& press) {
    form.text("name", press.name);
    describe_whole(form, "stations", press.stations, {2, most_stations});
    describe_choice(form, "turning", press.turning, turnings);
    const PressNumbers numbers{form, press};
    numbers({Field::arm_radius});
    describe_press_parts(numbers);
    describe_optional_press_parts(numbers);
    describe_list(form, "adjusters", press.adjusters, any_number,
                  [&](Adjuster& adjuster) { describe_adjuster(form, adjuster); });
}

void describe_job(Form& form, Job& job) {
    form.text("name", job.name);
    form.object("press", [&] { describe_press(form, job.press); });
    const auto numbers = [&](std::initializer_list<Field> fields) {
        for (const Field field : fields) {
            describe_number(form, number_of(job, nullptr, field), field);
        }
    };
    form.object("platen", [&] {
        numbers({Field::platen_width, Field::platen_length, Field::platen_offset_x,
                 Field::platen_offset_y});
    });
    form.object("wishes", [&] { numbers({Field::run_past, Field::side_overlap}); });
    describe_part(form, "garment", job.garment, [&] {
        describe_choice(form, "kind", job.garment.kind, garments);
        numbers({Field::garment_compressed});
    });
    describe_part(form, "registration", job.registration, [&] {
        numbers({Field::registration_tolerance});
        describe_whole(form, "base_head", job.registration.base, {0, most_head_id});
    });
    describe_part(form, "run", job.run,
                  [&] { numbers({Field::pieces, Field::flash_dwell, Field::cycle}); });
    describe_part(form, "assumed", job.assumed, [&] {
        numbers({Field::friction, Field::mesh_stiffness, Field::transfer_share,
                 Field::second_stroke_share, Field::ink_in_screen, Field::waste_share});
    });
    describe_part(form, "levelling", job.height_readings,
                  [&] { describe_height_readings(form, job.height_readings); });
    describe_uses(form, job.uses, {2, most_stations, true});
    describe_list(form, "heads", job.heads, {0, most_stations}, [&](Head& head) {
        form.object("", [&] { describe_head_members(form, head); });
    });
}

void describe_edit(Form& form, Edit& edit) {
    // In the order of the variant.
    const std::size_t kind = edit.what.index();
    form.one_of({way_of<SetNumber>(form, edit, "set_number"),
                 way_of<SetStops>(form, edit, "set_stops"), way_of<SetName>(form, edit, "set_name"),
                 way_of<SetInk>(form, edit, "set_ink"),
                 way_of<SetPrintStroke>(form, edit, "set_print_stroke"),
                 way_of<SetWinged>(form, edit, "set_winged"),
                 way_of<SetImage>(form, edit, "set_image"), way_of<AddHead>(form, edit, "add_head"),
                 way_of<RemoveHead>(form, edit, "remove_head"),
                 way_of<MoveHead>(form, edit, "move_head"), way_of<SetUse>(form, edit, "set_use"),
                 way_of<SetPress>(form, edit, "set_press"),
                 way_of<SetGarment>(form, edit, "set_garment"),
                 way_of<SetBaseHead>(form, edit, "set_base_head"),
                 way_of<SetHeightStop>(form, edit, "set_height_stop"),
                 way_of<SetRounds>(form, edit, "set_rounds"),
                 way_of<SetHeightReadings>(form, edit, "set_height_readings"),
                 way_of_together(form, edit)},
                kind);
}

std::string path_of(Field field, std::size_t head_index) {
    const FieldInfo& info = info_of(field);
    switch (info.owner) {
        case FieldOwner::head: return "heads[" + std::to_string(head_index) + "]." + info.key;
        case FieldOwner::press: return std::string("press.") + info.key;
        case FieldOwner::job: break;
    }
    return info.key;
}

const char* station_use_key(StationUse use) {
    return uses.at(static_cast<std::size_t>(use));
}

}  // namespace carriageway
