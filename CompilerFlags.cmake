# How every source of the project is compiled and every program linked.

option(SAGITTA_WERROR "Warnings stop the build" OFF)
set(SAGITTA_SANITIZE "" CACHE STRING "Sanitizers to build with: address,undefined or thread; empty: none")

# The warnings of the project's own sources.
# restrict: gcc 12 warns falsely of strings put together with + (its bug 105651).
add_library(warnings INTERFACE)
target_compile_options(warnings INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion -Wno-restrict)
if(SAGITTA_WERROR)
  target_compile_options(warnings INTERFACE -Werror)
endif()

# Programs that read strangers' files: a memory fault that gets past the code shall end the program, not run foreign code.
# tests/house/Hardening_test.cpp looks at the programs.
add_compile_options(-fPIE -fstack-protector-strong)
add_link_options($<$<STREQUAL:$<TARGET_PROPERTY:TYPE>,EXECUTABLE>:-pie> LINKER:-z,relro LINKER:-z,now)
if(SAGITTA_SANITIZE)
  add_compile_options(-fsanitize=${SAGITTA_SANITIZE} -fno-omit-frame-pointer -g)
  add_link_options(-fsanitize=${SAGITTA_SANITIZE})
else()
  # It needs the optimizer; the sanitizers check the same calls themselves.
  add_compile_options($<$<CONFIG:Release,RelWithDebInfo,MinSizeRel>:-U_FORTIFY_SOURCE>
                      $<$<CONFIG:Release,RelWithDebInfo,MinSizeRel>:-D_FORTIFY_SOURCE=2>)
endif()
