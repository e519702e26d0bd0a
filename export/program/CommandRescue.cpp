#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

#include "board/Edit.hpp"
#include "board/Writer.hpp"
#include "input/PreparedFile.hpp"
#include "package/Report.hpp"
#include "program/Command.hpp"
#include "program/NamedBoard.hpp"
#include "release/RescueReport.hpp"

namespace sagitta {
namespace {

struct Options {
  std::string board, apply;
  bool json = false;
  Outside outside = Outside::refused;
};

/// The board file with the edits of one way in it.
std::string applied(const Options& options, const BoardFile& file, const std::vector<Way>& ways) {
  const auto way = std::find_if(ways.begin(), ways.end(), [&](const Way& each) { return each.name == options.apply; });
  if (way == ways.end()) {
    std::string message = "--apply " + options.apply + ": there is no such way; there are";
    for (const Way& each : ways) message += " " + each.name;
    throw UsageError(ways.empty() ? "--apply " + options.apply + ": there is no way out of this board" : message);
  }
  const std::string text = text_of_board(options.board);
  const Board next = edited(file.board, way->edits);
  return text.empty() ? write_board(next) : edit_text(text, file.board, next);
}

int rescue(const Options& options) {
  const BoardFile file = read_named_board(options.board, options.outside);
  if (!file.sound()) {
    std::cerr << problem_text(file.problems);
    return exit_input;
  }
  const std::vector<Way> ways = ways_out(file, options.outside);
  if (!options.apply.empty())
    std::cout << applied(options, file, ways);
  else if (options.json)
    std::cout << rescue_json(ways).dump(2, ' ', true, nlohmann::json::error_handler_t::replace) << "\n";
  else
    std::cout << rescue_text(ways, file.board);
  return exit_good;
}

}  // namespace

Command rescue_command(CLI::App& program) {
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand(
      "rescue", "List the ways out of what was measured that still make a good board, best first.");
  app->add_option("BOARD", options->board,
                  "The board file, with what was measured under [measured], or - for the text on standard input")
      ->required();
  CLI::Option* json = app->add_flag("--json", options->json, "Print the list as JSON, for other programs; mm");
  app->add_option("--apply", options->apply, "Print the board file with this way's changes in it")
      ->type_name("NAME")
      ->excludes(json);
  add_outside_flag(*app, options->outside);
  return {app, [options] { return rescue(*options); }};
}

}  // namespace sagitta
