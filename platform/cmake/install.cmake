# cmake --install: the program with what a desktop, a shell and a reader look for beside it.

include(GNUInstallDirs)
include(licences)

set(from "${PROJECT_SOURCE_DIR}/platform/linux/install")
set(made "${PROJECT_BINARY_DIR}/install")
file(MAKE_DIRECTORY "${made}")

# The day of the release is that of the newest version in the changelog, which must be this one.
set(changelog "${PROJECT_SOURCE_DIR}/assets/docs/changelog.md")
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS "${changelog}")
file(STRINGS "${changelog}" versions REGEX "^## ")
list(GET versions 0 newest)
if(NOT newest MATCHES "^## ([0-9.]+) \\(([0-9]+-[0-9]+-[0-9]+)\\)$" OR
        NOT CMAKE_MATCH_1 STREQUAL PROJECT_VERSION)
    message(FATAL_ERROR "assets/docs/changelog.md begins with \"${newest}\"; version "
        "${PROJECT_VERSION} needs an entry there: ## ${PROJECT_VERSION} (YEAR-MONTH-DAY)")
endif()
set(CARRIAGEWAY_RELEASE_DATE "${CMAKE_MATCH_2}")

carriageway_built_in("${made}/licences" CARRIAGEWAY_BUILT_IN_PARAGRAPHS CARRIAGEWAY_NO_LICENCE)
foreach(file carriageway.1 carriageway.metainfo.xml copyright)
    configure_file("${from}/${file}.in" "${made}/${file}" @ONLY)
endforeach()

# carriageway_packed(file): the same as FILE.gz beside it, without a time in it.
find_program(CARRIAGEWAY_GZIP gzip REQUIRED)
function(carriageway_packed file)
    execute_process(COMMAND "${CARRIAGEWAY_GZIP}" -9 -n -c "${file}"
        OUTPUT_FILE "${file}.gz" COMMAND_ERROR_IS_FATAL ANY)
endfunction()
carriageway_packed("${made}/carriageway.1")
configure_file("${changelog}" "${made}/changelog" COPYONLY)
carriageway_packed("${made}/changelog")

# One part of the installation, so that what libraries of others would install can be left out:
# cmake --install FOLDER --component carriageway
function(carriageway_install kind file folder)
    install(${kind} "${file}" DESTINATION "${folder}" COMPONENT carriageway ${ARGN})
endfunction()

# What it calls in shared libraries is found once, when it starts, and can't be changed after.
if(CMAKE_CXX_COMPILER_ID MATCHES "GNU|Clang")
    target_link_options(carriageway PRIVATE LINKER:-z,relro,-z,now)
endif()
install(TARGETS carriageway RUNTIME DESTINATION "${CMAKE_INSTALL_BINDIR}" COMPONENT carriageway)
carriageway_install(FILES "${from}/carriageway.desktop" "${CMAKE_INSTALL_DATADIR}/applications")
carriageway_install(FILES "${made}/carriageway.metainfo.xml" "${CMAKE_INSTALL_DATADIR}/metainfo"
    RENAME invalid.carriageway.carriageway.metainfo.xml)
carriageway_install(FILES "${from}/carriageway.mime.xml" "${CMAKE_INSTALL_DATADIR}/mime/packages"
    RENAME carriageway.xml)
carriageway_install(FILES "${made}/carriageway.1.gz" "${CMAKE_INSTALL_MANDIR}/man1")
carriageway_install(FILES "${made}/copyright" "${CMAKE_INSTALL_DATADIR}/doc/carriageway")
carriageway_install(FILES "${made}/changelog.gz" "${CMAKE_INSTALL_DATADIR}/doc/carriageway")
carriageway_install(DIRECTORY "${made}/licences" "${CMAKE_INSTALL_DATADIR}/doc/carriageway"
    FILES_MATCHING PATTERN "*.txt")

# Where these shells look without being told.
carriageway_install(FILES "${from}/carriageway.bash"
    "${CMAKE_INSTALL_DATADIR}/bash-completion/completions" RENAME carriageway)
carriageway_install(FILES "${from}/_carriageway" "${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions")
carriageway_install(FILES "${from}/carriageway.fish" "${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d")

set(icon "${PROJECT_SOURCE_DIR}/assets/icon/carriageway.svg")
set(icons "${CMAKE_INSTALL_DATADIR}/icons/hicolor")
carriageway_install(FILES "${icon}" "${icons}/scalable/apps")
find_program(CARRIAGEWAY_RSVG rsvg-convert)
if(CARRIAGEWAY_RSVG) # otherwise the drawing alone, which today's desktops take
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS "${icon}")
    execute_process(COMMAND "${CARRIAGEWAY_RSVG}" --width 128 --height 128
        --output "${made}/carriageway.png" "${icon}" COMMAND_ERROR_IS_FATAL ANY)
    carriageway_install(FILES "${made}/carriageway.png" "${icons}/128x128/apps")
endif()
