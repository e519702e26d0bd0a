#pragma once

/// Colours of SVG and DXF drawings.

#include <optional>
#include <string>
#include <string_view>

namespace sagitta {

/// "#rrggbb" in lower case from a colour of SVG 1.1, section 4.2: "#rgb", "#rrggbb", "rgb(..)" with numbers or
/// percents, or one of the names of section 4.4. Empty for all other text.
std::optional<std::string> read_colour(std::string_view text);

/// "#rrggbb" from its parts, each 0 to 255.
std::string colour_code(int red, int green, int blue);

}  // namespace sagitta
