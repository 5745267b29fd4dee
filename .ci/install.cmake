# What `cmake --install` puts where, and the Debian packages that `cpack -G DEB` makes of it.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)
set(CMAKE_INSTALL_DEFAULT_COMPONENT_NAME program)
set(config_dir ${CMAKE_INSTALL_LIBDIR}/cmake/slabwright)

# One library of all modules: a consumer links one thing, in no order.
set(objects "")
foreach(module ${modules})
  list(APPEND objects $<TARGET_OBJECTS:${module}>)
endforeach()
add_library(library STATIC ${objects})
set_target_properties(library PROPERTIES OUTPUT_NAME slabwright EXPORT_NAME slabwright LINKER_LANGUAGE CXX)
target_include_directories(library INTERFACE $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>)
target_compile_features(library INTERFACE cxx_std_20)
# No public header shows a package, so that consumers only link these two.
target_link_libraries(library INTERFACE $<INSTALL_INTERFACE:fmt::fmt> $<INSTALL_INTERFACE:tomlplusplus::tomlplusplus>)
install(TARGETS library EXPORT slabwright ARCHIVE COMPONENT library)
install(DIRECTORY include/slabwright TYPE INCLUDE COMPONENT library)
install(EXPORT slabwright NAMESPACE slabwright:: FILE slabwrightTargets.cmake DESTINATION ${config_dir}
  COMPONENT library)
configure_package_config_file(.ci/slabwrightConfig.cmake.in ${CMAKE_BINARY_DIR}/slabwrightConfig.cmake
  INSTALL_DESTINATION ${config_dir} NO_SET_AND_CHECK_MACRO)
write_basic_package_version_file(${CMAKE_BINARY_DIR}/slabwrightConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_BINARY_DIR}/slabwrightConfig.cmake ${CMAKE_BINARY_DIR}/slabwrightConfigVersion.cmake
  DESTINATION ${config_dir} COMPONENT library)

# The manual pages and completions are what the program says of itself, so that they cannot disagree with it. Which
# commands there are it says as well, once it is built: hence one call for all pages.
set(told ${CMAKE_BINARY_DIR}/told)
add_custom_command(OUTPUT ${told}/done
  COMMAND ${CMAKE_COMMAND} -D program=$<TARGET_FILE:slabwright> -D folder=${told}
    -P ${CMAKE_CURRENT_LIST_DIR}/tell.cmake
  DEPENDS slabwright ${CMAKE_CURRENT_LIST_DIR}/tell.cmake VERBATIM)
add_custom_target(told ALL DEPENDS ${told}/done)
install(TARGETS slabwright)
install(DIRECTORY ${told}/man1 DESTINATION ${CMAKE_INSTALL_MANDIR})
set(shells ${CMAKE_INSTALL_DATADIR})
install(FILES ${told}/slabwright.bash DESTINATION ${shells}/bash-completion/completions RENAME slabwright)
install(FILES ${told}/slabwright.fish DESTINATION ${shells}/fish/vendor_completions.d)
install(DIRECTORY layouts manuals TYPE DOC)
install(FILES README.md TYPE DOC)
# Debian's zsh looks for a package's completions where others do not.
install(FILES ${told}/slabwright.zsh DESTINATION ${shells}/zsh/site-functions RENAME _slabwright COMPONENT zsh)
install(FILES ${told}/slabwright.zsh DESTINATION ${shells}/zsh/vendor-completions RENAME _slabwright
  COMPONENT debian EXCLUDE_FROM_ALL)
install(FILES .ci/copyright TYPE DOC COMPONENT debian EXCLUDE_FROM_ALL)
install(FILES .ci/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/slabwright-dev COMPONENT library EXCLUDE_FROM_ALL)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME slabwright)
set(CPACK_PACKAGE_CONTACT "slabwright developers <nobody@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "heated concrete floors for workshops")
set(CPACK_VERBATIM_VARIABLES ON)
set(CPACK_STRIP_FILES ON)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_COMPONENTS_ALL program debian library)
set(CPACK_COMPONENTS_GROUPING ONE_PER_GROUP)
set(CPACK_COMPONENT_PROGRAM_GROUP slabwright)
set(CPACK_COMPONENT_DEBIAN_GROUP slabwright)
set(CPACK_COMPONENT_LIBRARY_GROUP dev)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_SLABWRIGHT_PACKAGE_NAME slabwright)
set(CPACK_DEBIAN_SLABWRIGHT_DESCRIPTION "Designs the heated concrete floor of a workshop in a cold climate:
the tube loops, the water, pump and boiler, the valve settings, the lowest
setting at which nothing freezes, and what the winter costs.")
set(CPACK_DEBIAN_SLABWRIGHT_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_DEV_PACKAGE_NAME slabwright-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEV_DESCRIPTION "The library behind slabwright:
headers, a static library and a CMake package.")
set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS "libfmt-dev (>= 9), libtomlplusplus-dev")
include(CPack)
