#include <algorithm>
#include <chrono>
#include <filesystem>
#include <iostream>
#include <set>

#include "cad/Interrupt.hpp"
#include "folder/Folder.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "package/BoardSources.hpp"
#include "package/HandOff.hpp"
#include "package/OrderRules.hpp"
#include "package/Progress.hpp"
#include "package/Repeat.hpp"
#include "package/Report.hpp"
#include "package/UpToDate.hpp"
#include "plane/ParallelFor.hpp"
#include "program/Batch.hpp"
#include "program/Command.hpp"
#include "program/ExportOptions.hpp"
#include "program/KernelWord.hpp"
#include "program/NamedBoard.hpp"
#include "program/Receipt.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

/// Tells each step's time on the error output when the next one begins.
class StepTimes {
 public:
  void begin(const std::string& what) {
    end();
    step_ = what;
    start_ = std::chrono::steady_clock::now();
  }
  void end() {
    if (step_.empty()) return;
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start_;
    char seconds[32];
    std::snprintf(seconds, sizeof seconds, "%8.3f s  ", took.count());
    std::cerr << seconds << step_ << "\n";
    step_.clear();
  }

 private:
  std::string step_;
  std::chrono::steady_clock::time_point start_;
};

/// Of a folder that is left as it is.
Receipt receipt_of(const std::string& board, const std::string& folder, const std::vector<Finding>& findings) {
  Receipt receipt{board, folder, 0, 0, findings, true};
  std::error_code error;
  for (const auto& entry : fs::recursive_directory_iterator(folder, error))
    if (entry.is_regular_file(error)) {
      ++receipt.files;
      receipt.bytes += entry.file_size(error);
    }
  return receipt;
}

int hand_off_board(const ExportOptions& options, const Cancel& cancel) {
  const std::string& board = options.boards.front();
  const ReceiptStyle style{options.json, options.quiet};
  kinds_named(options.only);  // wrong words come before wrong boards
  std::optional<Repeat> repeat;
  if (names_manifest(board)) repeat = read_manifest(board, options.outside);
  if (repeat && options.chosen)
    throw UsageError(board +
                     " says itself how its folder is made: give only --to, --replace and --refuse-stops with it");
  const BoardFile file = repeat ? repeat->file : told_in(read_named_board(board, options.outside), options.units);
  const auto prepared = prepare(file, options.outside);
  if (const auto* problems = std::get_if<std::vector<Problem>>(&prepared)) {
    std::cerr << problem_text(*problems);
    return exit_input;
  }
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  ExportOrder order = repeat ? repeat->order : order_of(options, ready);
  judge_order(ready, order);
  part_of(ready, order.drawing.part);  // what the board has not is said before anything is written
  const std::vector<Finding> findings = board_findings(ready);
  if (options.refuse_stops && refused_for_stops(findings)) return exit_stop;
  if (options.if_changed && is_up_to_date(options.to, ready, order)) {
    print_receipt(receipt_of(board, options.to, findings), style);
    return exit_good;
  }
  Folder folder(options.to, options.replace, inputs_of(file));
  StepTimes times;
  if (options.verbose) {
    set_parallel_threads(1);  // one file after the other: a time is that of one file
    order.tell = [&](int, int, const std::string& what) { times.begin(what); };
  }
  write_hand_off(ready, findings, order, folder, cancel);
  times.end();
  stop_if_wanted(cancel);
  folder.keep();
  print_receipt({board, options.to, folder.files(), folder.bytes(), findings, false}, style);
  return exit_good;
}

/// A line on the terminal says which board has begun; it is gone before anything else is printed.
std::vector<BatchResult> run_all(const ExportOptions& options, const std::vector<std::vector<std::string>>& commands,
                                 const Cancel& cancel) {
  Progress progress(static_cast<int>(commands.size()));
  std::vector<BatchResult> results = run_side_by_side(commands, cancel, [&](std::size_t number) {
    if (!options.quiet) progress.step(options.boards[number]);
  });
  stop_if_wanted(cancel);
  return results;
}

/// A folder for each board, below the one that was named, made side by side.
int hand_off_boards(const ExportOptions& options, const CLI::App& app, const Cancel& cancel) {
  const std::vector<std::string> same = repeated_options(app, {"BOARD", "--to"});
  std::vector<std::vector<std::string>> commands;
  std::set<std::string> folders;
  for (const std::string& board : options.boards) {
    if (board == standard_input) throw UsageError("- goes with one board: the text on standard input is one");
    const std::string folder = (fs::path(options.to) / folder_name(board)).string();
    if (!folders.insert(folder).second)
      throw UsageError("two of the boards would be made in " + folder + ": give their files different names");
    commands.push_back({"export", board, "--to", folder});
    commands.back().insert(commands.back().end(), same.begin(), same.end());
  }
  const std::vector<BatchResult> results = run_all(options, commands, cancel);
  std::string json;
  int worst = exit_good, made = 0;
  for (const BatchResult& result : results) {
    std::cerr << result.err;
    if (options.json)
      json += (json.empty() || result.out.empty() ? "" : ",\n") + result.out;
    else
      std::cout << result.out;
    made += result.code == exit_good;
    worst = worse_of(worst, result.code);
  }
  if (options.json) std::cout << "[\n" << json << "]\n";
  if (!options.quiet) std::cerr << made << " of " << results.size() << " folders were made\n";
  return worst;
}

}  // namespace

Command export_command(CLI::App& program, const Cancel& cancel) {
  const auto options = std::make_shared<ExportOptions>();
  CLI::App* app = program.add_subcommand(export_word.name, export_word.help);
  app->add_option("BOARD", options->boards,
                  "The board file, - for the text on standard input, or a folder's manifest.json, to make the same "
                  "folder again; several boards get a folder each, DIR/NAME, by their files' names")
      ->required();
  app->add_option("--to", options->to, "The folder to make; it must be new or empty")->type_name("DIR")->required();
  add_export_options(*app, *options);
  add_outside_flag(*app, options->outside);
  app->add_flag(
      "--replace", options->replace,
      "Put the new folder in the place of one that Sagitta made, if nothing in it was added or changed since; "
      "the old one goes when the new one is whole");
  app->add_flag(
      "--if-changed", options->if_changed,
      "Leave a folder as it is that already holds what would be made: same board, drawings, neck, options and "
      "version");
  app->add_flag("--refuse-stops", options->refuse_stops, "Write nothing, and exit with 1, when a finding says stop");
  app->add_flag("--json", options->json, "Print what was made as JSON, for other programs");
  CLI::Option* quiet = app->add_flag("--quiet", options->quiet, "Say nothing but errors");
  app->add_flag("--verbose", options->verbose, "Say how long each file took, on the error output")->excludes(quiet);
  return {app, [options, cancel, app] {
            options->chosen = says_how(*app);
            return options->boards.size() == 1 ? hand_off_board(*options, cancel)
                                               : hand_off_boards(*options, *app, cancel);
          }};
}

}  // namespace sagitta
