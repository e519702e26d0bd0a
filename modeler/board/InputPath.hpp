#pragma once

/// Where the files lie that a board names: its bases, drawings, the neck's file, the copies in a folder's sources. Only
/// the board's own folder is read from, unless the builder allows others. ReadFile.hpp reads them.

#include <string>
#include <variant>

#include "board/Problem.hpp"

namespace sagitta {

/// Whether a board may name files outside its own folder; only the builder can say so.
enum class Outside { refused, allowed };

/// A file that a board, or a base of it, names.
struct NamedInput {
  std::string what;    ///< in messages: "drawing", "base", "neck's file"
  std::string folder;  ///< where its path starts from
  std::string file;    ///< as it is named
  std::string inside;  ///< the board's own folder, which it may not leave
};

/// Where the file is. A path that is absolute, leaves the board's folder or is a link out of it is a fault unless the
/// builder allowed it; a name with a NUL in it always is. The fault carries no key.
std::variant<std::string, Fault> input_path(const NamedInput& input, Outside outside);

}  // namespace sagitta
