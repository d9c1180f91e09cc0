# What the program for Windows links when it is built on another system: no packages, so libraries
# are built from their sources, into the program itself; those that are headers alone come from the
# machine's own packages. Pictures are read from PNG alone.

carriageway_headers_alone(nlohmann_json::nlohmann_json nlohmann json.hpp)
carriageway_headers_alone(CLI11::CLI11 CLI CLI.hpp)

carriageway_sources(sqlitecpp folder)
carriageway_sqlite_from_sources("${folder}/sqlite3/sqlite3.c")
# SQLiteCpp has to know what is left out.
target_compile_definitions(sqlite3 PRIVATE SQLITE_ENABLE_FTS5 PUBLIC SQLITE_OMIT_LOAD_EXTENSION)

carriageway_zlib_from_sources()

carriageway_sources(libpng folder)
file(READ "${folder}/scripts/pnglibconf.h.prebuilt" features)
carriageway_png_from_sources("${features}"
    png pngerror pngget pngmem pngpread pngread pngrio pngrtran pngrutil pngset pngtrans
    pngwio pngwrite pngwtran pngwutil)

carriageway_qrcodegen_from_sources()
carriageway_haru_from_sources()
include(dependencies_font)
include(dependencies_imgui)

set(GLFW_BUILD_DOCS OFF)
set(GLFW_BUILD_TESTS OFF)
set(GLFW_BUILD_EXAMPLES OFF)
set(GLFW_INSTALL OFF)
FetchContent_MakeAvailable(glfw)
add_library(imgui_glfw STATIC "${imgui_SOURCE_DIR}/backends/imgui_impl_glfw.cpp")
target_link_libraries(imgui_glfw PUBLIC imgui_opengl glfw)
target_link_libraries(imgui_opengl PUBLIC opengl32)
