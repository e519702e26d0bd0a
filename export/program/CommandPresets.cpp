#include <iostream>

#include "export/Presets.hpp"
#include "export/program/Command.hpp"

namespace sagitta {
namespace {

int list_presets() {
  std::size_t width = 0;
  for (const Preset& preset : presets()) width = std::max(width, preset.name.size());
  for (const Preset& preset : presets())
    std::cout << preset.name << std::string(width + 2 - preset.name.size(), ' ') << summary(preset) << "\n";
  return exit_good;
}

int print_preset(const std::string& name) {
  const std::optional<Preset> preset = preset_named(name);
  if (!preset) throw UsageError("there is no preset \"" + name + "\"; `sagitta presets` lists them");
  std::cout << preset->text;
  return exit_good;
}

}  // namespace

Command presets_command(CLI::App& program) {
  CLI::App* app = program.add_subcommand("presets", "List the boards that come with the program.");
  return {app, list_presets};
}

Command new_command(CLI::App& program) {
  const auto name = std::make_shared<std::string>();
  CLI::App* app = program.add_subcommand(
      "new", "Print a preset's board file, to start your own from: sagitta new heron-six > my-board.toml");
  app->add_option("PRESET", *name, "Its name; `sagitta presets` lists them")->required();
  return {app, [name] { return print_preset(*name); }};
}

}  // namespace sagitta
