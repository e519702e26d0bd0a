#include <iostream>

#include "cad/Interrupt.hpp"
#include "drawing/Paper.hpp"
#include "folder/Folder.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "package/BoardSources.hpp"
#include "package/Repeat.hpp"
#include "package/Report.hpp"
#include "program/Command.hpp"
#include "program/KernelWord.hpp"
#include "program/NamedBoard.hpp"
#include "program/Receipt.hpp"
#include "trial/TrialFiles.hpp"

namespace sagitta {
namespace {

struct Options {
  std::string board, to, paper = "A4";
  bool replace = false, json = false, quiet = false, chosen = false;  ///< chosen: the paper was named
  Outside outside = Outside::refused;
};

int make_trial(const Options& options, const Cancel& cancel) {
  Paper paper = paper_wanted(options.paper);
  BoardFile file;
  if (names_manifest(options.board)) {
    if (options.chosen)
      throw UsageError(options.board + " says itself how its folder is made: give only --to and --replace with it");
    TrialRepeat repeat = read_trial_manifest(options.board, options.outside);
    file = std::move(repeat.file);
    paper = repeat.paper;
  } else {
    file = read_named_board(options.board, options.outside);
  }
  const auto prepared = prepare(file, options.outside);
  if (const auto* problems = std::get_if<Problems>(&prepared)) {
    std::cerr << problem_text(*problems);
    return exit_input;
  }
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  const auto trial = trial_of(ready);
  if (const auto* problems = std::get_if<Problems>(&trial)) {
    std::cerr << problem_text(*problems);
    return exit_input;
  }
  const std::vector<Finding> findings = board_findings(ready);
  Folder folder(options.to, options.replace, inputs_of(file));
  write_trial(ready, findings, std::get<Trial>(trial), paper, folder, cancel);
  stop_if_wanted(cancel);
  folder.keep();
  print_receipt({options.board, options.to, folder.files(), folder.bytes(), findings, false},
                {options.json, options.quiet});
  return exit_good;
}

}  // namespace

Command trial_command(CLI::App& program, const Cancel& cancel) {
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand(trial_word.name, trial_word.help);
  app->add_option(
         "BOARD", options->board,
         "The board file, - for the text on standard input, or a trial strip's manifest.json, to make the same "
         "again")
      ->required();
  app->add_option("--to", options->to, "The folder to make; it must be new or empty")->type_name("DIR")->required();
  app->add_option("--paper", options->paper, "The paper that the sheet is printed on: A4, A3, Letter, Tabloid")
      ->type_name("NAME")
      ->capture_default_str();
  add_outside_flag(*app, options->outside);
  app->add_flag("--quiet", options->quiet, "Say nothing but errors");
  app->add_flag("--json", options->json, "Print what was made as JSON, for other programs");
  app->add_flag(
      "--replace", options->replace,
      "Put the new folder in the place of one that Sagitta made, if nothing in it was added or changed since; "
      "the old one goes when the new one is whole");
  return {app, [options, cancel, app] {
            options->chosen = app->count("--paper") > 0;
            return make_trial(*options, cancel);
          }};
}

}  // namespace sagitta
