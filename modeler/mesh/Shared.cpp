#include "mesh/Shared.hpp"

#include <algorithm>
#include <map>

namespace sagitta {
namespace {

using Edge = std::pair<std::uint32_t, std::uint32_t>;

/// The corner that an edge leaves out, the triangle's corners turned so that it comes last.
Corners3 opposite_last(Corners3 t, const Edge& edge) {
  while (t[2] == edge.first || t[2] == edge.second) std::rotate(t.begin(), t.begin() + 1, t.end());
  return t;
}

}  // namespace

void add_edges(EdgeSet& edges, const Corners3& triangle) {
  for (std::size_t i = 0; i < 3; ++i) edges.insert(std::minmax(triangle[i], triangle[(i + 1) % 3]));
}

void turn_shared_sides(std::vector<Corners3>& triangles, std::size_t first, const EdgeSet& taken) {
  std::map<Edge, std::vector<std::size_t>> beside;
  for (std::size_t t = first; t < triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i) beside[std::minmax(triangles[t][i], triangles[t][(i + 1) % 3])].push_back(t);
  std::set<std::size_t> turned;
  for (const auto& [edge, both] : beside) {
    if (both.size() != 2 || !taken.contains(edge) || turned.contains(both[0]) || turned.contains(both[1])) continue;
    const Corners3 one = opposite_last(triangles[both[0]], edge), two = opposite_last(triangles[both[1]], edge);
    const Edge across = std::minmax(one[2], two[2]);
    if (beside.contains(across) || taken.contains(across)) continue;
    triangles[both[0]] = {one[0], two[2], one[2]};
    triangles[both[1]] = {two[2], one[1], one[2]};
    turned.insert(both.begin(), both.end());
  }
}

}  // namespace sagitta
