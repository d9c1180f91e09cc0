// The header of the press place: whose job, how it stands, and the way back.
#include "app/text/sentences.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

constexpr float tool_side = 48.0f;

/// The head that the header names: the other places have a chooser of their own.
HeadId head_of(const Model& model) {
    return model.state->place == Place::press ? model.state->head : 0;
}

} // namespace

std::string save_words(const Model& model) {
    const Language language = model.state->looks.language;
    switch (model.save) {
    case SaveState::saved: return spare_text(word(language, Word::saved));
    case SaveState::waiting: return spare_text(word(language, Word::not_yet_saved));
    case SaveState::failed: return spare_text(word(language, Word::save_failed));
    case SaveState::elsewhere: return spare_text(word(language, Word::changed_elsewhere));
    case SaveState::not_kept: return spare_text(word(language, Word::nothing_is_kept));
    case SaveState::visiting: return spare_text(word(language, Word::visit_not_kept));
    case SaveState::none: break;
    }
    return {};
}

namespace {

/// The header's two texts, and how many lines each may take.
struct HeaderText {
    std::string title;
    std::string line;
    int line_rows;
};

void give_back(HeaderText& text) {
    carriageway::give_back(text.title);
    carriageway::give_back(text.line);
}

HeaderText text_of(const Model& model) {
    const Head* head = find_head(*model.job, head_of(model));
    // While an exercise is answered here, nothing says how the job stands.
    if (examined(model.state->practice.exercise)) {
        const std::string_view exercise =
            word(model.state->looks.language, Word::exercise_under_way);
        return {head ? head_name(model, *head) : spare_text(model.job->name), spare_text(exercise), 6};
    }
    if (head && model.save == SaveState::visiting) return {head_name(model, *head), save_words(model), 3};
    if (head) return {head_name(model, *head), spare_text(model.job->name), 1};
    const std::string heads = say(model.state->looks.language, Word::heads_fit,
                                  {std::to_string(model.assessment->fit_heads),
                                   std::to_string(model.assessment->heads.size())});
    const std::string saved = save_words(model);
    // Large letters leave no room for both, and what isn't kept must be said.
    if (model.save == SaveState::visiting && model.state->looks.text_scale > 1.2f) return {model.job->name, saved, 4};
    return {model.job->name, saved.empty() ? heads : heads + " · " + saved, 4};
}

/// A long name takes two smaller lines rather than losing its end.
TypeStyle title_style(const TypeMeasure& type, std::string_view title, float width) {
    const TypeStyle large{TypeSize::title, true};
    return type.width(large, title) <= width ? large : TypeStyle{TypeSize::body, true};
}

float text_width(const Model& model, float width) {
    const float left = head_of(model) != 0 ? tool_side + 4.0f : 16.0f;
    return width - left - 2.0f * tool_side - 12.0f;
}

} // namespace

float header_height(const Model& model, Canvas& canvas, float width) {
    const Passing text(text_of(model));
    const float inside = text_width(model, width);
    const TypeStyle style = title_style(canvas.type(), text->title, inside);
    return std::max(
        64.0f, canvas.paragraph_height(inside, text->title, style, 2) +
                   canvas.paragraph_height(inside, text->line, small_text, text->line_rows) + 16.0f);
}

void press_header(const Model& model, const Layout& layout, Canvas& canvas) {
    const Box box = layout.header;
    // Undo and redo at the right, always in the same place.
    const float top = box.y0 + std::max(4.0f, 0.5f * (box.height() - tool_side));
    float right = box.x1 - 8.0f;
    const auto tool = [&](std::string_view name, Icon icon, Word words, Action action, bool enabled) {
        canvas.icon_button(name, {right - tool_side, top, right, top + tool_side}, icon,
                           canvas.word(words), canvas.action(std::move(action)), enabled,
                           ButtonLook::bare);
        right -= tool_side;
    };
    tool("redo", Icon::redo, Word::redo, Redo{}, model.can_redo);
    tool("undo", Icon::undo, Word::undo, Undo{}, model.can_undo);
    float left = box.x0 + 16.0f;
    if (head_of(model) != 0) {
        canvas.icon_button("back", {box.x0 + 2.0f, top, box.x0 + 2.0f + tool_side, top + tool_side},
                           Icon::back, canvas.word(Word::whole_press), canvas.action(ChooseHead{0}), true,
                           ButtonLook::bare);
        left = box.x0 + tool_side + 4.0f;
    }
    const Passing text(text_of(model));
    const float width = text_width(model, box.width());
    const TypeStyle style = title_style(canvas.type(), text->title, width);
    const float height = canvas.paragraph_height(width, text->title, style, 2) +
                         canvas.paragraph_height(width, text->line, small_text, text->line_rows);
    float y = box.y0 + 0.5f * (box.height() - height);
    y += canvas.paragraph({left, y}, width, text->title, style, Role::ink, Role::paper, 2);
    canvas.paragraph({left, y}, width, text->line, small_text, Role::soft_ink, Role::paper,
                     text->line_rows);
    canvas.reading("title", {left, box.y0, right, box.y1}, text->title, text->line);
    canvas.reading("saved", {left, y, right, box.y1}, *Passing(save_words(model)), model.save_trouble);
}

} // namespace carriageway
