#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

#include "findings/Findings.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "package/Report.hpp"
#include "program/Batch.hpp"
#include "program/Command.hpp"
#include "program/NamedBoard.hpp"
#include "release/Release.hpp"
#include "rules/Work.hpp"
#include "tables/HeightTable.hpp"
#include "text/TerminalColour.hpp"
#include "text/TerminalText.hpp"

namespace sagitta {
namespace {

std::vector<Finding> findings_of(const std::variant<PreparedBoard, Problems>& prepared) {
  const auto* ready = std::get_if<PreparedBoard>(&prepared);
  return ready ? board_findings(*ready) : std::vector<Finding>();
}

/// A line for a board that is good but for notes; otherwise nothing.
std::string verdict(const std::string& path, const std::vector<Problem>& problems,
                    const std::vector<Finding>& findings) {
  const bool notes_only = std::all_of(findings.begin(), findings.end(),
                                      [](const Finding& finding) { return finding.severity == Severity::note; });
  return problems.empty() && notes_only ? terminal_text(path) + ": no problems, nothing to look at\n" : std::string();
}

/// The problems and findings, and the strings' heights where the board file asks for them.
nlohmann::ordered_json answer_json(const std::variant<PreparedBoard, Problems>& prepared,
                                   const std::vector<Problem>& problems, const std::vector<Finding>& findings) {
  nlohmann::ordered_json answer = check_json(problems, findings);
  const auto* ready = std::get_if<PreparedBoard>(&prepared);
  const auto chain = ready ? height_chain(*ready) : std::nullopt;
  if (chain) answer["heights"] = height_json(*chain);
  return answer;
}

struct Options {
  std::vector<std::string> boards;
  std::string units, before;
  bool json = false, notes = false;
  Outside outside = Outside::refused;
};

bool has(const std::vector<Finding>& findings, Severity severity) {
  return std::ranges::any_of(findings, [=](const Finding& finding) { return finding.severity == severity; });
}

/// The findings for reading. On a board that has nothing but notes these are a line each, unless all is wanted.
std::string findings_shown(const std::vector<Finding>& findings, bool all) {
  const bool notes_only = !has(findings, Severity::stop) && !has(findings, Severity::look);
  const bool colours = shows_colours(Stream::output);
  return notes_only && !all ? short_text(findings, colours) : finding_text(findings, colours);
}

/// What is said of one board, and the exit code that follows.
struct Checked {
  std::string text;
  nlohmann::ordered_json json;
  int code = exit_good;
};

Checked check(const std::string& path, const Options& options) {
  const auto prepared = prepare(told_in(read_named_board(path, options.outside), options.units), options.outside);
  const std::vector<Problem> problems = problems_of(prepared);
  const std::vector<Finding> findings = findings_of(prepared);
  Checked checked;
  checked.code = !problems.empty() ? exit_input : has(findings, Severity::stop) ? exit_stop : exit_good;
  if (options.json)
    checked.json = answer_json(prepared, problems, findings);
  else
    checked.text = verdict(path, problems, findings) + problem_text(problems) + findings_shown(findings, options.notes);
  return checked;
}

/// Of several boards the JSON is a list with each board's name, and the text has a heading for each.
int check(const Options& options) {
  const bool several = options.boards.size() > 1;
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  int worst = exit_good;
  for (const std::string& path : options.boards) {
    Checked checked = check(path, options);
    worst = worse_of(worst, checked.code);
    if (options.json) {
      nlohmann::ordered_json one = nlohmann::ordered_json::object();
      if (several) one["board"] = path;
      one.update(checked.json);
      list.push_back(std::move(one));
    } else {
      std::cout << (several ? (path == options.boards.front() ? "== " : "\n== ") + terminal_text(path) + "\n" : "")
                << checked.text;
    }
  }
  if (options.json)
    std::cout << (several ? list : list.front()).dump(2, ' ', true, nlohmann::json::error_handler_t::replace) << "\n";
  return worst;
}

Operation operation_wanted(const std::string& word) {
  std::string names;
  for (const Operation each : {Operation::thickness, Operation::pockets, Operation::inlay, Operation::radius,
                               Operation::slots, Operation::outline}) {
    if (operation_name(each) == word) return each;
    names += (names.empty() ? "" : ", ") + std::string(operation_name(each));
  }
  throw UsageError("--before " + word + ": there is no such operation; choose from " + names);
}

int check_before(const Options& options) {
  if (options.boards.size() > 1) throw UsageError("--before goes with one board");
  const Operation operation = operation_wanted(options.before);
  const BoardFile file = read_named_board(options.boards.front(), options.outside);
  const Release release = release_before(file, operation, options.outside);
  if (options.json)
    std::cout << release_json(release).dump(2, ' ', true, nlohmann::json::error_handler_t::replace) << "\n";
  else
    std::cout << release_text(release, file.board.units);
  if (!file.sound()) {
    std::cerr << problem_text(file.problems);
    return exit_input;
  }
  if (release.answer == Release::Answer::as_planned) return exit_good;
  return release.answer == Release::Answer::changed ? exit_changed : exit_stop;
}

}  // namespace

Command check_command(CLI::App& program) {
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("check", "Say what is wrong with a board file, before any wood is cut.");
  app->add_option("BOARD", options->boards, "The board file, or - for the text on standard input; or several")
      ->required();
  app->add_flag("--json", options->json, "Print the list as JSON, for other programs");
  app->add_flag("--notes", options->notes, "Say with each note what ignoring it costs and what to do");
  app->add_option("--before", options->before,
                  "Say in one line whether this operation may be cut now that something was measured: exits with 0 as "
                  "planned, 5 with the changed numbers that it prints, 1 not")
      ->type_name("OPERATION");
  add_units_option(*app, options->units, "The unit of lengths in messages; values in JSON are in mm");
  add_outside_flag(*app, options->outside);
  return {app, [options] { return options->before.empty() ? check(*options) : check_before(*options); }};
}

}  // namespace sagitta
