# The font B612, embedded in the program. Screen and PDF are drawn with the same file, so it has to
# be TrueType: the writer of PDF takes no outlines of cubic curves, as Debian's package has them.

find_path(CARRIAGEWAY_FONT_DIR NAMES B612-Regular.otf B612-Regular.ttf
    PATHS /usr/share/fonts /usr/local/share/fonts
    PATH_SUFFIXES opentype/b612 truetype/b612 b612 B612
    NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH)
if(NOT CARRIAGEWAY_FONT_DIR)
    FetchContent_MakeAvailable(b612)
    set(CARRIAGEWAY_FONT_DIR "${b612_SOURCE_DIR}/fonts/ttf")
endif()

# A Python with fontTools. The first Python of the path need not be the one that packages are for.
set(CARRIAGEWAY_PYTHON "" CACHE FILEPATH "A Python that has fontTools")
function(carriageway_find_fonttools)
    foreach(name IN ITEMS "${CARRIAGEWAY_PYTHON}" python3 /usr/bin/python3 python)
        unset(python)
        if(name)
            find_program(python NAMES "${name}" NO_CACHE NO_CMAKE_FIND_ROOT_PATH)
        endif()
        if(python)
            execute_process(
                COMMAND "${python}" -c "import fontTools.subset, fontTools.pens.cu2quPen"
                RESULT_VARIABLE status OUTPUT_QUIET ERROR_QUIET)
            if(status EQUAL 0)
                set(CARRIAGEWAY_PYTHON "${python}"
                    CACHE FILEPATH "A Python that has fontTools" FORCE)
                return()
            endif()
        endif()
    endforeach()
    message(FATAL_ERROR "B612 is in ${CARRIAGEWAY_FONT_DIR} with cubic curves, and no Python with "
        "fontTools was found to make TrueType of it. Install what platform/dependencies.txt lists "
        "(Debian: python3-fonttools), or set CARRIAGEWAY_PYTHON to a Python that has fontTools, or "
        "CARRIAGEWAY_FONT_DIR to a folder with B612-Regular.ttf and B612-Bold.ttf.")
endfunction()

foreach(face Regular Bold)
    string(TOUPPER ${face} upper)
    set(CARRIAGEWAY_FONT_${upper} "${CARRIAGEWAY_FONT_DIR}/B612-${face}.ttf")
    if(NOT EXISTS "${CARRIAGEWAY_FONT_${upper}}")
        set(CARRIAGEWAY_FONT_${upper} "${CARRIAGEWAY_FONT_DIR}/B612-${face}.otf")
        if(NOT EXISTS "${CARRIAGEWAY_FONT_${upper}}")
            message(FATAL_ERROR "B612-${face} is not in ${CARRIAGEWAY_FONT_DIR}; "
                "install the font B612 or set CARRIAGEWAY_FONT_DIR to the folder that has it")
        endif()
        carriageway_find_fonttools()
    endif()
endforeach()

# carriageway_truetype(font letters result)
# The font itself where it is TrueType; otherwise the file that the build makes of those letters of
# it, which targets of the same folder can embed.
function(carriageway_truetype font letters result)
    set(${result} "${font}" PARENT_SCOPE)
    if(font MATCHES "\\.otf$")
        get_filename_component(name "${font}" NAME_WE)
        set(made "${CMAKE_CURRENT_BINARY_DIR}/fonts/${name}.ttf")
        set(script "${PROJECT_SOURCE_DIR}/platform/cmake/truetype.py")
        file(MAKE_DIRECTORY "${CMAKE_CURRENT_BINARY_DIR}/fonts")
        add_custom_command(
            OUTPUT "${made}"
            COMMAND "${CARRIAGEWAY_PYTHON}" "${script}" "${font}" "${letters}" "${made}"
            DEPENDS "${font}" "${letters}" "${script}"
            COMMENT "Making TrueType of ${name}"
            VERBATIM)
        set(${result} "${made}" PARENT_SCOPE)
    endif()
endfunction()
