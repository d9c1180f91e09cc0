# The font B612, embedded in the program.

find_path(CARRIAGEWAY_FONT_DIR NAMES B612-Regular.otf B612-Regular.ttf
    PATHS /usr/share/fonts /usr/local/share/fonts
    PATH_SUFFIXES opentype/b612 truetype/b612 b612 B612
    NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH)
if(NOT CARRIAGEWAY_FONT_DIR)
    FetchContent_MakeAvailable(b612)
    set(CARRIAGEWAY_FONT_DIR "${b612_SOURCE_DIR}/fonts/ttf")
endif()
foreach(face Regular Bold)
    file(GLOB font "${CARRIAGEWAY_FONT_DIR}/B612-${face}.[ot]tf")
    if(NOT font)
        message(FATAL_ERROR "B612-${face} is not in ${CARRIAGEWAY_FONT_DIR}; "
            "install the font B612 or set CARRIAGEWAY_FONT_DIR to the folder that has it")
    endif()
    string(TOUPPER ${face} upper)
    list(GET font 0 CARRIAGEWAY_FONT_${upper})
endforeach()
