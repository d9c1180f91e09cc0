// Names that trouble programs: stored, searched, exported and drawn, or refused with a reason.
#pragma once

#include <string>
#include <vector>

/// Valid UTF-8 of at most 200 bytes, each odd in its own way.
inline std::vector<std::string> odd_names() {
    const auto repeated = [](const std::string& text, int count) {
        std::string out;
        for (int n = 0; n < count; ++n) out += text;
        return out;
    };
    return {
        "עיר \u05E0\u05DE\u05DC abc \u0645\u0637\u0628\u0639\u0629 12",  // right to left, mixed
        "\u202Ereversed\u202C \u2066isolated\u2069 \u200Fmark",          // overrides and isolates
        "e\u0301a\u0308n\u0303 " + repeated("\u0301\u0327", 40),         // combining, stacked
        "\u0301 begins with an accent",
        "zero\u200Bwidth\u200Cjoin\u200Der\uFEFFmark\u2060",
        "\U0001F468\u200D\U0001F469\u200D\U0001F467 \U0001F3F3\uFE0F\u200D\U0001F308 \u260E\uFE0F",
        "\U0001F1EA\U0001F1F8\U0001F44D\U0001F3FD",
        "non-characters \uFFFE\uFFFF\uFDD0 \U0001FFFE\U0010FFFF",
        "private \uE000\U000F0000 unassigned \U000E0FFF tags \U000E0041",
        "line\nfeed\ttab\rreturn\x01\x1B[31m\x7F",
        "next\u0085line \u2028separator\u2029 \u00A0space\u3000",
        std::string("a\0b\0", 4) + "NUL",
        std::string(1, '\0'),
        "'; DROP TABLE jobs; -- %_\\\" * ^ NEAR( ) OR : - \"",
        "../../etc/passwd\\..\\con.txt",
        "=1+1,\"a\",;\n@b",
        "<b>&amp;</b> %s %n {0} {1}",
        "\u0130\u0131 \u00DF \uFB01 \u01C5 \u03A3\u03C2",                // case that changes length
        "\u1100\u1161\u11A8 \uAC01 \u0E01\u0E33 \u0939\u093F\u0928\u094D\u0926\u0940",
        repeated("\U00010348", 50),                                      // 200 bytes in fours
        repeated("x", 200),
    };
}

/// No UTF-8 (RFC 3629, 3 and 4), or too long.
inline std::vector<std::string> bad_names() {
    return {
        "\x80", "a\xBF", "\xC3", "\xE2\x82", "\xF0\x9F\x98",  // out of place, cut off
        "\xC0\xAF", "\xC1\x81", "\xE0\x80\xAF", "\xF0\x80\x80\xAF",  // overlong
        "\xC0\x80",                                           // an overlong NUL
        "\xED\xA0\x80", "\xED\xBF\xBF", "\xED\xA0\xBD\xED\xB8\x80",  // surrogates
        "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xF8\x88\x80\x80\x80", "\xFF", "\xFE",
        std::string(201, 'x'),
        std::string(198, 'x') + "\u20AC", // 201 bytes
    };
}
