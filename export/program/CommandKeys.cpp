#include <iostream>

#include "board/Keys.hpp"
#include "program/Command.hpp"

namespace sagitta {

Command keys_command(CLI::App& program) {
  const auto markdown = std::make_shared<bool>(false);
  CLI::App* app = program.add_subcommand("keys", "Explain every key of a board file: unit, range, default, meaning.");
  app->add_flag("--markdown", *markdown, "As Markdown tables, as the README carries them");
  return {app, [markdown] {
            std::cout << (*markdown ? keys_markdown() : keys_text());
            return exit_good;
          }};
}

}  // namespace sagitta
