#include "rules/Catalogue.hpp"

#include "rules/RuleText.hpp"

namespace sagitta {

std::string findings_text() {
  std::string text;
  for (const Rule& rule : catalogue) text += rule_text(rule);
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
