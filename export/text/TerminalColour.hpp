#pragma once

/// Colours on a terminal.

#include <string>
#include <string_view>

namespace sagitta {

/// Where text goes.
enum class Stream { output, error };

/// The stream is a terminal that shows colours, and the user has not asked for none (NO_COLOR, no-color.org, or
/// TERM=dumb).
bool shows_colours(Stream stream);

enum class Hue { red, yellow, faint };

/// The word in colour (ECMA-48, SGR), or as it is.
std::string coloured(std::string_view word, Hue hue, bool colours);

}  // namespace sagitta
