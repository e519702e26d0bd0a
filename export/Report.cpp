#include "export/Report.hpp"

#include <nlohmann/json.hpp>

namespace sagitta {

std::string problem_text(const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& problem : problems) {
    text += problem.file + ":" + std::to_string(problem.line) + ":" + std::to_string(problem.column) + ": ";
    if (!problem.key.empty()) text += problem.key + ": ";
    text += problem.message + "\n";
    if (!problem.hint.empty()) text += "    " + problem.hint + "\n";
  }
  return text;
}

nlohmann::ordered_json check_json(const std::vector<Problem>& problems) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const Problem& problem : problems)
    list.push_back({{"file", problem.file},
                    {"line", problem.line},
                    {"column", problem.column},
                    {"key", problem.key},
                    {"message", problem.message},
                    {"hint", problem.hint}});
  return {{"problems", list}, {"findings", nlohmann::ordered_json::array()}};
}

}  // namespace sagitta
