# Dear ImGui has no CMake file of its own.
FetchContent_MakeAvailable(imgui)

# The typeface that comes with it is never shown, and a first visit to the page would load it.
set(imgui_draw "${imgui_SOURCE_DIR}/imgui_draw.cpp")
if(EMSCRIPTEN)
    file(READ "${imgui_draw}" source)
    set(begins "proggy_clean_ttf_compressed_data_base85[11980 + 1] =\n")
    string(FIND "${source}" "${begins}" begin)
    if(begin EQUAL -1)
        message(FATAL_ERROR "imgui_draw.cpp has its own typeface elsewhere than was known")
    endif()
    string(LENGTH "${begins}" length)
    math(EXPR begin "${begin} + ${length}")
    string(SUBSTRING "${source}" 0 ${begin} before)
    string(SUBSTRING "${source}" ${begin} -1 data)
    string(FIND "${data}" "\";\n" end)
    string(SUBSTRING "${data}" ${end} -1 after)
    set(imgui_draw "${PROJECT_BINARY_DIR}/imgui/imgui_draw.cpp")
    file(CONFIGURE OUTPUT "${imgui_draw}" CONTENT "@before@\"@after@" @ONLY NEWLINE_STYLE UNIX)
endif()
add_library(imgui STATIC
    "${imgui_SOURCE_DIR}/imgui.cpp"
    "${imgui_draw}"
    "${imgui_SOURCE_DIR}/imgui_tables.cpp"
    "${imgui_SOURCE_DIR}/imgui_widgets.cpp"
    "${imgui_SOURCE_DIR}/misc/cpp/imgui_stdlib.cpp")
target_include_directories(imgui SYSTEM PUBLIC "${imgui_SOURCE_DIR}" "${imgui_SOURCE_DIR}/misc/cpp")
# Indices of 32 bits: OpenGL ES 3 can't offset those of 16, and a zoomed-out press may have more.
target_compile_definitions(imgui PUBLIC IMGUI_DISABLE_OBSOLETE_FUNCTIONS "ImDrawIdx=unsigned int")

if(EMSCRIPTEN)
    target_compile_definitions(imgui PRIVATE IMGUI_DISABLE_DEBUG_TOOLS IMGUI_DISABLE_DEMO_WINDOWS)
endif()

add_library(imgui_demo STATIC EXCLUDE_FROM_ALL "${imgui_SOURCE_DIR}/imgui_demo.cpp")
target_link_libraries(imgui_demo PUBLIC imgui)

# Its renderer; what brings OpenGL is linked where that is found.
if(CARRIAGEWAY_BACKENDS OR EMSCRIPTEN)
    add_library(imgui_opengl STATIC "${imgui_SOURCE_DIR}/backends/imgui_impl_opengl3.cpp")
    target_include_directories(imgui_opengl SYSTEM PUBLIC "${imgui_SOURCE_DIR}/backends")
    target_link_libraries(imgui_opengl PUBLIC imgui)
endif()
