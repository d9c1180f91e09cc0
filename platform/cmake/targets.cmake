# How the project's own targets are made: flags, libraries found by folder,
# files embedded in the executable, tests.

include(unity)

add_library(carriageway_warnings INTERFACE)
if(MSVC)
    target_compile_options(carriageway_warnings INTERFACE /W4 /WX /permissive- /utf-8)
else()
    target_compile_options(carriageway_warnings INTERFACE
        -Wall -Wextra -Wpedantic -Wconversion -Werror
        # Files that are compiled as one see names of one another that hide nothing of their own.
        $<$<NOT:$<BOOL:${CARRIAGEWAY_UNITY}>>:-Wshadow>
        # GCC 12 sees overlaps in std::string that are not there (its bug 105651).
        $<$<AND:$<CXX_COMPILER_ID:GNU>,$<VERSION_LESS:$<CXX_COMPILER_VERSION>,13>>:-Wno-restrict>)
    # A result must not depend on whether the processor fuses a multiplication
    # with an addition.
    add_compile_options(-ffp-contract=off)
endif()

if(EMSCRIPTEN)
    # SQLiteCpp and the program's own reading of numbers report by exceptions. Small before fast: a
    # first visit loads all of it. What computes in every frame asks for speed (carriageway_fast).
    add_compile_options(-fwasm-exceptions -Oz)
    add_link_options(-fwasm-exceptions)
endif()

if(CARRIAGEWAY_FUZZ AND NOT CMAKE_CXX_COMPILER_ID MATCHES "Clang")
    message(FATAL_ERROR "CARRIAGEWAY_FUZZ needs clang: -DCMAKE_C_COMPILER=clang -DCMAKE_CXX_COMPILER=clang++")
endif()

if(CARRIAGEWAY_SANITIZE OR CARRIAGEWAY_FUZZ)
    if(CARRIAGEWAY_SANITIZE STREQUAL "thread")
        set(sanitizers thread)
    else()
        set(sanitizers address,undefined)
    endif()
    add_compile_options(-fsanitize=${sanitizers} -fno-sanitize-recover=all -fno-omit-frame-pointer)
    add_link_options(-fsanitize=${sanitizers})
    add_compile_definitions(_GLIBCXX_ASSERTIONS)
endif()

# carriageway_watched(target...)
# Lets fuzzers see which ways an input takes through these targets.
function(carriageway_watched)
    if(CARRIAGEWAY_FUZZ)
        foreach(target IN LISTS ARGN)
            target_compile_options(${target} PRIVATE
                $<$<COMPILE_LANGUAGE:CXX>:-fsanitize=fuzzer-no-link>)
        endforeach()
    endif()
endfunction()

# carriageway_library(target folder... [EXCEPT file...])
# A static library of all .cpp files directly in the folders (paths from the
# top of the checkout); header-only while there are none. Files are included
# by their path from the top: #include "core/press.h".
function(carriageway_library target)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "EXCEPT")
    set(sources "")
    foreach(folder IN LISTS arg_UNPARSED_ARGUMENTS)
        file(GLOB found CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/${folder}/*.cpp")
        list(APPEND sources ${found})
    endforeach()
    foreach(file IN LISTS arg_EXCEPT)
        list(REMOVE_ITEM sources "${PROJECT_SOURCE_DIR}/${file}")
    endforeach()
    if(sources)
        add_library(${target} STATIC ${sources})
        target_include_directories(${target} PUBLIC "${PROJECT_SOURCE_DIR}")
        target_link_libraries(${target} PRIVATE carriageway_warnings)
        # Names of types would be loaded on a first visit. In all files or in none: std::any tells
        # types apart by them where there are any.
        if(EMSCRIPTEN)
            target_compile_options(${target} PRIVATE $<$<COMPILE_LANGUAGE:CXX>:-fno-rtti>)
        endif()
        carriageway_unite(${target})
        # The release shows that each file includes what it uses; there it may be compiled faster.
        if(CARRIAGEWAY_SANITIZE)
            carriageway_precompile(${target} ${CARRIAGEWAY_COMMON_HEADERS})
        endif()
    else()
        add_library(${target} INTERFACE)
        target_include_directories(${target} INTERFACE "${PROJECT_SOURCE_DIR}")
    endif()
endfunction()

# The word that makes a property reach everyone who links the target.
function(carriageway_scope target result)
    get_target_property(type ${target} TYPE)
    if(type STREQUAL "INTERFACE_LIBRARY")
        set(${result} INTERFACE PARENT_SCOPE)
    else()
        set(${result} PUBLIC PARENT_SCOPE)
    endif()
endfunction()

# carriageway_fast(folder name...)
# Compiles these files of a folder (from the top, names without .cpp) for speed where the rest is
# compiled for size: what a frame works out anew while something is dragged. Called where the
# folder's target is made.
function(carriageway_fast folder)
    if(NOT EMSCRIPTEN)
        return()
    endif()
    foreach(name IN LISTS ARGN)
        set(file "${PROJECT_SOURCE_DIR}/${folder}/${name}.cpp")
        if(NOT EXISTS "${file}")
            message(FATAL_ERROR "carriageway_fast: there is no ${folder}/${name}.cpp")
        endif()
        set_property(SOURCE "${file}" APPEND PROPERTY COMPILE_OPTIONS -O2)
    endforeach()
endfunction()

# carriageway_plain(target)
# For browsers, compiles those files of a target without exceptions that throw and catch nothing and
# call nothing that does: what each function would do on the way of an exception is loaded on a first
# visit. A lack of memory ends the page either way.
function(carriageway_plain target)
    if(NOT EMSCRIPTEN)
        return()
    endif()
    get_target_property(sources ${target} SOURCES)
    foreach(file IN LISTS sources)
        file(STRINGS "${file}" exceptions REGEX
            "(^|[^a-z_])(try|throw|catch)([^a-z_]|$)|SQLite|sqlite3|png_|records/(connection|stored_)")
        if(NOT exceptions)
            set_property(SOURCE "${file}" APPEND PROPERTY COMPILE_OPTIONS -fno-exceptions)
        endif()
    endforeach()
endfunction()

function(carriageway_link target)
    carriageway_scope(${target} scope)
    target_link_libraries(${target} ${scope} ${ARGN})
endfunction()

# Says by a definition that a back end is there, once it has sources.
function(carriageway_define target definition)
    carriageway_scope(${target} scope)
    if(scope STREQUAL "PUBLIC")
        target_compile_definitions(${target} PUBLIC ${definition}=1)
    endif()
endfunction()

# carriageway_embed(target header {name file}...)
# Puts the bytes of each file into the target as carriageway::embedded::NAME
# and NAME_size, which the hand-written header declares. A file that does not
# exist becomes no bytes; one that this folder's CMake file makes is waited for.
function(carriageway_embed target header)
    set(pairs ${ARGN})
    while(pairs)
        list(POP_FRONT pairs name file)
        set(output "${CMAKE_CURRENT_BINARY_DIR}/embedded/${name}.cpp")
        get_source_file_property(made "${file}" GENERATED)
        if(made)
            set(needed "${file}")
        else()
            file(GLOB needed CONFIGURE_DEPENDS "${file}")
        endif()
        add_custom_command(
            OUTPUT "${output}"
            COMMAND "${CMAKE_COMMAND}" "-DNAME=${name}" "-DFILE=${file}" "-DHEADER=${header}"
                    "-DOUTPUT=${output}" -P "${PROJECT_SOURCE_DIR}/platform/cmake/embed.cmake"
            DEPENDS ${needed} "${PROJECT_SOURCE_DIR}/platform/cmake/embed.cmake"
            COMMENT "Embedding ${name}"
            VERBATIM)
        list(APPEND outputs "${output}")
    endwhile()
    add_library(${target}_embedded STATIC ${outputs})
    target_include_directories(${target}_embedded PRIVATE "${PROJECT_SOURCE_DIR}")
    carriageway_link(${target} ${target}_embedded)
endfunction()

# One seed, so that what fails is what was changed; "time" tries another each run.
set(CARRIAGEWAY_TEST_SEED 20261125 CACHE STRING
    "Seed of the property tests and of the order of all tests, or time")

# Headers that many tests read are compiled once for all of a folder. Not for the program as it is
# released, whose files must each include what they use.
option(CARRIAGEWAY_PRECOMPILE "Precompile headers of libraries for the tests" ON)
function(carriageway_precompile target)
    if(CARRIAGEWAY_PRECOMPILE AND NOT EMSCRIPTEN)
        target_precompile_headers(${target} PRIVATE ${ARGN})
        # GCC 12 then sees overflows in std::string that are not there, too (its bug 105651).
        if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
            target_compile_options(${target} PRIVATE -Wno-stringop-overflow -Wno-array-bounds)
        endif()
    endif()
endfunction()

# What nearly every test includes.
set(CARRIAGEWAY_COMMON_HEADERS <algorithm> <array> <cmath> <cstdint> <functional> <map> <memory>
    <optional> <set> <span> <string> <string_view> <unordered_map> <utility> <variant> <vector>)

# See tests/samples.h.
option(CARRIAGEWAY_FEWER_SAMPLES "Try fewer cases where the sanitizers look" ON)

# carriageway_tests(target folder library...)
# A test executable of all .cpp files of the folder, run in an order that its
# printed seed gives back. Skipped while the folder has no test.
function(carriageway_tests target folder)
    file(GLOB sources CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/${folder}/*.cpp")
    if(WIN32)
        # What a process does to another is tested where one can be split in two.
        foreach(file IN LISTS sources)
            file(STRINGS "${file}" splits REGEX "other_process\\.h|<unistd\\.h>" LIMIT_COUNT 1)
            if(splits)
                list(REMOVE_ITEM sources "${file}")
            endif()
        endforeach()
    endif()
    if(NOT sources)
        return()
    endif()
    add_executable(${target} ${sources})
    target_include_directories(${target} PRIVATE "${PROJECT_SOURCE_DIR}")
    target_compile_definitions(${target} PRIVATE
        CARRIAGEWAY_SOURCE_DIR="${PROJECT_SOURCE_DIR}")
    target_link_libraries(${target} PRIVATE carriageway_warnings Catch2::Catch2WithMain ${ARGN})
    # What a test itself does is little; what it calls is compiled as in the program, and looked
    # at by all the sanitizers.
    if(CARRIAGEWAY_SANITIZE)
        target_compile_options(${target} PRIVATE -O0 -fno-sanitize=undefined)
        if(CARRIAGEWAY_FEWER_SAMPLES)
            target_compile_definitions(${target} PRIVATE CARRIAGEWAY_FEWER_SAMPLES=1)
        endif()
    elseif(CMAKE_BUILD_TYPE STREQUAL "Release" AND NOT MSVC)
        target_compile_options(${target} PRIVATE -O1)
    endif()
    carriageway_unite(${target})
    carriageway_precompile(${target} ${CARRIAGEWAY_COMMON_HEADERS} <filesystem> <fstream> <iterator>
        <limits> <numbers> <random> <sstream>
        <catch2/catch_approx.hpp> <catch2/catch_get_random_seed.hpp> <catch2/catch_test_macros.hpp>
        <catch2/generators/catch_generators.hpp> <catch2/matchers/catch_matchers_floating_point.hpp>)
    # In parts, so that no processor waits for another's long one.
    set(parts 4)
    math(EXPR last "${parts} - 1")
    foreach(part RANGE ${last})
        add_test(NAME ${target}_${part} COMMAND ${target}
            --order rand --rng-seed ${CARRIAGEWAY_TEST_SEED}
            --shard-count ${parts} --shard-index ${part}
            --reporter console
            --reporter "xml::out=${CMAKE_BINARY_DIR}/results/${target}_${part}.xml"
            WORKING_DIRECTORY "${PROJECT_SOURCE_DIR}")
    endforeach()
    file(MAKE_DIRECTORY "${CMAKE_BINARY_DIR}/results")
endfunction()
