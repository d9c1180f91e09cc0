#include "app/text/spare_text.h"

#include <vector>

namespace carriageway {

namespace {

constexpr std::size_t most_kept = 64;
constexpr std::size_t longest_kept = 4096; ///< bytes: beyond, a text is no sentence

std::vector<std::string>& spare() {
    thread_local std::vector<std::string> texts;
    return texts;
}

} // namespace

std::string spare_text() {
    std::vector<std::string>& texts = spare();
    if (texts.empty()) return {};
    std::string text = std::move(texts.back());
    texts.pop_back();
    return text;
}

std::string spare_text(std::string_view words) {
    std::string text = spare_text();
    text.assign(words);
    return text;
}

std::string together(std::initializer_list<std::string_view> pieces) {
    std::string text = spare_text();
    for (const std::string_view piece : pieces) text += piece;
    return text;
}

void give_back(std::string& text) {
    static const std::size_t without_storage = std::string().capacity();
    if (text.capacity() <= without_storage || text.capacity() > longest_kept) return;
    std::vector<std::string>& texts = spare();
    if (texts.size() == most_kept) return;
    text.clear();
    texts.push_back(std::move(text));
}

} // namespace carriageway
