# cmake -DFOLDER=core [-DTOP=checkout] -P includes.cmake
# Fails when a file of core includes anything but core's own headers and those
# headers of the standard library that the model may use: no screen, file,
# clock or database, and nothing that a browser's compiler of 2022 lacks.
cmake_minimum_required(VERSION 3.25)

set(allowed
    algorithm any array bit bitset cassert cctype cerrno cfloat charconv cinttypes climits cmath
    compare complex concepts cstddef cstdint cstdlib cstring deque functional initializer_list
    iterator limits list locale map memory new numbers numeric optional ostream queue random set
    span sstream stack stdexcept string string_view tuple type_traits typeinfo unordered_map
    unordered_set utility variant vector)

if(NOT TOP)
    get_filename_component(TOP "${CMAKE_CURRENT_LIST_DIR}" DIRECTORY)
endif()
file(GLOB_RECURSE files "${TOP}/${FOLDER}/*")
if(NOT files)
    message(FATAL_ERROR "There is no file in ${TOP}/${FOLDER}")
endif()

set(wrong 0)
foreach(file IN LISTS files)
    file(STRINGS "${file}" lines REGEX "^[ \t]*#[ \t]*(include|import)")
    foreach(line IN LISTS lines)
        if(line MATCHES "<([a-z_]+)>" AND CMAKE_MATCH_1 IN_LIST allowed)
            continue()
        endif()
        if(line MATCHES "\"${FOLDER}/([a-z0-9_]+\\.h)\"" AND EXISTS "${TOP}/${FOLDER}/${CMAKE_MATCH_1}")
            continue()
        endif()
        message(SEND_ERROR "${file}: ${line}")
        math(EXPR wrong "${wrong} + 1")
    endforeach()
endforeach()
list(LENGTH files count)
if(wrong)
    message(FATAL_ERROR "${wrong} includes that ${FOLDER} may not have")
endif()
message(STATUS "${count} files of ${FOLDER} include only what they may")
