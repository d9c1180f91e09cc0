// The settings of a head during an exercise: the same rows as ever, with nothing that says which of
// them is wrong.
#include "app/text/sentences.h"
#include "app/views/exercise_view.h"
#include "app/views/exercise_run.h"

namespace carriageway {

namespace {

struct FieldSection {
    Section section;
    std::string_view name;
    Word words;
    std::vector<Field> fields;
};

const std::vector<FieldSection>& field_sections() {
    static const std::vector<FieldSection> sections = {
        {Section::image, "section/image", Word::section_image,
         {Field::image_width, Field::image_length, Field::image_offset_x, Field::image_offset_y,
          Field::image_rotation}},
        {Section::squeegee, "section/squeegee", Word::section_squeegee,
         {Field::squeegee_width, Field::squeegee_angle, Field::squeegee_gauge}},
        {Section::flood_bar, "section/flood-bar", Word::section_flood_bar,
         {Field::flood_width, Field::flood_angle, Field::flood_gauge}},
        {Section::off_contact, "section/off-contact", Word::section_off_contact,
         {Field::height_left, Field::height_right, Field::height_machine}},
        {Section::pressure, "section/pressure", Word::section_pressure,
         {Field::squeegee_pressure, Field::flood_pressure}},
        {Section::screen, "section/screen", Word::section_screen,
         {Field::screen_across, Field::screen_along, Field::screen_profile, Field::mesh_count,
          Field::thread_diameter, Field::tension_along, Field::tension_across}},
        {Section::speeds, "section/speeds", Word::section_speeds,
         {Field::print_speed, Field::flood_speed}},
    };
    return sections;
}

/// Something that is so, in the look of a number's row.
void fact_row(const std::string& name, std::string_view label, std::string_view value,
              Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TypeStyle bold{TypeSize::body, true};
    const float inside = rows.width - 24.0f;
    const float label_height = canvas.paragraph_height(inside, label, small_text);
    const float value_height = canvas.paragraph_height(inside, value, bold);
    const Box box = rows.next(label_height + value_height + 16.0f, 4.0f);
    canvas.list().round(box, 10.0f, paint(Role::quiet));
    canvas.paragraph({box.x0 + 12.0f, box.y0 + 8.0f}, inside, label, small_text, Role::soft_ink,
                     Role::quiet);
    canvas.paragraph({box.x0 + 12.0f, box.y0 + 8.0f + label_height}, inside, value, bold, Role::ink,
                     Role::quiet);
    canvas.reading(name, box, label, value);
}

void way_of_printing(const Model& model, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const bool toward = head.print_stroke == Direction::toward_machine;
    if (looked_at_only(model)) {
        fact_row("print-stroke", canvas.word(Word::print_stroke),
                 canvas.word(toward ? Word::toward_machine : Word::toward_operator), rows);
        return;
    }
    const auto choice = [&](const char* name, Direction way) {
        const bool machine = way == Direction::toward_machine;
        return Choice{name,
                      std::string(canvas.word(machine ? Word::toward_machine
                                                      : Word::toward_operator)),
                      canvas.action(DoEdit{Edit{SetPrintStroke{head.id, way}}}),
                      head.print_stroke == way};
    };
    choices("print-stroke", canvas.word(Word::print_stroke),
            {choice("print-stroke/operator", Direction::toward_operator),
             choice("print-stroke/machine", Direction::toward_machine)},
            rows);
}

void wings(const Model& model, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto words = [&](bool winged) {
        return std::string(canvas.word(winged ? Word::with_wings : Word::without_wings));
    };
    if (looked_at_only(model))
        return fact_row("wings", canvas.word(Word::wings), words(head.flood.winged), rows);
    choices("wings", canvas.word(Word::wings),
            {{"wings/yes", words(true), canvas.action(DoEdit{Edit{SetWinged{head.id, true}}}),
              head.flood.winged},
             {"wings/no", words(false), canvas.action(DoEdit{Edit{SetWinged{head.id, false}}}),
              !head.flood.winged}},
            rows);
}

} // namespace

void exercise_settings(const Model& model, const Head& head, Rows& rows) {
    if (looked_at_only(model)) {
        number_row(model, head.id, Field::operator_stop, rows);
        number_row(model, head.id, Field::machine_stop, rows);
    } else {
        stop_controls(model, head, rows);
    }
    for (const FieldSection& section : field_sections()) {
        if (!section_head(model, section.section, section.name, rows.canvas.word(section.words),
                          rows))
            continue;
        for (const Field field : section.fields) number_row(model, head.id, field, rows);
        if (section.section == Section::squeegee) way_of_printing(model, head, rows);
        if (section.section == Section::flood_bar) wings(model, head, rows);
    }
}

} // namespace carriageway
