// One head: what is wrong first, then the stop being set, then everything else that decides it.
#include "app/film.h"
#include "app/text/sentences.h"
#include "app/views/cycle_view.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

void verdict_line(const Model& model, const HeadAssessment& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TypeStyle style{TypeSize::title, true};
    const float mark = canvas.type().height(style) * 0.8f;
    const std::string_view words = canvas.word(Word::fit_to_run);
    const float height = canvas.paragraph_height(rows.width - mark - 8.0f, words, style);
    const Box box = rows.next(height, 4.0f);
    draw_verdict(canvas.list(), {box.x0 + 0.5f * mark, box.y0 + 0.5f * canvas.type().height(style)},
                 mark, Role::fit);
    canvas.paragraph({box.x0 + mark + 8.0f, box.y0}, rows.width - mark - 8.0f, words, style, Role::fit,
                     rows.on);
    const LengthUnit units = model.state->looks.units;
    const Passing line(
        say(canvas.language(), Word::run_past_left,
            {format_length(head.operator_run_past, units), format_length(head.machine_run_past, units)}));
    canvas.reading("verdict", box, words, line);
    canvas.list().things().back().live = true;
    rows.text(line, {TypeSize::body, false}, Role::ink, 10.0f);
}

/// Which stop is being set: two tabs with what the ruler shows.
void stop_tabs(const Model& model, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto option = [&](End end) {
        const bool machine = end == End::machine_side;
        return Choice{machine ? "stop/machine" : "stop/operator",
                      spare_text(canvas.word(machine ? Word::machine_stop : Word::operator_stop)),
                      canvas.action(ChooseStop{head.id, end}), model.state->stop == end};
    };
    Choice options[] = {option(End::operator_side), option(End::machine_side)};
    choices("stop", canvas.word(Word::stops), options, rows);
    for (Choice& each : options) give_back(each.words);
}

/// Minus and plus one graduation, with the number between them: a tap types it.
void step_row(const Model& model, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const bool machine = model.state->stop == End::machine_side;
    const Field field = machine ? Field::machine_stop : Field::operator_stop;
    const std::string_view label =
        canvas.word(machine ? Word::machine_stop_ruler : Word::operator_stop_ruler);
    const std::string value = field_value(model, head.id, field);
    const float side = 64.0f, inside = rows.width - 2.0f * (side + 8.0f);
    // The number is as large as fits between the two buttons.
    const TypeStyle small{TypeSize::small, false};
    TypeStyle large{TypeSize::large, true};
    for (const TypeSize smaller : {TypeSize::title, TypeSize::body, TypeSize::small})
        if (canvas.type().width(large, value) > inside - 12.0f) large.size = smaller;
    const float label_height = canvas.paragraph_height(inside - 16.0f, label, small);
    const float height = std::max(side, label_height + canvas.type().height(large) + 14.0f);
    const Box row = rows.next(height, 12.0f);
    const Box less{row.x0, row.y0, row.x0 + side, row.y1}, more{row.x1 - side, row.y0, row.x1, row.y1};
    canvas.icon_button("stop/less", less, Icon::minus, canvas.word(Word::one_graduation_down),
                       canvas.action(StepStop{head.id, model.state->stop, -1.0, 0.0}), true,
                       ButtonLook::quiet);
    canvas.icon_button("stop/more", more, Icon::plus, canvas.word(Word::one_graduation_up),
                       canvas.action(StepStop{head.id, model.state->stop, 1.0, 0.0}), true,
                       ButtonLook::quiet);
    const Box middle{less.x1 + 8.0f, row.y0, more.x0 - 8.0f, row.y1};
    DrawingList& list = canvas.list();
    list.ring(middle, 12.0f, paint(Role::edge), 1.4f);
    const float y = middle.centre().y - 0.5f * (label_height + canvas.type().height(large));
    canvas.centred_paragraph({middle.centre().x, y + 0.5f * label_height}, inside - 16.0f, label, small,
                             Role::soft_ink, rows.on);
    list.text_centred({middle.centre().x, y + label_height + 0.5f * canvas.type().height(large)}, value, large,
                      Role::ink, rows.on);
    Thing& thing = list.thing("stop/number", ThingRole::button, middle);
    thing.label.assign(label);
    thing.value = value;
    thing.hint.assign(canvas.word(Word::type_number));
    thing.action = canvas.action(OpenPad{head.id, field});
}

void set_head_button(const Model& model, const HeadAssessment& head, Rows& rows) {
    if (!head.advised) return;
    const Head& set = *find_head(*model.job, head.head);
    if (*head.advised == set.stops) return;
    // Where the first finding's button does just this, it is not offered twice.
    if (!head.findings.empty() && head.findings.front().remedy.kind == Remedy::Kind::stops &&
        head.findings.front().remedy.stops == *head.advised)
        return;
    Canvas& canvas = rows.canvas;
    const Passing move(stops_text(canvas.language(), model.state->looks.units, model.job->press.ruler,
                                  set.stops, *head.advised));
    const std::string_view words = canvas.word(Word::set_this_head);
    const float height = canvas.button_height(words, move->detail, rows.width, 60.0f);
    canvas.button("set-this-head", rows.next(height, 12.0f), words, ButtonLook::plain,
                  canvas.action(DoEdit{Edit{SetStops{head.head, *head.advised}}}), move->detail);
}

/// A film as the image: picked here, or dropped on the window.
void film_rows(const Model& model, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::film_hint), {TypeSize::small, false}, Role::soft_ink, 6.0f);
    const auto button = [&](const char* name, Word words, Action action) {
        const float height = canvas.button_height(canvas.word(words), {}, rows.width, 48.0f);
        canvas.button(name, rows.next(height), canvas.word(words), ButtonLook::plain,
                      canvas.action(std::move(action)));
    };
    if (model.abilities->pick_file) button("film/pick", Word::film_pick, PickFile{});
    if (head.image.outline.empty()) return;
    button("film/rectangle", Word::film_rectangle, DoEdit{rectangle_edit(head)});
}

void blade_sections(const Model& model, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    if (section_head(model, Section::image, "section/image", canvas.word(Word::section_image), rows)) {
        for (const Field field : {Field::image_width, Field::image_length, Field::image_offset_x, Field::image_offset_y, Field::image_rotation})
            number_row(model, head.id, field, rows);
    }
    if (model.state->is_open(Section::image)) film_rows(model, head, rows);
    if (section_head(model, Section::squeegee, "section/squeegee", canvas.word(Word::section_squeegee),
                     rows)) {
        for (const Field field : {Field::squeegee_width, Field::squeegee_angle, Field::squeegee_gauge})
            number_row(model, head.id, field, rows);
        const bool toward = head.print_stroke == Direction::toward_machine;
        choices("print-stroke", canvas.word(Word::print_stroke),
               {{"print-stroke/operator", std::string(canvas.word(Word::toward_operator)),
                 canvas.action(DoEdit{Edit{SetPrintStroke{head.id, Direction::toward_operator}}}), !toward},
                {"print-stroke/machine", std::string(canvas.word(Word::toward_machine)),
                 canvas.action(DoEdit{Edit{SetPrintStroke{head.id, Direction::toward_machine}}}), toward}},
               rows);
    }
    if (section_head(model, Section::flood_bar, "section/flood-bar", canvas.word(Word::section_flood_bar),
                     rows)) {
        for (const Field field : {Field::flood_width, Field::flood_angle, Field::flood_gauge})
            number_row(model, head.id, field, rows);
        choices("wings", canvas.word(Word::wings),
               {{"wings/yes", std::string(canvas.word(Word::with_wings)),
                 canvas.action(DoEdit{Edit{SetWinged{head.id, true}}}), head.flood.winged},
                {"wings/no", std::string(canvas.word(Word::without_wings)),
                 canvas.action(DoEdit{Edit{SetWinged{head.id, false}}}), !head.flood.winged}},
               rows);
    }
}

void other_sections(const Model& model, const HeadAssessment& assessed, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    if (section_head(model, Section::screen, "section/screen", canvas.word(Word::section_screen), rows))
        for (const Field field : {Field::screen_across, Field::screen_along, Field::screen_profile,
                                  Field::mesh_count, Field::thread_diameter, Field::tension_along,
                                  Field::tension_across})
            number_row(model, head.id, field, rows);
    if (section_head(model, Section::speeds, "section/speeds", canvas.word(Word::section_speeds), rows)) {
        number_row(model, head.id, Field::print_speed, rows);
        number_row(model, head.id, Field::flood_speed, rows);
        rows.text(say(canvas.language(), Word::stroke_times,
                      {format_time(assessed.print_time), format_time(assessed.flood_time)}),
                  {TypeSize::small, false}, Role::soft_ink, 8.0f);
    }
    if (section_head(model, Section::head, "section/head", canvas.word(Word::section_head), rows)) {
        const auto button = [&](const char* name, Word words, Action action) {
            const float height = canvas.button_height(canvas.word(words), {}, rows.width, 48.0f);
            canvas.button(name, rows.next(height), canvas.word(words), ButtonLook::plain,
                          canvas.action(std::move(action)));
        };
        button("head/rename", Word::rename_colour, EditText{TextTarget::head_colour, 0});
        button("head/remove", Word::remove_head, DoEdit{Edit{RemoveHead{head.id}}});
    }
}

void colour_field(const Model& model, Rows& rows) {
    const ViewState& state = *model.state;
    if (!state.typing || state.typing->target != TextTarget::head_colour) return;
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::name_of_colour), {TypeSize::small, false}, Role::soft_ink, 2.0f);
    const float line = canvas.type().height({TypeSize::body, false});
    const Box box = rows.next(std::max(48.0f, line + 20.0f));
    canvas.list().ring(box, 10.0f, paint(Role::focus), 2.0f);
    canvas.frame().typing = {box.x0 + 8.0f, box.y0 + 3.0f, box.x1 - 8.0f, box.y1 - 3.0f};
    Thing& thing = canvas.list().thing("typing", ThingRole::textbox, box);
    thing.label.assign(canvas.word(Word::name_of_colour));
    thing.value = state.typing->text;
    const float height = canvas.button_height(canvas.word(Word::done), {}, rows.width, 48.0f);
    canvas.button("typing/done", rows.next(height, 12.0f), canvas.word(Word::done), ButtonLook::strong,
                  canvas.action(AcceptText{}));
}

} // namespace

void stop_controls(const Model& model, const Head& head, Rows& rows) {
    step_row(model, head, rows);
    stop_tabs(model, head, rows);
}

void head_panel(const Model& model, const HeadAssessment& head, Rows& rows) {
    const Head& set = *find_head(*model.job, head.head);
    Canvas& canvas = rows.canvas;
    colour_field(model, rows);
    if (cycle_on_screen(model)) cycle_side(model, head, rows);
    if (head.findings.empty()) verdict_line(model, head, rows);
    else finding_card(model, head, 0, false, false, rows);
    stop_controls(model, set, rows);
    set_head_button(model, head, rows);
    for (std::size_t i = 1; i < head.findings.size(); ++i)
        finding_card(model, head, i, false, true, rows);
    cycle_button(model, rows);
    find_fault_button(head.head, rows);
    if (section_head(model, Section::plot, "section/plot", canvas.word(Word::allowed_stops), rows))
        allowed_plot(model, head, rows);
    if (section_head(model, Section::margins, "section/margins", canvas.word(Word::section_margins), rows))
        margins_panel(model, head, rows);
    contact_sections(model, head, rows);
    blade_sections(model, set, rows);
    other_sections(model, head, set, rows);
}

} // namespace carriageway
