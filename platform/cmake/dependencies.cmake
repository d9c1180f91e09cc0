# Finds or fetches what platform/dependencies.txt lists: an installed package
# where there is one, otherwise upstream's tag. -DFETCHCONTENT_SOURCE_DIR_NAME=
# points a name of the list at sources that are already unpacked.

include(FetchContent)

# The options set here are meant for the fetched projects, old ones too.
set(CMAKE_POLICY_DEFAULT_CMP0077 NEW)

file(STRINGS "${PROJECT_SOURCE_DIR}/platform/dependencies.txt" rows REGEX "^[^#]")
set_property(DIRECTORY "${PROJECT_SOURCE_DIR}" APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS
    "${PROJECT_SOURCE_DIR}/platform/dependencies.txt")
foreach(row IN LISTS rows)
    if(row MATCHES "^([^|]*)\\|[^|]*\\|[^|]*\\|[^|]*\\|[^|]*\\|([^| ]+) ([^|]+)\\|")
        FetchContent_Declare(${CMAKE_MATCH_1}
            GIT_REPOSITORY "${CMAKE_MATCH_2}" GIT_TAG "${CMAKE_MATCH_3}" GIT_SHALLOW ON SYSTEM)
    endif()
endforeach()

# Sources alone, where their own CMake file is not there or looks for a system that isn't.
function(carriageway_sources name result)
    FetchContent_GetProperties(${name})
    if(NOT ${name}_POPULATED)
        FetchContent_Populate(${name})
    endif()
    FetchContent_GetProperties(${name} SOURCE_DIR folder)
    set(${result} "${folder}" PARENT_SCOPE)
endfunction()

# carriageway_headers_alone(target folder header)
# A library of headers alone from the machine's own package: a folder of them beside /usr/include,
# which must not itself be on the path of a compiler for another system.
function(carriageway_headers_alone target folder header)
    find_path(${folder}_headers "${folder}/${header}" PATHS /usr/include /usr/local/include
        NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH)
    if(NOT ${folder}_headers)
        message(FATAL_ERROR "${folder}/${header} was not found: install what platform/dependencies.txt lists")
    endif()
    set(headers "${PROJECT_BINARY_DIR}/headers")
    file(MAKE_DIRECTORY "${headers}")
    file(CREATE_LINK "${${folder}_headers}/${folder}" "${headers}/${folder}" SYMBOLIC)
    add_library(${target} INTERFACE IMPORTED GLOBAL)
    target_include_directories(${target} SYSTEM INTERFACE "${headers}")
endfunction()

# carriageway_zlib_from_sources(more-file...)
# What deflates and inflates memory, with more of its files by name. Its own CMake file would rename
# one of its headers, which other builds of the same sources read.
function(carriageway_zlib_from_sources)
    carriageway_sources(zlib folder)
    list(TRANSFORM ARGN PREPEND "${folder}/" OUTPUT_VARIABLE sources)
    list(TRANSFORM sources APPEND ".c")
    foreach(name adler32 compress crc32 deflate inffast inflate inftrees trees uncompr zutil)
        list(APPEND sources "${folder}/${name}.c")
    endforeach()
    add_library(zlib STATIC ${sources})
    target_include_directories(zlib SYSTEM PUBLIC "${folder}")
    target_compile_options(zlib PRIVATE -w)
    add_library(ZLIB::ZLIB ALIAS zlib)
endfunction()

# carriageway_png_from_sources(features name...)
# libpng of those of its files, with what stands in its own list of features.
function(carriageway_png_from_sources features)
    carriageway_sources(libpng folder)
    set(settings "${PROJECT_BINARY_DIR}/libpng")
    file(CONFIGURE OUTPUT "${settings}/pnglibconf.h" CONTENT "${features}" @ONLY)
    list(TRANSFORM ARGN PREPEND "${folder}/" OUTPUT_VARIABLE sources)
    list(TRANSFORM sources APPEND ".c")
    add_library(carriageway_png STATIC ${sources})
    target_include_directories(carriageway_png SYSTEM PUBLIC "${folder}" "${settings}")
    target_compile_options(carriageway_png PRIVATE -w)
    target_link_libraries(carriageway_png PUBLIC ZLIB::ZLIB)
endfunction()

# carriageway_sqlite_from_sources(file)
# SQLite of that file and the C++ over it, both of SQLiteCpp's sources.
function(carriageway_sqlite_from_sources file)
    carriageway_sources(sqlitecpp folder)
    add_library(sqlite3 STATIC "${file}")
    target_include_directories(sqlite3 SYSTEM PUBLIC "${folder}/sqlite3")
    target_compile_options(sqlite3 PRIVATE -w)
    file(GLOB sources "${folder}/src/*.cpp")
    add_library(SQLiteCpp STATIC ${sources})
    target_include_directories(SQLiteCpp SYSTEM PUBLIC "${folder}/include")
    target_link_libraries(SQLiteCpp PUBLIC sqlite3)
endfunction()

# The code to photograph: one file.
macro(carriageway_qrcodegen_from_sources)
    carriageway_sources(qrcodegen folder)
    add_library(qrcodegen STATIC "${folder}/cpp/qrcodegen.cpp")
    target_include_directories(qrcodegen SYSTEM PUBLIC "${folder}/cpp")
endmacro()

# The page embeds its own font in one encoding: it needs neither the widths of the fonts that every
# reader has nor the tables of other encodings, which are a third of the library.
function(carriageway_small_haru folder out name)
    set(kept "${${name}}")
    list(FILTER kept EXCLUDE REGEX "(_fontdef_base14|/hpdf_encoder)\\.c$")
    file(WRITE "${out}/no_base14.c" "#include \"hpdf_utils.h\"
#include \"hpdf_fontdef.h\"
HPDF_FontDef HPDF_Base14FontDef_New(HPDF_MMgr mmgr, const char* font_name) {
    HPDF_SetError(mmgr->error, HPDF_INVALID_FONT_NAME, 0);
    return NULL;
}
")
    file(READ "${folder}/hpdf_encoder.c" encoder)
    string(REGEX REPLACE
        " *{[ \n]+HPDF_ENCODING_[A-Z0-9_]+,[ \n]+HPDF_BASE_ENCODING_WIN_ANSI,[ \n]+HPDF_UNICODE_MAP_[A-Z0-9_]+[ \n]*},\n"
        "" encoder "${encoder}")
    file(WRITE "${out}/encoder.c" "${encoder}")
    set(${name} ${kept} "${out}/no_base14.c" "${out}/encoder.c" PARENT_SCOPE)
endfunction()

# What writes PDF: all of it but tables of Chinese, Japanese and Korean, pictures in PNG and what is
# for archives. Its own CMake file looks for a system's libraries.
macro(carriageway_haru_from_sources)
    carriageway_sources(libharu folder)
    set(haru_settings "${PROJECT_BINARY_DIR}/libharu")
    file(CONFIGURE OUTPUT "${haru_settings}/hpdf_config.h" CONTENT
        "#define LIBHPDF_STDC_HEADERS 1\n#define LIBHPDF_HAVE_NOPNGLIB 1\n")
    file(GLOB sources "${folder}/src/hpdf_*.c")
    list(FILTER sources EXCLUDE REGEX "(_cns|_cnt|_jp|_kr|_encoder_utf|_png|_pdfa)\\.c$")
    if(EMSCRIPTEN)
        carriageway_small_haru("${folder}/src" "${haru_settings}" sources)
    endif()
    add_library(carriageway_haru STATIC ${sources})
    target_include_directories(carriageway_haru SYSTEM PUBLIC
        "${haru_settings}" "${folder}/include")
    target_compile_options(carriageway_haru PRIVATE -w)
    target_link_libraries(carriageway_haru PUBLIC ZLIB::ZLIB)
endmacro()

if(CARRIAGEWAY_TESTS)
    include(dependencies_tests)
endif()
if(CARRIAGEWAY_APP AND EMSCRIPTEN)
    include(dependencies_web)
elseif(CARRIAGEWAY_APP AND WIN32 AND CMAKE_CROSSCOMPILING)
    include(dependencies_windows)
elseif(CARRIAGEWAY_APP)
    include(dependencies_app)
endif()
