#include <iostream>
#include <nlohmann/json.hpp>

#include "input/PreparedFile.hpp"
#include "package/Compare.hpp"
#include "package/Repeat.hpp"
#include "package/Report.hpp"
#include "program/Command.hpp"
#include "program/NamedBoard.hpp"

namespace sagitta {
namespace {

struct Options {
  std::string a, b;
  bool json = false;
  Outside outside = Outside::refused;
};

BoardFile named(const std::string& name, Outside outside) {
  return name == standard_input ? read_named_board(name, outside) : read_board_or_manifest(name, outside);
}

/// The two boards; of one alone, the board as it was planned and as it was measured.
std::vector<BoardFile> files_of(const Options& options) {
  std::vector<BoardFile> files{named(options.a, options.outside)};
  if (!options.b.empty()) {
    files.push_back(named(options.b, options.outside));
    return files;
  }
  files.push_back(files.front());
  files.front().board.measured = {};
  return files;
}

int compare(const Options& options) {
  std::vector<PreparedBoard> boards;
  for (const BoardFile& file : files_of(options)) {
    auto prepared = prepare(file, options.outside);
    if (const auto* problems = std::get_if<Problems>(&prepared)) {
      std::cerr << problem_text(*problems);
      return exit_input;
    }
    boards.push_back(std::get<PreparedBoard>(std::move(prepared)));
  }
  const std::vector<KeyDifference> keys = differences(boards[0], boards[1]);
  const Effect all = effect_of(boards[0], boards[1]);
  if (options.json)
    std::cout << comparison_json(keys, all).dump(2, ' ', true) << "\n";
  else
    std::cout << comparison_text(keys, all, boards[0].board().units);
  return exit_good;
}

}  // namespace

Command compare_command(CLI::App& program) {
  const auto options = std::make_shared<Options>();
  CLI::App* app =
      program.add_subcommand("compare", "Say which keys of two boards differ, and what each changes in the wood.");
  app->add_option("A", options->a,
                  "A board file, - for the text on standard input, or the manifest.json of a hand-off folder")
      ->required();
  app->add_option("B", options->b, "The other one; without it, the board as planned and as measured are compared");
  app->add_flag("--json", options->json, "Print the list as JSON, for other programs; mm");
  add_outside_flag(*app, options->outside);
  return {app, [options] { return compare(*options); }};
}

}  // namespace sagitta
