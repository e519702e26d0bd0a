#include <algorithm>

#include "lift/Faces.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

/// A wall face seen flat: s along the wall to the right as seen from outside, z up.
struct WallView {
  const Shell& shell;
  const CurveSegment& segment;
  double sense;       ///< +1 when s grows along the segment
  double middle = 0;  ///< of a round wall: the direction half way along it

  Point flat(Point p, double z) const {
    if (segment.is_arc()) {
      const Point d = p - segment.centre;
      double turn = std::atan2(d.y, d.x) - middle;  // kept within half a turn
      turn -= 2 * std::numbers::pi * std::round(turn / (2 * std::numbers::pi));
      return {sense * (segment.sweep > 0 ? turn : -turn) * segment.radius, z};
    }
    return {sense * dot(p - segment.a, unit(segment.b - segment.a)), z};
  }
  Point vertex(int v) const { return flat(shell.vertices[v].p, shell.vertices[v].z); }
  Point along(Coedge use, double t) const {
    const ShellEdge& edge = shell.edges[use.edge];
    if (!use.forward) t = 1 - t;
    if (edge.upright) return between(vertex(edge.from), vertex(edge.to), t);
    const Point p = shell.at(edge, t);
    return flat(p, height(shell.plan.surface, edge.bound, p));
  }
};

/// The direction half way along a round wall of several arcs that follow each other, from its centre.
double middle_of(const Subdivision& map, const ShellFace& face) {
  constexpr double slack = tolerance::direction;
  const double full = 2 * std::numbers::pi;
  const auto apart = [&](double a, double b) { return std::abs(std::remainder(a - b, full)); };
  const auto begin = [](const CurveSegment& arc) { return std::min(arc.start, arc.start + arc.sweep); };
  double low = begin(face.segment), high = low + std::abs(face.segment.sweep);
  for (bool grown = true; grown && high - low < full - slack;) {
    grown = false;
    for (const WallStrip& strip : face.strips) {
      const CurveSegment& arc = map.edges[strip.plan_edge].segment;
      const double sweep = std::abs(arc.sweep);
      if (high - low + sweep > full + slack) continue;
      const bool after = apart(begin(arc), high) < slack, before = apart(begin(arc) + sweep, low) < slack;
      if (after) high += sweep;
      if (before && !after) low -= sweep;
      grown = grown || after || before;
    }
  }
  return (low + high) / 2;
}

/// Of several ways on from a vertex, the one that keeps the face to the left: the first clockwise from the way back.
std::size_t choose(const WallView& view, Coedge arrived, const std::vector<Coedge>& uses,
                   const std::vector<std::size_t>& ways) {
  const Point at = view.along(arrived, 1);
  const Point back = view.along(arrived, 0.75) - at;
  std::size_t best = ways.front();
  double least = 1e300;
  for (const std::size_t way : ways) {
    const double angle = clockwise(back, view.along(uses[way], 0.25) - at);
    if (angle < least) {
      least = angle;
      best = way;
    }
  }
  return best;
}

double area_of(const WallView& view, const std::vector<Coedge>& loop) {
  double sum = 0;
  for (const Coedge use : loop)
    for (int i = 0; i < 4; ++i) sum += cross(view.along(use, i / 4.0), view.along(use, (i + 1) / 4.0));
  return sum / 2;
}

/// The uses of edges from which the loops of a wall are put together, each taken once.
class Uses {
 public:
  Uses(const Shell& shell, const std::vector<Coedge>& uses) : uses_(uses), is_taken_(uses.size()) {
    for (std::size_t i = 0; i < uses.size(); ++i) from_.emplace_back(shell.start(uses[i]), i);
    std::sort(from_.begin(), from_.end());
  }

  /// The last of those that are left; none: null.
  const Coedge* take_last() {
    while (left_ > 0 && is_taken_[left_ - 1]) --left_;
    return left_ > 0 ? &take(left_ - 1) : nullptr;
  }

  const Coedge& take(std::size_t i) {
    is_taken_[i] = true;
    return uses_[i];
  }

  /// Those left that begin at a vertex.
  std::vector<std::size_t> from(int vertex) const {
    std::vector<std::size_t> ways;
    for (auto it = std::lower_bound(from_.begin(), from_.end(), std::pair{vertex, std::size_t{0}});
         it != from_.end() && it->first == vertex; ++it)
      if (!is_taken_[it->second]) ways.push_back(it->second);
    return ways;
  }

 private:
  const std::vector<Coedge>& uses_;
  std::vector<bool> is_taken_;
  std::vector<std::pair<int, std::size_t>> from_;  ///< by the vertex where a use begins
  std::size_t left_ = uses_.size();                ///< all from here on are taken
};

void link(const Shell& shell, ShellFace& face, const std::vector<Coedge>& all) {
  const WallView view{shell, face.segment, face.wood_left ? 1.0 : -1.0,
                      face.segment.is_arc() ? middle_of(shell.plan.map, face) : 0};
  Uses uses(shell, all);
  while (const Coedge* first = uses.take_last()) {
    std::vector<Coedge> loop{*first};
    while (shell.end(loop.back()) != shell.start(loop.front())) {
      const std::vector<std::size_t> ways = uses.from(shell.end(loop.back()));
      if (ways.empty()) break;  // unsound() reports the open loop
      loop.push_back(uses.take(ways.size() == 1 ? ways[0] : choose(view, loop.back(), all, ways)));
    }
    face.loops.push_back(std::move(loop));
  }
  std::stable_sort(face.loops.begin(), face.loops.end(),
                   [&](const auto& a, const auto& b) { return area_of(view, a) > area_of(view, b); });
}

}  // namespace

bool stand_together(const Subdivision& map, const WallPiece& a, const WallPiece& b) {
  const PlanEdge& one = map.edges[a.plan_edge];
  const PlanEdge& two = map.edges[b.plan_edge];
  if (one.segment.is_arc() != two.segment.is_arc() || one.crossing >= 0 || two.crossing >= 0) return false;
  if (one.segment.is_arc())
    return one.source.feature == two.source.feature && one.segment.centre == two.segment.centre &&
           one.segment.radius == two.segment.radius && (one.segment.sweep > 0) == (two.segment.sweep > 0) &&
           a.wood_left == b.wood_left;
  const Point d = one.segment.b - one.segment.a, e = two.segment.b - two.segment.a;
  const double off = std::abs(cross(d, e)) / std::min(length(d), length(e));  // the further end's way off the line
  if (off > tolerance::confusion) return false;
  return (dot(d, e) > 0) == (a.wood_left == b.wood_left);
}

bool same_drawn_piece(const Subdivision& map, const WallPiece& a, const WallPiece& b) {
  const PlanEdge& one = map.edges[a.plan_edge];
  return !one.segment.is_arc() || one.source == map.edges[b.plan_edge].source;
}

void add_walls(Shell& shell, const std::vector<WallPiece>& walls) {
  DisjointSets groups(walls.size());
  for (std::size_t w = 0; w < walls.size(); ++w)
    for (const int other : walls[w].joined) groups.join(static_cast<int>(w), other);
  std::vector<std::vector<Coedge>> uses(walls.size());
  std::vector<std::vector<WallStrip>> strips(walls.size());
  for (std::size_t w = 0; w < walls.size(); ++w) {
    auto& group = uses[groups.of(static_cast<int>(w))];
    group.push_back({walls[w].low, walls[w].wood_left});
    group.push_back({walls[w].high, !walls[w].wood_left});
    group.insert(group.end(), walls[w].uprights.begin(), walls[w].uprights.end());
    strips[groups.of(static_cast<int>(w))].push_back(
        {walls[w].plan_edge, shell.edges[walls[w].low].bound, shell.edges[walls[w].high].bound});
  }
  for (std::size_t w = 0; w < walls.size(); ++w) {
    if (uses[w].empty()) continue;
    const PlanEdge& edge = shell.plan.map.edges[walls[w].plan_edge];
    ShellFace face;
    face.kind = ShellFace::Kind::wall;
    face.segment = edge.segment;
    face.wood_left = walls[w].wood_left;
    face.feature = edge.source.feature;
    face.strips = std::move(strips[w]);
    link(shell, face, uses[w]);
    shell.faces.push_back(std::move(face));
  }
}

}  // namespace sagitta
