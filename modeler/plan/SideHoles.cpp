#include "plan/SideHoles.hpp"

#include <algorithm>
#include <optional>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// A hole counts as clear only with this much wood between it and anything else. mm.
constexpr double clear_by = 0.01;

/// The hole's rectangle from above, u along its axis from the mouth, v across it.
struct Footprint {
  const SideHole& hole;

  Point local(Point p) const { return {dot(p - hole.mouth, hole.inward), cross(hole.inward, p - hole.mouth)}; }
};

/// Wood from below the hole to above it at p, in this cell.
bool covers(const Plan& plan, const Cell& cell, const SideHole& hole, Point p) {
  if (cell.top.kind == Bound::Kind::none) return false;
  return height(plan.surface, cell.top, p) > hole.z + hole.radius + clear_by &&
         height(plan.surface, cell.bottom, p) < hole.z - hole.radius - clear_by;
}

/// Every edge of the plan over the hole has wood on both sides of it above and below the hole, and so has the middle.
bool is_clear(const Plan& plan, const SideHole& hole) {
  const Footprint footprint{hole};
  bool edge_seen = false;
  for (const PlanEdge& edge : plan.map.edges) {
    const double size = distance(plan.map.vertices[edge.from], plan.map.vertices[edge.to]);
    const int samples = std::clamp(static_cast<int>(8 * size / hole.radius), 8, 4000);
    for (int i = 0; i <= samples; ++i) {
      const Point p = plan.map.at(edge, static_cast<double>(i) / samples);
      const Point q = footprint.local(p);
      if (q.x > hole.depth + clear_by || q.x < -clear_by || std::abs(q.y) > hole.radius + clear_by) continue;
      const Cell& left = plan.cells[edge.left];
      const Cell& right = plan.cells[edge.right];
      if (std::abs(q.x) <= clear_by) {  // the wall itself: wood on the inner side
        const Cell& inner = left.top.kind == Bound::Kind::none ? right : left;
        edge_seen = true;
        if (!covers(plan, inner, hole, p)) return false;
      } else if (!covers(plan, left, hole, p) || !covers(plan, right, hole, p)) {
        return false;
      }
    }
  }
  return edge_seen;
}

/// None where the binding is thicker than the hole is deep.
std::optional<SideHole> hole_of(const Plan& plan, const Board& board, const SideDot& dot) {
  SideHole hole;
  hole.mouth = dot.mouth;
  hole.inward = dot.inward;
  hole.radius = dot.radius;
  hole.depth = dot.depth;
  hole.z = plan.surface.height(dot.mouth) / 2;
  if (board.binding && board.binding->height == 0) {  // the wood's own edge lies behind the binding
    hole.mouth = hole.mouth + board.binding->width * hole.inward;
    hole.depth -= board.binding->width;
  }
  if (hole.depth <= tolerance::vertex) return std::nullopt;
  return hole;
}

bool apart(const SideHole& a, const SideHole& b) { return distance(a.mouth, b.mouth) > a.radius + b.radius + clear_by; }

}  // namespace

void add_side_holes(Plan& plan, const Board& board, const Layout& layout) {
  for (const SideDot& dot : layout.side_dots)
    if (std::optional<SideHole> hole = hole_of(plan, board, dot)) {
      hole->feature = static_cast<int>(plan.features.size());
      plan.features.push_back({Source::Kind::side_dot, "side dot at fret " + std::to_string(dot.fret)});
      plan.side_holes.push_back(*hole);
    }
  for (SideHole& hole : plan.side_holes) {
    hole.clear = is_clear(plan, hole);
    for (const SideHole& other : plan.side_holes)
      if (&other != &hole && !apart(hole, other)) hole.clear = false;
  }
}

}  // namespace sagitta
