// The sheet for measuring: the list of numbers, or one number with its guide beside its readings.
#include "app/views/measure_sheet.h"

#include "app/views/measure_words.h"
#include "app/views/sheet.h"

namespace carriageway {

namespace {

constexpr float padding = 20.0f;
constexpr float gap = 28.0f; ///< between the columns
constexpr float tool = 48.0f;
constexpr float widest_text = 560.0f;

/// Where the sheet's parts go in this window.
struct Plan {
    Box box;              ///< of the sheet
    bool full = false;    ///< it takes the whole window
    bool columns = false; ///< guide and readings side by side
};

Plan plan_of(const Model& model, const Canvas& canvas) {
    const Box window = model.window;
    Plan plan;
    plan.full = fills_window(window);
    const float margin = plan.full ? 0.0f : 24.0f;
    const float width = plan.full ? window.width() : std::min(window.width() - 2.0f * margin, 1040.0f);
    const float height = plan.full ? window.height() : std::min(window.height() - 2.0f * margin, 840.0f);
    plan.box = plan.full ? window : around(window.centre(), width, height);
    plan.columns = width - 2.0f * padding >= 640.0f * std::max(1.0f, canvas.scale());
    return plan;
}

const Taking* shown_taking(const Model& model) {
    const Measuring& measuring = model.state->measuring;
    if (!measuring.target) return nullptr;
    for (const Taking& taking : measuring.taken)
        if (taking.target == *measuring.target) return &taking;
    return nullptr;
}

std::string title_of(const Model& model, const Taking* taking) {
    const Language language = model.state->looks.language;
    return taking ? target_title(language, model.job->press, taking->target)
                  : std::string(word(language, Word::measure_press));
}

/// The title between the way back and the button that closes; returns its height.
float title_row(const Model& model, const Plan& plan, const Taking* taking, Canvas& canvas) {
    const bool back = taking && !model.state->measuring.direct;
    const float left = plan.box.x0 + (back ? 6.0f + tool + 4.0f : padding);
    const float width = plan.box.x1 - 8.0f - tool - 8.0f - left;
    const std::string title = title_of(model, taking);
    // A long name takes smaller lines rather than the window.
    const TypeStyle style =
        canvas.paragraph_height(width, title, title_text) > 1.5f * canvas.type().height(title_text)
            ? TypeStyle{TypeSize::body, true}
            : title_text;
    const float text = canvas.paragraph_height(width, title, style);
    const float height = std::max(tool, text) + 16.0f;
    const float middle = plan.box.y0 + 0.5f * height;
    const auto button = [&](const char* name, float x, Icon icon, Word words, Action action) {
        canvas.icon_button(name, {x, middle - 0.5f * tool, x + tool, middle + 0.5f * tool}, icon,
                           canvas.word(words), canvas.action(std::move(action)), true, ButtonLook::bare);
    };
    if (back) button("measure/back", plan.box.x0 + 6.0f, Icon::back, Word::measure_back, LeaveProcedure{});
    canvas.paragraph({left, middle - 0.5f * text}, width, title, style, Role::ink, Role::panel);
    canvas.reading("measure/title", {left, plan.box.y0, left + width, plan.box.y0 + height}, title, {});
    button("measure/close", plan.box.x1 - 8.0f - tool, Icon::close, Word::close, CloseMeasuring{});
    const Vec line[] = {{plan.box.x0, plan.box.y0 + height}, {plan.box.x1, plan.box.y0 + height}};
    canvas.list().line(line, 2, paint(Role::edge), 1.0f);
    return height;
}

/// A column no wider than the eye takes in, in the middle of a box.
Rows column(Canvas& canvas, Box box, float y, float widest) {
    const float width = std::min(box.width() - 2.0f * padding, widest);
    return {canvas, box.centre().x - 0.5f * width, width, y, Role::panel};
}

void scroll_area(const Model& model, Box view, Canvas& canvas, float bottom) {
    const float content = bottom - (view.y0 - model.state->measure_scroll) + 12.0f;
    canvas.frame().scrolls.push_back({view, content, &ViewState::measure_scroll});
}

/// One number, the pad open for one of its readings: pad and readings, nothing else.
void typing_body(const Model& model, const Plan& plan, const Taking& taking, Box view, Canvas& canvas) {
    Box pad = view;
    if (plan.columns) {
        pad.x1 = view.centre().x;
        pad.y1 = std::min(view.y1, view.y0 + std::max(pad_height(model, canvas, pad.width()), 460.0f));
        view.x0 = pad.x1;
    } else {
        pad.y0 = std::max(plan.box.y0, view.y1 - pad_height(model, canvas, view.width()));
        view.y1 = pad.y0;
    }
    if (view.height() > 60.0f) {
        canvas.list().push_clip(view);
        Rows rows = column(canvas, view, view.y0 + 14.0f - model.state->measure_scroll, widest_text);
        const auto only = plan.columns ? std::nullopt : std::optional(model.state->pad->reading->list);
        measure_entry(model, taking, only, rows);
        canvas.list().pop_clip();
        scroll_area(model, view, canvas, rows.y);
    }
    draw_pad(model, pad, !plan.columns, canvas);
}

void body(const Model& model, const Plan& plan, const Taking* taking, Box view, Canvas& canvas) {
    if (taking && model.state->pad && model.state->pad->reading)
        return typing_body(model, plan, *taking, view, canvas);
    canvas.list().push_clip(view);
    const float top = view.y0 + 14.0f - model.state->measure_scroll;
    float bottom = top;
    if (!taking) {
        Rows rows = column(canvas, view, top, plan.columns ? 1000.0f : widest_text);
        measure_list(model, rows);
        bottom = rows.y;
    } else if (plan.columns) {
        const float half = 0.5f * (view.width() - 2.0f * padding - gap);
        Rows left{canvas, view.x0 + padding, half, top, Role::panel};
        measure_guide(model, *taking, left);
        Rows right{canvas, view.x1 - padding - half, half, top, Role::panel};
        measure_entry(model, *taking, std::nullopt, right);
        bottom = std::max(left.y, right.y);
    } else {
        Rows rows = column(canvas, view, top, widest_text);
        measure_guide(model, *taking, rows);
        measure_entry(model, *taking, std::nullopt, rows);
        bottom = rows.y;
    }
    canvas.list().pop_clip();
    scroll_area(model, view, canvas, bottom);
}

} // namespace

void measure_sheet(const Model& model, Canvas& canvas) {
    DrawingList& list = canvas.list();
    cover(canvas.frame());
    const int before = list.layer();
    list.set_layer(2);
    const Plan plan = plan_of(model, canvas);
    const Taking* taking = shown_taking(model);
    sheet_ground(canvas, "measure-sheet", canvas.word(Word::measure_press), plan.box, plan.full);
    // Large letters on a small phone leave no room for more than the pad, which has its own way back.
    const bool typing = taking && model.state->pad && model.state->pad->reading && !plan.columns;
    const bool pad_alone = typing && pad_height(model, canvas, plan.box.width()) > plan.box.height() - 80.0f;
    const float title = pad_alone ? 0.0f : title_row(model, plan, taking, canvas);
    const Box view{plan.box.x0, plan.box.y0 + title + 1.0f, plan.box.x1, plan.box.y1 - (plan.full ? 0.0f : 8.0f)};
    body(model, plan, taking, view, canvas);
    list.set_layer(before);
}

} // namespace carriageway
