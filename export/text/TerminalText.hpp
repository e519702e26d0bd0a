#pragma once

/// Text as a terminal may be sent it.

#include <string>
#include <string_view>

namespace sagitta {

/// Foreign text as it may be printed on a terminal: what is not seen there, and what would command it, is written out
/// as TOML writes it, "\u001B" or "\u202E", a byte that is no UTF-8 as "\xFF". One line stays one line. The same again
/// of what it made.
std::string terminal_text(std::string_view text);

}  // namespace sagitta
