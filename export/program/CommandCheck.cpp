#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

#include "findings/Findings.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "package/Report.hpp"
#include "program/Command.hpp"
#include "rules/BoardUnits.hpp"
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

int check(const std::string& path, bool json, const std::string& units, Outside outside) {
  const auto prepared = prepare(told_in(read_board(path, outside), units), outside);
  const std::vector<Problem> problems = problems_of(prepared);
  const std::vector<Finding> findings = findings_of(prepared);
  if (json)
    std::cout << check_json(problems, findings).dump(2, ' ', true, nlohmann::json::error_handler_t::replace) << "\n";
  else
    std::cout << verdict(path, problems, findings) << problem_text(problems) << finding_text(findings);
  if (!problems.empty()) return exit_input;
  const bool stop = std::any_of(findings.begin(), findings.end(),
                                [](const Finding& finding) { return finding.severity == Severity::stop; });
  return stop ? exit_stop : exit_good;
}

}  // namespace

void add_outside_flag(CLI::App& app, Outside& chosen) {
  app.add_flag_callback(
      "--allow-outside", [&chosen] { chosen = Outside::allowed; },
      "Read drawings, bases and necks that lie outside the board's folder too");
}

void add_units_option(CLI::App& app, std::string& chosen, const std::string& help) {
  app.add_option("--units", chosen, help + "; the board file's units when not given")
      ->type_name("UNIT")
      ->check(CLI::IsMember({"mm", "in"}));
}

BoardFile told_in(BoardFile file, const std::string& chosen) {
  if (!chosen.empty()) file.board = told_in(std::move(file.board), chosen == "in" ? Units::inch : Units::mm);
  return file;
}

Command check_command(CLI::App& program) {
  struct Options {
    std::string board, units;
    bool json = false;
    Outside outside = Outside::refused;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("check", "Say what is wrong with a board file, before any wood is cut.");
  app->add_option("BOARD", options->board, "The board file")->required();
  app->add_flag("--json", options->json, "Print the list as JSON, for other programs");
  add_units_option(*app, options->units, "The unit of lengths in messages; values in JSON are in mm");
  add_outside_flag(*app, options->outside);
  return {app, [options] { return check(options->board, options->json, options->units, options->outside); }};
}

}  // namespace sagitta
