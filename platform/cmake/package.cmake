# cpack: the program as a package for Debian and what descends from it.
# platform/linux/check-package builds and judges it.

find_program(CARRIAGEWAY_SHLIBDEPS dpkg-shlibdeps)
if(NOT CARRIAGEWAY_SHLIBDEPS OR CARRIAGEWAY_NO_LICENCE)
    return()
endif()

# What only the package has: its own changelog.
set(CARRIAGEWAY_DEBIAN_RELEASE 0upstream1) # older than what a distribution makes of this version
# .invalid is nobody's, for ever (RFC 6761): there is no address to write to.
set(CARRIAGEWAY_MAINTAINER "The Carriageway contributors <carriageway@carriageway.invalid>")
execute_process(COMMAND date -u -R -d "${CARRIAGEWAY_RELEASE_DATE}"
    OUTPUT_VARIABLE CARRIAGEWAY_RELEASE_TIME OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)
configure_file("${from}/changelog.Debian.in" "${made}/changelog.Debian" @ONLY)
carriageway_packed("${made}/changelog.Debian")
install(FILES "${made}/changelog.Debian.gz" DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/carriageway"
    COMPONENT debian EXCLUDE_FROM_ALL)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME carriageway)
set(CPACK_PACKAGE_VERSION "${PROJECT_VERSION}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE
    GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
# Ours alone, not what libraries of others would install.
set(CPACK_INSTALL_CMAKE_PROJECTS
    "${PROJECT_BINARY_DIR};Carriageway;carriageway;/" "${PROJECT_BINARY_DIR};Carriageway;debian;/")

set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_RELEASE ${CARRIAGEWAY_DEBIAN_RELEASE})
set(CPACK_DEBIAN_PACKAGE_MAINTAINER "${CARRIAGEWAY_MAINTAINER}")
set(CPACK_DEBIAN_PACKAGE_SECTION graphics)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "set-up of automatic textile screen-printing presses")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
"Each print head of such a press carries a squeegee and a flood bar between
two limit stops. Carriageway draws the press to scale, shows while a stop is
moved what is printed and what is missed, says why and by how many
millimetres, and finds the shortest good stroke of every head.
.
It also covers the blades from the side, off-contact, registration, the rate
of the press, the sheet that stays with a job, and exercises for whoever
learns it, in a window and at the command line, in English and Spanish.")
include(CPack)
