#include "inlay/Clusters.hpp"

#include <algorithm>
#include <numeric>

namespace sagitta {

std::vector<std::vector<int>> clusters(const std::vector<Box>& boxes, double apart) {
  const int n = static_cast<int>(boxes.size());
  std::vector<int> first(n), order(n), active;
  std::iota(first.begin(), first.end(), 0);
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(), [&](int a, int b) {
    return std::pair(boxes[a].low.x, a) < std::pair(boxes[b].low.x, b);
  });
  const auto root = [&](int i) {
    while (first[i] != i) i = first[i] = first[first[i]];
    return i;
  };
  for (const int i : order) {
    std::erase_if(active, [&](int k) { return boxes[k].high.x + apart < boxes[i].low.x; });
    for (const int k : active) {
      if (!boxes[i].overlaps(boxes[k], apart)) continue;
      const int a = root(i), b = root(k);
      first[std::max(a, b)] = std::min(a, b);
    }
    active.push_back(i);
  }
  std::vector<std::vector<int>> groups(n);
  for (int i = 0; i < n; ++i) groups[root(i)].push_back(i);
  std::erase_if(groups, [](const auto& group) { return group.empty(); });
  return groups;
}

}  // namespace sagitta
