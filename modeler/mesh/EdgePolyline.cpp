#include "mesh/EdgePolyline.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "mesh/BandLines.hpp"
#include "mesh/Close.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Places are whole multiples of this, mm: then differences of places anywhere on a board are exact in doubles.
constexpr double grid = 0x1p-30;

/// What of the deviation a chord across a band may stray by, and one across a band of a round wall.
constexpr double share_of_band = 0.375, share_across = 0.5;

/// Not inlined: GCC 12.2 leaves out the float where it makes one vector of two such numbers.
[[gnu::noinline]] double on_grid(double x) { return static_cast<float>(std::nearbyint(x / grid) * grid) + 0.0; }

/// How far a chord may lie from its curve, mm. From above nothing but a wall strays with an arc, and it strays by just
/// that; a face that ends at an intersection curve strays in height there too.
struct Allowed {
  explicit Allowed(double deviation) : arc(0.75 * deviation), crossing(0.25 * deviation), height(0.4 * deviation) {}
  double arc, crossing, height;
};

struct Track {
  const Shell& shell;
  const PlanEdge& edge;
  const std::vector<BoundingSurface>& bounds;
  Allowed allowed;
  bool twin;  ///< another edge joins the same vertices

  struct Place {
    double t;
    Point p;
  };
  Place at(double t) const { return {t, shell.plan.map.at(edge, t)}; }

  bool strays_aside(Point a, Point b, Point p) const {
    const Point d = b - a, off = p - a;
    const double square = dot(d, d), area = cross(d, off);
    return square > 0 ? area * area > allowed.crossing * allowed.crossing * square : length(off) > allowed.crossing;
  }

  bool strays_in_height(const BoundingSurface& bound, Point a, Point b) const {
    if (bound.kind == BoundingSurface::Kind::level || bound.of_hole()) return false;
    const Surface& surface = shell.plan.surface;  // a round wall is cut across its axis by lines of its own
    const auto z = [&](Point p) { return bound.round() ? axis_of(surface, bound, p.x) : height(surface, bound, p); };
    const double za = z(a), zb = z(b);
    return std::any_of(quarters.begin(), quarters.end(), [&](double s) {
      return std::abs(z(sagitta::between(a, b, s)) - (za + s * (zb - za))) > allowed.height;
    });
  }

  bool bends(const Place& from, const Place& to) const {
    if (edge.crossing >= 0)
      for (const double s : quarters)
        if (strays_aside(from.p, to.p, at(from.t + s * (to.t - from.t)).p)) return true;
    return std::any_of(bounds.begin(), bounds.end(),
                       [&](const BoundingSurface& bound) { return strays_in_height(bound, from.p, to.p); });
  }

  /// Where a single chord would not do however near it is: a wide arc, and one whose chord is another edge's too.
  bool must_bend() const {
    return (edge.segment.is_arc() && std::abs(edge.segment.sweep) > 1) ||
           (twin && (edge.segment.is_arc() || edge.crossing >= 0));
  }

  /// The least number of equal parts of an arc whose chords, each 2 r sin^2(angle / 4) away from it, do.
  int parts() const {
    const int least = must_bend() ? 2 : 1;
    if (!edge.segment.is_arc()) return least;
    constexpr double most = 4096;
    const double widest = 4 * std::asin(std::sqrt(std::min(1.0, allowed.arc / edge.segment.radius) / 2));
    return std::max(least, static_cast<int>(std::ceil(std::min(most, std::abs(edge.segment.sweep) / widest))));
  }

  void divide(const Place& from, const Place& to, int depth, std::vector<PolylinePoint>& out) const {
    constexpr int deepest = 12;
    if (depth == deepest || !bends(from, to)) return;
    const Place middle = at((from.t + to.t) / 2);
    divide(from, middle, depth + 1, out);
    out.push_back({rounded(middle.p), middle.p});
    divide(middle, to, depth + 1, out);
  }

  void divide(std::vector<PolylinePoint>& out) const {
    const int count = parts();
    Place last = at(0);
    for (int i = 1; i <= count; ++i) {
      const Place next = at(static_cast<double>(i) / count);
      divide(last, next, 0, out);
      if (i < count) out.push_back({rounded(next.p), next.p});
      last = next;
    }
  }

  /// A straight edge: the bands' lines first, more points only where those leave too long a chord. Each is rounded from
  /// its exact place, not from a line between ends that are rounded already.
  void cut_then_divide(const PolylinePoint& from, const PolylinePoint& to, const std::vector<double>& lines,
                       std::vector<PolylinePoint>& out) const {
    const auto first = std::upper_bound(lines.begin(), lines.end(), std::min(from.p.y, to.p.y));
    const auto end = std::lower_bound(lines.begin(), lines.end(), std::max(from.p.y, to.p.y));
    std::vector<double> cuts(first, std::max(first, end));
    if (from.p.y > to.p.y) std::reverse(cuts.begin(), cuts.end());
    Place last = at(0);
    for (const double y : cuts) {
      const Place cut = at(std::clamp((y - from.exact.y) / (to.exact.y - from.exact.y), last.t, 1.0));
      divide(last, cut, 0, out);
      out.push_back({rounded({cut.p.x, y}), cut.p});
      last = cut;
    }
    divide(last, at(1), 0, out);
  }

  static constexpr std::array quarters{0.25, 0.5, 0.75};
};

/// Where an arc's curve passes the height y of p, a place on its chord; p itself on what is no arc, and where the arc
/// runs along the line. Arcs whose chords nearly coincide are further apart than these.
Point on_curve(const PlanEdge& edge, Point p) {
  if (!edge.segment.is_arc()) return p;
  const double up = p.y - edge.segment.centre.y, r = edge.segment.radius;
  const double aside = std::sqrt(std::max(0.0, (r - up) * (r + up)));
  if (aside < std::abs(up)) return p;
  return {edge.segment.centre.x + (p.x > edge.segment.centre.x ? aside : -aside), p.y};
}

/// Every line y = const that lies strictly between two neighbours gets a point there; an inner point that lies as good
/// as on the line makes way for it.
void cut_at_lines(std::vector<PolylinePoint>& inner, const PlanEdge& edge, const PolylinePoint& from,
                  const PolylinePoint& to, const std::vector<double>& lines) {
  const auto free = [&](Point p) { return !std::binary_search(lines.begin(), lines.end(), p.y); };
  std::vector<PolylinePoint> result{from};
  inner.push_back(to);
  for (std::size_t i = 0; i < inner.size(); ++i) {
    const PolylinePoint last = result.back(), next = inner[i];
    const Point a = last.p, b = next.p;
    auto first = std::upper_bound(lines.begin(), lines.end(), std::min(a.y, b.y));
    auto end = std::lower_bound(lines.begin(), lines.end(), std::max(a.y, b.y));
    std::vector<PolylinePoint> cuts;
    for (auto line = first; line < end; ++line) {
      const double t = (*line - a.y) / (b.y - a.y);
      const Point p = on_curve(edge, {a.x + t * (b.x - a.x), *line});
      cuts.push_back({rounded(p), edge.segment.is_arc() ? p : between(last.exact, next.exact, t)});
    }
    if (a.y > b.y) std::reverse(cuts.begin(), cuts.end());
    if (!cuts.empty() && result.size() > 1 && free(a) && distance(cuts.front().p, a) < clear_of_points)
      result.pop_back();
    result.insert(result.end(), cuts.begin(), cuts.end());
    const bool near_cut = !cuts.empty() && free(b) && distance(cuts.back().p, b) < clear_of_points;
    if (!near_cut || i + 1 == inner.size()) result.push_back(next);
  }
  inner.assign(result.begin() + 1, result.end() - 1);
}

/// Which side holes' walls stand over or under each plan edge.
std::vector<std::vector<Tunnel>> tunnels_over(const Shell& shell) {
  std::vector<std::vector<Tunnel>> over(shell.plan.map.edges.size());
  for (const ShellFace& face : shell.faces) {
    if (face.kind == ShellFace::Kind::wall || !face.bound.round()) continue;
    for (const auto& loop : face.loops)
      for (const Coedge use : loop)
        for (const HalfEdge h : shell.edges[use.edge].chain) {
          auto& here = over[h >> 1];
          if (std::find(here.begin(), here.end(), face.bound.tunnel) == here.end()) here.push_back(face.bound.tunnel);
        }
  }
  return over;
}

/// A place on every line of a hole's wall that the trail crosses. An inner point that rounds to the same point of the
/// mesh moves onto the line: else the wall would have that point beside its line on one side, on it on the other.
void cut_across(std::vector<PolylinePoint>& inner, const PolylinePoint& from, const PolylinePoint& to,
                const Tunnel& tunnel, const std::vector<double>& lines) {
  std::vector<PolylinePoint> result{from};
  inner.push_back(to);
  for (std::size_t i = 0; i < inner.size(); ++i) {
    const Point start = result.back().exact;
    PolylinePoint next = inner[i];
    const double a = tunnel.across(start), b = tunnel.across(next.exact);
    const auto first = std::upper_bound(lines.begin(), lines.end(), std::min(a, b) + tolerance::same);
    const auto end = std::lower_bound(first, lines.end(), std::max(a, b) - tolerance::same);
    std::vector<double> cuts(first, end);
    if (a > b) std::reverse(cuts.begin(), cuts.end());
    for (const double line : cuts) {
      const Point exact = between(start, next.exact, (line - a) / (b - a));
      const PolylinePoint cut{rounded(exact), exact};
      if (cut.p == result.back().p && result.size() > 1)
        result.back() = cut;
      else if (cut.p == next.p && i + 1 < inner.size())
        next = cut;
      else
        result.push_back(cut);
    }
    result.push_back(next);
  }
  inner.assign(result.begin() + 1, result.end() - 1);
}

/// For each edge, whether another one joins the same two vertices.
std::vector<bool> twins_of(const Subdivision& map) {
  std::map<std::pair<int, int>, std::vector<std::size_t>> between;
  for (std::size_t e = 0; e < map.edges.size(); ++e)
    between[std::minmax(map.edges[e].from, map.edges[e].to)].push_back(e);
  std::vector<bool> twins(map.edges.size());
  for (const auto& [ends, edges] : between)
    for (const std::size_t e : edges) twins[e] = edges.size() > 1;
  return twins;
}

}  // namespace

Point rounded(Point p) { return {on_grid(p.x), on_grid(p.y)}; }

const BoundingSurface& height_along(const Subdivision& map, const PlanEdge& edge, const BoundingSurface& bound) {
  if (bound.kind != BoundingSurface::Kind::roll || edge.crossing < 0) return bound;
  const auto& meeting = map.crossings[static_cast<std::size_t>(edge.crossing)].meeting;
  return meeting && bound == meeting->upper ? meeting->other : bound;
}

EdgePolylines edge_polylines(const Shell& shell, double deviation) {
  const Subdivision& map = shell.plan.map;
  const Allowed allowed(deviation);
  std::vector<std::vector<BoundingSurface>> bounds(map.edges.size());
  for (const ShellEdge& edge : shell.edges)
    for (const HalfEdge h : edge.chain) {
      bounds[h >> 1].push_back(edge.bound);
      const BoundingSurface& over = height_along(map, map.edges[h >> 1], edge.bound);
      if (!(over == edge.bound)) bounds[h >> 1].push_back(over);
    }
  const std::vector<std::vector<Tunnel>> tunnels = tunnels_over(shell);
  EdgePolylines trails;
  for (const Point p : map.vertices) trails.vertices.push_back({rounded(p), p});
  trails.lines = band_lines(shell, trails.vertices, share_of_band * deviation, allowed.arc);
  for (const ShellFace& face : shell.faces)
    if (face.kind != ShellFace::Kind::wall && face.bound.round())
      for (const double line : lines_across(shell, face, share_across * deviation))
        trails.across[face.bound.tunnel].push_back(line);
  for (auto& [tunnel, lines] : trails.across) {
    std::sort(lines.begin(), lines.end());
    lines.erase(std::unique(lines.begin(), lines.end(), [](double a, double b) { return b - a <= tolerance::same; }),
                lines.end());
  }
  trails.edges.resize(map.edges.size());
  const std::vector<bool> twins = twins_of(map);
  const auto straight = [&](std::size_t e) { return !map.edges[e].segment.is_arc() && map.edges[e].crossing < 0; };
  for (std::size_t e = 0; e < map.edges.size(); ++e)
    if (!bounds[e].empty() && !straight(e))
      Track{shell, map.edges[e], bounds[e], allowed, twins[e]}.divide(trails.edges[e]);
  follow_close_neighbours(map, trails, allowed.arc);
  for (std::size_t e = 0; e < map.edges.size(); ++e) {
    if (bounds[e].empty()) continue;
    const PolylinePoint& from = trails.vertices[map.edges[e].from];
    const PolylinePoint& to = trails.vertices[map.edges[e].to];
    std::vector<PolylinePoint>& inner = trails.edges[e];
    if (straight(e)) {
      const Track track{shell, map.edges[e], bounds[e], allowed, twins[e]};
      track.cut_then_divide(from, to, trails.lines, inner);
    } else {
      cut_at_lines(inner, map.edges[e], from, to, trails.lines);
    }
    for (const Tunnel& tunnel : tunnels[e]) cut_across(inner, from, to, tunnel, trails.across[tunnel]);
  }
  return trails;
}

}  // namespace sagitta
