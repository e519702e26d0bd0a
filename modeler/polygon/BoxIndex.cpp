#include "polygon/BoxIndex.hpp"

#include <algorithm>
#include <numeric>

namespace sagitta {
namespace {

constexpr std::size_t children = 8;  // of a node

/// Indices in an order in which neighbours stand together: in upright slices, each from low to high.
std::vector<int> tiled(const std::vector<Box>& boxes) {
  std::vector<int> order(boxes.size());
  std::iota(order.begin(), order.end(), 0);
  const auto twice_x = [&](int i) { return boxes[i].low.x + boxes[i].high.x; };
  const auto twice_y = [&](int i) { return boxes[i].low.y + boxes[i].high.y; };
  std::sort(order.begin(), order.end(),
            [&](int a, int b) { return std::pair(twice_x(a), a) < std::pair(twice_x(b), b); });
  const double leaves = std::ceil(static_cast<double>(boxes.size()) / children);
  const auto slice = static_cast<std::ptrdiff_t>(children * static_cast<std::size_t>(std::ceil(std::sqrt(leaves))));
  for (auto from = order.begin(); from != order.end();) {
    const auto to = from + std::min(slice, order.end() - from);
    std::sort(from, to, [&](int a, int b) { return std::pair(twice_y(a), a) < std::pair(twice_y(b), b); });
    from = to;
  }
  return order;
}

}  // namespace

BoxIndex::BoxIndex(const std::vector<Box>& boxes) : boxes_(boxes), order_(tiled(boxes)) {
  std::vector<Box> below;
  for (const int i : order_) below.push_back(boxes_[i]);
  while (levels_.empty() || levels_.back().size() > 1) {
    std::vector<Node>& level = levels_.emplace_back();
    for (std::size_t first = 0; first < below.size(); first += children) {
      const std::size_t count = std::min(children, below.size() - first);
      Node& node = level.emplace_back(Node{{}, static_cast<int>(first), static_cast<int>(count)});
      for (std::size_t i = first; i < first + count; ++i) node.box.add(below[i].low), node.box.add(below[i].high);
    }
    below.clear();
    for (const Node& node : level) below.push_back(node.box);
    if (below.empty()) return;
  }
}

std::vector<int> BoxIndex::near(const Box& box, double margin) const {
  std::vector<int> found;
  if (levels_.empty() || levels_.back().empty()) return found;
  const Node& root = levels_.back().front();
  if (root.box.overlaps(box, margin)) ask(levels_.size() - 1, root, box, margin, found);
  std::sort(found.begin(), found.end());
  return found;
}

void BoxIndex::ask(std::size_t level, const Node& node, const Box& box, double margin, std::vector<int>& found) const {
  for (int i = node.first; i < node.first + node.count; ++i) {
    if (level == 0) {
      const int index = order_[static_cast<std::size_t>(i)];
      if (boxes_[static_cast<std::size_t>(index)].overlaps(box, margin)) found.push_back(index);
      continue;
    }
    const Node& child = levels_[level - 1][static_cast<std::size_t>(i)];
    if (child.box.overlaps(box, margin)) ask(level - 1, child, box, margin, found);
  }
}

}  // namespace sagitta
