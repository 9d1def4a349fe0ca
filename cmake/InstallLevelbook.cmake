# What an installed levelbook consists of: the header, the libraries that were built, a CMake package, a pkg-config
# file, the licence and the index of the API. Everything finds its neighbours by relative paths: a prefix may be moved.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

set(package_dir "${CMAKE_INSTALL_LIBDIR}/cmake/levelbook")

install(DIRECTORY "${PROJECT_SOURCE_DIR}/include/levelbook" DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}"
        COMPONENT levelbook_development FILES_MATCHING PATTERN "*.h" PATTERN "*.hpp")
install(FILES "${PROJECT_BINARY_DIR}/generated/levelbook.index" DESTINATION "${CMAKE_INSTALL_DATADIR}/levelbook"
        COMPONENT levelbook_development)
install(FILES "${PROJECT_SOURCE_DIR}/LICENSE" DESTINATION "${CMAKE_INSTALL_DATADIR}/levelbook"
        COMPONENT levelbook_runtime)

# One export per library, so that a packager may ship them apart: the package takes what it finds.
foreach(kind shared static)
  if(TARGET levelbook_${kind})
    install(TARGETS levelbook_${kind} EXPORT levelbook-${kind}
            RUNTIME DESTINATION "${CMAKE_INSTALL_BINDIR}" COMPONENT levelbook_runtime
            LIBRARY DESTINATION "${CMAKE_INSTALL_LIBDIR}" COMPONENT levelbook_runtime
                    NAMELINK_COMPONENT levelbook_development
            ARCHIVE DESTINATION "${CMAKE_INSTALL_LIBDIR}" COMPONENT levelbook_development
            INCLUDES DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}")
    install(EXPORT levelbook-${kind} NAMESPACE levelbook:: FILE levelbook-${kind}.cmake
            DESTINATION "${package_dir}" COMPONENT levelbook_development)
  endif()
endforeach()

# Before 1.0 a new minor version may change the contract; from 1.0 only a new major one.
if(PROJECT_VERSION_MAJOR EQUAL 0)
  set(compatibility SameMinorVersion)
else()
  set(compatibility SameMajorVersion)
endif()
configure_package_config_file("${PROJECT_SOURCE_DIR}/cmake/levelbook-config.cmake.in"
  "${PROJECT_BINARY_DIR}/generated/levelbook-config.cmake" INSTALL_DESTINATION "${package_dir}"
  NO_SET_AND_CHECK_MACRO)
write_basic_package_version_file("${PROJECT_BINARY_DIR}/generated/levelbook-config-version.cmake"
  COMPATIBILITY ${compatibility})
install(FILES "${PROJECT_BINARY_DIR}/generated/levelbook-config.cmake"
              "${PROJECT_BINARY_DIR}/generated/levelbook-config-version.cmake"
        DESTINATION "${package_dir}" COMPONENT levelbook_development)

# pkg-config: the way from the file up to the prefix, and what only a static link needs: a definition, for every link
# where no shared library is built. No library is needed besides levelbook itself.
file(RELATIVE_PATH pc_up "${CMAKE_INSTALL_FULL_LIBDIR}/pkgconfig" "${CMAKE_INSTALL_PREFIX}")
string(REGEX REPLACE "/$" "" pc_up "${pc_up}")
cmake_path(APPEND pc_libdir "\${prefix}" "${CMAKE_INSTALL_LIBDIR}")
cmake_path(APPEND pc_includedir "\${prefix}" "${CMAKE_INSTALL_INCLUDEDIR}")
set(pc_libs "-L\${libdir} -llevelbook")
set(pc_cflags "-I\${includedir}")
set(pc_cflags_private "-DLVB_STATIC")
if(NOT LEVELBOOK_SHARED)
  string(APPEND pc_cflags " ${pc_cflags_private}")
endif()
configure_file("${PROJECT_SOURCE_DIR}/cmake/levelbook.pc.in" "${PROJECT_BINARY_DIR}/generated/levelbook.pc" @ONLY)
install(FILES "${PROJECT_BINARY_DIR}/generated/levelbook.pc" DESTINATION "${CMAKE_INSTALL_LIBDIR}/pkgconfig"
        COMPONENT levelbook_development)
