// What C++ asks of the page, and what the page tells C++: the whole line between the two.
//
// The page puts an object `page` into the module before it starts (platform/web/page/start.js); each
// function here calls its method of that name. The page answers through carriageway_tell().
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

namespace carriageway::page {

/// JSON as the page reads it; what isn't UTF-8 in it becomes U+FFFD.
std::string text_of(const nlohmann::json& json);

/// Width and height in px, px per CSS px, then insets left, top, right, bottom in CSS px.
double surface(int index);
bool dark();
bool can(const char* what); ///< an ability by name: "share"
std::string link_base();    ///< the page's address without its fragment
std::string language();     ///< as the browser has it: "es-MX"

void mirror(const std::string& json);
void field(const std::string& json); ///< empty: none
void keep();                         ///< answered by "kept"
void later(double seconds);          ///< plans the next turn; below 0: none
void title(const std::string& text);
void awake(bool awake);
void persist();
void pick();
void give(const std::string& path);
void copy(const std::string& text);
void share(const std::string& text);
void take_over();
void update();
void link_taken();

} // namespace carriageway::page
