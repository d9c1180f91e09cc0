# Dear ImGui has no CMake file of its own.
FetchContent_MakeAvailable(imgui)
add_library(imgui STATIC
    "${imgui_SOURCE_DIR}/imgui.cpp"
    "${imgui_SOURCE_DIR}/imgui_draw.cpp"
    "${imgui_SOURCE_DIR}/imgui_tables.cpp"
    "${imgui_SOURCE_DIR}/imgui_widgets.cpp"
    "${imgui_SOURCE_DIR}/misc/cpp/imgui_stdlib.cpp")
target_include_directories(imgui SYSTEM PUBLIC "${imgui_SOURCE_DIR}" "${imgui_SOURCE_DIR}/misc/cpp")
# Indices of 32 bits: OpenGL ES 3 can't offset those of 16, and a zoomed-out press may have more.
target_compile_definitions(imgui PUBLIC IMGUI_DISABLE_OBSOLETE_FUNCTIONS "ImDrawIdx=unsigned int")

add_library(imgui_demo STATIC EXCLUDE_FROM_ALL "${imgui_SOURCE_DIR}/imgui_demo.cpp")
target_link_libraries(imgui_demo PUBLIC imgui)

# Its renderer; what brings OpenGL is linked where that is found.
if(CARRIAGEWAY_BACKENDS OR EMSCRIPTEN)
    add_library(imgui_opengl STATIC "${imgui_SOURCE_DIR}/backends/imgui_impl_opengl3.cpp")
    target_include_directories(imgui_opengl SYSTEM PUBLIC "${imgui_SOURCE_DIR}/backends")
    target_link_libraries(imgui_opengl PUBLIC imgui)
endif()
