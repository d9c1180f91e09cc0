#include "platform/web/web_keys.h"

namespace carriageway {

namespace {

struct Name {
    std::string_view name;
    Key key;
};
// https://www.w3.org/TR/uievents-key/
constexpr Name names[] = {
    {"Enter", Key::enter},       {"Escape", Key::escape},      {" ", Key::space},
    {"Backspace", Key::backspace}, {"Delete", Key::remove},    {"ArrowLeft", Key::left},
    {"ArrowRight", Key::right},  {"ArrowUp", Key::up},         {"ArrowDown", Key::down},
    {"Home", Key::home},         {"End", Key::end},            {"PageUp", Key::page_up},
    {"PageDown", Key::page_down}, {"+", Key::plus},            {"-", Key::minus},
    {"0", Key::zero},            {"F1", Key::f1},              {"a", Key::a},
    {"n", Key::n},               {"o", Key::o},                {"s", Key::s},
    {"y", Key::y},               {"z", Key::z},                {"A", Key::a},
    {"N", Key::n},               {"O", Key::o},                {"S", Key::s},
    {"Y", Key::y},               {"Z", Key::z},                {"p", Key::p},
    {"P", Key::p},
};

} // namespace

Key key_of(std::string_view name) {
    for (const Name& each : names)
        if (each.name == name) return each.key;
    return Key::none;
}

std::string text_of_key(std::string_view name) {
    if (name.empty()) return {};
    std::size_t characters = 0;
    for (const char c : name) characters += (static_cast<unsigned char>(c) & 0xC0u) != 0x80u;
    return characters == 1 ? std::string(name) : std::string();
}

} // namespace carriageway
