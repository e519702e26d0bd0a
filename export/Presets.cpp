#include "export/Presets.hpp"

#include <filesystem>
#include <fstream>
#include <system_error>

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

std::string write_preset(const Preset& preset, const std::string& folder) {
  namespace fs = std::filesystem;
  const std::string board = std::string(preset.name) + ".toml";
  std::vector<PresetDrawing> files{{board, preset.text}};
  files.insert(files.end(), preset.drawings.begin(), preset.drawings.end());
  std::error_code error;
  fs::create_directories(folder, error);
  if (!fs::is_directory(folder)) return folder + " cannot be made a folder";
  for (const PresetDrawing& file : files)
    if (const fs::path path = fs::path(folder) / file.file; fs::exists(path))
      return path.string() + " is there already";
  for (const PresetDrawing& file : files) {
    const fs::path path = fs::path(folder) / file.file;
    std::ofstream out(path, std::ios::binary);
    out << file.text;
    if (!out.flush()) return path.string() + " cannot be written";
  }
  return "";
}

}  // namespace sagitta
