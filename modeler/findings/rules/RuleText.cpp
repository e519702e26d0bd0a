#include "rules/RuleText.hpp"

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

}  // namespace

std::string limit_text(const Rule& rule) {
  return std::string(bar_words(rule.bar)) + " " + decimal(rule.limit) + " " + std::string(rule.unit);
}

std::string rule_text(const Rule& rule) {
  return std::string(severity_name(rule.severity)) + ": " + std::string(rule.name) + ": " + std::string(rule.measures) +
         ", " + limit_text(rule) + " (" + std::string(rule.source) + ")\n    if ignored: " + std::string(rule.cost) +
         "\n";
}

}  // namespace sagitta
