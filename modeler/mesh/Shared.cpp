#include "mesh/Shared.hpp"

#include <algorithm>
#include <compare>
#include <map>

namespace sagitta {
namespace {

using Edge = std::pair<std::uint32_t, std::uint32_t>;

/// The corner that an edge leaves out, the triangle's corners turned so that it comes last.
Corners3 opposite_last(Corners3 t, const Edge& edge) {
  while (t[2] == edge.first || t[2] == edge.second) std::rotate(t.begin(), t.begin() + 1, t.end());
  return t;
}

struct Side {
  Edge edge;
  std::size_t triangle = 0;
  friend auto operator<=>(const Side&, const Side&) = default;
};

/// Faces that have a side twice, inside, which has more than two triangles in all.
std::set<std::int32_t> faces_that_share(const std::vector<Corners3>& triangles, const std::vector<std::int32_t>& face) {
  std::vector<Side> sides;
  sides.reserve(3 * triangles.size());
  for (std::size_t t = 0; t < triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i) sides.push_back({std::minmax(triangles[t][i], triangles[t][(i + 1) % 3]), t});
  std::sort(sides.begin(), sides.end());
  std::set<std::int32_t> found;
  for (std::size_t i = 0, end = 0; i < sides.size(); i = end) {
    for (end = i; end < sides.size() && sides[end].edge == sides[i].edge;) ++end;
    if (end - i <= 2) continue;
    for (std::size_t k = i; k + 1 < end; ++k)
      if (face[sides[k].triangle] == face[sides[k + 1].triangle]) found.insert(face[sides[k].triangle]);
  }
  return found;
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

void turn_shared_sides(std::vector<Corners3>& triangles, const std::vector<std::int32_t>& face) {
  std::set<std::int32_t> stuck;
  constexpr int most_turns = 100;  // one face at a time: another may then share no more, or share a side that is new
  for (int turns = 0; turns < most_turns; ++turns) {
    const std::set<std::int32_t> sharing = faces_that_share(triangles, face);
    const auto next = std::find_if(sharing.begin(), sharing.end(), [&](std::int32_t f) { return !stuck.contains(f); });
    if (next == sharing.end()) return;
    const auto from = std::find(face.begin(), face.end(), *next);
    const auto first = triangles.begin() + (from - face.begin());
    const auto last = first + std::count(from, face.end(), *next);
    EdgeSet others;
    for (auto t = triangles.begin(); t != triangles.end(); ++t)
      if (t < first || t >= last) add_edges(others, *t);
    std::vector<Corners3> own(first, last);
    turn_shared_sides(own, 0, others);
    std::equal(own.begin(), own.end(), first) ? void(stuck.insert(*next)) : stuck.clear();
    std::copy(own.begin(), own.end(), first);
  }
}

}  // namespace sagitta
