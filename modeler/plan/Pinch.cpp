#include "plan/Pinch.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

struct Sector {
  double low = 0, high = 0;
  bool wood = false;
};

bool is_pinched(const std::vector<Sector>& around) {
  std::vector<double> heights;
  for (const Sector& s : around)
    if (s.wood) {
      heights.push_back(s.low);
      heights.push_back(s.high);
    }
  std::sort(heights.begin(), heights.end());
  for (std::size_t i = 0; i + 1 < heights.size(); ++i) {
    if (heights[i + 1] - heights[i] <= tolerance::height) continue;
    const double z = (heights[i] + heights[i + 1]) / 2;
    int changes = 0;
    const auto solid = [&](const Sector& s) { return s.wood && s.low < z && z < s.high; };
    for (std::size_t k = 0; k < around.size(); ++k)
      changes += solid(around[k]) != solid(around[(k + 1) % around.size()]) ? 1 : 0;
    if (changes > 2) return true;
  }
  return false;
}

int rank(Source::Kind kind) { return kind == Source::Kind::pin ? 2 : kind == Source::Kind::pocket ? 1 : 0; }

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
      Sector sector;
      sector.wood = cell.top.kind != Bound::Kind::none;
      if (sector.wood) {
        sector.low = height(plan.surface, cell.bottom, map.vertices[v]);
        sector.high = height(plan.surface, cell.top, map.vertices[v]);
      }
      around.push_back(sector);
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
