#include <iostream>

#include "program/Command.hpp"
#include "rules/Catalogue.hpp"

namespace sagitta {

Command findings_command(CLI::App& program) {
  const auto markdown = std::make_shared<bool>(false);
  CLI::App* app = program.add_subcommand(
      "findings", "Explain every finding of `check`: what it measures, its limit, what ignoring it costs.");
  app->add_flag("--markdown", *markdown, "As Markdown tables, as the README carries them");
  return {app, [markdown] {
            std::cout << (*markdown ? findings_markdown() : findings_text());
            return exit_good;
          }};
}

}  // namespace sagitta
