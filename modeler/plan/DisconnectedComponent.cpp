#include "plan/DisconnectedComponent.hpp"

#include <algorithm>
#include <map>

#include "plane/Tolerance.hpp"
#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

constexpr double stations[] = {0.1, 0.3, 0.5, 0.7, 0.9};  // along an edge

/// Layers of wood that are connected; layer 2 f is a cell's wood from the bottom up, 2 f + 1 that over a side hole.
class Layers {
 public:
  explicit Layers(const Plan& plan) : plan_(plan), groups_(2 * plan.cells.size()) {
    for (const PlanEdge& edge : plan.map.edges) join(edge);
  }

  std::optional<DisconnectedCell> lightest() {
    std::map<int, int> size;  // layers in each group
    for (int layer = 0; layer < static_cast<int>(2 * plan_.cells.size()); ++layer)
      if (there(layer)) ++size[groups_.of(layer)];
    if (size.size() < 2) return std::nullopt;
    const auto least =
        std::min_element(size.begin(), size.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    return DisconnectedCell{least->first / 2, least->first % 2 == 1};
  }

 private:
  bool there(int layer) const {
    const Cell& cell = plan_.cells[layer / 2];
    return layer % 2 ? cell.above() : cell.below();
  }
  const BoundingSurface& floor(int layer) const {
    return layer % 2 ? plan_.cells[layer / 2].vault : plan_.cells[layer / 2].bottom;
  }
  const BoundingSurface& ceiling(int layer) const {
    return layer % 2 ? plan_.cells[layer / 2].top : plan_.cells[layer / 2].top_of_lower();
  }

  void join(const PlanEdge& edge) {
    for (const int a : {2 * edge.left, 2 * edge.left + 1})
      for (const int b : {2 * edge.right, 2 * edge.right + 1})
        if (there(a) && there(b) && groups_.of(a) != groups_.of(b) && overlap(edge, a, b)) groups_.join(a, b);
  }

  bool overlap(const PlanEdge& edge, int a, int b) const {
    for (const double t : stations) {
      const Point p = plan_.map.at(edge, t);
      const auto z = [&](const BoundingSurface& bound) { return height(plan_.surface, bound, p); };
      if (std::min(z(ceiling(a)), z(ceiling(b))) - std::max(z(floor(a)), z(floor(b))) > tolerance::height) return true;
    }
    return false;
  }

  const Plan& plan_;
  DisjointSets groups_;
};

}  // namespace

std::optional<DisconnectedCell> disconnected_cell(const Plan& plan) { return Layers(plan).lightest(); }

}  // namespace sagitta
