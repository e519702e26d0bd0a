#include "polygon/Clusters.hpp"

#include <algorithm>
#include <numeric>

#include "polygon/DisjointSets.hpp"

namespace sagitta {

std::vector<std::vector<int>> clusters(const std::vector<Box>& boxes, double apart) {
  const int n = static_cast<int>(boxes.size());
  DisjointSets groups(boxes.size());
  std::vector<int> order(n), active;
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(),
            [&](int a, int b) { return std::pair(boxes[a].low.x, a) < std::pair(boxes[b].low.x, b); });
  for (const int i : order) {
    std::erase_if(active, [&](int k) { return boxes[k].high.x + apart < boxes[i].low.x; });
    for (const int k : active)
      if (boxes[i].overlaps(boxes[k], apart)) groups.join(i, k);
    active.push_back(i);
  }
  std::vector<std::vector<int>> found(n);
  for (int i = 0; i < n; ++i) found[groups.of(i)].push_back(i);
  std::erase_if(found, [](const auto& group) { return group.empty(); });
  return found;
}

}  // namespace sagitta
