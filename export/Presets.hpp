#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace sagitta {

/// A board of our own that comes with the program, built into it.
struct Preset {
  std::string_view name;  ///< "heron-six"
  std::string_view text;  ///< the whole board file
};

/// In order of name.
const std::vector<Preset>& presets();
std::optional<Preset> preset_named(std::string_view name);
/// What the preset is, in a line: the first comment of its file.
std::string_view summary(const Preset& preset);

}  // namespace sagitta
