#include "lift/Heights.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Heights do not change places within an edge: equal at five places means equal all along.
bool same_height(const Plan& plan, const PlanEdge& edge, const BoundingSurface& a, const BoundingSurface& b) {
  if (a == b) return true;
  if (edge.crossing >= 0) {
    const IntersectionCurve& crossing = plan.map.crossings[edge.crossing];
    if (meets_along(crossing, a) && meets_along(crossing, b)) return true;
  }
  for (const double t : {0.5, 0.0, 1.0, 0.25, 0.75}) {
    const Point p = plan.map.at(edge, t);
    if (std::abs(height(plan.surface, a, p) - height(plan.surface, b, p)) > tolerance::height) return false;
  }
  return true;
}

using Sides = std::array<const BoundingSurface*, 8>;

Sides sides_beside(const Plan& plan, const PlanEdge& edge) {
  Sides all{};
  for (int i = 0; i < 8; ++i) all[i] = &bound_of(plan.cells[i < 4 ? edge.left : edge.right], sides[i % 4]);
  return all;
}

/// The distinct heights, not yet in order; for each side the index of its own.
std::array<int, 8> gather(const Plan& plan, const PlanEdge& edge, const Sides& all, std::vector<Height>& heights) {
  std::array<int, 8> which{};
  for (int i = 0; i < 8; ++i) {
    which[i] = -1;
    if (all[i]->kind == BoundingSurface::Kind::none) continue;
    auto found = std::find_if(heights.begin(), heights.end(),
                              [&](const Height& h) { return same_height(plan, edge, h.bound, *all[i]); });
    if (found == heights.end()) found = heights.insert(found, {*all[i], false, -1});
    if (all[i]->kind == BoundingSurface::Kind::level) found->bound = *all[i];
    which[i] = static_cast<int>(found - heights.begin());
  }
  return which;
}

void sort_rising(const Plan& plan, Point at, std::vector<Height>& heights, std::array<int, 8>& which) {
  std::array<std::pair<double, int>, 8> order;  // z, index
  std::array<int, 8> place{};
  for (std::size_t i = 0; i < heights.size(); ++i)
    order[i] = {height(plan.surface, heights[i].bound, at), static_cast<int>(i)};
  const auto end = order.begin() + static_cast<std::ptrdiff_t>(heights.size());
  std::sort(order.begin(), end);
  std::vector<Height> rising;
  rising.reserve(heights.size());
  for (auto it = order.begin(); it != end; ++it) {
    place[it->second] = static_cast<int>(rising.size());
    rising.push_back(heights[it->second]);
  }
  heights = std::move(rising);
  for (int& w : which)
    if (w >= 0) w = place[w];
}

/// Whether there is wood between height `low` and the next; `which` of one cell: top, bottom, trough, vault.
bool is_wood(const int* which, int low) {
  const int top = which[0], bottom = which[1], trough = which[2], vault = which[3];
  const bool in_lower = bottom >= 0 && bottom <= low && (trough >= 0 ? trough : top) > low;
  return in_lower || (vault >= 0 && vault <= low && top > low);
}

}  // namespace

const BoundingSurface& bound_of(const Cell& cell, Side side) {
  switch (side) {
    case Side::top:
      return cell.top;
    case Side::bottom:
      return cell.bottom;
    case Side::trough:
      return cell.trough;
    case Side::vault:
      break;
  }
  return cell.vault;
}

EdgeHeights heights_over(const Plan& plan, const PlanEdge& edge) {
  EdgeHeights over;
  over.heights.reserve(4);
  const Sides all = sides_beside(plan, edge);
  std::array<int, 8> which = gather(plan, edge, all, over.heights);
  sort_rising(plan, plan.map.at(edge, 0.5), over.heights, which);
  for (int i = 0; i < 8; ++i) {
    if (which[i] < 0 || *all[(i + 4) % 8] == *all[i]) continue;
    over.border[i] = which[i];
    over.heights[which[i]].used = true;
  }
  for (int low = 0; low + 1 < static_cast<int>(over.heights.size()); ++low) {
    const bool on_left = is_wood(which.data(), low), on_right = is_wood(which.data() + 4, low);
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
