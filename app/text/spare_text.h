// Storage of texts that have been used, for the next ones: a frame says what the last one said, in
// other numbers, and while a stop is dragged it takes nothing from the heap.
//
// Whoever gives nothing back loses nothing but that; texts are ordinary strings.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>

namespace carriageway {

/// An empty text, with storage that was given back where there is some.
std::string spare_text();

/// These words, in such storage.
std::string spare_text(std::string_view words);

/// Pieces one after the other, in such storage.
std::string together(std::initializer_list<std::string_view> pieces);

/// Gives a text's storage back. Each thread has its own.
void give_back(std::string& text);

/// A text, or a value made of texts, that gives its storage back when it goes.
template <class Text>
class Passing {
public:
    explicit Passing(Text text) : text_(std::move(text)) {}
    ~Passing() { give_back(text_); }
    Passing(const Passing&) = delete;
    Passing& operator=(const Passing&) = delete;

    const Text& operator*() const { return text_; }
    const Text* operator->() const { return &text_; }
    operator std::string_view() const
        requires std::is_same_v<Text, std::string>
    {
        return text_;
    }

private:
    Text text_;
};

/// Puts a text into its place, and gives back what was there.
inline void put(std::string& place, std::string text) {
    place.swap(text);
    give_back(text);
}

} // namespace carriageway
