#include "app/records/records_built_on.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <png.h>
#include <sqlite3.h>
#include <zlib.h>

#include <nlohmann/json.hpp>
#ifndef __EMSCRIPTEN__
#include <CLI/Version.hpp>
#endif
#ifdef CARRIAGEWAY_TIFF
#include <tiffio.h>
#endif

namespace carriageway {

namespace {

#define CARRIAGEWAY_WORDS_OF(number) #number
#define CARRIAGEWAY_NUMBER_AS_WORDS(number) CARRIAGEWAY_WORDS_OF(number)
constexpr const char* json_version = CARRIAGEWAY_NUMBER_AS_WORDS(NLOHMANN_JSON_VERSION_MAJOR) "."
    CARRIAGEWAY_NUMBER_AS_WORDS(NLOHMANN_JSON_VERSION_MINOR) "."
    CARRIAGEWAY_NUMBER_AS_WORDS(NLOHMANN_JSON_VERSION_PATCH);
#undef CARRIAGEWAY_NUMBER_AS_WORDS
#undef CARRIAGEWAY_WORDS_OF

#ifdef CARRIAGEWAY_TIFF
/// Of "LIBTIFF, Version 4.5.0" and the lines about its authors that follow.
std::string tiff_version() {
    const std::string text = TIFFGetVersion();
    const std::size_t from = text.find_first_of("0123456789");
    if (from == std::string::npos) return {};
    return text.substr(from, text.find_first_not_of("0123456789.", from) - from);
}
#endif

} // namespace

std::vector<BuiltOn> records_built_on() {
    return {
        {"SQLite", sqlite3_libversion(), "blessing"},
        {"SQLiteCpp", SQLITECPP_VERSION, "MIT"},
        {"nlohmann-json", json_version, "MIT"},
#ifndef __EMSCRIPTEN__
        {"CLI11", CLI11_VERSION, "BSD-3-Clause"},
#endif
        {"zlib", zlibVersion(), "Zlib"},
        {"libpng", png_get_libpng_ver(nullptr), "libpng-2.0"},
#ifdef CARRIAGEWAY_TIFF
        {"libtiff", tiff_version(), "libtiff"},
#endif
    };
}

} // namespace carriageway
