#include "input/Presets.hpp"

#include <cerrno>
#include <filesystem>
#include <system_error>

#include "files/SystemError.hpp"
#include "files/WriteFile.hpp"

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
  const bool made = fs::create_directories(folder, error);
  if (!fs::is_directory(folder)) return folder + " cannot be made a folder: " + system_reason(error.value());
  std::vector<fs::path> written;
  const auto failed = [&](const fs::path& path, int wrong) {
    for (const fs::path& each : written) fs::remove(each, error);
    if (made) fs::remove(folder, error);
    return path.string() + (wrong == EEXIST ? " is there already" : " cannot be written: " + system_reason(wrong));
  };
  for (const PresetDrawing& file : files)
    if (const fs::path path = fs::path(folder) / file.file; fs::exists(fs::symlink_status(path)))
      return failed(path, EEXIST);
  for (const PresetDrawing& file : files) {
    const fs::path path = fs::path(folder) / file.file;
    if (const int wrong = make_file(path, file.text); wrong != 0) return failed(path, wrong);
    written.push_back(path);
  }
  const int wrong = sync_folder(folder);
  return wrong == 0 ? "" : failed(folder, wrong);
}

}  // namespace sagitta
