# The engine as a package: find_package(Leat), link Leat::engine, include "engine/judge.hpp".
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

get_property(rooms GLOBAL PROPERTY LEAT_ENGINE_ROOMS)
add_library(leat_engine INTERFACE)
set_target_properties(leat_engine PROPERTIES EXPORT_NAME engine)
target_link_libraries(leat_engine INTERFACE ${rooms})
target_compile_features(leat_engine INTERFACE cxx_std_20)

set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/Leat)
install(TARGETS leat_engine ${rooms} EXPORT LeatTargets ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(EXPORT LeatTargets NAMESPACE Leat:: DESTINATION ${package_folder})
install(DIRECTORY engine DESTINATION include/leat FILES_MATCHING PATTERN "*.hpp")

set(config ${CMAKE_BINARY_DIR}/LeatConfig.cmake)
file(WRITE ${config} "include(\"\${CMAKE_CURRENT_LIST_DIR}/LeatTargets.cmake\")\n")
write_basic_package_version_file(${config}.version VERSION ${PROJECT_VERSION} COMPATIBILITY SameMinorVersion)
install(FILES ${config} DESTINATION ${package_folder})
install(FILES ${config}.version DESTINATION ${package_folder} RENAME LeatConfigVersion.cmake)
