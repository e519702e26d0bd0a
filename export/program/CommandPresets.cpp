#include <iostream>
#include <nlohmann/json.hpp>

#include "input/Presets.hpp"
#include "program/Command.hpp"
#include "program/Reference.hpp"
#include "text/TerminalText.hpp"

namespace sagitta {
namespace {

int list_presets(bool json) {
  if (json) {
    std::cout << presets_json().dump(2) << "\n";
    return exit_good;
  }
  std::size_t width = 0;
  for (const Preset& preset : presets()) width = std::max(width, preset.name.size());
  for (const Preset& preset : presets())
    std::cout << preset.name << std::string(width + 2 - preset.name.size(), ' ') << summary(preset) << "\n";
  return exit_good;
}

Preset wanted(const std::string& name) {
  std::vector<std::string> names;
  for (const Preset& preset : presets()) {
    if (preset.name == name) return preset;
    names.emplace_back(preset.name);
  }
  throw UsageError(unknown("preset", name, names) + "; `sagitta presets` lists them");
}

int print_preset(const std::string& name) {
  const Preset preset = wanted(name);
  std::cout << preset.text;
  if (preset.drawings.empty()) return exit_good;
  std::cerr << "this board needs its drawings beside it:";
  for (const PresetDrawing& drawing : preset.drawings) std::cerr << " " << drawing.file;
  std::cerr << "\n    sagitta new " << name << " --to FOLDER writes them all\n";
  return exit_good;
}

int write_to(const std::string& name, const std::string& folder) {
  const std::string failure = write_preset(wanted(name), folder);
  if (failure.empty()) return exit_good;
  std::cerr << terminal_text(failure) << "; nothing was written\n    name another folder, or move what is there away\n";
  return exit_failed;
}

}  // namespace

Command presets_command(CLI::App& program) {
  CLI::App* app = program.add_subcommand("presets", "List the boards that come with the program.");
  const auto json = std::make_shared<bool>(false);
  app->add_flag("--json", *json, "As JSON, for other programs");
  return {app, [json] { return list_presets(*json); }};
}

Command new_command(CLI::App& program) {
  const auto name = std::make_shared<std::string>();
  CLI::App* app = program.add_subcommand(
      "new", "Print a preset's board file, to start your own from: sagitta new heron-six > my-board.toml");
  app->add_option("PRESET", *name, "Its name; `sagitta presets` lists them")->required();
  const auto folder = std::make_shared<std::string>();
  app->add_option("--to", *folder, "Write the board and the drawings of its inlays into this folder instead")
      ->type_name("DIR");
  return {app, [name, folder] { return folder->empty() ? print_preset(*name) : write_to(*name, *folder); }};
}

}  // namespace sagitta
