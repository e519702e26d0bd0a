#include "program/RunCommand.hpp"

#include <algorithm>

#include "program/Guarded.hpp"

namespace sagitta {

int run_command(CLI::App& program, std::span<const Command> commands, int argc, char** argv) {
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

}  // namespace sagitta
