#include <iostream>
#include <nlohmann/json.hpp>

#include "export/ReadyBoard.hpp"
#include "export/Report.hpp"
#include "export/program/Command.hpp"

namespace sagitta {
namespace {

int check(const std::string& path, bool json) {
  const std::vector<Problem> problems = problems_of(prepare(path));
  if (json)
    std::cout << check_json(problems).dump(2, ' ', false, nlohmann::json::error_handler_t::replace) << "\n";
  else if (problems.empty())
    std::cout << path << ": no problems\n";
  else
    std::cout << problem_text(problems);
  return problems.empty() ? exit_good : exit_input;
}

}  // namespace

Command check_command(CLI::App& program) {
  struct Options {
    std::string board;
    bool json = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("check", "Say what is wrong with a board file, before any wood is cut.");
  app->add_option("BOARD", options->board, "The board file")->required();
  app->add_flag("--json", options->json, "Print the list as JSON, for other programs");
  return {app, [options] { return check(options->board, options->json); }};
}

}  // namespace sagitta
