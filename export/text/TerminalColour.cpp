#include "text/TerminalColour.hpp"

#include <unistd.h>

#include <cstdlib>

namespace sagitta {

bool shows_colours(Stream stream) {
  const char* none = std::getenv("NO_COLOR");
  const char* kind = std::getenv("TERM");
  const bool wanted = (!none || !*none) && kind && std::string_view(kind) != "dumb";
  return wanted && isatty(stream == Stream::output ? STDOUT_FILENO : STDERR_FILENO) != 0;
}

std::string coloured(std::string_view word, Hue hue, bool colours) {
  if (!colours) return std::string(word);
  const char* begin = hue == Hue::red ? "\x1b[1;31m" : hue == Hue::yellow ? "\x1b[1;33m" : "\x1b[2m";
  return begin + std::string(word) + "\x1b[0m";
}

}  // namespace sagitta
