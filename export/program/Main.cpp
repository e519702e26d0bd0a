#include <algorithm>
#include <iostream>

#include "cad/Interrupt.hpp"
#include "input/NeckProcess.hpp"
#include "manual/Manual.hpp"
#include "program/Command.hpp"
#include "program/Guarded.hpp"
#include "program/ProgramManual.hpp"

namespace {

using namespace sagitta;

/// For packagers: the manual page and what shells complete, written from the same table as the help.
void add_manual(CLI::App& program) {
  program
      .add_option_function<std::string>(
          "--manual",
          [&program](const std::string& form) {
            std::cout << manual_text(program_table(program), form);
            throw CLI::Success();
          },
          "Print the manual page (man), or what a shell completes (bash, zsh, fish)")
      ->type_name("FORM")
      ->check(CLI::IsMember(manual_forms()));
}

int run(int argc, char** argv) {
  CLI::App program{"Sagitta makes exact solids of a fretboard from one board file."};
  program.name("sagitta");
  program.set_version_flag("--version", std::string("sagitta ") + SAGITTA_VERSION);
  program.require_subcommand(1);
  add_manual(program);
  const Cancel cancel = catch_interrupts();
  const Command commands[] = {check_command(program),    frets_command(program),   export_command(program, cancel),
                              new_command(program),      presets_command(program), keys_command(program),
                              findings_command(program), compare_command(program), trial_command(program, cancel),
                              rescue_command(program)};
  program.footer(
      "Begin with: sagitta new heron-six > my-board.toml, change it, then: sagitta export my-board.toml --to folder");
  if (argc > 1 && argv[1][0] != '-') {
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

}  // namespace

int main(int argc, char** argv) {
  if (const auto code = run_as_neck_reader(argc, argv)) return *code;
  return guarded([argc, argv] { return run(argc, argv); });
}
