#pragma once

#include <string>

/// Where the tests find the source tree and the programs. Not compile definitions: an object file is then the same for
/// every checkout and can come from a compiler cache.
namespace sagitta::places {

std::string source();         ///< the top of the source tree
std::string tests();          ///< its folder tests/
std::string program();        ///< `sagitta` as built
std::string solid_program();  ///< `sagitta-solid`, which `sagitta` becomes
std::string viewer();         ///< `sagitta-viewer` as built
std::string failing_calls();  ///< the library that makes system calls fail

}  // namespace sagitta::places
