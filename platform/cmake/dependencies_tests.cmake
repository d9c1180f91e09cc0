# Catch2 and, for tests/reference, the libraries that results are compared with.

set(CATCH_INSTALL_DOCS OFF)
set(CATCH_INSTALL_EXTRAS OFF)
FetchContent_MakeAvailable(catch2)
# Its hundred small files take a third of the time in a few large ones.
set_target_properties(Catch2 PROPERTIES UNITY_BUILD ON UNITY_BUILD_BATCH_SIZE 30)

if(CARRIAGEWAY_APP)
    find_package(Eigen3 3.3 QUIET NO_MODULE)
    find_package(Boost 1.74 QUIET)
    find_path(GEOS_INCLUDE_DIR geos_c.h)
    find_library(GEOS_C_LIBRARY geos_c)
    find_path(GLPK_INCLUDE_DIR glpk.h)
    find_library(GLPK_LIBRARY glpk)
    # Reads codes back out of pictures.
    find_path(ZBAR_INCLUDE_DIR zbar.h)
    find_library(ZBAR_LIBRARY zbar)
    add_library(carriageway_scanner INTERFACE)
    if(NOT CARRIAGEWAY_REFERENCE_TESTS)
        # neither looked for nor missed
    elseif(ZBAR_INCLUDE_DIR AND ZBAR_LIBRARY)
        target_include_directories(carriageway_scanner SYSTEM INTERFACE "${ZBAR_INCLUDE_DIR}")
        target_compile_definitions(carriageway_scanner INTERFACE CARRIAGEWAY_SCANNER=1)
        target_link_libraries(carriageway_scanner INTERFACE "${ZBAR_LIBRARY}")
    else()
        message(WARNING "zbar is missing: no test reads a code back")
    endif()
    add_library(carriageway_references INTERFACE)
    if(NOT CARRIAGEWAY_REFERENCE_TESTS)
        set(CARRIAGEWAY_REFERENCES OFF)
    elseif(Eigen3_FOUND AND Boost_FOUND AND GEOS_C_LIBRARY AND GLPK_LIBRARY)
        target_include_directories(carriageway_references SYSTEM INTERFACE
            "${GEOS_INCLUDE_DIR}" "${GLPK_INCLUDE_DIR}")
        target_compile_definitions(carriageway_references INTERFACE BOOST_ALLOW_DEPRECATED_HEADERS)
        target_link_libraries(carriageway_references INTERFACE
            "${GEOS_C_LIBRARY}" "${GLPK_LIBRARY}" Eigen3::Eigen Boost::headers)
        set(CARRIAGEWAY_REFERENCES ON)
    else()
        set(CARRIAGEWAY_REFERENCES OFF)
        message(WARNING "GEOS, GLPK, Eigen or Boost is missing: tests/reference is left out")
    endif()
endif()
