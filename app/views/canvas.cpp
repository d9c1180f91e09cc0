#include "app/views/canvas.h"

#include <cmath>

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

/// Bytes of the longest beginning that fits, at least one letter.
std::size_t letters_that_fit(const TypeMeasure& type, TypeStyle style, std::string_view word, float width) {
    const auto next = [&](std::size_t at) {
        do ++at;
        while (at < word.size() && (static_cast<unsigned char>(word[at]) & 0xC0) == 0x80);
        return at;
    };
    std::size_t end = next(0);
    while (end < word.size() && type.width(style, word.substr(0, next(end))) <= width) end = next(end);
    return end;
}

} // namespace

void Frame::begin(Box window, const TypeMeasure& type) {
    list.begin(window, type);
    actions.clear();
    holds.clear();
    scrolls.clear();
    diagram = {};
    typing = {};
}

int Canvas::action(Action action) {
    frame_.actions.push_back(std::move(action));
    return static_cast<int>(frame_.actions.size()) - 1;
}

int Canvas::hold(Hold hold) {
    frame_.holds.push_back(hold);
    return static_cast<int>(frame_.holds.size()) - 1;
}

std::vector<std::string_view> Canvas::lines_of(std::string_view words, TypeStyle style,
                                               float width) const {
    std::vector<std::string_view> lines;
    // Words are measured one by one and added up. Where the sum lies so near to the width that its
    // rounding could decide, the line is measured as a whole.
    const auto fits = [&](float sum, std::size_t letters) {
        if (std::abs(sum - width) < 0.5f) sum = type().width(style, words.substr(0, letters));
        return sum <= width;
    };
    while (!words.empty()) {
        std::size_t end = 0, last = std::string_view::npos;
        float reached = 0.0f; // width of the words up to `last`
        bool too_long = false;
        // Grow word by word until the line is full; a single long word stands alone.
        while (true) {
            const std::size_t space = words.find(' ', end);
            const std::size_t stop = space == std::string_view::npos ? words.size() : space;
            const std::size_t begin = last == std::string_view::npos ? 0 : last;
            const float grown = reached + type().width(style, words.substr(begin, stop - begin));
            const bool full = !fits(grown, stop);
            if (full && last != std::string_view::npos) break;
            last = stop;
            reached = grown;
            too_long = full;
            if (space == std::string_view::npos) break;
            end = space + 1;
        }
        // A word longer than a line is broken between letters: nothing is ever cut off.
        if (too_long) last = letters_that_fit(type(), style, words.substr(0, last), width);
        lines.push_back(words.substr(0, last));
        words.remove_prefix(std::min(words.size(), last + (too_long ? 0 : 1)));
    }
    return lines;
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
    const std::vector<std::string_view> lines = lines_of(words, style, width);
    const float line = type().height(style) * 1.06f;
    float y = at.y;
    for (std::size_t i = 0; i < lines.size() && static_cast<int>(i) < most; ++i) {
        const bool last = static_cast<int>(i) + 1 == most && i + 1 < lines.size();
        if (last)
            list().text({at.x, y}, shortened(type(), style, lines[i], width), style, role, on);
        else
            list().text({at.x, y}, lines[i], style, role, on);
        y += line;
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
    const float line = type().height(style) * 1.06f;
    const std::vector<std::string_view> lines = lines_of(words, style, width);
    float y = centre.y - 0.5f * line * static_cast<float>(lines.size());
    for (const std::string_view row : lines) {
        list().text({centre.x - 0.5f * type().width(style, row), y}, row, style, role, on);
        y += line;
    }
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
    const std::vector<std::string_view> rows = lines_of(words, main, inside);
    const std::vector<std::string_view> notes = lines_of(detail, small, inside);
    float y = box.centre().y - 0.5f * (main_line * static_cast<float>(rows.size()) +
                                       small_line * static_cast<float>(notes.size()));
    for (const std::string_view row : rows) {
        list().text({box.centre().x - 0.5f * type().width(main, row), y}, row, main, ink, fill);
        y += main_line;
    }
    for (const std::string_view note : notes) {
        list().text({box.centre().x - 0.5f * type().width(small, note), y}, note, small, ink, fill);
        y += small_line;
    }
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
