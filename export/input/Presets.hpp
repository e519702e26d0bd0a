#pragma once

/// The boards that are built into the program.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sagitta {

/// A drawing that a preset's inlays name.
struct PresetDrawing {
  std::string_view file;  ///< "egret-figure.svg"
  std::string_view text;
};

/// A board of our own that comes with the program, built into it.
struct Preset {
  std::string_view name;  ///< "heron-six"
  std::string_view text;  ///< the whole board file
  std::vector<PresetDrawing> drawings = {};
};

/// In order of name.
const std::vector<Preset>& presets();
std::optional<Preset> preset_named(std::string_view name);
/// What the preset is, in a line: the first comment of its file.
std::string_view summary(const Preset& preset);

/// Writes the board file, NAME.toml, and its drawings into a folder, which is made where it is missing. Nothing is
/// written when one of the files is there already. Returns "" or what went wrong.
std::string write_preset(const Preset& preset, const std::string& folder);

}  // namespace sagitta
