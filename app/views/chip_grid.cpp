#include "app/views/chip_grid.h"

#include <algorithm>

namespace carriageway {

namespace {

constexpr float gap = 6.0f;
constexpr float inset = 8.0f; ///< of the words, at each side
constexpr float air = 18.0f;  ///< above and below the words together
constexpr float least_height = 52.0f;
constexpr float most_lines = 2.2f; ///< of a chip's words; more look like a wall of text

float column_width(int columns, float width) {
    return (width - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
}

float text_height(const Chip& chip, float width, const Canvas& canvas) {
    const float detail =
        chip.detail.empty() ? 0.0f : canvas.paragraph_height(width, chip.detail, small_text);
    return canvas.paragraph_height(width, chip.words, small_bold_text) + detail;
}

void draw_chip(const Chip& chip, Box box, Canvas& canvas) {
    constexpr float corner = 12.0f, ring_width = 1.8f;
    const Role on = chip.chosen ? Role::panel : Role::quiet;
    canvas.list().round(box, corner, paint(on));
    if (chip.chosen)
        canvas.list().ring(box.inset(1.0f), corner - 1.0f, paint(Role::ink), ring_width);
    const float width = box.width() - 2.0f * inset;
    const float words = canvas.paragraph_height(width, chip.words, small_bold_text);
    const float top = box.centre().y - 0.5f * text_height(chip, width, canvas);
    canvas.centred_paragraph({box.centre().x, top + 0.5f * words}, width, chip.words,
                             small_bold_text, Role::ink, on);
    if (!chip.detail.empty()) {
        const float detail = canvas.paragraph_height(width, chip.detail, small_text);
        canvas.centred_paragraph({box.centre().x, top + words + 0.5f * detail}, width, chip.detail,
                                 small_text, Role::soft_ink, on);
    }
    Thing& thing = canvas.list().thing(chip.name, ThingRole::tab, box);
    thing.label = chip.words;
    thing.value = chip.detail;
    thing.chosen = chip.chosen;
    thing.action = canvas.action(chip.action);
}

} // namespace

int chip_columns(const std::vector<Chip>& chips, int most, float width, const Canvas& canvas) {
    const float line = canvas.type().height(small_bold_text);
    for (int columns = most; columns > 1; --columns) {
        const float inside = column_width(columns, width) - 2.0f * inset;
        const bool fits = std::all_of(chips.begin(), chips.end(), [&](const Chip& chip) {
            return canvas.widest_word(chip.words, small_bold_text) <= inside &&
                   canvas.paragraph_height(inside, chip.words, small_bold_text) <=
                       most_lines * line &&
                   canvas.type().width(small_text, chip.detail) <= inside;
        });
        if (fits) return columns;
    }
    return 1;
}

void chip_grid(std::string_view name, std::string_view label, const std::vector<Chip>& chips,
               int columns, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float each = column_width(columns, rows.width);
    float tallest = 0.0f;
    for (const Chip& chip : chips)
        tallest = std::max(tallest, text_height(chip, each - 2.0f * inset, canvas));
    const float height = std::max(least_height, tallest + air);
    const auto count = static_cast<int>(chips.size());
    const int lines = (count + columns - 1) / columns;
    const Box whole{rows.x, rows.y, rows.x + rows.width,
                    rows.y + (height + gap) * static_cast<float>(lines) - gap};
    canvas.list().thing(name, ThingRole::region, whole).label.assign(label);
    for (int i = 0; i < count; ++i) {
        const float x = rows.x + (each + gap) * static_cast<float>(i % columns);
        const float y = rows.y + (height + gap) * static_cast<float>(i / columns);
        draw_chip(chips[static_cast<std::size_t>(i)], {x, y, x + each, y + height}, canvas);
    }
    rows.y = whole.y1 + 12.0f;
}

} // namespace carriageway
