# How a program is installed, with what belongs to it. Packages.cmake makes packages of it.

# Libraries that lie beside the programs in the archive that needs no package: nothing else is put there.
set(own_libraries lib/sagitta)

# A program, its manual page and what shells complete; both are written by the program itself, from its own table.
function(install_program program)
  set(made ${CMAKE_CURRENT_BINARY_DIR}/manual)
  file(MAKE_DIRECTORY ${made})
  add_custom_command(
    TARGET ${program} POST_BUILD
    COMMAND ${program} --manual man > ${made}/${program}.1
    COMMAND gzip -9nf ${made}/${program}.1
    COMMAND ${program} --manual bash > ${made}/${program}
    COMMAND ${program} --manual zsh > ${made}/_${program}
    COMMAND ${program} --manual fish > ${made}/${program}.fish)
  # The old kind of run path: by it libraries that lie there find each other too.
  target_link_options(${program} PRIVATE LINKER:--disable-new-dtags)
  set_target_properties(${program} PROPERTIES INSTALL_RPATH "$ORIGIN/../${own_libraries}")
  # OPTIONAL: the README's first command builds one of the two programs.
  set(keep COMPONENT programs OPTIONAL)
  install(TARGETS ${program} RUNTIME_DEPENDENCY_SET program_libraries RUNTIME ${keep})
  install(FILES ${made}/${program}.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 ${keep})
  install(FILES ${made}/${program} DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions ${keep})
  install(FILES ${made}/_${program} DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions ${keep})
  install(FILES ${made}/${program}.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d ${keep})
endfunction()

# A program that another one becomes, in a folder two levels below the prefix.
function(install_helper program folder)
  target_link_options(${program} PRIVATE LINKER:--disable-new-dtags)
  set_target_properties(${program} PROPERTIES INSTALL_RPATH "$ORIGIN/../../${own_libraries}")
  install(TARGETS ${program} RUNTIME_DEPENDENCY_SET program_libraries RUNTIME DESTINATION ${folder} COMPONENT programs OPTIONAL)
endfunction()
