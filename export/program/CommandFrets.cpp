#include <iostream>
#include <nlohmann/json.hpp>

#include "input/PreparedFile.hpp"
#include "package/Report.hpp"
#include "program/Command.hpp"
#include "program/NamedBoard.hpp"
#include "tables/FretTable.hpp"

namespace sagitta {
namespace {

struct Options {
  std::string board;
  std::string units;
  bool csv = false, json = false;
  Outside outside = Outside::refused;
};

int frets(const Options& options) {
  const auto drawn = draw(told_in(read_named_board(options.board, options.outside), options.units), options.outside);
  if (const auto* problems = std::get_if<std::vector<Problem>>(&drawn)) {
    std::cerr << problem_text(*problems);
    return exit_input;
  }
  const Drawn& board = std::get<Drawn>(drawn);
  if (options.json)
    std::cout << fret_json(board.layout).dump(2) << "\n";
  else
    std::cout << (options.csv ? fret_csv(board.layout) : fret_text(board));
  return exit_good;
}

}  // namespace

Command frets_command(CLI::App& program) {
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("frets", "Print the fret table: where the middle of each slot goes.");
  app->add_option("BOARD", options->board, "The board file, or - for the text on standard input")->required();
  CLI::Option* csv = app->add_flag("--csv", options->csv, "As comma-separated values, for a spreadsheet; mm");
  app->add_flag("--json", options->json, "As JSON, for other programs; mm")->excludes(csv);
  add_units_option(*app, options->units, "The unit of the printed table; CSV and JSON are in mm");
  add_outside_flag(*app, options->outside);
  return {app, [options] { return frets(*options); }};
}

}  // namespace sagitta
