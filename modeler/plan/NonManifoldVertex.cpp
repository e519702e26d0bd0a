#include "plan/NonManifoldVertex.hpp"

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

std::vector<double> heights_of(const std::vector<Sector>& around) {
  std::vector<double> heights;
  for (const Sector& s : around)
    for (int i = 0; i < s.count; ++i) heights.insert(heights.end(), s.runs[i].begin(), s.runs[i].end());
  std::sort(heights.begin(), heights.end());
  const auto same = [](double a, double b) { return b - a <= tolerance::height; };
  heights.erase(std::unique(heights.begin(), heights.end(), same), heights.end());
  return heights;
}

/// Whether wood and air about the vertex change more often than twice at a height: wood meets wood, and air air, only
/// along the upright line.
bool is_line(const std::vector<Sector>& around, double z) {
  int changes = 0;
  for (std::size_t k = 0; k < around.size(); ++k)
    changes += around[k].solid(z) != around[(k + 1) % around.size()].solid(z) ? 1 : 0;
  return changes > 2;
}

/// Whether what lies under a height and what lies over it, of wood or of air, share no sector: they meet in one point
/// or along a level edge.
bool is_point(const std::vector<Sector>& around, double under, double over) {
  for (const bool wood : {true, false}) {
    bool low = false, high = false, both = false;
    for (const Sector& s : around) {
      const bool below = s.solid(under) == wood, above = s.solid(over) == wood;
      low = low || below;
      high = high || above;
      both = both || (below && above);
    }
    if (low && high && !both) return true;
  }
  return false;
}

bool is_pinched(const std::vector<Sector>& around) {
  const std::vector<double> heights = heights_of(around);
  if (heights.empty()) return false;
  std::vector<double> between{heights.front() - 1};
  for (std::size_t i = 0; i + 1 < heights.size(); ++i) between.push_back((heights[i] + heights[i + 1]) / 2);
  between.push_back(heights.back() + 1);
  for (std::size_t i = 0; i + 1 < between.size(); ++i)
    if (is_line(around, between[i]) || is_point(around, between[i], between[i + 1])) return true;
  return false;
}

int rank(Source::Kind kind) {
  switch (kind) {
    case Source::Kind::side_dot:
      return 4;
    case Source::Kind::pin:
      return 3;
    case Source::Kind::pocket:
    case Source::Kind::cut:
      return 2;
    case Source::Kind::slot:
    case Source::Kind::nut:
      return 1;
    default:
      return 0;
  }
}

}  // namespace

std::vector<int> non_manifold_vertices(const Plan& plan) {
  const Subdivision& map = plan.map;
  std::vector<HalfEdge> outgoing(map.vertices.size(), -1);
  for (HalfEdge h = 0; h < static_cast<int>(map.next_around_vertex.size()); ++h) outgoing[map.origin(h)] = h;
  std::vector<int> pinched;
  std::vector<Sector> around;
  for (int v = 0; v < static_cast<int>(map.vertices.size()); ++v) {
    if (outgoing[v] < 0) continue;
    around.clear();
    HalfEdge h = outgoing[v];
    do {
      const Cell& cell = plan.cells[map.face(h)];
      const auto z = [&](const BoundingSurface& bound) { return height(plan.surface, bound, map.vertices[v]); };
      Sector& sector = around.emplace_back();
      if (cell.below()) sector.add(z(cell.bottom), z(cell.top_of_lower()));
      if (cell.above()) sector.add(z(cell.vault), z(cell.top));
      h = map.next_around_vertex[h];
    } while (h != outgoing[v]);
    if (around.size() > 1 && is_pinched(around)) pinched.push_back(v);
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
