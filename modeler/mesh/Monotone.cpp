#include "mesh/Monotone.hpp"

#include <algorithm>

#include "mesh/Orient2d.hpp"

namespace sagitta {
namespace {

bool before(Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; }

struct Corner {
  int index = 0;
  bool lower = false;  ///< of the side that runs east
};

/// The corners from west to east; empty where the polygon turns back.
std::vector<Corner> eastward(const std::vector<Point>& polygon) {
  const int n = static_cast<int>(polygon.size());
  const auto west = std::min_element(polygon.begin(), polygon.end(), before);
  const int first = static_cast<int>(west - polygon.begin());
  std::vector<Corner> lower, upper;
  int i = first;
  for (; before(polygon[i], polygon[(i + 1) % n]); i = (i + 1) % n) lower.push_back({i, true});
  for (; i != first; i = (i + 1) % n) {
    if (!before(polygon[(i + 1) % n], polygon[i])) return {};
    upper.push_back({i, false});
  }
  std::reverse(upper.begin(), upper.end());
  std::vector<Corner> all(static_cast<std::size_t>(n));
  std::merge(lower.begin(), lower.end(), upper.begin(), upper.end(), all.begin(),
             [&](const Corner& a, const Corner& b) { return before(polygon[a.index], polygon[b.index]); });
  return all;
}

}  // namespace

std::vector<std::array<int, 3>> cut_monotone(const std::vector<Point>& polygon) {
  const std::vector<Corner> corners = eastward(polygon);
  if (corners.size() < 3) return {};
  std::vector<std::array<int, 3>> triangles;
  bool flat = false;
  /// b follows a on the lower side, or on the upper side the other way round.
  const auto add = [&](int a, int b, int c, bool lower) {
    const std::array<int, 3> triangle = lower ? std::array{a, b, c} : std::array{b, a, c};
    flat = flat || orient2d(polygon[triangle[0]], polygon[triangle[1]], polygon[triangle[2]]) <= 0;
    triangles.push_back(triangle);
  };
  std::vector<Corner> open{corners[0], corners[1]};  // from west to east, none of whose corners is an ear
  for (std::size_t i = 2; i < corners.size(); ++i) {
    const Corner next = corners[i];
    const bool last = i + 1 == corners.size();
    const Corner latest = open.back();
    if (last || next.lower != latest.lower) {
      for (std::size_t k = 0; k + 1 < open.size(); ++k) add(open[k].index, open[k + 1].index, next.index, latest.lower);
      open = {latest, next};
      continue;
    }
    while (open.size() > 1) {
      const int a = open[open.size() - 2].index, b = open.back().index;
      const double way = orient2d(polygon[a], polygon[b], polygon[next.index]);
      if (next.lower ? way <= 0 : way >= 0) break;
      add(a, b, next.index, next.lower);
      open.pop_back();
    }
    open.push_back(next);
  }
  if (flat || triangles.size() + 2 != polygon.size()) return {};
  return triangles;
}

}  // namespace sagitta
