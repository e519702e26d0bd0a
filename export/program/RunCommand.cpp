#include "program/RunCommand.hpp"

#include <algorithm>
#include <iostream>

#include "manual/Manual.hpp"
#include "program/Guarded.hpp"
#include "program/KernelWord.hpp"
#include "program/ProgramManual.hpp"

namespace sagitta {
namespace {

/// What the program says of itself beside its commands.
void introduce(CLI::App& program) {
  program.name("sagitta");
  program.set_version_flag("--version", std::string("sagitta ") + SAGITTA_VERSION);
  program.require_subcommand(1);
  program
      .add_option_function<std::string>(
          manual_option,
          [&program](const std::string& form) {
            std::cout << manual_text(program_table(program), form);
            throw CLI::Success();
          },
          "Print the manual page (man), or what a shell completes (bash, zsh, fish)")
      ->type_name("FORM")
      ->check(CLI::IsMember(manual_forms()));
}

}  // namespace

int run_command(const AddCommand& add_export, const AddCommand& add_trial, int argc, char** argv) {
  CLI::App program{"Sagitta makes exact solids of a fretboard from one board file."};
  introduce(program);
  const Command commands[] = {check_command(program),    frets_command(program),   add_export(program),
                              new_command(program),      presets_command(program), keys_command(program),
                              findings_command(program), compare_command(program), add_trial(program),
                              rescue_command(program)};
  // Not before the commands are there: they would take it over.
  program.footer(
      "Begin with: sagitta new heron-six > my-board.toml, change it, then: sagitta export my-board.toml --to folder");
  if (argc == 1) return complain("name a command", exit_input, "sagitta --help lists the commands\n");
  if (argv[1][0] != '-') {
    std::vector<std::string> names;
    for (const Command& command : commands) names.push_back(command.app->get_name());
    if (std::ranges::find(names, argv[1]) == names.end())
      return complain(unknown("command", argv[1], names), exit_input, "sagitta --help lists the commands\n");
  }
  try {
    program.parse(argc, argv);
  } catch (const CLI::Success& asked) {
    return program.exit(asked);
  } catch (const CLI::ParseError& error) {
    return complain(error.what(), exit_input,
                    "sagitta --help lists the commands; sagitta COMMAND --help explains one\n");
  }
  for (const Command& command : commands)
    if (command.app->parsed()) return command.run();
  return exit_input;
}

}  // namespace sagitta
