# The program for browsers: a folder of files, build/.../site, that any static host can serve.

carriageway_library(carriageway_web platform/web platform/desktop EXCEPT platform/desktop/display_scale.cpp
    platform/web/web_main.cpp)
carriageway_link(carriageway_web imgui_opengl carriageway_views)

add_executable(carriageway "${PROJECT_SOURCE_DIR}/platform/web/web_main.cpp")
target_compile_options(carriageway PRIVATE -fno-rtti)
target_link_libraries(carriageway PRIVATE carriageway_warnings carriageway_web)
target_link_options(carriageway PRIVATE
    -Oz
    -sMODULARIZE=1 -sEXPORT_ES6=1 -sENVIRONMENT=web
    -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2
    -sALLOW_MEMORY_GROWTH=1 -sINITIAL_MEMORY=33554432 -sTOTAL_STACK=1048576 -sBINARYEN_EXTRA_PASSES=converge
    -sFORCE_FILESYSTEM=1 -sEXIT_RUNTIME=0 -sDYNAMIC_EXECUTION=0
    -sEXPORTED_RUNTIME_METHODS=FS,ccall,UTF8ToString,callMain
    -sEXPORTED_FUNCTIONS=_main,_free,_malloc)
set_target_properties(carriageway PROPERTIES SUFFIX ".js")

file(GLOB page_files CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/platform/web/page/*")
set(site "${PROJECT_BINARY_DIR}/site")
add_custom_command(
    OUTPUT "${site}/service_worker.js"
    COMMAND "${PROJECT_SOURCE_DIR}/platform/web/assemble"
        "$<TARGET_FILE:carriageway>" "$<TARGET_FILE_DIR:carriageway>/carriageway.wasm" "${site}"
    DEPENDS carriageway ${page_files} "${PROJECT_SOURCE_DIR}/platform/web/assemble"
        "${PROJECT_SOURCE_DIR}/assets/icon/carriageway.svg"
    COMMENT "Putting the site together"
    VERBATIM)
add_custom_target(carriageway_site ALL DEPENDS "${site}/service_worker.js")
