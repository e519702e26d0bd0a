#include "rules/Catalogue.hpp"

#include "board/Length.hpp"

namespace sagitta {
namespace {

std::string_view bar_words(Bar bar) {
  switch (bar) {
    case Bar::least:
      return "at least";
    case Bar::above:
      return "more than";
    case Bar::most:
      break;
  }
  return "at most";
}

std::string limit_text(const Rule& rule) {
  return std::string(bar_words(rule.bar)) + " " + decimal(rule.limit) + " " + std::string(rule.unit);
}

}  // namespace

std::string findings_text() {
  std::string text;
  for (const Rule& rule : catalogue) {
    text += std::string(severity_name(rule.severity)) + ": " + std::string(rule.name) + ": " +
            std::string(rule.measures) + ", " + limit_text(rule) + " (" + std::string(rule.source) + ")\n";
    text += "    if ignored: " + std::string(rule.cost) + "\n";
  }
  return text;
}

std::string findings_markdown() {
  std::string text;
  for (const Severity severity : {Severity::stop, Severity::look, Severity::note}) {
    text += (text.empty() ? "### `" : "\n### `") + std::string(severity_name(severity)) + "`\n\n";
    text += "| Finding | Measures | Limit | Source of the limit | If ignored |\n|---|---|---|---|---|\n";
    for (const Rule& rule : catalogue)
      if (rule.severity == severity)
        text += "| `" + std::string(rule.name) + "` | " + std::string(rule.measures) + " | " + limit_text(rule) +
                " | " + std::string(rule.source) + " | " + std::string(rule.cost) + " |\n";
  }
  return text;
}

}  // namespace sagitta
