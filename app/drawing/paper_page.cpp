#include "app/drawing/paper_page.h"

#include <algorithm>

namespace carriageway {

namespace {

constexpr float margin = 65.0f;      ///< 13 mm on every side: printers leave less than that white
constexpr float number_room = 90.0f; ///< for "64 / 64" beside the foot's words
constexpr float part_gap = 10.0f;     ///< contents to what stands at head and foot

float dp(double mm) { return static_cast<float>(mm / paper_mm_per_dp); }

/// How many bytes of `words` fit a width: at least one letter.
std::size_t fitting(const PaperType& type, TypeStyle style, std::string_view words, float width) {
    std::size_t end = 0;
    while (end < words.size()) {
        std::size_t next = end + 1;
        while (next < words.size() && (static_cast<unsigned char>(words[next]) & 0xC0) == 0x80)
            ++next;
        if (end > 0 && type.width(style, words.substr(0, next)) > width) break;
        end = next;
    }
    return end;
}

} // namespace

PaperPages::PaperPages(double width, double height, PaperFrame frame, PaperType& type)
    : paper_{0.0f, 0.0f, dp(width), dp(height)}, frame_(std::move(frame)), type_(type) {
    area_ = paper_.inset(margin);
    foot_ = this->height(frame_.foot, small_text, area_.width() - number_room);
    area_.y1 -= foot_ + part_gap;
    begin_list();
}

void PaperPages::begin_list() {
    lists_.emplace_back();
    list().begin(paper_, type_);
    area_.y0 = margin;
    y = area_.y0;
}

void PaperPages::new_page() {
    // Whatever is being written in another size goes on in it below.
    const PaperScale usual(type_, 1.0f / type_.scale());
    begin_list();
    head_line();
    if (again) again();
    area_.y0 = y;
}

/// Both ends of the line run into as many lines as they need.
void PaperPages::head_line() {
    const float half = 0.5f * area_.width() - part_gap;
    const float left = paragraph({area_.x0, y}, half, frame_.left, small_bold_text);
    const float right = paragraph({area_.x1 - half, y}, half, frame_.right, small_text,
                                  Role::soft_ink, PaperSide::right);
    y += std::max(left, right) + 3.0f;
    rule(area_.x0, area_.x1, y, 1.5f);
    y += part_gap;
}

void PaperPages::need(float height) {
    if (height > room() && y > area_.y0 + 0.5f) new_page();
}

std::vector<std::string_view> PaperPages::lines(std::string_view words, TypeStyle style,
                                                float width) const {
    std::vector<std::string_view> out;
    while (!words.empty()) {
        // The longest beginning that ends before a space, or at the end.
        std::size_t end = 0;
        for (std::size_t at = 0; at <= words.size(); ++at) {
            if (at < words.size() && words[at] != ' ') continue;
            if (type_.width(style, words.substr(0, at)) > width) break;
            end = at;
        }
        if (end == 0 && words.front() != ' ') {
            // A word alone is too long: as much of it as fits.
            end = fitting(type_, style, words.substr(0, words.find(' ')), width);
        }
        if (end > 0) out.push_back(words.substr(0, end));
        words.remove_prefix(end);
        while (!words.empty() && words.front() == ' ') words.remove_prefix(1);
    }
    return out;
}

float PaperPages::height(std::string_view words, TypeStyle style, float width) const {
    return static_cast<float>(lines(words, style, width).size()) * type_.height(style);
}

float PaperPages::paragraph(Vec at, float width, std::string_view words, TypeStyle style, Role role,
                            PaperSide side) {
    const float line = type_.height(style);
    float top = at.y;
    for (const std::string_view each : lines(words, style, width)) {
        const float left = width - type_.width(style, each);
        const float in = side == PaperSide::right    ? left
                         : side == PaperSide::middle ? 0.5f * left
                                                     : 0.0f;
        list().text({at.x + in, top}, each, style, role, Role::paper);
        top += line;
    }
    return top - at.y;
}

void PaperPages::flow(float left, float width, std::string_view words, TypeStyle style, Role role,
                      float gap) {
    const float line = type_.height(style);
    for (const std::string_view each : lines(words, style, width)) {
        need(line);
        list().text({left, y}, each, style, role, Role::paper);
        y += line;
    }
    y += gap;
}

void PaperPages::rule(float x0, float x1, float at, float width) {
    const Vec ends[] = {{x0, at}, {x1, at}};
    list().line(ends, 2, paint(Role::ink), width);
}

void PaperPages::heading(std::string_view words, float with) {
    constexpr float above = 14.0f, below = 6.0f;
    const float text = height(words, bold_text, area_.width());
    const bool first = y <= area_.y0 + 0.5f;
    need((first ? 0.0f : above) + text + below + with);
    if (y > area_.y0 + 0.5f) y += above;
    y += paragraph({area_.x0, y}, area_.width(), words, bold_text) + 1.0f;
    rule(area_.x0, area_.x1, y, 1.0f);
    y += below;
}

std::vector<DrawingList> PaperPages::finish() {
    const std::string all = std::to_string(lists_.size());
    const float bottom = paper_.y1 - margin;
    for (std::size_t i = 0; i < lists_.size(); ++i) {
        DrawingList& list = lists_[i];
        float top = bottom - foot_;
        const std::string number = std::to_string(i + 1) + " / " + all;
        list.text({area_.x1 - type_.width(small_bold_text, number),
                   bottom - type_.height(small_bold_text)},
                  number, small_bold_text, Role::ink, Role::paper);
        for (const std::string_view each :
             lines(frame_.foot, small_text, area_.width() - number_room)) {
            list.text({area_.x0, top}, each, small_text, Role::soft_ink, Role::paper);
            top += type_.height(small_text);
        }
    }
    return std::move(lists_);
}

} // namespace carriageway
