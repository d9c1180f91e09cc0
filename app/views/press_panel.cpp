// The whole press: what to fix, head by head, the worst first; then the numbers of the job.
#include <algorithm>

#include "app/text/sentences.h"
#include "app/views/cycle_view.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

/// Findings worth a card, over all heads, worst first.
struct Entry {
    const HeadAssessment* head;
    std::size_t index;
    Severity severity;
};

std::vector<Entry> entries_of(const Assessment& assessment) {
    std::vector<Entry> entries;
    for (const HeadAssessment& head : assessment.heads)
        for (std::size_t i = 0; i < head.findings.size(); ++i)
            entries.push_back({&head, i, head.findings[i].severity});
    std::stable_sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) {
        return static_cast<int>(a.severity) < static_cast<int>(b.severity);
    });
    return entries;
}

/// Presses of the library: this one can be kept, another one used.
void kept_presses(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto button = [&](const std::string& name, const std::string& words, Action action) {
        const float height = canvas.button_height(words, {}, rows.width, 48.0f);
        canvas.button(name, rows.next(height), words, ButtonLook::plain, canvas.action(std::move(action)));
    };
    button("press/keep", std::string(canvas.word(Word::keep_press)), KeepPress{});
    for (const PressRow& row : *model.presses)
        if (row.name != model.job->press.name)
            button("press/use/" + std::to_string(row.id), say(canvas.language(), Word::use_press, {row.name}),
                   UsePress{row.id});
}

/// Numbers of the job under a line that says what they are.
void hinted_numbers(const Model& model, Word hint, std::initializer_list<Field> fields, Rows& rows) {
    rows.text(rows.canvas.word(hint), {TypeSize::small, false}, Role::soft_ink, 8.0f);
    for (const Field field : fields) number_row(model, 0, field, rows);
}

void run_sections(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    if (section_head(model, Section::garment, "section/garment", canvas.word(Word::section_garment), rows)) {
        std::vector<Choice> kinds;
        for (const GarmentKind kind : {GarmentKind::t_shirt, GarmentKind::fleece}) {
            const bool shirt = kind == GarmentKind::t_shirt;
            kinds.push_back({shirt ? "garment/t-shirt" : "garment/fleece",
                             std::string(canvas.word(shirt ? Word::garment_t_shirt : Word::garment_fleece)),
                             canvas.action(DoEdit{Edit{SetGarment{kind}}}), model.job->garment.kind == kind});
        }
        choices("garment", canvas.word(Word::garment), kinds, rows);
        hinted_numbers(model, Word::garment_hint,
                       {Field::garment_compressed, Field::pieces, Field::registration_tolerance}, rows);
    }
    if (section_head(model, Section::heat, "section/heat", canvas.word(Word::section_heat), rows))
        heat_panel(model, rows);
    if (section_head(model, Section::assumed, "section/assumed", canvas.word(Word::section_assumed), rows))
        hinted_numbers(model, Word::assumed_hint,
                       {Field::friction, Field::mesh_stiffness, Field::transfer_share, Field::second_stroke_share,
                        Field::ink_in_screen, Field::waste_share},
                       rows);
}

void job_numbers(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    if (section_head(model, Section::job, "section/job", canvas.word(Word::section_job), rows))
        for (const Field field : {Field::run_past, Field::side_overlap, Field::platen_width,
                                  Field::platen_length, Field::platen_offset_x, Field::platen_offset_y})
            number_row(model, 0, field, rows);
    run_sections(model, rows);
    if (section_head(model, Section::press_profile, "section/press", canvas.word(Word::section_press),
                     rows)) {
        rows.text(model.job->press.name, {TypeSize::body, true});
        rows.text(canvas.word(Word::press_numbers_hint), {TypeSize::small, false}, Role::soft_ink);
        const std::string_view measure = canvas.word(Word::measure_press);
        canvas.button("measure", rows.next(canvas.button_height(measure, {}, rows.width, 48.0f)), measure,
                      ButtonLook::strong, canvas.action(OpenMeasuring{Field::count}));
        kept_presses(model, rows);
        for (int f = static_cast<int>(Field::arm_radius); f < static_cast<int>(Field::count); ++f)
            number_row(model, 0, static_cast<Field>(f), rows);
    }
}

} // namespace

void head_rows(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const bool verdicts = !examined(model.state->practice.exercise);
    for (const HeadAssessment& assessed : model.assessment->heads) {
        const Head& head = *find_head(*model.job, assessed.head);
        const std::string name = head_title(canvas.language(), head);
        const TypeStyle style{TypeSize::body, false};
        const float text = canvas.paragraph_height(rows.width - 60.0f, name, style, 3);
        const Box box = rows.next(std::max(48.0f, text + 20.0f), 4.0f);
        const Role role = verdict_role(assessed);
        DrawingList& list = canvas.list();
        list.disc({box.x0 + 12.0f, box.centre().y}, 9.0f, own_colour(head.ink));
        list.circle({box.x0 + 12.0f, box.centre().y}, 9.0f, paint(Role::edge), 1.2f);
        canvas.paragraph({box.x0 + 32.0f, box.centre().y - 0.5f * text}, rows.width - 60.0f, name, style,
                         Role::ink, rows.on, 3);
        if (verdicts) draw_verdict(list, {box.x1 - 14.0f, box.centre().y}, 14.0f, role);
        Thing& thing = list.thing("row/" + std::to_string(head.station), ThingRole::list_item, box);
        thing.label = name;
        if (verdicts)
            thing.value.assign(canvas.word(assessed.fit ? Word::fit_to_run : Word::not_fit));
        thing.action = canvas.action(ChooseHead{head.id});
    }
}

void press_panel(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Assessment& assessment = *model.assessment;
    const std::vector<Entry> entries = entries_of(assessment);
    const bool to_fix = !entries.empty();
    rows.text(canvas.word(assessment.heads.empty() ? Word::no_heads
                           : to_fix                 ? Word::what_to_fix
                                                    : Word::nothing_to_fix),
               {TypeSize::title, true}, Role::ink, 8.0f);
    if (set_every_stop(*model.job, assessment)) {
        const std::string_view words = canvas.word(Word::set_every_stop);
        const float height = canvas.button_height(words, {}, rows.width, 60.0f);
        canvas.button("set-every-stop", rows.next(height, 12.0f), words, ButtonLook::strong,
                      canvas.action(SetEveryStop{}));
    }
    for (const Entry& entry : entries) finding_card(model, *entry.head, entry.index, true, true, rows);
    rows.space(6.0f);
    const std::string_view run = canvas.word(Word::day_open);
    canvas.button("day", rows.next(canvas.button_height(run, {}, rows.width, 60.0f), 12.0f), run,
                  ButtonLook::plain, canvas.action(OpenDay{DayPart::contents}));
    cycle_button(model, rows);
    find_fault_button(0, rows);
    rows.text(canvas.word(Word::heads), {TypeSize::title, true});
    head_rows(model, rows);
    for (int station = 1; station <= model.job->press.stations; ++station) {
        // One button adds a head on the first open station; others can be moved to from there.
        if (head_on(*model.job, station) ||
            model.job->uses[static_cast<std::size_t>(station - 1)] != StationUse::open)
            continue;
        const std::string words =
            say(canvas.language(), Word::add_head_on, {std::to_string(station)});
        const float height = canvas.button_height(words, {}, rows.width, 48.0f);
        canvas.button("add-head/" + std::to_string(station), rows.next(height), words,
                      ButtonLook::plain, canvas.action(AddHeadAt{station}));
    }
    rows.space(6.0f);
    if (can_share(model)) {
        const std::string_view words = canvas.word(Word::share);
        canvas.button("share", rows.next(canvas.button_height(words, {}, rows.width, 48.0f)), words,
                      ButtonLook::plain, canvas.action(ShareJob{model.current}));
    }
    job_numbers(model, rows);
    rows.space(8.0f);
    rows.text(canvas.word(Word::caution), {TypeSize::small, false}, Role::soft_ink);
}

} // namespace carriageway
