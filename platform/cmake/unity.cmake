# Several files of a folder are compiled as one: a whole build in a third of the time. Not where one
# file after the other is changed and built.

option(CARRIAGEWAY_UNITY "Compile several files of a folder as one" OFF)
set(CARRIAGEWAY_UNITY_MOST 8 CACHE STRING "How many at most")

# carriageway_unite(target)
# Joins the C++ files of a target, when all that concerns them in this folder has been said: files
# that differ in their options stay apart (CMake's own UNITY_BUILD leaves those with any alone), and
# those that unity.py keeps apart for their names.
function(carriageway_unite target)
    if(CARRIAGEWAY_UNITY)
        cmake_language(EVAL CODE "cmake_language(DEFER CALL carriageway_unite_now [[${target}]])")
    endif()
endfunction()

function(carriageway_unite_now target)
    find_program(CARRIAGEWAY_ANY_PYTHON NAMES python3 python NO_CMAKE_FIND_ROOT_PATH REQUIRED)
    get_target_property(sources ${target} SOURCES)
    foreach(file IN LISTS sources)
        get_source_file_property(generated "${file}" GENERATED)
        get_source_file_property(definitions "${file}" COMPILE_DEFINITIONS)
        get_source_file_property(alone "${file}" SKIP_UNITY_BUILD_INCLUSION)
        if(generated OR definitions OR alone OR NOT file MATCHES "\\.cpp$")
            continue()
        endif()
        get_source_file_property(options "${file}" COMPILE_OPTIONS)
        if(NOT options)
            set(options "")
        endif()
        string(MAKE_C_IDENTIFIER "of${options}" key)
        list(APPEND keys ${key})
        set(options_of_${key} ${options})
        list(APPEND files_of_${key} "${file}")
    endforeach()
    list(REMOVE_DUPLICATES keys)
    foreach(key IN LISTS keys)
        carriageway_join(${target} ${key} "${options_of_${key}}" ${files_of_${key}})
    endforeach()
endfunction()

# carriageway_join(target key options file...): files of the same options.
function(carriageway_join target key options)
    execute_process(
        COMMAND "${CARRIAGEWAY_ANY_PYTHON}" "${PROJECT_SOURCE_DIR}/platform/cmake/unity.py"
                ${CARRIAGEWAY_UNITY_MOST} ${ARGN}
        OUTPUT_VARIABLE lines OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)
    string(REPLACE "\n" ";" lines "${lines}")
    set(groups "")
    foreach(line IN LISTS lines)
        string(REGEX MATCH "^([0-9]+) (.*)$" line "${line}")
        set(group ${CMAKE_MATCH_1})
        list(APPEND groups ${group})
        string(APPEND text_${group} "#include \"${CMAKE_MATCH_2}\"\n")
        set_source_files_properties("${CMAKE_MATCH_2}" PROPERTIES HEADER_FILE_ONLY ON)
    endforeach()
    list(REMOVE_DUPLICATES groups)
    foreach(group IN LISTS groups)
        set(joined "${CMAKE_CURRENT_BINARY_DIR}/joined/${target}_${key}_${group}.cpp")
        # Written only where it is another than before, so that nothing is compiled for nothing.
        file(CONFIGURE OUTPUT "${joined}" CONTENT "${text_${group}}" @ONLY)
        if(options)
            set_source_files_properties("${joined}" PROPERTIES COMPILE_OPTIONS "${options}")
        endif()
        target_sources(${target} PRIVATE "${joined}")
    endforeach()
endfunction()
