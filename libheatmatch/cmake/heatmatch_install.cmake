# Installs the library as the CMake package `heatmatch` with the target `heatmatch::heatmatch`.
include(CMakePackageConfigHelpers)

install(TARGETS heatmatch EXPORT heatmatch_targets
    ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR}
    LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(DIRECTORY "${PROJECT_SOURCE_DIR}/libheatmatch/include/heatmatch"
    DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
install(DIRECTORY "${PROJECT_SOURCE_DIR}/libheatmatch/licenses"
    DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/heatmatch)
install(EXPORT heatmatch_targets
    FILE heatmatch-targets.cmake
    NAMESPACE heatmatch::
    DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/heatmatch)
configure_package_config_file(
    "${PROJECT_SOURCE_DIR}/libheatmatch/cmake/heatmatch-config.cmake.in"
    "${PROJECT_BINARY_DIR}/heatmatch-config.cmake"
    INSTALL_DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/heatmatch)
write_basic_package_version_file("${PROJECT_BINARY_DIR}/heatmatch-config-version.cmake"
    COMPATIBILITY SameMinorVersion)
install(FILES "${PROJECT_BINARY_DIR}/heatmatch-config.cmake"
              "${PROJECT_BINARY_DIR}/heatmatch-config-version.cmake"
    DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/heatmatch)
