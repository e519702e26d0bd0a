#include "plan/Pinch.hpp"

#include <algorithm>
#include <array>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// The wood upright over a vertex, within one of the cells about it.
struct Sector {
  std::array<std::array<double, 2>, 2> runs{};  ///< from, to
  int count = 0;

  void add(double low, double high) {
    if (high - low > tolerance::height) runs[count++] = {low, high};
  }
  bool solid(double z) const {
    for (int i = 0; i < count; ++i)
      if (runs[i][0] < z && z < runs[i][1]) return true;
    return false;
  }
};

bool is_pinched(const std::vector<Sector>& around) {
  std::vector<double> heights;
  for (const Sector& s : around)
    for (int i = 0; i < s.count; ++i) heights.insert(heights.end(), s.runs[i].begin(), s.runs[i].end());
  std::sort(heights.begin(), heights.end());
  for (std::size_t i = 0; i + 1 < heights.size(); ++i) {
    if (heights[i + 1] - heights[i] <= tolerance::height) continue;
    const double z = (heights[i] + heights[i + 1]) / 2;
    int changes = 0;
    for (std::size_t k = 0; k < around.size(); ++k)
      changes += around[k].solid(z) != around[(k + 1) % around.size()].solid(z) ? 1 : 0;
    if (changes > 2) return true;
  }
  return false;
}

int rank(Source::Kind kind) {
  switch (kind) {
    case Source::Kind::side_dot:
      return 3;
    case Source::Kind::pin:
      return 2;
    case Source::Kind::pocket:
      return 1;
    default:
      return 0;
  }
}

}  // namespace

std::vector<int> pinched_vertices(const Plan& plan) {
  const Subdivision& map = plan.map;
  std::vector<HalfEdge> outgoing(map.vertices.size(), -1);
  for (HalfEdge h = 0; h < static_cast<int>(map.turn.size()); ++h) outgoing[map.origin(h)] = h;
  std::vector<int> pinched;
  std::vector<Sector> around;
  for (int v = 0; v < static_cast<int>(map.vertices.size()); ++v) {
    if (outgoing[v] < 0) continue;
    around.clear();
    HalfEdge h = outgoing[v];
    do {
      const Cell& cell = plan.cells[map.face(h)];
      const auto z = [&](const Bound& bound) { return height(plan.surface, bound, map.vertices[v]); };
      Sector& sector = around.emplace_back();
      if (cell.below()) sector.add(z(cell.bottom), z(cell.top_of_lower()));
      if (cell.above()) sector.add(z(cell.vault), z(cell.top));
      h = map.turn[h];
    } while (h != outgoing[v]);
    if (around.size() > 3 && is_pinched(around)) pinched.push_back(v);
  }
  return pinched;
}

int lesser_feature_at(const Plan& plan, int vertex) {
  int best = -1, best_rank = 0;
  for (const PlanEdge& edge : plan.map.edges) {
    if (edge.from != vertex && edge.to != vertex) continue;
    const int r = rank(edge.source.kind);
    if (r == 0 || r < best_rank || (r == best_rank && edge.source.feature < best)) continue;
    best = edge.source.feature;
    best_rank = r;
  }
  return best;
}

}  // namespace sagitta
