// The Register place: marks, prints by platen, and heights of one head after another.
#include "app/text/sentences.h"
#include "app/views/panel.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

/// The next head in the order of stations, round about.
HeadId head_beside(const Job& job, const Head& head, int by) {
    const auto at = static_cast<std::size_t>(&head - job.heads.data());
    const std::size_t count = job.heads.size();
    return job.heads[(at + count + static_cast<std::size_t>(by > 0 ? 1 : count - 1)) % count].id;
}

/// Name and role of a head, centred, over a line of its ink.
void head_words(const Head& head, const std::string& role, const Box& box, Rows& rows) {
    constexpr float pad = 4.0f, line_below = 4.0f, line_width = 4.0f;
    constexpr TypeStyle bold{TypeSize::body, true}, small{TypeSize::small, false};
    Canvas& canvas = rows.canvas;
    const std::string name = head_title(canvas.language(), head);
    const float width = box.width() - 2.0f * pad;
    const float name_height = canvas.paragraph_height(width, name, bold);
    const float role_height = canvas.paragraph_height(width, role, small);
    const Vec middle = box.centre();
    const float top = middle.y - 0.5f * (name_height + role_height);
    canvas.centred_paragraph({middle.x, top + 0.5f * name_height}, width, name, bold, Role::ink,
                             rows.on);
    canvas.centred_paragraph({middle.x, top + name_height + 0.5f * role_height}, width, role, small,
                             Role::soft_ink, rows.on);
    const Vec line[] = {{box.x0 + pad, box.y1 + line_below}, {box.x1 - pad, box.y1 + line_below}};
    canvas.list().line(line, 2, own_colour(head.ink), line_width);
    canvas.reading("register/head", box, name, role);
}

/// Which head: its name between two buttons that lead on.
void head_chooser(const Model& model, const Head& head, Rows& rows) {
    constexpr float beside = 6.0f, pad = 4.0f, below = 10.0f;
    Canvas& canvas = rows.canvas;
    const Job& job = *model.job;
    const Head& base = *base_head(job);
    const std::string role = base.id == head.id ? std::string(canvas.word(Word::reg_is_base))
                                                : say(canvas.language(), Word::reg_not_base,
                                                      {std::to_string(base.station)});
    const float width = rows.width - 2.0f * (touch_side + beside + pad);
    const float words = canvas.paragraph_height(width, head_title(canvas.language(), head),
                                                {TypeSize::body, true}) +
                        canvas.paragraph_height(width, role, {TypeSize::small, false});
    const Box row = rows.next(std::max(touch_side, words + pad), below);
    const auto step = [&](const char* thing, float x, Icon icon, Word label, int by) {
        canvas.icon_button(thing, around({x, row.centre().y}, touch_side, touch_side), icon,
                           canvas.word(label),
                           canvas.action(RegisterHead{head_beside(job, head, by)}),
                           job.heads.size() > 1, ButtonLook::quiet);
    };
    step("register/previous-head", row.x0 + 0.5f * touch_side, Icon::back, Word::reg_previous_head,
         -1);
    step("register/next-head", row.x1 - 0.5f * touch_side, Icon::next, Word::reg_next_head, 1);
    head_words(head, role,
               {row.x0 + touch_side + beside, row.y0, row.x1 - touch_side - beside, row.y1}, rows);
}

void mode_choices(const ViewState& state, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto choice = [&](const char* name, Word words, RegisterMode mode) {
        return Choice{name, std::string(canvas.word(words)),
                      canvas.action(ChooseRegisterMode{mode}), state.registering.mode == mode};
    };
    choices("register/mode", canvas.word(Word::reg_mode),
            {choice("register/marks", Word::reg_mode_marks, RegisterMode::marks),
             choice("register/platens", Word::reg_mode_platens, RegisterMode::platens),
             choice("register/heights", Word::reg_mode_heights, RegisterMode::heights)},
            rows);
}

void panel_contents(const RegisterView& view, Rows& rows) {
    head_chooser(*view.model, *view.head, rows);
    rows.space(4.0f);
    mode_choices(view.state(), rows);
    switch (view.state().registering.mode) {
    case RegisterMode::marks: register_marks_panel(view, rows); break;
    case RegisterMode::platens: register_platens_panel(view, rows); break;
    case RegisterMode::heights: register_heights_panel(view, rows); break;
    }
    rows.space(8.0f);
    rows.text(rows.canvas.word(Word::caution), {TypeSize::small, false}, Role::soft_ink);
}

void panel(const Model& model, const RegisterView* view, const Layout& layout, Canvas& canvas) {
    place_panel(model, layout, canvas.word(Word::place_register), canvas, [&](Rows& rows) {
        if (view) panel_contents(*view, rows);
        else rows.text(canvas.word(Word::reg_no_heads), {TypeSize::title, true});
    });
}

void drawing(const RegisterView& view, const Layout& layout, Canvas& canvas) {
    const Box box = layout.diagram;
    switch (view.state().registering.mode) {
    case RegisterMode::marks: register_marks_drawing(view, box, canvas); break;
    case RegisterMode::platens: register_platens_drawing(view, box, canvas); break;
    case RegisterMode::heights: register_heights_drawing(view, box, canvas); break;
    }
}

} // namespace

void register_place(const Model& model, const Layout& layout, Canvas& canvas) {
    canvas.list().round(layout.diagram, 0.0f, paint(Role::paper));
    const Head* head = registered_head(*model.job, *model.state);
    std::optional<RegisterView> view;
    if (head) view = register_view(model, *head);
    if (view) drawing(*view, layout, canvas);
    press_header(model, layout, canvas);
    if (!layout.banner.empty()) visit_banner(model, layout, canvas);
    if (model.state->pad) number_pad(model, layout, canvas);
    else panel(model, view ? &*view : nullptr, layout, canvas);
}

} // namespace carriageway
