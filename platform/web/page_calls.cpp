#include "platform/web/page_calls.h"

#include <emscripten.h>

#include <cstdlib>

#include <nlohmann/json.hpp>

// The macros count their arguments in a way that -Wpedantic doesn't like.
#pragma clang diagnostic ignored "-Wpedantic"
#pragma clang diagnostic ignored "-Wdollar-in-identifier-extension"

namespace carriageway::page {

namespace {

/// A string that the page has put on the heap.
std::string taken(char* text) {
    std::string out = text ? text : "";
    std::free(text);
    return out;
}

} // namespace

EM_JS(double, page_surface, (int index), { return Module.page.surface[index] || 0; });
EM_JS(int, page_dark, (), { return Module.page.dark ? 1 : 0; });
EM_JS(int, page_can, (const char* what), { return Module.page.can(UTF8ToString(what)) ? 1 : 0; });
EM_JS(char*, page_link_base, (), { return allocateUTF8(Module.page.linkBase()); });
EM_JS(char*, page_language, (), { return allocateUTF8(navigator.language || "en"); });
EM_JS(void, page_text, (const char* method, const char* text), {
    Module.page[UTF8ToString(method)](UTF8ToString(text));
});
EM_JS(void, page_number, (const char* method, double number), {
    Module.page[UTF8ToString(method)](number);
});
EM_JS(void, page_plain, (const char* method), { Module.page[UTF8ToString(method)](); });

std::string text_of(const nlohmann::json& json) {
    return json.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

double surface(int index) { return page_surface(index); }
bool dark() { return page_dark() != 0; }
bool can(const char* what) { return page_can(what) != 0; }
std::string link_base() { return taken(page_link_base()); }
std::string language() { return taken(page_language()); }

void mirror(const std::string& json) { page_text("mirror", json.c_str()); }
void field(const std::string& json) { page_text("field", json.c_str()); }
void keep() { page_plain("keep"); }
void later(double seconds) { page_number("later", seconds); }
void title(const std::string& text) { page_text("title", text.c_str()); }
void awake(bool awake) { page_number("awake", awake ? 1.0 : 0.0); }
void persist() { page_plain("persist"); }
void pick() { page_plain("pick"); }
void give(const std::string& path) { page_text("give", path.c_str()); }
void copy(const std::string& text) { page_text("copy", text.c_str()); }
void share(const std::string& text) { page_text("share", text.c_str()); }
void take_over() { page_plain("takeOver"); }
void update() { page_plain("update"); }
void link_taken() { page_plain("linkTaken"); }

} // namespace carriageway::page
