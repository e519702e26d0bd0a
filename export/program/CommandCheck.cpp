#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

#include "findings/Findings.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"
#include "package/Report.hpp"
#include "program/Command.hpp"
#include "release/Release.hpp"
#include "rules/BoardUnits.hpp"
#include "rules/Work.hpp"
#include "tables/HeightTable.hpp"
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

int check(const std::string& path, bool json, const std::string& units, Outside outside) {
  const auto prepared = prepare(told_in(read_board(path, outside), units), outside);
  const std::vector<Problem> problems = problems_of(prepared);
  const std::vector<Finding> findings = findings_of(prepared);
  if (json)
    std::cout << answer_json(prepared, problems, findings).dump(2, ' ', true, nlohmann::json::error_handler_t::replace)
              << "\n";
  else
    std::cout << verdict(path, problems, findings) << problem_text(problems) << finding_text(findings);
  if (!problems.empty()) return exit_input;
  const bool stop = std::any_of(findings.begin(), findings.end(),
                                [](const Finding& finding) { return finding.severity == Severity::stop; });
  return stop ? exit_stop : exit_good;
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

int check_before(const std::string& path, Operation operation, bool json, Outside outside) {
  const BoardFile file = read_board(path, outside);
  const Release release = release_before(file, operation, outside);
  if (json)
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
    std::string before;
    bool json = false;
    Outside outside = Outside::refused;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("check", "Say what is wrong with a board file, before any wood is cut.");
  app->add_option("BOARD", options->board, "The board file")->required();
  app->add_flag("--json", options->json, "Print the list as JSON, for other programs");
  app->add_option("--before", options->before,
                  "Say in one line whether this operation may be cut now that something was measured: exits with 0 as "
                  "planned, 5 with the changed numbers that it prints, 1 not")
      ->type_name("OPERATION");
  add_units_option(*app, options->units, "The unit of lengths in messages; values in JSON are in mm");
  add_outside_flag(*app, options->outside);
  return {app, [options] {
            if (!options->before.empty())
              return check_before(options->board, operation_wanted(options->before), options->json, options->outside);
            return check(options->board, options->json, options->units, options->outside);
          }};
}

}  // namespace sagitta
