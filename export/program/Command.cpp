#include "program/Command.hpp"

#include "board/Spelling.hpp"
#include "rules/BoardUnits.hpp"

namespace sagitta {

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

std::string unknown(const std::string& kind, const std::string& word, const std::vector<std::string>& known) {
  const std::string nearest = nearest_word(word, known);
  return "there is no " + kind + " \"" + word + "\"" + (nearest.empty() ? "" : " (did you mean " + nearest + "?)");
}

Paper paper_wanted(const std::string& name) {
  if (const Paper* paper = paper_named(name)) return *paper;
  throw UsageError("--paper " + name + ": there is no such paper; choose from " + paper_list);
}

}  // namespace sagitta
