# Puts beside the archive's libraries the licences that Debian ships with each: FOLDER holds the libraries, LICENCES is
# where they go.
file(GLOB libraries RELATIVE ${FOLDER} ${FOLDER}/*.so*)
foreach(library IN LISTS libraries)
  execute_process(COMMAND dpkg-query -S "*/${library}" OUTPUT_VARIABLE owners ERROR_QUIET)
  string(REGEX MATCH "^[^:\n]+" package "${owners}")
  if(package AND EXISTS /usr/share/doc/${package}/copyright)
    configure_file(/usr/share/doc/${package}/copyright ${LICENCES}/${package} COPYONLY)
  else()
    message(WARNING "no licence was found for ${library}")
  endif()
endforeach()
