#include "package/Report.hpp"

#include <nlohmann/json.hpp>

#include "text/TerminalColour.hpp"
#include "text/TerminalText.hpp"

namespace sagitta {

std::string problem_text(const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& problem : problems) {
    text +=
        terminal_text(problem.file) + ":" + std::to_string(problem.line) + ":" + std::to_string(problem.column) + ": ";
    if (!problem.key.empty()) text += terminal_text(problem.key) + ": ";
    text += terminal_text(problem.message) + "\n";
    if (!problem.hint.empty()) text += "    " + terminal_text(problem.hint) + "\n";
  }
  return text;
}

namespace {

std::string line_of(const Finding& finding, bool colours) {
  const Hue hue = finding.severity == Severity::stop   ? Hue::red
                  : finding.severity == Severity::look ? Hue::yellow
                                                       : Hue::faint;
  return coloured(severity_name(finding.severity), hue, colours) + ": " + finding.name + ": " +
         terminal_text(finding.message) + "\n";
}

}  // namespace

std::string short_text(const std::vector<Finding>& findings, bool colours) {
  std::string text;
  for (const Finding& finding : findings) text += line_of(finding, colours);
  return text;
}

std::string finding_text(const std::vector<Finding>& findings, bool colours) {
  std::string text;
  for (const Finding& finding : findings) {
    text += line_of(finding, colours);
    text += "    if ignored: " + finding.cost + "\n";
    text += "    " + terminal_text(finding.suggestion) + "\n";
  }
  return text;
}

namespace {

nlohmann::ordered_json index_json(int index) {
  return index < 0 ? nlohmann::ordered_json(nullptr) : nlohmann::ordered_json(index);
}

nlohmann::ordered_json where_json(const FeatureId& where) {
  if (where.kind == FeatureId::Kind::none) return nullptr;
  const std::string_view table = table_of(where.kind);
  return {{"kind", kind_word(where.kind)},
          {"table", table.empty() ? nlohmann::ordered_json(nullptr) : nlohmann::ordered_json(table)},
          {"index", index_json(where.index)},
          {"fret", index_json(where.fret)},
          {"part", index_json(where.part)}};
}

nlohmann::ordered_json problem_json(const Problem& problem) {
  return {{"code", fault_word(problem.code)}, {"file", problem.file}, {"line", problem.line},
          {"column", problem.column},         {"key", problem.key},   {"where", where_json(problem.where)},
          {"message", problem.message},       {"hint", problem.hint}};
}

nlohmann::ordered_json fix_json(const std::optional<Fix>& fix) {
  if (!fix) return nullptr;
  return {{"key", fix->key}, {"value", fix->value}};
}

nlohmann::ordered_json finding_json(const Finding& finding) {
  return {{"name", finding.name},
          {"code", finding.name},
          {"severity", severity_name(finding.severity)},
          {"value", finding.value},
          {"limit", finding.limit},
          {"unit", finding.unit},
          {"at", finding.at},
          {"where", where_json(finding.where)},
          {"feature", finding.feature},
          {"message", finding.message},
          {"suggestion", finding.suggestion},
          {"cost", finding.cost},
          {"source", finding.source},
          {"fix", fix_json(finding.fix)}};
}

}  // namespace

nlohmann::ordered_json findings_json(const std::vector<Finding>& findings) {
  nlohmann::ordered_json found = nlohmann::ordered_json::array();
  for (const Finding& finding : findings) found.push_back(finding_json(finding));
  return found;
}

nlohmann::ordered_json check_json(const std::vector<Problem>& problems, const std::vector<Finding>& findings) {
  nlohmann::ordered_json wrong = nlohmann::ordered_json::array();
  for (const Problem& problem : problems) wrong.push_back(problem_json(problem));
  return {{"problems", wrong}, {"findings", findings_json(findings)}};
}

}  // namespace sagitta
