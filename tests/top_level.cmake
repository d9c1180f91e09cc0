# cmake -P top_level.cmake
# Fails when the top of the repository holds anything but what is listed here.
# Says so and passes where there is no git to ask, as in an unpacked archive.
cmake_minimum_required(VERSION 3.25)

set(listed
    CMakeLists.txt README.md DEVELOPERS.md LICENSE app core platform assets tests
    .ci .gitignore .clang-format .clang-tidy)

get_filename_component(top "${CMAKE_CURRENT_LIST_DIR}" DIRECTORY)
execute_process(
    COMMAND git -c safe.directory=* ls-files -- :/
    WORKING_DIRECTORY "${top}"
    OUTPUT_VARIABLE files ERROR_QUIET RESULT_VARIABLE status)
if(NOT status EQUAL 0 OR files STREQUAL "")
    message(STATUS "Not checked: this is no git checkout")
    return()
endif()
string(REPLACE "\n" ";" files "${files}")
foreach(file IN LISTS files)
    string(REGEX REPLACE "/.*" "" entry "${file}")
    if(entry AND NOT entry IN_LIST listed)
        message(SEND_ERROR "${entry} does not belong at the top of the repository")
    endif()
endforeach()
