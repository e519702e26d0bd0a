#include <algorithm>
#include <map>
#include <numbers>
#include <optional>

#include "lift/Faces.hpp"
#include "lift/FixedRule.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Arcs that turn further are corners that a cutter rounds, and stay walls of their own. Radians.
constexpr double most_turn = 1;

/// Fewer arcs than this stay walls of their own.
constexpr std::size_t least_arcs = 3;

/// An ellipse turns this far between two of its walls at most, radians: the kernel's adaptive integrals come out wrong
/// where an edge turns back on itself.
constexpr double most_of_ellipse = std::numbers::pi + tolerance::vertex;

/// So far may a vertex lie off the ellipse that its walls stand for. With tolerance::height, which it may lie off too,
/// that is less than tolerance::vertex. mm.
constexpr double off_ellipse = 0.3 * tolerance::vertex;

/// How far off the volume within drawn walls may be where a program weighs them by one rule; a part of the volume.
constexpr double weighed_within = 1e-4;

/// A wall between two edges and two uprights, seen along its arc.
struct PlainWall {
  int face = -1;
  int low = -1, high = -1;                   ///< edges
  bool low_along = true, high_along = true;  ///< they run as the arc does
  int begin = -1, end = -1;                  ///< uprights
  CurveSegment arc;
  int before = -1, after = -1;  ///< walls that continue it

  bool found() const { return begin >= 0 && end >= 0; }
};

Point unit_slope(const CurveSegment& segment, double t) { return unit(segment.slope(t)); }

class SmoothWalls {
 public:
  explicit SmoothWalls(Shell& shell) : shell_(shell), flipped_(shell.edges.size()), dropped_(shell.edges.size()) {}

  void run() {
    for (std::size_t f = 0; f < shell_.faces.size(); ++f)
      if (const PlainWall wall = plain(static_cast<int>(f)); wall.found()) walls_.push_back(wall);
    if (walls_.size() < 2) return;
    for (const PlainWall& wall : walls_) {
      Box& box = boxes_[shell_.faces[wall.face].feature];
      box.add(wall.arc.a);
      box.add(wall.arc.b);
    }
    link();
    gone_.resize(shell_.faces.size());
    seen_.resize(walls_.size());
    for (std::size_t w = 0; w < walls_.size(); ++w)
      if (walls_[w].before < 0) join_chain(chain_from(static_cast<int>(w)));
    for (std::size_t w = 0; w < walls_.size(); ++w)
      if (!seen_[w]) join_ring(chain_from(static_cast<int>(w)));
    rewrite();
  }

 private:
  bool may_join(const ShellFace& face) const {
    return face.kind == ShellFace::Kind::wall && face.feature >= 0 && shell_.plan.features[face.feature].drawn &&
           face.segment.is_arc() && face.loops.size() == 1 && face.loops[0].size() == 4;
  }

  PlainWall plain(int f) const {
    const ShellFace& face = shell_.faces[f];
    PlainWall wall;
    if (!may_join(face)) return wall;
    std::vector<int> uprights;
    wall.face = f;
    for (const Coedge use : face.loops[0]) {
      const ShellEdge& edge = shell_.edges[use.edge];
      if (edge.upright) {
        uprights.push_back(use.edge);
        continue;
      }
      const bool along = (edge.segment.sweep > 0) == (face.segment.sweep > 0);
      const bool is_low = (use.forward == along) == face.wood_left;
      if (edge.crossing >= 0 || edge.bound.round() || std::abs(edge.segment.sweep) > most_turn) return {};
      (is_low ? wall.low : wall.high) = use.edge;
      (is_low ? wall.low_along : wall.high_along) = along;
    }
    if (wall.low < 0 || wall.high < 0) return {};
    const ShellEdge& low = shell_.edges[wall.low];
    wall.arc = wall.low_along ? low.segment : low.segment.reversed();
    const int begin = wall.low_along ? low.from : low.to, end = wall.low_along ? low.to : low.from;
    wall.arc.a = shell_.vertices[begin].p;
    wall.arc.b = shell_.vertices[end].p;
    for (const int upright : uprights) {
      if (shell_.edges[upright].from == begin) wall.begin = upright;
      if (shell_.edges[upright].from == end) wall.end = upright;
    }
    return wall;
  }

  /// Finds which walls continue which.
  void link() {
    std::vector<int> edges_at(shell_.vertices.size()), ends_here(shell_.edges.size(), -1);
    for (const ShellEdge& edge : shell_.edges) ++edges_at[edge.from], ++edges_at[edge.to];
    for (std::size_t w = 0; w < walls_.size(); ++w) ends_here[walls_[w].end] = static_cast<int>(w);
    for (std::size_t w = 0; w < walls_.size(); ++w) {
      const ShellEdge& joint = shell_.edges[walls_[w].begin];
      const int other = ends_here[walls_[w].begin];
      if (other < 0 || edges_at[joint.from] != 3 || edges_at[joint.to] != 3) continue;
      if (!continues(walls_[other], walls_[w])) continue;
      walls_[w].before = other;
      walls_[other].after = static_cast<int>(w);
    }
  }

  /// One tangent: a curve that shares the difference between both arcs departs from them by less than a vertex may.
  bool continues(const PlainWall& a, const PlainWall& b) const {
    const ShellFace &one = shell_.faces[a.face], &two = shell_.faces[b.face];
    if (one.feature != two.feature || one.wood_left != two.wood_left) return false;
    const auto bound = [&](int edge) { return shell_.edges[edge].bound; };
    if (bound(a.low) != bound(b.low) || bound(a.high) != bound(b.high)) return false;
    const double kink = std::abs(cross(unit_slope(a.arc, 1), unit_slope(b.arc, 0)));
    return dot(unit_slope(a.arc, 1), unit_slope(b.arc, 0)) > 0 &&
           kink * std::max(a.arc.length(), b.arc.length()) / 16 < tolerance::vertex;
  }

  /// A wall and all that follow it.
  std::vector<int> chain_from(int first) {
    std::vector<int> chain;
    for (int w = first; w >= 0 && !seen_[w]; w = walls_[w].after) {
      chain.push_back(w);
      seen_[w] = true;
    }
    return chain;
  }

  /// Walls that close on themselves become two: no edge closes on itself.
  void join_ring(const std::vector<int>& ring) {
    const auto half = ring.begin() + static_cast<std::ptrdiff_t>((ring.size() + 1) / 2);
    join_chain({ring.begin(), half});
    join_chain({half, ring.end()});
  }

  /// Larger than what any face within the walls of a cut measures across.
  double reach_of(const std::vector<int>& chain) const {
    const Box& box = boxes_.at(shell_.faces[walls_[chain.front()].face].feature);
    return distance(box.low, box.high);
  }

  /// How far beside their place all walls of a cut may lie, mm: width times length is the area within them.
  double beside_of(const std::vector<int>& chain) const {
    const int feature = shell_.faces[walls_[chain.front()].face].feature;
    const PlanFeature& cut = shell_.plan.features[static_cast<std::size_t>(feature)];
    return weighed_within * cut.area / cut.length;
  }

  const std::optional<OffsetEllipse>& ellipse_of(const std::vector<int>& chain) const {
    const int feature = shell_.faces[walls_[chain.front()].face].feature;
    return shell_.plan.features[static_cast<std::size_t>(feature)].ellipse;
  }

  /// The arcs stand for the ellipse; where rounding has moved one, they are arcs.
  bool lies_on(const OffsetEllipse& ellipse, const std::vector<int>& chain) const {
    const auto on = [&](Point p) { return ellipse.distance_to(p) <= off_ellipse; };
    return std::all_of(chain.begin(), chain.end(),
                       [&](int w) { return on(walls_[w].arc.a) && on(walls_[w].arc.at(0.5)) && on(walls_[w].arc.b); });
  }

  /// One wall, or several where it turns too far.
  void join_ellipse(const std::vector<int>& chain, const OffsetEllipse& ellipse) {
    const auto turn = [&](int w) {
      const double step = ellipse.ellipse.nearest(walls_[w].arc.b) - ellipse.ellipse.nearest(walls_[w].arc.a);
      return std::abs(std::remainder(step, 2 * std::numbers::pi));
    };
    std::vector<int> part;
    double turned = 0;
    for (const int w : chain) {
      if (turned + turn(w) > most_of_ellipse) {
        join(part, ellipse);
        part.clear();
        turned = 0;
      }
      part.push_back(w);
      turned += turn(w);
    }
    join(part, ellipse);
  }

  /// No longer than a reader integrates right.
  void join_chain(const std::vector<int>& chain) {
    if (const auto& ellipse = ellipse_of(chain); ellipse && lies_on(*ellipse, chain))
      return join_ellipse(chain, *ellipse);
    if (chain.size() < least_arcs) return;
    std::vector<CurveSegment> run;
    for (const int w : chain) run.push_back(walls_[w].arc);
    const auto at = [&](std::size_t i) { return chain.begin() + static_cast<std::ptrdiff_t>(i); };
    for (const ArcSpan& span : spans_that_integrate(run, reach_of(chain), beside_of(chain), least_arcs))
      join({at(span.first), at(span.end)}, {});
  }

  void join(const std::vector<int>& chain, const std::optional<OffsetEllipse>& ellipse) {
    const PlainWall &first = walls_[chain.front()], &last = walls_[chain.back()];
    std::vector<CurveSegment> run;
    for (const int w : chain) run.push_back(walls_[w].arc);
    ShellFace& face = shell_.faces[first.face];
    take_together(chain, &PlainWall::low, &PlainWall::low_along, run);
    take_together(chain, &PlainWall::high, &PlainWall::high_along, run);
    for (Coedge& use : face.loops[0])
      if (use.edge == first.end) use.edge = last.end;
    for (std::size_t i = 1; i < chain.size(); ++i) {
      const PlainWall& wall = walls_[chain[i]];
      ShellFace& taken = shell_.faces[wall.face];
      face.strips.insert(face.strips.end(), taken.strips.begin(), taken.strips.end());
      gone_[wall.face] = true;
      dropped_[wall.begin] = true;
    }
    face.segment = run.front();
    face.run = std::move(run);
    face.ellipse = ellipse;
    for (const int edge : {first.low, first.high}) shell_.edges[edge].ellipse = ellipse;
  }

  /// The chain's lower or upper edges become the first wall's.
  void take_together(const std::vector<int>& chain, int PlainWall::*edge, bool PlainWall::*along,
                     const std::vector<CurveSegment>& run) {
    const PlainWall &first = walls_[chain.front()], &last = walls_[chain.back()];
    const ShellEdge& end = shell_.edges[last.*edge];
    const int to = last.*along ? end.to : end.from;
    ShellEdge joined = shell_.edges[first.*edge];
    if (!(first.*along)) std::swap(joined.from, joined.to);
    joined.to = to;
    joined.segment = run.front();
    joined.run = run;
    joined.chain.clear();
    for (const int w : chain) {
      const ShellEdge& part = shell_.edges[walls_[w].*edge];
      std::vector<HalfEdge> half_edges = part.chain;
      if (!(walls_[w].*along)) {
        std::reverse(half_edges.begin(), half_edges.end());
        for (HalfEdge& h : half_edges) h ^= 1;
      }
      joined.chain.insert(joined.chain.end(), half_edges.begin(), half_edges.end());
      if (w != chain.front()) dropped_[walls_[w].*edge] = true;
    }
    flipped_[first.*edge] = !(first.*along);
    shell_.edges[first.*edge] = std::move(joined);
  }

  void rewrite() {
    std::vector<ShellFace> faces;
    for (std::size_t f = 0; f < shell_.faces.size(); ++f) {
      if (gone_[f]) continue;
      ShellFace& face = faces.emplace_back(std::move(shell_.faces[f]));
      for (auto& loop : face.loops) {
        std::erase_if(loop, [&](Coedge use) { return dropped_[use.edge]; });
        for (Coedge& use : loop) use.forward = use.forward != flipped_[use.edge];
      }
    }
    shell_.faces = std::move(faces);
    drop_edges(shell_, dropped_);
  }

  Shell& shell_;
  std::vector<PlainWall> walls_;
  std::map<int, Box> boxes_;             ///< of the walls of each feature, seen from above
  std::vector<bool> seen_;               ///< walls whose chain is found
  std::vector<bool> flipped_, dropped_;  ///< edges
  std::vector<bool> gone_;               ///< faces
};

}  // namespace

void join_smooth_walls(Shell& shell) { SmoothWalls(shell).run(); }

}  // namespace sagitta
