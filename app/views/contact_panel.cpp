// Off-contact, air, and mesh and ink of a head: the numbers that are set, and what follows from them.
#include "app/drawing/side_layer.h"
#include "app/text/sentences.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

/// A name in small print with its value under it; both are read together.
void fact(Rows& rows, std::string_view name, std::string_view label, const std::string& value,
          Role role = Role::ink) {
    const float top = rows.y;
    rows.text(label, {TypeSize::small, false}, Role::soft_ink, 0.0f);
    rows.text(value, {TypeSize::body, true}, role, 8.0f);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y}, label, value);
}

void remark(Rows& rows, std::string_view words) {
    rows.text(words, {TypeSize::small, false}, Role::soft_ink, 8.0f);
}

std::string load_text(const Model& model, double value) {
    return format_quantity(model.state->looks.language, std::round(value * 100.0) / 100.0,
                           Quantity::tension, model.state->looks.units);
}

std::string number_with(const Model& model, double value, double step, Quantity quantity) {
    return format_quantity(model.state->looks.language, std::round(value / step) * step, quantity,
                           model.state->looks.units);
}

std::string signed_fine(const Model& model, double mm) {
    const std::string words = format_fine_length(mm, model.state->looks.units);
    return mm > 0.004 ? "+" + words : words;
}

/// A shift by its two causes: "+0.12 mm (height +0.02 mm, drag +0.10 mm)".
std::string shift_text(const Model& model, const MeshShift& shift) {
    return say(model.state->looks.language, Word::contact_shift,
               {signed_fine(model, shift.total()), signed_fine(model, shift.height),
                signed_fine(model, shift.drag)});
}

void gap_facts(const Model& model, const HeadAssessment& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const LengthUnit units = model.state->looks.units;
    const HeadContact& contact = head.contact;
    const std::string least = format_fine_length(contact.gap.least, units);
    const std::string most = format_fine_length(contact.gap.most, units);
    fact(rows, "contact/gap", canvas.word(Word::contact_gap),
         least == most ? least : say(language, Word::contact_gap_range, {least, most}));
    const OffContactAdvice& advice = advice_for(model.job->garment.kind);
    remark(rows, say(language,
                     model.job->garment.kind == GarmentKind::fleece ? Word::contact_advice_fleece
                                                                    : Word::contact_advice_shirt,
                     {format_fine_length(advice.least, units), format_fine_length(advice.most, units)}));
    fact(rows, "contact/tilt", canvas.word(Word::contact_tilt),
         say(language, Word::contact_tilt_value,
             {signed_fine(model, contact.uneven), format_angle(std::round(degrees(tilt_of(contact.plane)) * 100.0) *
                                                               radians(0.01))}));
}

void length_facts(const Model& model, const HeadAssessment& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const HeadContact& contact = head.contact;
    if (contact.operator_shift && contact.machine_shift) {
        fact(rows, "contact/operator-shift", canvas.word(Word::contact_shift_operator),
             shift_text(model, *contact.operator_shift));
        fact(rows, "contact/machine-shift", canvas.word(Word::contact_shift_machine),
             shift_text(model, *contact.machine_shift));
    }
    if (contact.growth)
        fact(rows, "contact/growth", canvas.word(Word::contact_growth), shift_text(model, *contact.growth));
    if (contact.beside_base) {
        const double tolerance = model.job->registration.tolerance;
        const bool within = std::abs(contact.beside_base->total()) <= tolerance;
        fact(rows, "contact/beside-base",
             say(language, Word::contact_beside_base,
                 {format_fine_length(tolerance, model.state->looks.units)}),
             shift_text(model, *contact.beside_base), within ? Role::ink : Role::mind);
    }
    remark(rows, say(language, Word::contact_assumed,
                     {format_number(model.job->assumed.friction, 2),
                      load_text(model, model.job->assumed.mesh_stiffness)}));
}

void off_contact_section(const Model& model, const HeadAssessment& head, const Head& set, Rows& rows) {
    for (const Field field : {Field::height_left, Field::height_right, Field::height_machine})
        number_row(model, set.id, field, rows);
    number_row(model, 0, Field::garment_compressed, rows);
    Canvas& canvas = rows.canvas;
    const GarmentKind kind = model.job->garment.kind;
    choices("garment", canvas.word(Word::garment),
            {{"garment/t-shirt", std::string(canvas.word(Word::garment_t_shirt)),
              canvas.action(DoEdit{Edit{SetGarment{GarmentKind::t_shirt}}}), kind == GarmentKind::t_shirt},
             {"garment/fleece", std::string(canvas.word(Word::garment_fleece)),
              canvas.action(DoEdit{Edit{SetGarment{GarmentKind::fleece}}}), kind == GarmentKind::fleece}},
            rows);
    gap_facts(model, head, rows);
    length_facts(model, head, rows);
}

/// The pressure that would give the same line load on a blade 50 mm wider or narrower.
void other_blade(const Model& model, const Head& set, Rows& rows) {
    const Language language = rows.canvas.language();
    const LengthUnit units = model.state->looks.units;
    for (const double by : {-50.0, 50.0}) {
        const double to = set.squeegee.width + by;
        const auto pressure = pressure_for_blade(set.pressure.squeegee, set.squeegee.width, to);
        if (!pressure) continue;
        remark(rows, say(language, Word::contact_other_blade,
                         {format_length(to, units), number_with(model, *pressure, 1.0, Quantity::pressure)}));
    }
}

void pressure_section(const Model& model, const HeadAssessment& head, const Head& set, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    for (const Field field : {Field::squeegee_pressure, Field::flood_pressure})
        number_row(model, set.id, field, rows);
    choices("height-stop", canvas.word(Word::blade_rest),
            {{"height-stop/no", std::string(canvas.word(Word::on_mesh)),
              canvas.action(DoEdit{Edit{SetHeightStop{set.id, false}}}), !set.pressure.on_height_stop},
             {"height-stop/yes", std::string(canvas.word(Word::on_height_stop)),
              canvas.action(DoEdit{Edit{SetHeightStop{set.id, true}}}), set.pressure.on_height_stop}},
            rows);
    const HeadContact& contact = head.contact;
    if (contact.thrust)
        fact(rows, "pressure/thrust", canvas.word(Word::contact_thrust),
             number_with(model, *contact.thrust, 1.0, Quantity::ratio) + " N");
    if (contact.line_load)
        fact(rows, "pressure/load", canvas.word(Word::contact_load), load_text(model, *contact.line_load));
    else // without a load on the mesh it is the cylinders that are missing
        remark(rows, canvas.word(set.pressure.on_height_stop ? Word::contact_on_stop
                                                             : Word::contact_no_bore));
    if (contact.worst)
        fact(rows, "pressure/needed",
             say(language, Word::contact_needed,
                 {format_length(std::abs(contact.worst->y), model.state->looks.units),
                  canvas.word(contact.worst->y < 0.0 ? Word::toward_operator : Word::toward_machine)}),
             load_text(model, contact.worst->line_force));
    if (contact.hold != HoldDown::not_known)
        fact(rows, "pressure/hold", canvas.word(Word::contact_hold),
             std::string(canvas.word(contact.hold == HoldDown::holds_mesh ? Word::contact_holds
                                                                          : Word::contact_holds_not)),
             contact.hold == HoldDown::holds_mesh ? Role::ink : Role::mind);
    remark(rows, canvas.word(Word::contact_necessary));
    if (!set.pressure.on_height_stop) other_blade(model, set, rows);
    remark(rows, say(language, Word::contact_usual_air,
                     {number_with(model, usual_squeegee_pressure.least, 1.0, Quantity::pressure),
                      number_with(model, usual_squeegee_pressure.most, 1.0, Quantity::pressure),
                      number_with(model, usual_flood_pressure.least, 1.0, Quantity::pressure),
                      number_with(model, usual_flood_pressure.most, 1.0, Quantity::pressure)}));
}

void mesh_facts(const Model& model, const HeadDeposit& deposit, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const MeshRow& row = deposit.mesh->row;
    const auto um = [&](double value) { return number_with(model, value, 1.0, Quantity::thread); };
    fact(rows, "mesh/opening", canvas.word(Word::mesh_opening_and_share),
         um(row.opening) + " · " + format_share(row.share));
    fact(rows, "mesh/volume", canvas.word(Word::mesh_volume),
         format_number(row.volume, 1) + " cm³/m²");
    if (deposit.mesh->thickness_assumed)
        remark(rows, say(language, Word::mesh_thickness_assumed, {um(row.thickness)}));
    else if (row.source == SourceKind::published)
        remark(rows, canvas.word(Word::mesh_published));
    fact(rows, "mesh/film", canvas.word(Word::mesh_film), um(deposit.film));
    const double mm = 1e-3;
    fact(rows, "mesh/finest", canvas.word(Word::mesh_finest),
         say(language, Word::mesh_finest_value,
             {format_fine_length(deposit.finest.least * mm, model.state->looks.units),
              format_fine_length(deposit.finest.most * mm, model.state->looks.units)}));
}

void ink_facts(const Model& model, const InkNeed& ink, Rows& rows) {
    Canvas& canvas = rows.canvas;
    fact(rows, "ink/piece", canvas.word(Word::ink_a_piece), format_number(ink.per_piece, 2) + " cm³");
    fact(rows, "ink/run",
         say(canvas.language(), Word::ink_for_run, {format_number(model.job->run.pieces, 0)}),
         format_number(ink.total(), 0) + " cm³");
    remark(rows, say(canvas.language(), Word::ink_parts,
                     {format_number(ink.printed, 0), format_number(ink.in_screen, 0),
                      format_number(ink.wasted, 0)}));
}

std::string mesh_name(const MeshRow& row) {
    return format_number(row.threads_per_cm, 1) + "–" + format_number(row.thread, 1);
}

/// Meshes whose numbers are known: a tap puts one into this screen.
void known_meshes(const Model& model, const Head& set, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto button = [&](const MeshRow& row) {
        const std::string words = say(canvas.language(), Word::mesh_use, {mesh_name(row)});
        const std::string detail = say(canvas.language(), Word::mesh_use_detail,
                                       {format_number(row.opening, 0), format_share(row.share),
                                        format_number(row.thickness, 0), format_number(row.volume, 0)});
        const float height = canvas.button_height(words, detail, rows.width, 48.0f);
        const Together edits{{Edit{SetNumber{set.id, Field::mesh_count, row.threads_per_cm}},
                              Edit{SetNumber{set.id, Field::thread_diameter, row.thread}},
                              Edit{SetNumber{set.id, Field::fabric_thickness, row.thickness}}}};
        canvas.button("mesh/use/" + mesh_name(row), rows.next(height), words, ButtonLook::plain,
                      canvas.action(DoEdit{Edit{edits}}), detail);
    };
    for (const MeshRow& row : published_meshes) button(row);
    for (const MeshRow& row : model.job->press.meshes) button(row);
}

/// Keeps this screen's mesh, with the thickness typed for it, among those of the press.
void keep_mesh(const Model& model, const Head& set, const MeshRow& row, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto known = [&](std::span<const MeshRow> meshes) {
        return find_mesh(meshes, row.threads_per_cm, row.thread) != nullptr;
    };
    if (set.deposit.fabric_thickness <= 0.0 || known(published_meshes) || known(model.job->press.meshes)) return;
    SetPress edit{model.job->press, {}};
    edit.press.meshes.push_back(row);
    edit.press.meshes.back().source = SourceKind::user;
    const std::string words = say(canvas.language(), Word::mesh_keep, {mesh_name(row)});
    canvas.button("mesh/keep", rows.next(canvas.button_height(words, {}, rows.width, 48.0f)), words,
                  ButtonLook::plain, canvas.action(DoEdit{Edit{std::move(edit)}}));
}

void deposit_section(const Model& model, const HeadAssessment& head, const Head& set, Rows& rows) {
    Canvas& canvas = rows.canvas;
    for (const Field field : {Field::mesh_count, Field::thread_diameter, Field::fabric_thickness,
                              Field::stencil, Field::printed_share, Field::finest_detail,
                              Field::print_strokes})
        number_row(model, set.id, field, rows);
    number_row(model, 0, Field::pieces, rows);
    const HeadDeposit& deposit = head.deposit;
    if (!deposit.mesh) {
        rows.text(canvas.word(Word::mesh_no_opening), {TypeSize::body, false}, Role::mind, 8.0f);
        return;
    }
    mesh_facts(model, deposit, rows);
    keep_mesh(model, set, deposit.mesh->row, rows);
    if (deposit.ink) ink_facts(model, *deposit.ink, rows);
    known_meshes(model, set, rows);
}

} // namespace

void contact_sections(const Model& model, const HeadAssessment& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Head& set = *find_head(*model.job, head.head);
    if (section_head(model, Section::side, "section/side", canvas.word(Word::section_side), rows))
        side_panel(model, head, rows);
    if (section_head(model, Section::off_contact, "section/off-contact", canvas.word(Word::section_off_contact),
                     rows))
        off_contact_section(model, head, set, rows);
    if (section_head(model, Section::pressure, "section/pressure", canvas.word(Word::section_pressure), rows))
        pressure_section(model, head, set, rows);
    if (section_head(model, Section::deposit, "section/deposit", canvas.word(Word::section_deposit), rows))
        deposit_section(model, head, set, rows);
}

} // namespace carriageway
