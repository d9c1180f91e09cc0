# What the program links.

# An installed package, or upstream's sources.
macro(carriageway_find_or_fetch package name target)
    find_package(${package} QUIET ${ARGN})
    if(NOT TARGET ${target})
        FetchContent_MakeAvailable(${name})
    endif()
endmacro()

set(JSON_BuildTests OFF)
set(JSON_SystemInclude ON)
carriageway_find_or_fetch(nlohmann_json nlohmann_json nlohmann_json::nlohmann_json)

set(CLI11_BUILD_TESTS OFF)
set(CLI11_BUILD_EXAMPLES OFF)
set(CLI11_BUILD_DOCS OFF)
carriageway_find_or_fetch(CLI11 cli11 CLI11::CLI11)

set(SQLITECPP_RUN_CPPLINT OFF)
set(SQLITECPP_RUN_CPPCHECK OFF)
set(SQLITECPP_INTERNAL_SQLITE ON)
carriageway_find_or_fetch(SQLiteCpp sqlitecpp SQLiteCpp)

# zlib, for links and for libpng
find_package(ZLIB QUIET)
if(NOT TARGET ZLIB::ZLIB)
    set(SKIP_INSTALL_ALL ON)
    FetchContent_MakeAvailable(zlib)
    set(ZLIB_LIBRARIES zlibstatic)
    set(ZLIB_INCLUDE_DIRS "${zlib_SOURCE_DIR}" "${zlib_BINARY_DIR}")
    add_library(carriageway_zlib INTERFACE)
    target_include_directories(carriageway_zlib SYSTEM INTERFACE ${ZLIB_INCLUDE_DIRS})
    target_link_libraries(carriageway_zlib INTERFACE zlibstatic)
    add_library(ZLIB::ZLIB ALIAS carriageway_zlib)
endif()

find_path(QRCODEGEN_INCLUDE_DIR qrcodegen.hpp PATH_SUFFIXES qrcodegen)
find_library(QRCODEGEN_LIBRARY qrcodegencpp)
if(QRCODEGEN_INCLUDE_DIR AND QRCODEGEN_LIBRARY)
    add_library(qrcodegen INTERFACE)
    target_include_directories(qrcodegen SYSTEM INTERFACE "${QRCODEGEN_INCLUDE_DIR}")
    target_link_libraries(qrcodegen INTERFACE "${QRCODEGEN_LIBRARY}")
else()
    carriageway_qrcodegen_from_sources()
endif()

# libpng
add_library(carriageway_png INTERFACE)
find_package(PNG QUIET)
if(TARGET PNG::PNG)
    target_link_libraries(carriageway_png INTERFACE PNG::PNG)
else()
    set(SKIP_INSTALL_ALL ON)
    set(PNG_BUILD_ZLIB ON)  # take the zlib above, don't look for one
    set(PNG_TESTS OFF)
    set(PNG_SHARED OFF)
    FetchContent_MakeAvailable(libpng)
    target_include_directories(carriageway_png SYSTEM INTERFACE
        "${libpng_SOURCE_DIR}" "${libpng_BINARY_DIR}" ${ZLIB_INCLUDE_DIRS})
    target_link_libraries(carriageway_png INTERFACE png_static)
endif()

# libtiff, where it can be told how much memory it may take; pictures are PNG otherwise
find_package(TIFF 4.5 QUIET)
if(TARGET TIFF::TIFF)
    add_library(carriageway_tiff INTERFACE)
    target_link_libraries(carriageway_tiff INTERFACE TIFF::TIFF)
    target_compile_definitions(carriageway_tiff INTERFACE CARRIAGEWAY_TIFF=1)
endif()

# libharu
find_path(HPDF_INCLUDE_DIR hpdf.h)
find_library(HPDF_LIBRARY hpdf)
if(HPDF_INCLUDE_DIR AND HPDF_LIBRARY)
    add_library(carriageway_haru INTERFACE)
    target_include_directories(carriageway_haru SYSTEM INTERFACE "${HPDF_INCLUDE_DIR}")
    target_link_libraries(carriageway_haru INTERFACE "${HPDF_LIBRARY}")
else()
    carriageway_haru_from_sources()
endif()

include(dependencies_font)
include(dependencies_imgui)

if(CARRIAGEWAY_BACKENDS)
    set(OpenGL_GL_PREFERENCE LEGACY)
    find_package(OpenGL REQUIRED)
    target_link_libraries(imgui_opengl PUBLIC OpenGL::GL ${CMAKE_DL_LIBS})
endif()

if("SDL2" IN_LIST CARRIAGEWAY_BACKENDS)
    set(SDL_SHARED OFF)
    set(SDL_TEST OFF)
    find_package(SDL2 QUIET)
    if(NOT TARGET SDL2::SDL2 AND NOT TARGET SDL2::SDL2-static)
        FetchContent_MakeAvailable(sdl2)
    endif()
    add_library(imgui_sdl2 STATIC "${imgui_SOURCE_DIR}/backends/imgui_impl_sdl2.cpp")
    target_link_libraries(imgui_sdl2 PUBLIC imgui_opengl
        $<IF:$<TARGET_EXISTS:SDL2::SDL2>,SDL2::SDL2,SDL2::SDL2-static>)
    # main is the program's own; the back end calls SDL_SetMainReady.
    target_compile_definitions(imgui_sdl2 PUBLIC SDL_MAIN_HANDLED)
endif()

if("GLFW" IN_LIST CARRIAGEWAY_BACKENDS)
    set(GLFW_BUILD_DOCS OFF)
    set(GLFW_BUILD_TESTS OFF)
    set(GLFW_BUILD_EXAMPLES OFF)
    set(GLFW_INSTALL OFF)
    carriageway_find_or_fetch(glfw3 glfw glfw)
    add_library(imgui_glfw STATIC "${imgui_SOURCE_DIR}/backends/imgui_impl_glfw.cpp")
    target_link_libraries(imgui_glfw PUBLIC imgui_opengl glfw)
endif()
