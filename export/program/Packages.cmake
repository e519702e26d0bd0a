# A Debian package and an archive that runs where it is unpacked: `cmake --build build --target packages`.

set(share ${CMAKE_SOURCE_DIR}/export/program/share)
set(made ${CMAKE_BINARY_DIR}/packages)
execute_process(COMMAND ${CMAKE_COMMAND} -E env LC_ALL=C date -u -R -d ${SAGITTA_DATE}
                OUTPUT_VARIABLE SAGITTA_DATE_LONG OUTPUT_STRIP_TRAILING_WHITESPACE)
configure_file(${share}/changelog.in ${made}/changelog @ONLY)
add_custom_command(OUTPUT ${made}/changelog.gz COMMAND gzip -9nkf ${made}/changelog DEPENDS ${made}/changelog)
add_custom_target(changelog ALL DEPENDS ${made}/changelog.gz)
set(keep COMPONENT programs)
install(FILES ${made}/changelog.gz ${share}/copyright DESTINATION ${CMAKE_INSTALL_DOCDIR} ${keep} OPTIONAL)

# The licences of what is built in, as Debian hands them on.
foreach(work fonts-inter libimgui-dev libcli11-dev nlohmann-json3-dev)
  install(FILES /usr/share/doc/${work}/copyright DESTINATION ${CMAKE_INSTALL_DOCDIR}/built-in RENAME ${work} ${keep} OPTIONAL)
endforeach()

# The libraries for the archive: all but the C library and OpenGL, which belong to the machine.
install(
  RUNTIME_DEPENDENCY_SET program_libraries
  PRE_EXCLUDE_REGEXES "^ld-linux" "^lib(c|m|dl|pthread|rt|resolv|util|anl|mvec)\\.so" "^lib(GL|EGL|GLX|OpenGL|GLdispatch|gbm|drm)"
  LIBRARY DESTINATION ${own_libraries} COMPONENT libraries EXCLUDE_FROM_ALL)
install(CODE "set(FOLDER \"\$ENV{DESTDIR}\${CMAKE_INSTALL_PREFIX}/${own_libraries}\")
              set(LICENCES \"\$ENV{DESTDIR}\${CMAKE_INSTALL_PREFIX}/${CMAKE_INSTALL_DOCDIR}/libraries\")
              include(${CMAKE_SOURCE_DIR}/export/program/Licences.cmake)"
        COMPONENT libraries EXCLUDE_FROM_ALL)

set(packaged_programs sagitta)
if(SAGITTA_VIEWER)
  list(APPEND packaged_programs sagitta-viewer)
endif()
set(CPACK_PACKAGE_NAME sagitta)
set(CPACK_PACKAGE_VENDOR "the Sagitta authors")
set(CPACK_PACKAGE_CONTACT "The Sagitta authors <${SAGITTA_CONTACT}>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "models fretboards and makes the files for their machining")
set(CPACK_PACKAGE_DIRECTORY ${made})
set(CPACK_GENERATOR DEB TGZ)
set(CPACK_STRIP_FILES TRUE)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
    OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_PROJECT_CONFIG_FILE ${CMAKE_SOURCE_DIR}/export/program/PackageKinds.cmake)
set(CPACK_BUILD_FOLDER ${CMAKE_BINARY_DIR})
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION graphics)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# OpenGL is opened while the window runs, so that no tool sees it in the program.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "libegl1, libgl1")
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS libgl1-mesa-dri)
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
    "One board file holds every decision about the fretboard of a fretted
instrument. From it come exact solids at every stage of the work, inlay
pieces that fit their pockets, drawings, tables and a job sheet, and a list
of what would go wrong in the wood before it is cut.
.
The package holds the command line, sagitta, and the window, sagitta-viewer.")
# Under its usual name the settings would reserve the target `package`, which is a box of ours.
set(CPACK_OUTPUT_CONFIG_FILE ${made}/Packages.cmake)
include(CPack)
add_custom_target(packages COMMAND ${CMAKE_CPACK_COMMAND} --config ${CPACK_OUTPUT_CONFIG_FILE}
                  DEPENDS ${packaged_programs} changelog USES_TERMINAL)
