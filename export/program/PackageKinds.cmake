# Read once for each kind of package: the archive carries its libraries, the Debian package names those of Debian.
set(CPACK_INSTALL_CMAKE_PROJECTS "${CPACK_BUILD_FOLDER};sagitta;programs;/")
if(CPACK_GENERATOR STREQUAL "TGZ")
  list(APPEND CPACK_INSTALL_CMAKE_PROJECTS ${CPACK_BUILD_FOLDER} sagitta libraries /)
  string(TOLOWER "${CPACK_PACKAGE_NAME}-${CPACK_PACKAGE_VERSION}-${CPACK_SYSTEM_NAME}-x86_64" CPACK_PACKAGE_FILE_NAME)
endif()
