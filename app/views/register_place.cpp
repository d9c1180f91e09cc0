// The Register place: marks, prints by platen, and heights of one head after another.
#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

/// The next head in the order of stations, round about.
HeadId head_beside(const Job& job, const Head& head, int by) {
    const auto at = static_cast<std::size_t>(&head - job.heads.data());
    const std::size_t count = job.heads.size();
    return job.heads[(at + count + static_cast<std::size_t>(by > 0 ? 1 : count - 1)) % count].id;
}

/// Which head: its name between two buttons that lead on.
void head_chooser(const Model& model, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Job& job = *model.job;
    const Head& base = *base_head(job);
    const std::string name = head_title(canvas.language(), head);
    const std::string role = base.id == head.id
                                 ? std::string(canvas.word(Word::reg_is_base))
                                 : say(canvas.language(), Word::reg_not_base, {std::to_string(base.station)});
    const TypeStyle bold{TypeSize::body, true}, small{TypeSize::small, false};
    const float side = 48.0f, inside = rows.width - 2.0f * (side + 6.0f);
    const float name_height = canvas.paragraph_height(inside - 8.0f, name, bold);
    const float role_height = canvas.paragraph_height(inside - 8.0f, role, small);
    const Box row = rows.next(std::max(side, name_height + role_height + 4.0f), 10.0f);
    const auto step = [&](const char* thing, float x, Icon icon, Word words, int by) {
        canvas.icon_button(thing, around({x, row.centre().y}, side, side), icon, canvas.word(words),
                           canvas.action(RegisterHead{head_beside(job, head, by)}), job.heads.size() > 1,
                           ButtonLook::quiet);
    };
    step("register/previous-head", row.x0 + 0.5f * side, Icon::back, Word::reg_previous_head, -1);
    step("register/next-head", row.x1 - 0.5f * side, Icon::next, Word::reg_next_head, 1);
    const float top = row.centre().y - 0.5f * (name_height + role_height);
    const float middle = row.centre().x;
    canvas.centred_paragraph({middle, top + 0.5f * name_height}, inside - 8.0f, name, bold, Role::ink, rows.on);
    canvas.centred_paragraph({middle, top + name_height + 0.5f * role_height}, inside - 8.0f, role, small,
                             Role::soft_ink, rows.on);
    DrawingList& list = canvas.list();
    const Vec line[] = {{row.x0 + side + 10.0f, row.y1 + 4.0f}, {row.x1 - side - 10.0f, row.y1 + 4.0f}};
    list.line(line, 2, own_colour(head.ink), 4.0f);
    canvas.reading("register/head", {row.x0 + side + 6.0f, row.y0, row.x1 - side - 6.0f, row.y1}, name, role);
}

void mode_choices(const ViewState& state, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto choice = [&](const char* name, Word words, RegisterMode mode) {
        return Choice{name, std::string(canvas.word(words)), canvas.action(ChooseRegisterMode{mode}),
                      state.registering.mode == mode};
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

/// The panel's ground, its grip where it lies over a compact window, and the column in it.
void panel(const Model& model, const RegisterView* view, const Layout& layout, Canvas& canvas) {
    const ViewState& state = *model.state;
    DrawingList& list = canvas.list();
    const Box box = layout.panel;
    list.set_layer(1);
    list.round({box.x0, box.y0, box.x1, box.y1 + (layout.compact ? 20.0f : 0.0f)},
               layout.compact ? 16.0f : 0.0f, paint(Role::panel));
    const Vec edge[] = {{box.x0, box.y0}, {box.x0, box.y1}};
    if (!layout.compact) list.line(edge, 2, paint(Role::edge), 1.0f);
    else list.ring({box.x0 - 2.0f, box.y0, box.x1 + 2.0f, box.y1 + 20.0f}, 16.0f, paint(Role::edge), 1.0f);
    list.thing("panel", ThingRole::region, box).label.assign(canvas.word(Word::place_register));
    Box inside = box;
    if (layout.compact) {
        list.round(around({box.centre().x, box.y0 + 9.0f}, 44.0f, 5.0f), 2.5f, paint(Role::edge));
        Thing& thing = list.thing("panel/grip", ThingRole::button,
                                  {box.centre().x - 60.0f, box.y0, box.centre().x + 60.0f, box.y0 + 20.0f});
        thing.target = {box.centre().x - 80.0f, box.y0 - 24.0f, box.centre().x + 80.0f, box.y0 + 20.0f};
        thing.label.assign(canvas.word(state.tall_sheet ? Word::less : Word::more));
        thing.action = canvas.action(ToggleSheet{});
        thing.hold = canvas.hold(HoldSheet{});
        inside.y0 += 18.0f;
    }
    list.push_clip(inside);
    Rows rows{canvas, inside.x0 + 16.0f, inside.width() - 32.0f,
              inside.y0 + (layout.compact ? 2.0f : 18.0f) - state.panel_scroll, Role::panel};
    const float top = rows.y;
    if (layout.compact && rows.width > 560.0f) {
        rows.x += 0.5f * (rows.width - 560.0f);
        rows.width = 560.0f;
    }
    if (view) panel_contents(*view, rows);
    else rows.text(canvas.word(Word::reg_no_heads), {TypeSize::title, true});
    list.pop_clip();
    canvas.frame().scrolls.push_back({inside, rows.y - top + 12.0f, &ViewState::panel_scroll});
    list.set_layer(0);
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
