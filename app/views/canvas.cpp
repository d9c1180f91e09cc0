#include "app/views/canvas.h"

#include <algorithm>

namespace carriageway {

namespace {

constexpr float corner = 12.0f;
constexpr float padding = 12.0f;

/// The longest beginning that fits, with an ellipsis.
std::string shortened(const TypeMeasure& type, TypeStyle style, std::string_view words, float width) {
    std::string cut(words);
    while (!cut.empty() && type.width(style, cut + "…") > width) {
        do cut.pop_back();
        while (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xC0) == 0x80);
    }
    return cut + "…";
}

} // namespace

void Frame::begin(Box window, const TypeMeasure& type) {
    list.begin(window, type);
    wrap.begin(type);
    unseen.clear();
    actions.clear();
    holds.clear();
    scrolls.clear();
    diagram = {};
    typing = {};
}

int Canvas::action(Action action) { return frame_.actions.add(std::move(action)); }
int Canvas::action(DoEdit edit) { return frame_.actions.add(std::move(edit)); }

int Canvas::hold(Hold hold) {
    frame_.holds.push_back(hold);
    return static_cast<int>(frame_.holds.size()) - 1;
}

/// What is out of sight is measured but not written: most of a long panel is.
void Canvas::line_of_text(Vec at, std::string_view words, float width, TypeStyle style, Role role, Role on) {
    const Vec extent{width, type().height(style)};
    const Box box{at.x, at.y, at.x + std::max(1.0f, extent.x), at.y + extent.y};
    if (in_sight(box)) list().text(at, words, extent, style, role, on);
    else frame_.unseen.push_back({box, list().clip()});
}

/// Lines below each other from `y`, each with its middle at `centre`; returns where they end.
float Canvas::centred_lines(float centre, float y, std::string_view words,
                            const std::vector<WrappedLine>& lines, TypeStyle style, Role role, Role on) {
    const float height = type().height(style) * 1.06f;
    for (const WrappedLine& line : lines) {
        line_of_text({centre - 0.5f * line.width, y}, line.of(words), line.width, style, role, on);
        y += height;
    }
    return y;
}

float Canvas::widest_word(std::string_view words, TypeStyle style) const {
    float widest = 0.0f;
    while (!words.empty()) {
        const std::size_t space = std::min(words.find(' '), words.size());
        widest = std::max(widest, type().width(style, words.substr(0, space)));
        words.remove_prefix(std::min(words.size(), space + 1));
    }
    return widest;
}

float Canvas::paragraph_height(float width, std::string_view words, TypeStyle style, int most) const {
    const std::size_t lines = lines_of(words, style, width).size();
    const float line = type().height(style) * 1.06f;
    return line * static_cast<float>(std::min<std::size_t>(lines, static_cast<std::size_t>(most)));
}

float Canvas::paragraph(Vec at, float width, std::string_view words, TypeStyle style, Role role,
                        Role on, int most) {
    const std::vector<WrappedLine>& lines = lines_of(words, style, width);
    const float height = type().height(style) * 1.06f;
    float y = at.y;
    for (std::size_t i = 0; i < lines.size() && static_cast<int>(i) < most; ++i) {
        const bool last = static_cast<int>(i) + 1 == most && i + 1 < lines.size();
        if (last)
            list().text({at.x, y}, shortened(type(), style, lines[i].of(words), width), style, role, on);
        else
            line_of_text({at.x, y}, lines[i].of(words), lines[i].width, style, role, on);
        y += height;
    }
    return y - at.y;
}

float Canvas::button_height(std::string_view words, std::string_view detail, float width,
                            float least) const {
    const float inside = width - 2.0f * padding;
    float height = paragraph_height(inside, words, {TypeSize::body, true});
    if (!detail.empty()) height += 2.0f + paragraph_height(inside, detail, {TypeSize::small, false});
    return std::max(least, height + 20.0f);
}

void Canvas::centred_paragraph(Vec centre, float width, std::string_view words, TypeStyle style, Role role,
                               Role on) {
    const std::vector<WrappedLine>& lines = lines_of(words, style, width);
    const float height = type().height(style) * 1.06f * static_cast<float>(lines.size());
    centred_lines(centre.x, centre.y - 0.5f * height, words, lines, style, role, on);
}

void Canvas::button(std::string_view name, Box box, std::string_view words, ButtonLook look,
                    int action, std::string_view detail) {
    const Role fill = look == ButtonLook::strong ? Role::strong
                      : look == ButtonLook::quiet ? Role::quiet
                                                  : Role::panel;
    const Role ink = look == ButtonLook::strong ? Role::on_strong : Role::ink;
    if (look != ButtonLook::bare) list().round(box, corner, paint(fill));
    if (look == ButtonLook::plain) list().ring(box, corner, paint(Role::edge), 1.4f);
    const float inside = box.width() - 2.0f * padding;
    const TypeStyle main{TypeSize::body, true}, small{TypeSize::small, false};
    const float main_line = type().height(main) * 1.06f, small_line = type().height(small) * 1.06f;
    const std::vector<WrappedLine>& rows = lines_of(words, main, inside);
    const std::vector<WrappedLine>& notes = lines_of(detail, small, inside);
    float y = box.centre().y - 0.5f * (main_line * static_cast<float>(rows.size()) +
                                       small_line * static_cast<float>(notes.size()));
    y = centred_lines(box.centre().x, y, words, rows, main, ink, fill);
    centred_lines(box.centre().x, y, detail, notes, small, ink, fill);
    Thing& thing = list().thing(name, ThingRole::button, box);
    thing.label.assign(words);
    thing.value.assign(detail);
    thing.action = action;
}

void Canvas::icon_button(std::string_view name, Box box, Icon shape, std::string_view label,
                         int action, bool enabled, ButtonLook look) {
    if (look != ButtonLook::bare)
        list().round(box, corner,
                     paint(look == ButtonLook::strong  ? Role::strong
                           : look == ButtonLook::quiet ? Role::quiet
                                                       : Role::panel));
    if (look == ButtonLook::plain) list().ring(box, corner, paint(Role::edge), 1.4f);
    icon(shape, box.centre(), 22.0f,
         !enabled                    ? Role::edge
         : look == ButtonLook::strong ? Role::on_strong
                                      : Role::ink);
    Thing& thing = list().thing(name, ThingRole::button, box);
    thing.label.assign(label);
    thing.hint.assign(label);
    thing.action = action;
    thing.enabled = enabled;
}

void Canvas::reading(std::string_view name, Box box, std::string_view label, std::string_view value) {
    Thing& thing = list().thing(name, ThingRole::text, box);
    thing.label.assign(label);
    thing.value.assign(value);
}

Box Rows::next(float height, float gap) {
    const Box box{x, y, x + width, y + height};
    y += height + gap;
    return box;
}

void Rows::text(std::string_view words, TypeStyle style, Role role, float gap) {
    y += canvas.paragraph({x, y}, width, words, style, role, on) + gap;
}

} // namespace carriageway
