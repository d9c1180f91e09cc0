# What the program for browsers links. Emscripten has no packages, so libraries are built from
# their sources; those that are headers alone come from the machine's own package.

carriageway_headers_alone(nlohmann_json::nlohmann_json nlohmann json.hpp)

carriageway_sqlite_from_sources("${PROJECT_SOURCE_DIR}/platform/web/sqlite3_small.c")
# One thread, no extensions from files, and none of the word index either: it is a thirtieth of what
# a first visit loads, and a library on a phone is searched in a moment without it (word_search.h).
target_compile_definitions(sqlite3 PRIVATE SQLITE_THREADSAFE=0 SQLITE_OMIT_LOAD_EXTENSION
    SQLITE_OMIT_SHARED_CACHE SQLITE_OMIT_DEPRECATED SQLITE_OMIT_JSON SQLITE_OMIT_UTF16
    SQLITE_OMIT_COMPLETE SQLITE_OMIT_GET_TABLE SQLITE_OMIT_PROGRESS_CALLBACK SQLITE_OMIT_TCL_VARIABLE
    SQLITE_OMIT_AUTHORIZATION SQLITE_OMIT_TRACE SQLITE_OMIT_INCRBLOB
    SQLITE_OMIT_DATETIME_FUNCS SQLITE_OMIT_ALTERTABLE
    SQLITE_OMIT_ANALYZE SQLITE_OMIT_REINDEX SQLITE_OMIT_EXPLAIN SQLITE_OMIT_VACUUM
    SQLITE_OMIT_AUTOVACUUM SQLITE_OMIT_GENERATED_COLUMNS SQLITE_OMIT_VIRTUALTABLE SQLITE_OMIT_WAL
    SQLITE_OMIT_VIEW SQLITE_OMIT_COMPOUND_SELECT SQLITE_OMIT_SCHEMA_PRAGMAS SQLITE_OMIT_LOCALTIME
    SQLITE_OMIT_BLOB_LITERAL SQLITE_OMIT_LOOKASIDE SQLITE_OMIT_QUICKBALANCE SQLITE_MAX_MMAP_SIZE=0
    SQLITE_OMIT_OR_OPTIMIZATION SQLITE_OMIT_LIKE_OPTIMIZATION SQLITE_OMIT_AUTOMATIC_INDEX
    SQLITE_OMIT_XFER_OPT SQLITE_OMIT_BETWEEN_OPTIMIZATION
    SQLITE_UNTESTABLE SQLITE_DQS=0 SQLITE_DEFAULT_MEMSTATUS=0)

carriageway_zlib_from_sources()

# libpng that reads and no more: without writing, its two simplified interfaces, the progressive
# reader and setjmp (an error leaves by an exception). What it is made of stands in its own list of
# features, of which those are taken out.
carriageway_sources(libpng folder)
file(READ "${folder}/scripts/pnglibconf.h.prebuilt" features)
foreach(left_out "[A-Z0-9_]*WRITE[A-Z0-9_]*" "SIMPLIFIED_[A-Z_]*" PROGRESSIVE_READ SETJMP STDIO
        CONSOLE_IO TIME_RFC1123 CONVERT_tIME MNG_FEATURES "READ_(GAMMA|BACKGROUND|ALPHA_MODE|QUANTIZE)"
        "READ_(RGB_TO_GRAY|COMPOSITE_NODIV|USER_TRANSFORM|16_TO_8_ACCURATE_SCALE)" USER_TRANSFORM_[A-Z]*)
    string(REGEX REPLACE "#define PNG_${left_out}_SUPPORTED\n" "" features "${features}")
endforeach()
carriageway_png_from_sources("${features}"
    png pngerror pngget pngmem pngread pngrio pngrtran pngrutil pngset pngtrans)

carriageway_qrcodegen_from_sources()
# It puts one message together with a stream, and with the first stream comes all of C++'s locale
# (tens of thousands of bytes that nobody sees). In its place, for that file alone, what the message
# needs.
file(WRITE "${PROJECT_BINARY_DIR}/qrcodegen_words/sstream" [=[
#pragma once
#include <string>
namespace std {
class message_words {
  public:
    message_words& operator<<(const char* words) { text_ += words; return *this; }
    template <typename Number>
    message_words& operator<<(Number number) { text_ += to_string(number); return *this; }
    string str() const { return text_; }
  private:
    string text_;
};
}
#define ostringstream message_words
]=])
target_include_directories(qrcodegen BEFORE PRIVATE "${PROJECT_BINARY_DIR}/qrcodegen_words")
carriageway_haru_from_sources()

include(dependencies_font)
include(dependencies_imgui)
