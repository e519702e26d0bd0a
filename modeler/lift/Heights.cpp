#include "lift/Heights.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Heights do not change places within an edge: equal at five places means equal all along.
bool same_height(const Plan& plan, const PlanEdge& edge, const Bound& a, const Bound& b) {
  if (a == b) return true;
  for (const double t : {0.5, 0.0, 1.0, 0.25, 0.75}) {
    const Point p = plan.map.at(edge, t);
    if (std::abs(height(plan.surface, a, p) - height(plan.surface, b, p)) > tolerance::height) return false;
  }
  return true;
}

}  // namespace

EdgeHeights heights_over(const Plan& plan, const PlanEdge& edge) {
  const Cell& left = plan.cells[edge.left];
  const Cell& right = plan.cells[edge.right];
  const std::array<const Bound*, 4> bounds{&left.top, &left.bottom, &right.top, &right.bottom};
  std::array<int, 4> which{-1, -1, -1, -1};
  EdgeHeights over;
  for (int i = 0; i < 4; ++i) {
    if (bounds[i]->kind == Bound::Kind::none) continue;
    auto found = std::find_if(over.heights.begin(), over.heights.end(),
                              [&](const Height& h) { return same_height(plan, edge, h.bound, *bounds[i]); });
    if (found == over.heights.end()) found = over.heights.insert(found, {*bounds[i], false, -1});
    if (bounds[i]->kind == Bound::Kind::level) found->bound = *bounds[i];
    which[i] = static_cast<int>(found - over.heights.begin());
  }
  const Point middle = plan.map.at(edge, 0.5);
  std::vector<int> order(over.heights.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
  const auto z = [&](int i) { return height(plan.surface, over.heights[i].bound, middle); };
  std::sort(order.begin(), order.end(), [&](int a, int b) { return z(a) < z(b); });
  std::vector<Height> rising;
  std::vector<int> place(order.size());
  for (const int i : order) {
    place[i] = static_cast<int>(rising.size());
    rising.push_back(over.heights[i]);
  }
  over.heights = std::move(rising);
  for (int& w : which)
    if (w >= 0) w = place[w];

  for (int i = 0; i < 4; ++i) {
    const Bound& across = *bounds[(i + 2) % 4];
    if (which[i] < 0 || across == *bounds[i]) continue;
    over.border[i] = which[i];
    over.heights[which[i]].used = true;
  }
  for (int low = 0; low + 1 < static_cast<int>(over.heights.size()); ++low) {
    const bool on_left = which[0] > low && which[1] <= low;
    const bool on_right = which[2] > low && which[3] <= low;
    if (on_left == on_right) continue;
    if (!over.walls.empty() && over.walls.back().high == low && over.walls.back().wood_left == on_left &&
        !over.heights[low].used) {
      over.walls.back().high = low + 1;
    } else {
      over.walls.push_back({low, low + 1, on_left});
    }
    over.heights[low].used = over.heights[low + 1].used = true;
  }
  return over;
}

}  // namespace sagitta
