#include "plan/SideHoles.hpp"

#include <algorithm>
#include <cstdio>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// A hole counts as clear only with this much wood between it and anything else. mm.
constexpr double clear_by = 0.01;

std::string in_mm(double v) {
  char text[32];
  std::snprintf(text, sizeof text, "%.2f mm", v);
  return text;
}

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

class HoleMaker {
 public:
  HoleMaker(const Plan& plan, const Board& board, const Layout& layout) : plan_(plan), board_(board), layout_(layout) {}

  std::optional<SideHole> make(const SideDot& dot) {
    SideHole hole;
    hole.mouth = dot.mouth;
    hole.inward = dot.inward;
    hole.radius = dot.radius;
    hole.depth = dot.depth;
    const double edge = plan_.surface.height(dot.mouth);
    hole.z = edge / 2;
    if (board_.binding && board_.binding->height == 0) {  // the wood's own edge lies behind the binding
      hole.mouth = hole.mouth + board_.binding->width * hole.inward;
      hole.depth -= board_.binding->width;
    }
    judge(dot, hole, edge);
    if (hole.depth <= tolerance::vertex) return std::nullopt;
    return hole;
  }

  Faults faults;

 private:
  void judge(const SideDot& dot, const SideHole& hole, double edge) {
    const std::string where = "the side dot at fret " + std::to_string(dot.fret);
    const double left = hole.z - hole.radius;
    if (left < tolerance::least_floor)
      faults.push_back({"side_dots.diameter",
                        where + " is " + in_mm(2 * hole.radius) + " wide and the edge there only " + in_mm(edge) + " high",
                        "a dot of at most " + in_mm(edge - 2 * tolerance::least_floor) + " leaves wood above and below"});
    const Segment& side = dot.inward.y > 0 ? layout_.edges[0] : layout_.edges[1];
    const Point along = unit(side.b - side.a);
    const double to_start = sagitta::dot(dot.mouth - side.a, along), to_end = sagitta::dot(side.b - dot.mouth, along);
    if (std::min(to_start, to_end) < dot.radius + tolerance::snap)
      faults.push_back({"side_dots.frets", where + " runs past the end of the straight edge",
                        "choose another fret, or a smaller dot"});
    const double across = 2 * layout_.half_width(dot.mouth.x);
    if (dot.depth > across - tolerance::least_floor)
      faults.push_back({"side_dots.depth", where + " is deeper than the board is wide, " + in_mm(across), "make it shallower"});
  }

  const Plan& plan_;
  const Board& board_;
  const Layout& layout_;
};

bool apart(const SideHole& a, const SideHole& b) {
  return distance(a.mouth, b.mouth) > a.radius + b.radius + clear_by;
}

}  // namespace

Faults add_side_holes(Plan& plan, const Board& board, const Layout& layout) {
  HoleMaker maker(plan, board, layout);
  for (const SideDot& dot : layout.side_dots)
    if (std::optional<SideHole> hole = maker.make(dot)) {
      hole->feature = static_cast<int>(plan.features.size());
      plan.features.push_back({Source::Kind::side_dot, "side dot at fret " + std::to_string(dot.fret)});
      plan.side_holes.push_back(*hole);
    }
  for (SideHole& hole : plan.side_holes) {
    hole.clear = is_clear(plan, hole);
    for (const SideHole& other : plan.side_holes)
      if (&other != &hole && !apart(hole, other)) hole.clear = false;
  }
  return maker.faults;
}

}  // namespace sagitta
