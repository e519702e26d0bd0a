#include "plan/WoodVolume.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace sagitta {
namespace {

/// Asked of each line integral, mm^3: a billionth of the smallest piece that a cutter makes.
constexpr double aim = 1e-9;
/// Doublings of the number of parts of an edge: a hole's wall is steep at its sides.
constexpr int most_doublings = 14;

/// Integral of the drop R - sqrt(R^2 - y^2) from 0 to y, mm^2: a circular segment's; for small y / R its series.
double drop_integral(double r, double y) {
  const double t = y / r, s = t * t;
  constexpr double small = 0.05;
  if (std::abs(t) > small)
    return r * y - 0.5 * (y * std::sqrt(std::max(0.0, (r - y) * (r + y))) + r * r * std::asin(t));
  const double series = 1. / 6 + s * (1. / 40 + s * (1. / 112 + s * (5. / 1152 + s * (7. / 2816 + s * 21. / 13312))));
  return r * r * t * s * series;
}

/// Integral of half the height of a round hole, from its axis to `across`, mm^2.
double hole_integral(const Tunnel& tunnel, double across) {
  const double r = tunnel.radius, a = std::clamp(across, -r, r);
  return 0.5 * (a * std::sqrt((r - a) * (r + a)) + r * r * std::asin(a / r));
}

/// A bound's height integrated across, from an origin to a point, and how far the point lies along.
class Strip {
 public:
  Strip(const Surface& surface, const BoundingSurface& bound, Point origin)
      : surface_(surface), bound_(bound), origin_(bound.round() ? bound.tunnel.across(origin) : origin.y) {}

  double along(Point p) const { return bound_.of_hole() ? bound_.tunnel.along(p) : p.x; }

  double area(Point p) const {
    switch (bound_.kind) {
      case BoundingSurface::Kind::none:
        return 0;
      case BoundingSurface::Kind::level:
        return bound_.value * (p.y - origin_);
      case BoundingSurface::Kind::offset_surface:
        return bound_.form == 0 ? crown(p.x) * (p.y - origin_) - dropped(p) : of_form(p);
      case BoundingSurface::Kind::roll:
        return of_roll(p);
      case BoundingSurface::Kind::trough:
      case BoundingSurface::Kind::vault:
        break;
    }
    const double across = bound_.tunnel.across(p), sense = bound_.kind == BoundingSurface::Kind::vault ? 1 : -1;
    return bound_.value * (across - origin_) +
           sense * (hole_integral(bound_.tunnel, across) - hole_integral(bound_.tunnel, origin_));
  }

 private:
  /// Over x and, at each x, along y: the tunnel's own measure across is square to the axis.
  double of_roll(Point p) const {
    const Tunnel& tunnel = bound_.tunnel;
    const WorkedEdge& edge = surface_.worked_edges[static_cast<std::size_t>(bound_.form)];
    const double stretch = edge.roll / tunnel.radius, across = tunnel.across(p);
    const double rounded = stretch * (hole_integral(tunnel, across) - hole_integral(tunnel, origin_));
    return edge.side * stretch * (axis_of(surface_, bound_, p.x) * (across - origin_) + rounded);
  }

  double of_form(Point p) const {
    if (bound_.form > 0) {
      const ScallopedSpace& space = surface_.scallops[static_cast<std::size_t>(bound_.form - 1)];
      return crown(p.x) * (p.y - origin_) - dropped(p) - below(space, p);
    }
    const double here = height(surface_, bound_, p), there = height(surface_, bound_, {p.x, origin_});
    return (here + there) / 2 * (p.y - origin_);
  }

  /// The scallop's depth integrated across. On a fan the share changes with y, smoothly: Gauss-Legendre with five
  /// points (Abramowitz and Stegun, table 25.4) on parts of at most 2 mm.
  double below(const ScallopedSpace& space, Point p) const {
    if (space.low_lean == 0 && space.high_lean == 0) return space.below(p.x, p.y) * (p.y - origin_);
    constexpr std::array<double, 3> node{0, 0.538469310105683091, 0.906179845938663993},
        weight{0.568888888888888889, 0.478628670499366468, 0.236926885056189088};
    constexpr double part = 2;
    const int parts = std::max(1, static_cast<int>(std::ceil(std::abs(p.y - origin_) / part)));
    const double half = (p.y - origin_) / parts / 2;
    double sum = 0;
    for (int i = 0; i < parts; ++i) {
      const double middle = origin_ + (2 * i + 1) * half;
      sum += weight[0] * space.below(p.x, middle);
      for (const std::size_t k : {std::size_t{1}, std::size_t{2}})
        sum += weight[k] * (space.below(p.x, middle - node[k] * half) + space.below(p.x, middle + node[k] * half));
    }
    return sum * half;
  }

  double crown(double x) const {
    const double fall = bound_.fallen ? surface_.fall_slope * (x - *surface_.fall_start) : 0;
    return surface_.thickness - fall - bound_.value;
  }
  double dropped(Point p) const {
    if (surface_.flat) return 0;
    const double r = surface_.radius(p.x);
    return drop_integral(r, p.y) - drop_integral(r, origin_);
  }

  const Surface& surface_;
  const BoundingSurface& bound_;
  double origin_;
};

/// The integral of strip.area by strip.along over a path at(t), t from 0 to 1: sums of trapezoids, whose errors have
/// only even powers of the step, extrapolated. Romberg's rule: common textbook method, from memory.
template <class Path>
double along(const Strip& strip, Path at) {
  std::array<double, most_doublings + 1> row{};
  for (int k = 0; k <= most_doublings; ++k) {
    const int parts = 1 << k;
    double sum = 0, area = strip.area(at(0)), place = strip.along(at(0));
    for (int i = 1; i <= parts; ++i) {
      const Point p = at(static_cast<double>(i) / parts);
      const double next_area = strip.area(p), next_place = strip.along(p);
      sum += (area + next_area) / 2 * (next_place - place);
      area = next_area;
      place = next_place;
    }
    double better = sum, last = row[0];
    const double before = row[static_cast<std::size_t>(std::max(0, k - 1))];
    row[0] = sum;
    for (int j = 1; j <= k; ++j) {
      better += (better - last) / (std::ldexp(1, 2 * j) - 1);
      last = std::exchange(row[static_cast<std::size_t>(j)], better);
    }
    if (k > 1 && std::abs(better - before) <= aim) return better;
  }
  return row.back();
}

double along_edge(const Subdivision& map, const PlanEdge& edge, const Strip& strip) {
  const Point a = map.vertices[edge.from], b = map.vertices[edge.to];
  const auto straight = [&](Point from, Point to) {
    return from == to ? 0 : along(strip, [=](double t) { return between(from, to, t); });
  };
  if (edge.crossing < 0 && !edge.segment.is_arc()) return straight(a, b);
  const auto curve = [&](double t) { return map.at(edge, t); };
  return straight(a, curve(0)) + along(strip, curve) + straight(curve(1), b);
}

}  // namespace

double wood_volume(const Plan& plan) {
  const Subdivision& map = plan.map;
  double volume = 0;
  const auto add = [&](double sense, const BoundingSurface& bound, HalfEdge first, Point origin) {
    const Strip strip(plan.surface, bound, origin);
    HalfEdge h = first;
    do {
      // counter-clockwise: area = - integral of y dx
      volume -= (h & 1 ? -sense : sense) * along_edge(map, map.edges[h >> 1], strip);
      h = map.next[h];
    } while (h != first);
  };
  for (std::size_t f = 1; f < plan.cells.size(); ++f) {
    const Cell& cell = plan.cells[f];
    if (!cell.wood()) continue;
    const Point origin = map.vertices[map.origin(map.faces[f].loops.front())];
    for (const HalfEdge first : map.faces[f].loops) {
      if (cell.below()) add(1, cell.top_of_lower(), first, origin), add(-1, cell.bottom, first, origin);
      if (cell.above()) add(1, cell.top, first, origin), add(-1, cell.vault, first, origin);
    }
  }
  return volume;
}

}  // namespace sagitta
