#include "export/Presets.hpp"

namespace sagitta {

std::optional<Preset> preset_named(std::string_view name) {
  for (const Preset& preset : presets())
    if (preset.name == name) return preset;
  return std::nullopt;
}

std::string_view summary(const Preset& preset) {
  std::string_view line = preset.text.substr(0, preset.text.find('\n'));
  while (!line.empty() && (line.front() == '#' || line.front() == ' ')) line.remove_prefix(1);
  return line;
}

}  // namespace sagitta
