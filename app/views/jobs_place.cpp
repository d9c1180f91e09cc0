// The library: find a job, open it, and how the program looks.
#include "app/views/about.h"
#include "app/views/class_view.h"
#include "app/views/first_view.h"

namespace carriageway {

namespace {

void search_field(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const ViewState& state = *model.state;
    const TypeStyle style{TypeSize::body, false};
    const float line = canvas.type().height(style);
    const Box box = rows.next(std::max(48.0f, line + 20.0f), 12.0f);
    const bool typing = state.typing && state.typing->target == TextTarget::search;
    DrawingList& list = canvas.list();
    list.round(box, 12.0f, paint(Role::panel));
    list.ring(box, 12.0f, paint(typing ? Role::focus : Role::edge), typing ? 2.0f : 1.2f);
    canvas.icon(Icon::search, {box.x0 + 24.0f, box.centre().y}, 20.0f, Role::soft_ink);
    const Box text{box.x0 + 44.0f, box.y0 + 2.0f, box.x1 - 8.0f, box.y1 - 2.0f};
    if (typing) canvas.frame().typing = text;
    else
        canvas.paragraph({text.x0, box.centre().y - 0.5f * line}, text.width(),
                         state.search.empty() ? canvas.word(Word::search) : std::string_view(state.search),
                         style, state.search.empty() ? Role::soft_ink : Role::ink, Role::panel, 1);
    Thing& thing = list.thing("search", ThingRole::textbox, box);
    thing.label.assign(canvas.word(Word::search));
    thing.value = state.search;
    thing.action = canvas.action(EditText{TextTarget::search, 0});
}

/// What can be done with the chosen job.
void job_actions(const Model& model, const JobRow& row, Rows& inner) {
    Canvas& canvas = inner.canvas;
    const ViewState& state = *model.state;
    const std::string base = "job/" + std::to_string(row.id);
    if (state.typing && state.typing->target == TextTarget::row_name && state.typing->job == row.id) {
        const float line = canvas.type().height({TypeSize::body, false});
        const Box field = inner.next(std::max(48.0f, line + 20.0f));
        canvas.list().ring(field, 10.0f, paint(Role::focus), 2.0f);
        canvas.frame().typing = {field.x0 + 8.0f, field.y0 + 2.0f, field.x1 - 8.0f, field.y1 - 2.0f};
        Thing& thing = canvas.list().thing("typing", ThingRole::textbox, field);
        thing.label.assign(canvas.word(Word::job_name));
        thing.value = state.typing->text;
        const float height = canvas.button_height(canvas.word(Word::done), {}, inner.width, 48.0f);
        canvas.button("typing/done", inner.next(height), canvas.word(Word::done), ButtonLook::strong,
                      canvas.action(AcceptText{}));
        return;
    }
    struct Row {
        const char* name;
        Word words;
        Action action;
    };
    std::vector<Row> rows = {{"/open", Word::open_job, OpenJob{row.id}},
                             {"/rename", Word::rename, EditText{TextTarget::row_name, row.id}},
                             {"/duplicate", Word::duplicate, DuplicateJob{row.id}},
                             {"/export", Word::export_job, ExportJob{row.id}},
                             {"/delete", Word::delete_job, RemoveJob{row.id}}};
    if (row.id != model.current)
        rows.insert(rows.end() - 1, {"/compare", Word::runs_compare, CompareJob{row.id}});
    if (can_share(model)) rows.insert(rows.begin() + 1, {"/share", Word::share, ShareJob{row.id}});
    // Two side by side where the words fit.
    const float half = 0.5f * (inner.width - 8.0f);
    bool fits = true;
    for (const Row& r : rows)
        if (canvas.type().width({TypeSize::body, true}, canvas.word(r.words)) > half - 24.0f) fits = false;
    int column = 0;
    for (const Row& r : rows) {
        const bool alone = column == 0 && &r == &rows.back();
        const bool wide = !fits || &r == &rows[0] || alone;
        const float width = wide ? inner.width : half;
        const float height = canvas.button_height(canvas.word(r.words), {}, width, 48.0f);
        Box at{inner.x + (column == 1 ? half + 8.0f : 0.0f), inner.y, 0.0f, inner.y + height};
        at.x1 = at.x0 + width;
        canvas.button(base + r.name, at, canvas.word(r.words),
                      &r == &rows[0] ? ButtonLook::strong : ButtonLook::plain, canvas.action(r.action));
        if (wide || column == 1) {
            inner.y += height + 8.0f;
            column = 0;
        } else {
            column = 1;
        }
    }
    if (column == 1) inner.y += 56.0f;
}

void job_row(const Model& model, const JobRow& row, Rows& rows) {
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    const bool chosen = model.state->chosen_job == row.id;
    const TypeStyle title{TypeSize::body, true}, small{TypeSize::small, false};
    const float width = rows.width - 28.0f - 40.0f;
    const std::string detail = row.press + (row.colours.empty() ? "" : " · " + row.colours);
    const float text = canvas.paragraph_height(width, row.name, title) + 2.0f +
                       canvas.paragraph_height(width, detail, small, 2);
    const Box head = {rows.x, rows.y, rows.x + rows.width, rows.y + std::max(60.0f, text + 22.0f)};
    const Role fill = Role::card;
    list.round(head, 12.0f, paint(fill));
    list.ring(head, 12.0f, paint(row.id == model.current ? Role::ink : Role::edge),
              row.id == model.current ? 1.8f : 1.2f);
    float y = head.centre().y - 0.5f * text;
    y += canvas.paragraph({head.x0 + 14.0f, y}, width, row.name, title, Role::ink, fill) + 2.0f;
    canvas.paragraph({head.x0 + 14.0f, y}, width, detail, small, Role::soft_ink, fill, 2);
    canvas.icon(chosen ? Icon::up : Icon::down, {head.x1 - 26.0f, head.centre().y}, 20.0f, Role::soft_ink);
    Thing& thing = list.thing("job/" + std::to_string(row.id), ThingRole::list_item, head);
    thing.label = row.name;
    thing.value = detail;
    thing.chosen = row.id == model.current;
    thing.action = canvas.action(ChooseJob{row.id});
    rows.y = head.y1 + 8.0f;
    if (!chosen) return;
    Rows inner{canvas, rows.x + 14.0f, rows.width - 28.0f, rows.y, rows.on};
    job_actions(model, row, inner);
    rows.y = inner.y + 6.0f;
}

} // namespace

void looks_panel(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Looks& looks = model.state->looks;
    const auto words = [&](Word key) { return std::string(canvas.word(key)); };
    rows.text(canvas.word(Word::settings), {TypeSize::title, true}, Role::ink, 8.0f);
    const auto label = [&](Word key) {
        rows.text(canvas.word(key), {TypeSize::small, false}, Role::soft_ink, 4.0f);
    };
    label(Word::theme);
    choices("theme", canvas.word(Word::theme),
            {{"theme/system", words(Word::theme_system), canvas.action(ChooseTheme{ThemeChoice::system}),
              looks.theme == ThemeChoice::system},
             {"theme/light", words(Word::theme_light), canvas.action(ChooseTheme{ThemeChoice::light}),
              looks.theme == ThemeChoice::light},
             {"theme/dark", words(Word::theme_dark), canvas.action(ChooseTheme{ThemeChoice::dark}),
              looks.theme == ThemeChoice::dark}},
            rows);
    label(Word::language);
    choices("language", canvas.word(Word::language),
            {{"language/english", words(Word::language_english),
              canvas.action(ChooseLanguage{Language::english}), looks.language == Language::english},
             {"language/spanish", words(Word::language_spanish),
              canvas.action(ChooseLanguage{Language::spanish}), looks.language == Language::spanish}},
            rows);
    label(Word::units);
    choices("units", canvas.word(Word::units),
            {{"units/mm", words(Word::units_mm), canvas.action(ChooseUnits{LengthUnit::mm}),
              looks.units == LengthUnit::mm},
             {"units/inch", words(Word::units_inch), canvas.action(ChooseUnits{LengthUnit::inch}),
              looks.units == LengthUnit::inch}},
            rows);
    label(Word::text_size);
    std::vector<Choice> sizes;
    static constexpr struct {
        float scale;
        const char* name;
        const char* face;
    } steps[] = {{0.8f, "text/80", "80 %"},    {1.0f, "text/100", "100 %"}, {1.3f, "text/130", "130 %"},
                 {1.6f, "text/160", "160 %"},  {2.0f, "text/200", "200 %"}};
    for (const auto& step : steps)
        sizes.push_back({step.name, step.face, canvas.action(ChooseTextScale{step.scale}),
                         std::abs(looks.text_scale - step.scale) < 0.01f});
    choices("text", canvas.word(Word::text_size), sizes, rows);
    class_rows(model, rows);
    first_again_row(model, rows);
    about_rows(model, rows);
}

void jobs_place(const Model& model, const Layout& layout, Canvas& canvas) {
    DrawingList& list = canvas.list();
    const Box all{layout.compact ? model.window.x0 : layout.places.x1, model.window.y0, model.window.x1,
                  layout.compact ? layout.places.y0 : model.window.y1};
    list.round(all, 0.0f, paint(Role::paper));
    list.thing("jobs", ThingRole::region, all).label.assign(canvas.word(Word::place_jobs));
    list.push_clip(all);
    const float width = std::min(all.width() - 32.0f, 640.0f);
    Rows rows{canvas, all.centre().x - 0.5f * width, width, all.y0 + 18.0f - model.state->jobs_scroll,
                Role::paper};
    const float top = rows.y;
    rows.text(canvas.word(Word::place_jobs), {TypeSize::title, true}, Role::ink, 10.0f);
    search_field(model, rows);
    const auto button = [&](std::string_view name, std::string_view words, Action action,
                            std::string_view detail = {}) {
        const float height = canvas.button_height(words, detail, width, 48.0f);
        canvas.button(name, rows.next(height), words, ButtonLook::plain, canvas.action(std::move(action)), detail);
    };
    button("new-job", canvas.word(Word::new_job), NewJob{});
    if (model.abilities->pick_file) button("pick-file", canvas.word(Word::open_file), PickFile{});
    if (!model.left_visit.empty())
        button("visit/back", say(canvas.language(), Word::back_to_visit, {model.left_visit}), BringVisitBack{},
               canvas.word(Word::visit_not_kept));
    rows.space(6.0f);
    if (!model.save_trouble.empty()) {
        const float from = rows.y;
        rows.text(model.save_trouble, {TypeSize::body, false}, Role::stop, 6.0f);
        canvas.reading("trouble", {rows.x, from, rows.x + width, rows.y - 6.0f}, model.save_trouble, {});
        if (model.save == SaveState::failed) {
            const float retry = canvas.button_height(canvas.word(Word::try_again), {}, width, 48.0f);
            canvas.button("retry-saving", rows.next(retry, 12.0f), canvas.word(Word::try_again),
                          ButtonLook::strong, canvas.action(RetrySaving{}));
        }
    }
    if (model.rows->empty())
        rows.text(model.state->search.empty()
                       ? std::string(canvas.word(Word::no_jobs))
                       : say(canvas.language(), Word::no_jobs_found, {model.state->search}),
                   {TypeSize::body, false}, Role::soft_ink, 12.0f);
    for (const JobRow& row : *model.rows) job_row(model, row, rows);
    rows.space(16.0f);
    looks_panel(model, rows);
    rows.space(8.0f);
    if (!model.abilities->pick_file)
        rows.text(canvas.word(Word::import_hint), {TypeSize::small, false}, Role::soft_ink);
    list.pop_clip();
    canvas.frame().scrolls.push_back({all, rows.y - top + 24.0f, &ViewState::jobs_scroll});
}

} // namespace carriageway
