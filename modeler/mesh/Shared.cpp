#include "mesh/Shared.hpp"

#include <algorithm>
#include <map>
#include <span>

namespace sagitta {
namespace {

using Edge = std::pair<std::uint32_t, std::uint32_t>;

/// The corner that an edge leaves out, the triangle's corners turned so that it comes last.
Corners3 opposite_last(Corners3 t, const Edge& edge) {
  while (t[2] == edge.first || t[2] == edge.second) std::rotate(t.begin(), t.begin() + 1, t.end());
  return t;
}

/// The sides of all triangles by their smaller corner.
class SideRows {
 public:
  explicit SideRows(const std::vector<Corners3>& triangles) : triangles_(triangles) {
    std::uint32_t most = 0;
    for (const Corners3& t : triangles) most = std::max({most, t[0], t[1], t[2]});
    begin_.assign(most + 2, 0);
    for (std::size_t side = 0; side < 3 * triangles.size(); ++side) ++begin_[edge(side).first + 1];
    for (std::size_t i = 1; i < begin_.size(); ++i) begin_[i] += begin_[i - 1];
    sides_.resize(3 * triangles.size());
    std::vector<std::size_t> next(begin_.begin(), begin_.end() - 1);
    for (std::size_t side = 0; side < sides_.size(); ++side) sides_[next[edge(side).first]++] = side;
  }

  std::size_t count() const { return begin_.size() - 1; }
  std::span<const std::size_t> row(std::size_t corner) const {
    return std::span(sides_).subspan(begin_[corner], begin_[corner + 1] - begin_[corner]);
  }
  std::uint32_t other_end(std::size_t side) const { return edge(side).second; }

 private:
  Edge edge(std::size_t side) const {
    const Corners3& t = triangles_[side / 3];
    return std::minmax(t[side % 3], t[(side + 1) % 3]);
  }

  const std::vector<Corners3>& triangles_;
  std::vector<std::size_t> begin_, sides_;
};

/// Adds the faces that have the side from the row's corner to `end` twice.
void add_sharing(const SideRows& sides, std::span<const std::size_t> row, std::uint32_t end,
                 const std::vector<std::int32_t>& face, std::set<std::int32_t>& found) {
  std::set<std::int32_t> met;
  for (const std::size_t side : row)
    if (sides.other_end(side) == end && !met.insert(face[side / 3]).second) found.insert(face[side / 3]);
}

/// Faces that have a side twice, inside, which has more than two triangles in all.
std::set<std::int32_t> faces_that_share(const std::vector<Corners3>& triangles, const std::vector<std::int32_t>& face) {
  const SideRows sides(triangles);
  std::vector<std::uint8_t> uses(sides.count());
  std::set<std::int32_t> found;
  for (std::size_t corner = 0; corner < sides.count(); ++corner) {
    const auto row = sides.row(corner);
    for (const std::size_t side : row) uses[sides.other_end(side)] = 0;
    for (const std::size_t side : row) {
      const std::uint32_t end = sides.other_end(side);
      constexpr std::uint8_t many = 3;
      if (uses[end] < many && ++uses[end] == many) add_sharing(sides, row, end, face, found);
    }
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
