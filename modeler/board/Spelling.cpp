#include "board/Spelling.hpp"

#include <algorithm>

namespace sagitta {

int edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::vector<int>> cost(a.size() + 1, std::vector<int>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        cost[i][j] = static_cast<int>(i + j);
        continue;
      }
      cost[i][j] =
          std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, cost[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
      }
    }
  }
  return cost[a.size()][b.size()];
}

std::string nearest_word(std::string_view word, const std::vector<std::string>& known) {
  constexpr std::size_t longest = 64;
  if (word.size() > longest) return "";
  const int allowed = std::max(2, static_cast<int>(word.size()) / 3);
  int best = allowed + 1;
  std::string nearest;
  for (const std::string& candidate : known) {
    const int distance = edit_distance(word, candidate);
    if (distance >= best || distance >= static_cast<int>(std::min(word.size(), candidate.size()))) continue;
    best = distance;
    nearest = candidate;
  }
  constexpr std::size_t telling = 3;  // letters; fewer begin too many words
  if (!nearest.empty() || word.size() < telling) return nearest;
  const auto begun = std::ranges::find_if(known, [&](const std::string& each) { return each.starts_with(word); });
  return begun == known.end() ? std::string() : *begun;
}

std::vector<std::string> words(std::string_view list) {
  std::vector<std::string> result;
  while (!list.empty()) {
    const std::size_t space = std::min(list.find(' '), list.size());
    result.emplace_back(list.substr(0, space));
    list.remove_prefix(std::min(space + 1, list.size()));
  }
  return result;
}

}  // namespace sagitta
