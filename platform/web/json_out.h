// Strings and numbers as JSON for the page.
#pragma once

#include <string>
#include <string_view>

#include "app/drawing/box.h"

namespace carriageway {

/// In quotation marks, with what RFC 8259 wants escaped.
inline void add_json(std::string& out, std::string_view text) {
    static constexpr char digits[] = "0123456789abcdef";
    out += '"';
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (byte < 0x20) {
            out += "\\u00";
            out += digits[byte >> 4];
            out += digits[byte & 15];
        } else {
            out += c;
        }
    }
    out += '"';
}

/// To a tenth, which is finer than a pixel.
inline void add_json(std::string& out, double number) {
    const long tenths = static_cast<long>(number * 10.0 + (number < 0.0 ? -0.5 : 0.5));
    if (tenths < 0) out += '-';
    const long size = tenths < 0 ? -tenths : tenths;
    out += std::to_string(size / 10);
    if (size % 10 != 0) out += '.' + std::to_string(size % 10);
}

inline void add_json(std::string& out, Box box) {
    out += '[';
    const float sides[] = {box.x0, box.y0, box.x1, box.y1};
    for (int i = 0; i < 4; ++i) {
        if (i > 0) out += ',';
        add_json(out, static_cast<double>(sides[i]));
    }
    out += ']';
}

} // namespace carriageway
