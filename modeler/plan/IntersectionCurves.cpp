#include "plan/IntersectionCurves.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "plan/FaceEdges.hpp"
#include "plan/FormCurves.hpp"
#include "plan/HeightsApart.hpp"
#include "plan/Roots.hpp"
#include "plan/Unrolled.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Where a surface is so flat that it lies within tolerance::height of a floor further than this, the place of their
/// crossing is looked for: the tip of the curve is not taken to be a vertex further from it, and an edge is parted
/// where it leaves the curve. mm.
constexpr double widest_tip = 0.1;

BoundingSurface level(double z) { return {BoundingSurface::Kind::level, z}; }

/// The curve where a level and a moved surface cross, on one side of the centre line.
IntersectionCurve crossing_of(const Surface& surface, const BoundingSurface& moved, double level, int side) {
  IntersectionCurve curve;
  curve.level = level;
  curve.offset = moved.value;
  curve.fallen = moved.fallen;
  curve.side = side;
  const double start = surface.fall_start.value_or(0), slope = moved.fallen ? surface.fall_slope : 0;
  curve.d0 = surface.thickness - moved.value - level + slope * start;
  curve.d1 = -slope;
  curve.r0 = surface.r0;
  curve.r1 = surface.r1;
  curve.r2 = surface.r2;
  curve.flat = surface.flat;
  curve.straight = surface.flat || (slope == 0 && surface.r1 == 0 && surface.r2 == 0);
  return curve;
}

/// The curve where a side hole's wall and a moved surface cross.
IntersectionCurve crossing_of(const Surface& surface, const BoundingSurface& wall, const BoundingSurface& moved) {
  IntersectionCurve curve = crossing_of(surface, moved, 0, wall.kind == BoundingSurface::Kind::vault ? 1 : -1);
  curve.straight = false;
  curve.tunnel = wall.tunnel;
  curve.axis = wall.value;
  return curve;
}

class Divider {
 public:
  Divider(Subdivision& map, const std::vector<Candidates>& candidates, const Surface& surface)
      : map_(map), candidates_(candidates), surface_(surface) {}

  std::set<Tunnel> run() {
    cut_edges();
    borders_.resize(candidates_.size());
    for (int e = 0; e < static_cast<int>(map_.edges.size()); ++e) {
      borders_[map_.edges[e].left].push_back(2 * e);
      borders_[map_.edges[e].right].push_back(2 * e + 1);
    }
    for (int f = 1; f < static_cast<int>(candidates_.size()); ++f) {
      std::vector<int> shared = triple_points(f);
      add_triple_points_of_forms(f, shared);
      for (const BoundPair& pair : pairs_of(surface_, candidates_[f], candidates_[f])) divide_face(f, pair, shared);
    }
    return std::move(grazed_);
  }

 private:
  /// Where both surfaces are tangent to a third one the difference of their heights says little: that of its roots
  /// is as steep there as anywhere.
  double gap(const BoundPair& pair, Point p) const {
    if (touch_squarely(pair.upper, pair.other))
      return -above_roll(surface_, pair.upper, pair.other, p.x, p.y,
                         pair.upper.tunnel.angle(pair.upper.tunnel.across(p)));
    return height(surface_, pair.upper, p) - height(surface_, pair.other, p);
  }

  void cut_edges() {
    const std::size_t count = map_.edges.size();
    for (std::size_t e = 0; e < count; ++e) {
      const PlanEdge edge = map_.edges[e];
      const Box box = bounds(edge.segment);
      std::vector<double> cuts;
      for (const BoundPair& pair : pairs_of(surface_, candidates_[edge.left], candidates_[edge.right])) {
        if (are_apart(surface_, pair.upper, pair.other, box)) continue;
        const auto along = [&](double t) { return gap(pair, map_.at(edge, t)); };
        const int samples = edge.segment.is_arc() ? 16 : 6;
        for (const double t : contacts_of(along, tolerance::height, samples))
          grazes(pair, edge, t) ? void(grazed_.insert(pair.upper.tunnel)) : cuts.push_back(t);
        const bool both_join = !pair.upper.scalloped() && pair.other.scalloped();  // in a corner that is a vertex
        for (const bool from : {true, false})
          if (const auto t = both_join ? std::nullopt : parting(edge, along, samples, from)) cuts.push_back(*t);
      }
      std::sort(cuts.begin(), cuts.end());
      cut(static_cast<int>(e), edge, cuts);
    }
  }

  /// Where the heights part on an edge along which they are equal from one end on, further than `widest_tip`: the curve
  /// runs along the edge up to there.
  template <class Gap>
  std::optional<double> parting(const PlanEdge& edge, Gap along, int samples, bool from) const {
    const auto at = [&](double s) { return from ? s : 1 - s; };
    const auto off = [&](double s) { return std::abs(along(at(s))); };
    int clear = 0;
    while (clear <= samples && off(static_cast<double>(clear) / samples) <= tolerance::height) ++clear;
    if (clear == 0 || clear > samples) return std::nullopt;
    double low = 0, high = static_cast<double>(clear) / samples;
    constexpr int halvings = 50;
    constexpr double surely = 0.5;  // the vertex there is to lie on the curve
    for (int k = 0; k < halvings; ++k)
      (off((low + high) / 2) <= surely * tolerance::height ? low : high) = (low + high) / 2;
    if (distance(map_.at(edge, at(low)), map_.at(edge, at(0))) <= widest_tip) return std::nullopt;
    return at(low);
  }

  /// Whether an edge that ends at a hole's side is crossed within tolerance of the silhouette, where the wall is almost
  /// vertical.
  bool grazes(const BoundPair& pair, const PlanEdge& edge, double t) const {
    if (!pair.upper.round()) return false;
    const Tunnel& tunnel = pair.upper.tunnel;
    const auto at_side = [&](Point p) { return tunnel.radius - std::abs(tunnel.across(p)) <= 4 * tolerance::vertex; };
    return at_side(map_.at(edge, t)) && !at_side(map_.at(edge, 0.5));
  }

  void cut(int e, const PlanEdge& whole, const std::vector<double>& cuts) {
    int at = whole.from;
    int last = e;
    for (const double t : cuts) {
      const Point p = map_.at(whole, t);
      if (distance(p, map_.vertices[at]) <= tolerance::vertex) continue;
      if (distance(p, map_.vertices[whole.to]) <= tolerance::vertex) continue;
      const int v = static_cast<int>(map_.vertices.size());
      map_.vertices.push_back(p);
      set(last, whole, at, v);
      at = v;
      last = static_cast<int>(map_.edges.size());
      map_.edges.push_back(whole);
    }
    set(last, whole, at, whole.to);
  }

  void set(int e, const PlanEdge& whole, int from, int to) {
    PlanEdge& edge = map_.edges[e];
    edge.from = from;
    edge.to = to;
    const Point a = map_.vertices[from], b = map_.vertices[to];
    edge.segment = whole.segment.is_arc()
                       ? arc_between(whole.segment.centre, whole.segment.radius, a, b, whole.segment.sweep > 0)
                       : line(a, b);
  }

  /// Where a level, a moved surface and a hole's wall meet within a face: the three curves of their pairs run through
  /// one point there, made a vertex. On the lines along which the wall has the level's height.
  std::vector<int> triple_points(int f) {
    const Candidates& here = candidates_[f];
    if (!here.wood || !here.trough || !here.moved) return {};
    const Tunnel& tunnel = here.trough->tunnel;
    const auto [low, high] = reach_along(f, tunnel);
    std::vector<int> found;
    for (const double z : {here.bottom, here.level ? here.level->value : here.bottom}) {
      const double rise = z - here.trough->value, square = tunnel.radius * tunnel.radius - rise * rise;
      if (square <= 0) continue;
      for (const double across : {-std::sqrt(square), std::sqrt(square)})
        add_contacts(f, {*here.moved, level(z)}, tunnel.at(low, across), tunnel.at(high, across), found);
    }
    return found;
  }

  /// The same where a worked edge, a scallop and a floor, or what is cut from below, meet.
  void add_triple_points_of_forms(int f, std::vector<int>& nodes) {
    const Candidates& here = candidates_[f];
    for (const Candidates::Form& edge : here.forms)
      for (const Candidates::Form& scallop : here.forms) {
        if (edge.bound.scalloped() || !scallop.bound.scalloped()) continue;
        const std::optional<BoundingSurface> bottom =
            here.bottom > 0 ? std::optional(level(here.bottom)) : std::nullopt;
        for (const auto& floor : {here.level, here.moved, bottom})
          if (floor && add_triple_points(faces_, f, {surface_, scallop.bound, *floor}, edge.bound, nodes))
            grazed_.insert(edge.bound.tunnel);
      }
  }

  /// From where to where along a hole's axis a face reaches.
  std::pair<double, double> reach_along(int f, const Tunnel& tunnel) const {
    double low = 1e300, high = -1e300;
    for (const HalfEdge h : borders_[f]) {
      const double along = tunnel.along(map_.vertices[map_.origin(h)]);
      low = std::min(low, along);
      high = std::max(high, along);
    }
    return {low, high};
  }

  /// Vertices where the pair's heights are equal on the line from a to b within a face, beside no other.
  void add_contacts(int f, const BoundPair& pair, Point a, Point b, std::vector<int>& nodes) {
    constexpr int samples = 16;
    const auto along = [&](double t) { return gap(pair, between(a, b, t)); };
    for (const double t : contacts_of(along, tolerance::height, samples)) faces_.add_vertex(f, between(a, b, t), nodes);
  }

  /// Draws the curve where the pair's heights are equal through one face. `shared`: vertices within it that more than
  /// one such curve runs through.
  void divide_face(int f, const BoundPair& pair, const std::vector<int>& shared) {
    bool above = false, below = false;
    std::set<int> touched;
    for (const int v : shared)
      if (std::abs(gap(pair, map_.vertices[v])) <= tolerance::height) touched.insert(v);
    for (const HalfEdge h : borders_[f]) {
      const int v = map_.origin(h);
      const double at_vertex = gap(pair, map_.vertices[v]);
      if (std::abs(at_vertex) <= tolerance::height) touched.insert(v);
      for (const double g : {at_vertex, gap(pair, map_.at(map_.edges[h >> 1], 0.5))}) {
        above = above || g > tolerance::height;
        below = below || g < -tolerance::height;
      }
    }
    std::vector<int> nodes(touched.begin(), touched.end());
    if (pair.upper.round()) {
      if (above && below) divide_along_wall(f, pair, nodes);
      return;
    }
    if (pair.upper.form != 0) {
      const auto meeting = std::make_shared<const SurfacePair>(SurfacePair{surface_, pair.upper, pair.other});
      return divide_at_form(faces_, f, meeting, nodes);
    }
    if (!surface_.flat) add_tip(f, pair, nodes);
    if (nodes.size() < 2 || !above || !below) return;
    const double z = pair.other.value;
    if (surface_.flat)
      return link(f, crossing_of(surface_, pair.upper, z, 1), nodes, [](Point a, Point b) { return a.y < b.y; });
    for (const int side : {-1, 1}) {
      std::vector<int> branch;
      for (const int v : nodes)
        if (on_branch(pair, side, map_.vertices[v])) branch.push_back(v);
      link(f, crossing_of(surface_, pair.upper, z, side), branch, [](Point a, Point b) { return a.x < b.x; });
    }
  }

  /// A hole's wall meets a level along lines beside the axis, a moved surface along a curve that turns over the axis.
  void divide_along_wall(int f, const BoundPair& pair, std::vector<int> nodes) {
    const Tunnel& tunnel = pair.upper.tunnel;
    const auto before = [&](Point a, Point b) { return tunnel.along(a) < tunnel.along(b); };
    if (pair.upper.kind == BoundingSurface::Kind::roll) return link(f, crossing_of_roll(pair), nodes, before);
    const bool moved = pair.other.kind == BoundingSurface::Kind::offset_surface;
    const double turn = moved ? turning_line(pair, nodes) : 0;
    if (moved) add_turns(f, pair, turn, nodes);
    IntersectionCurve curve;
    curve.straight = true;
    if (moved) curve = crossing_of(surface_, pair.upper, pair.other);
    for (const double side : {-1.0, 1.0}) {
      std::vector<int> branch;
      for (const int v : nodes)
        if (side * (tunnel.across(map_.vertices[v]) - turn) > -10 * tolerance::vertex) branch.push_back(v);
      link(f, curve, branch, before);
    }
  }

  /// A roll is steeper than any floor from its tangent line on: one place for each place along it.
  IntersectionCurve crossing_of_roll(const BoundPair& pair) const {
    IntersectionCurve curve;
    curve.tunnel = pair.upper.tunnel;
    curve.meeting = std::make_shared<const SurfacePair>(SurfacePair{surface_, pair.upper, pair.other});
    return curve;
  }

  /// Where across the hole its wall is as steep as the moved surface: there the curve turns back along the axis.
  double turning_line(const BoundPair& pair, const std::vector<int>& nodes) const {
    const Tunnel& tunnel = pair.upper.tunnel;
    const Point p = nodes.empty() ? tunnel.at(0, 0) : map_.vertices[nodes.front()];
    const double along = tunnel.along(p), r = tunnel.radius;
    const double rise =
        height(surface_, pair.other, tunnel.at(along, r / 2)) - height(surface_, pair.other, tunnel.at(along, -r / 2));
    const double slope = rise / r;
    return (pair.upper.kind == BoundingSurface::Kind::vault ? -1 : 1) * slope * r / std::sqrt(1 + slope * slope);
  }

  void add_turns(int f, const BoundPair& pair, double turn, std::vector<int>& nodes) {
    const Tunnel& tunnel = pair.upper.tunnel;
    const auto [low, high] = reach_along(f, tunnel);
    add_contacts(f, pair, tunnel.at(low, turn), tunnel.at(high, turn), nodes);
  }

  /// On the centre line a floor and the surface within tolerance::height of each other meet anywhere within this of it.
  double centre_zone(double x) const {
    return std::min(widest_tip, std::sqrt(2 * surface_.radius(x) * tolerance::height));
  }

  bool on_branch(const BoundPair& pair, int side, Point p) const {
    if (side * p.y > 0) return true;
    const double zone = centre_zone(p.x);
    const IntersectionCurve curve = crossing_of(surface_, pair.upper, pair.other.value, side);
    return std::abs(p.y) <= zone && curve.square(p.x) <= 2 * zone * zone;
  }

  /// The tip of the curve on the centre line, where the falling centre line passes through the level.
  void add_tip(int f, const BoundPair& pair, std::vector<int>& nodes) {
    const IntersectionCurve curve = crossing_of(surface_, pair.upper, pair.other.value, 1);
    if (curve.d1 == 0) return;
    const Point tip{-curve.d0 / curve.d1, 0};
    if (!map_.winds_about(borders_[f], tip)) return;
    for (const int v : nodes) {
      const Point p = map_.vertices[v];
      if (std::abs(p.y) <= centre_zone(p.x) && std::abs((p.x - tip.x) * curve.d1) <= 2 * tolerance::height) return;
    }
    nodes.push_back(static_cast<int>(map_.vertices.size()));
    map_.vertices.push_back(tip);
  }

  /// Between two places where a curve leaves a roll at its side there is none; the chord runs along the side.
  static bool along_side(const IntersectionCurve& curve, Point middle) {
    return curve.meeting && curve.tunnel->radius - curve.tunnel->across(middle) <= 4 * tolerance::vertex;
  }

  template <class Before>
  void link(int f, const IntersectionCurve& curve, std::vector<int> nodes, Before before) {
    std::sort(nodes.begin(), nodes.end(), [&](int a, int b) { return before(map_.vertices[a], map_.vertices[b]); });
    for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
      PlanEdge chord = faces_.chord(f, nodes[i], nodes[i + 1]);
      const Point a = map_.vertices[chord.from], b = map_.vertices[chord.to];
      const Point middle = curve.at(a, b, 0.5);
      if (!faces_.holds(f, middle) || faces_.has(f, chord, middle) || along_side(curve, middle)) continue;
      if (!curve.straight) {
        chord.crossing = static_cast<int>(map_.crossings.size());
        map_.crossings.push_back(curve);
      }
      map_.edges.push_back(chord);
    }
  }

  std::set<Tunnel> grazed_;
  Subdivision& map_;
  const std::vector<Candidates>& candidates_;
  const Surface& surface_;
  std::vector<std::vector<HalfEdge>> borders_;
  FaceEdges faces_{map_, borders_};
};

}  // namespace

std::set<Tunnel> divide_at_intersections(Subdivision& map, std::vector<Candidates>& candidates,
                                         const Surface& surface) {
  std::set<Tunnel> grazed = Divider(map, candidates, surface).run();
  std::vector<std::pair<int, int>> old_faces;
  for (const PlanEdge& edge : map.edges) old_faces.emplace_back(edge.left, edge.right);
  map.build_faces();
  std::vector<Candidates> renewed(map.faces.size());
  for (std::size_t e = 0; e < map.edges.size(); ++e) {
    renewed[map.edges[e].left] = candidates[old_faces[e].first];
    renewed[map.edges[e].right] = candidates[old_faces[e].second];
  }
  candidates = std::move(renewed);
  return grazed;
}

}  // namespace sagitta
