#include "solid/EdgeCurve.hpp"

#include <Geom_BSplineCurve.hxx>
#include <Geom_Circle.hxx>
#include <Geom_Line.hxx>
#include <algorithm>
#include <gp_Ax2.hxx>

#include "plan/Unrolled.hpp"
#include "plane/Tolerance.hpp"
#include "solid/CompositeCurve.hpp"
#include "solid/Conic.hpp"
#include "solid/EllipseRun.hpp"
#include "solid/Height.hpp"
#include "solid/Pcurve.hpp"

namespace sagitta {
namespace {

constexpr double aim = tolerance::confusion;

gp_Pnt point(Point p, double z) { return {p.x, p.y, z}; }

EdgeCurve straight(Point a, double za, Point b, double zb) {
  EdgeCurve result;
  const gp_Vec d(point(a, za), point(b, zb));
  result.curve = new Geom_Line(point(a, za), d);
  result.last = d.Magnitude();
  const gp_Vec slope = d / result.last;
  result.place = [a, za, slope](double t, std::size_t) {
    return std::array<Jet, 3>{Jet{a.x + t * slope.X(), slope.X(), 0}, Jet{a.y + t * slope.Y(), slope.Y(), 0},
                              Jet{za + t * slope.Z(), slope.Z(), 0}};
  };
  return result;
}

EdgeCurve of_conic(const Conic& c) {
  if (c.straight()) return straight(c.a, c.za, c.b, c.zb);
  TColgp_Array1OfPnt poles(1, 3);
  poles(1) = point(c.a, c.za);
  poles(2) = point(c.m, c.zm);
  poles(3) = point(c.b, c.zb);
  TColStd_Array1OfReal weights(1, 3), knots(1, 2);
  weights(1) = weights(3) = 1;
  weights(2) = c.weight;
  knots(1) = 0;
  knots(2) = 1;
  TColStd_Array1OfInteger multiplicities(1, 2);
  multiplicities.Init(3);
  EdgeCurve result;
  result.curve = new Geom_BSplineCurve(poles, weights, knots, multiplicities, 2);
  result.place = [c](double t, std::size_t) {
    const Jet p{t, 1, 0}, q = 1 - p;
    const Jet b0 = q * q, b1 = (2 * c.weight) * (p * q), b2 = p * p, sum = b0 + b1 + b2;
    const auto mixed = [&](double a, double m, double b) { return (a * b0 + m * b1 + b * b2) / sum; };
    return std::array<Jet, 3>{mixed(c.a.x, c.m.x, c.b.x), mixed(c.a.y, c.m.y, c.b.y), mixed(c.za, c.zm, c.zb)};
  };
  return result;
}

EdgeCurve of_fit(const std::function<std::array<Jet, 3>(double)>& f, double last) {
  return fitted_curve([f](double t, std::size_t) { return f(t); }, {0, last});
}

/// An upright plane cuts a side hole's wall in an ellipse: a rational quadratic up to a third of a turn, which stays
/// sound however long the ellipse.
EdgeCurve over_hole_line(const BoundingSurface& bound, Point a, Point b) {
  const Tunnel& tunnel = bound.tunnel;
  const double sense = bound.kind == BoundingSurface::Kind::vault ? 1 : -1, r = tunnel.radius;
  const double from = tunnel.angle(tunnel.across(a)), to = tunnel.angle(tunnel.across(b));
  const auto z = [&](double angle, double reach) { return bound.value + sense * reach * r * std::cos(angle); };
  if (std::abs(to - from) < tolerance::same) return straight(a, z(from, 1), b, z(to, 1));
  const double run = tunnel.across(b) - tunnel.across(a);
  const auto place = [=](Jet angle) {
    const Jet s = (1 / run) * (r * sin(angle) - constant(tunnel.across(a)));
    return std::array<Jet, 3>{a.x + (b.x - a.x) * s, a.y + (b.y - a.y) * s, bound.value + (sense * r) * cos(angle)};
  };
  constexpr double third = 2.1;  // radians
  if (std::abs(to - from) <= third) {
    const double middle = (from + to) / 2, weight = std::cos((to - from) / 2);
    const double s = (r * std::sin(middle) / weight - tunnel.across(a)) / run;
    return of_conic({a, between(a, b, s), b, z(from, 1), z(middle, 1 / weight), z(to, 1), weight});
  }
  return of_fit([=](double t) { return place(Jet{from + t * (to - from), to - from, 0}); }, 1);
}

EdgeCurve over_line(const Surface& surface, const BoundingSurface& bound, Point a, Point b) {
  if (bound.of_hole()) return over_hole_line(bound, a, b);
  const bool sections_are_conic = surface.r2 == 0 || std::abs(b.x - a.x) <= tolerance::same;
  if (bound.kind == BoundingSurface::Kind::level || surface.flat)
    return straight(a, height(surface, bound, a), b, height(surface, bound, b));
  if (sections_are_conic) return of_conic(wall_section(surface, bound, a, b));
  return of_fit(
      [=](double t) {
        const Jet x{a.x + t * (b.x - a.x), b.x - a.x, 0}, y{a.y + t * (b.y - a.y), b.y - a.y, 0};
        return std::array<Jet, 3>{x, y, height(surface, bound, x, y)};
      },
      1);
}

/// Parametrised by the angle from the arc's counter-clockwise start.
EdgeCurve over_arc(const Surface& surface, const BoundingSurface& bound, CurveSegment arc) {
  const bool reversed = arc.sweep < 0;
  if (reversed) arc = arc.reversed();
  EdgeCurve result;
  if (bound.kind == BoundingSurface::Kind::level) {
    const gp_Ax2 axes(point(arc.centre, bound.value), gp::DZ(), gp_Dir(std::cos(arc.start), std::sin(arc.start), 0));
    result.curve = new Geom_Circle(axes, arc.radius);
    result.last = arc.sweep;
    result.place = [arc, z = bound.value](double t, std::size_t) {
      const Jet angle{arc.start + t, 1, 0};
      return std::array<Jet, 3>{arc.centre.x + arc.radius * cos(angle), arc.centre.y + arc.radius * sin(angle),
                                constant(z)};
    };
  } else {
    result = of_fit(
        [=](double t) {
          const Jet angle{arc.start + t, 1, 0};
          const Jet x = arc.centre.x + arc.radius * cos(angle), y = arc.centre.y + arc.radius * sin(angle);
          return std::array<Jet, 3>{x, y, height(surface, bound, x, y)};
        },
        arc.sweep);
  }
  result.reversed = reversed;
  return result;
}

/// Parametrised by the length along the run.
EdgeCurve over_run(const Surface& surface, const BoundingSurface& bound, const std::vector<CurveSegment>& run) {
  const CompositeCurve curve(run);
  return fitted_curve(
      [=](double s, std::size_t span) {
        const auto [x, y] = curve.at(s, span);
        return std::array<Jet, 3>{x, y, height(surface, bound, x, y)};
      },
      curve.spans());
}

/// A cubic near a curve on the rolled-out wall, with its ends and its tangents there: on its normals the curve is
/// followed, however it turns. The handles have the share of the way to where the tangents meet that a circle's arc of
/// the same turn has; where they meet nowhere between, an arc's own.
class Guide {
 public:
  template <class Gap>
  Guide(const WallChord& chord, Gap gap) : chord_(chord) {
    const Point a = tangent(gap, chord.a1, chord.a2, true), b = tangent(gap, chord.b1, chord.b2, false);
    const Point way{chord.b1 - chord.a1, chord.b2 - chord.a2};
    const double turn = std::abs(std::atan2(cross(a, b), dot(a, b)));
    const double share = turn > tolerance::direction ? 4.0 / 3 * std::tan(turn / 4) : turn / 3;
    double from = length(way) * (turn > tolerance::direction ? share / (2 * std::sin(turn / 2)) : 1.0 / 3), to = from;
    const double first = cross(way, b) / cross(a, b), second = cross(a, way) / cross(a, b);
    constexpr double clear_turn = 1e-3;  // radians; with less the tangents meet too far off to tell where
    if (turn > clear_turn && first > 0 && second > 0) {
      from = share / std::tan(turn / 2) * first;
      to = share / std::tan(turn / 2) * second;
    }
    first_ = {chord.a1, chord.a1 + from * a.x, chord.b1 - to * b.x, chord.b1};
    second_ = {chord.a2, chord.a2 + from * a.y, chord.b2 - to * b.y, chord.b2};
  }

  std::array<Jet, 2> at(Jet t) const { return {cubic(first_, t), cubic(second_, t)}; }
  std::array<Jet, 2> normal(Jet t) const { return {-1 * slope(second_, t), slope(first_, t)}; }

 private:
  using Handles = std::array<double, 4>;

  /// Along the curve at an end; where it runs square to the chord, it comes from or goes to the hole's upright side.
  template <class Gap>
  Point tangent(Gap gap, double v, double w, bool leaves) const {
    const Point t = unit({-gap(constant(v), Jet{w, 1, 0}).d, gap(Jet{v, 1, 0}, constant(w)).d});
    const double along = dot(t, unit({chord_.b1 - chord_.a1, chord_.b2 - chord_.a2}));
    const bool square = std::abs(along) < 0.1;
    const bool right = square ? (t.y * w < 0) == leaves : along > 0;
    return right ? t : -1 * t;
  }

  static Jet cubic(const Handles& h, Jet t) {
    const Jet s = 1 - t;
    return h[0] * (s * s * s) + 3 * h[1] * (s * s * t) + 3 * h[2] * (s * t * t) + h[3] * (t * t * t);
  }
  static Jet slope(const Handles& h, Jet t) {
    const Jet s = 1 - t;
    return 3 * (h[1] - h[0]) * (s * s) + 6 * (h[2] - h[1]) * (s * t) + 3 * (h[3] - h[2]) * (t * t);
  }

  WallChord chord_;
  Handles first_{}, second_{};
};

/// A curve on a side hole's wall from a to b, `gap` zero along it: followed on the rolled-out wall or, for a round wall
/// that stands across the hole, on both rolled out. gap and place take the two coordinates as jets.
template <class Gap, class Place>
EdgeCurve along_wall(const WallChord& chord, Gap gap, Place place) {
  return of_fit(
      [=, guide = Guide(chord, gap)](double at) {
        const Jet t{at, 1, 0};
        const auto [c1, c2] = guide.at(t);
        const auto [n1, n2] = guide.normal(t);
        const auto plain = [&](double first, double second) { return gap(constant(first), constant(second)).v; };
        const auto [away, slope] = foot(plain, c1.v, c2.v, n1.v, n2.v);
        Jet s = constant(away);
        constexpr int orders = 3;  // each step makes one more derivative right
        for (int i = 0; i < orders; ++i) s = s - (1 / slope) * gap(c1 + n1 * s, c2 + n2 * s);
        return place(c1 + n1 * s, c2 + n2 * s);
      },
      1);
}

/// A round wall that stands across a side hole: the angle about its own centre against the angle about the hole's axis.
EdgeCurve over_hole_arc(const BoundingSurface& bound, const CurveSegment& arc) {
  const Tunnel tunnel = bound.tunnel;
  const double sense = bound.kind == BoundingSurface::Kind::vault ? 1 : -1, r = tunnel.radius, big = arc.radius;
  const double first = r * tunnel.angle(tunnel.across(arc.a)), last = r * tunnel.angle(tunnel.across(arc.b));
  const WallChord chord{big * arc.start, first, big * (arc.start + arc.sweep), last};
  const auto across = [=](Jet v) {
    const Jet angle = (1 / big) * v;
    return tunnel.nx * (arc.centre.x + big * cos(angle)) + tunnel.ny * (arc.centre.y + big * sin(angle)) -
           constant(tunnel.offset);
  };
  return along_wall(
      chord, [=](Jet v, Jet w) { return across(v) - r * sin((1 / r) * w); },
      [=](Jet v, Jet w) {
        const Jet angle = (1 / big) * v;
        return std::array<Jet, 3>{arc.centre.x + big * cos(angle), arc.centre.y + big * sin(angle),
                                  bound.value + (sense * r) * cos((1 / r) * w)};
      });
}

/// Where a side hole's wall meets a moved surface.
EdgeCurve on_hole_wall(const IntersectionCurve& curve, Point a, Point b) {
  const Tunnel tunnel = *curve.tunnel;
  const double r = tunnel.radius;
  const WallChord chord{tunnel.along(a), r * tunnel.angle(tunnel.across(a)), tunnel.along(b),
                        r * tunnel.angle(tunnel.across(b))};
  return along_wall(
      chord, [=](Jet u, Jet w) { return above_wall(curve, u, (1 / r) * w); },
      [=](Jet u, Jet w) {
        const Jet angle = (1 / r) * w, across = tunnel.offset + r * sin(angle);
        return std::array<Jet, 3>{tunnel.nx * across + tunnel.ny * u, tunnel.ny * across - tunnel.nx * u,
                                  curve.axis + (curve.side * r) * cos(angle)};
      });
}

/// On an even-edge surface the intersection curve is not a conic: y = side sqrt(delta (2 R - delta)). The root of
/// delta, which is linear in x and leads through a and b, runs evenly from a to b: so y is smooth at a tip, and near
/// one.
EdgeCurve fitted_crossing(const IntersectionCurve& curve, Point a, Point b) {
  const auto root_at = [&](Point p) {
    return std::abs(p.y) <= tolerance::vertex ? 0 : std::sqrt(sagitta_at(curve, p));
  };
  const double from = root_at(a), run = root_at(b) - from;
  return of_fit(
      [=](double t) {
        const Jet p{t, 1, 0};
        const Jet root = from + run * p;
        const Jet x = a.x + ((b.x - a.x) / (2 * from + run)) * (p * (2 * from + run * p));
        const Jet rest = 2 * (curve.r0 + x * (curve.r1 + curve.r2 * x)) - root * root;
        return std::array<Jet, 3>{x, curve.side * (root * sqrt(rest)), constant(curve.level)};
      },
      1);
}

EdgeCurve over_crossing(const IntersectionCurve& curve, Point a, Point b) {
  if (curve.tunnel) return on_hole_wall(curve, a, b);
  return curve.r2 == 0 ? of_conic(level_section(curve, a, b)) : fitted_crossing(curve, a, b);
}

/// How far a curve in a level floor leaves the moved surface that it crosses there. What it is moved sideways by may be
/// far more: the two meet at a flat angle.
double off_surface(const Surface& surface, const IntersectionCurve& crossing, const EdgeCurve& curve) {
  const BoundingSurface moved{BoundingSurface::Kind::offset_surface, crossing.offset, crossing.fallen};
  constexpr int samples = 64;
  double most = 0;
  for (int k = 0; k <= samples; ++k) {
    const double t = curve.first + (curve.last - curve.first) * k / samples;
    const std::array<Jet, 3> p = curve.place(t, 0);
    most = std::max(most, std::abs(height(surface, moved, Point{p[0].v, p[1].v}) - p[2].v));
  }
  return most;
}

/// Heights within tolerance::height of each other meet in one vertex. A curve that ends beside it would pass the other
/// height near by: it is bent to end in the vertex.
EdgeCurve ending_in(const ShellVertex& a, const ShellVertex& b, EdgeCurve exact) {
  const ShellVertex& start = exact.reversed ? b : a;
  const ShellVertex& end = exact.reversed ? a : b;
  const auto away = [](const ShellVertex& v, const std::array<Jet, 3>& p) {
    return std::array{v.p.x - p[0].v, v.p.y - p[1].v, v.z - p[2].v};
  };
  const std::array<double, 3> from = away(start, exact.place(exact.first, 0)),
                              to = away(end, exact.place(exact.last, exact.breaks.size()));
  const double off = std::max(std::hypot(from[0], from[1], from[2]), std::hypot(to[0], to[1], to[2]));
  if (off <= tolerance::same) return exact;
  const double length = exact.last - exact.first;
  EdgeCurve bent = fitted_curve(
      [=, first = exact.first, place = exact.place](double t, std::size_t span) {
        std::array<Jet, 3> p = place(t, span);
        for (int k = 0; k < 3; ++k)
          p[k] = p[k] + Jet{from[k] + (to[k] - from[k]) * (t - first) / length, (to[k] - from[k]) / length, 0};
        return p;
      },
      exact.spans());
  bent.reversed = exact.reversed;
  bent.moved = off;
  bent.deviation += exact.deviation;
  return bent;
}

EdgeCurve exact_curve(const Shell& shell, const ShellEdge& edge, const ShellVertex& a, const ShellVertex& b) {
  if (edge.upright) return straight(a.p, a.z, b.p, b.z);
  if (edge.crossing >= 0) return over_crossing(shell.plan.map.crossings[edge.crossing], a.p, b.p);
  if (edge.ellipse) return over_ellipse(shell.plan.surface, edge.bound, {*edge.ellipse, edge.run});
  if (!edge.run.empty()) return over_run(shell.plan.surface, edge.bound, edge.run);
  if (edge.segment.is_arc() && edge.bound.of_hole()) return over_hole_arc(edge.bound, edge.segment);
  if (edge.segment.is_arc()) return over_arc(shell.plan.surface, edge.bound, edge.segment);
  return over_line(shell.plan.surface, edge.bound, a.p, b.p);
}

}  // namespace

EdgeCurve level_run(const std::vector<CurveSegment>& run, double z) {
  return over_run({}, {BoundingSurface::Kind::level, z}, run);
}

std::vector<double> EdgeCurve::spans() const {
  std::vector<double> all{first};
  all.insert(all.end(), breaks.begin(), breaks.end());
  all.push_back(last);
  return all;
}

EdgeCurve fitted_curve(const ParametricCurve<3>& exact, const std::vector<double>& spans) {
  const HermiteSpline<3> fitted = fit_hermite_spline<3>(exact, spans, {1, 1, 1}, aim);
  EdgeCurve result;
  result.curve = spline_of(fitted);
  result.first = spans.front(), result.last = spans.back();
  result.breaks.assign(spans.begin() + 1, spans.end() - 1);
  result.deviation = fitted.deviation;
  result.place = exact;
  return result;
}

EdgeCurve curve_of(const Shell& shell, const ShellEdge& edge) {
  const ShellVertex& a = shell.vertices[edge.from];
  const ShellVertex& b = shell.vertices[edge.to];
  EdgeCurve exact = exact_curve(shell, edge, a, b);
  if (edge.upright || (edge.crossing < 0 && edge.bound.kind != BoundingSurface::Kind::offset_surface)) return exact;
  EdgeCurve ending = ending_in(a, b, std::move(exact));
  const IntersectionCurve* crossing = edge.crossing < 0 ? nullptr : &shell.plan.map.crossings[edge.crossing];
  const bool in_floor = crossing && !crossing->tunnel;
  ending.deviation += in_floor ? off_surface(shell.plan.surface, *crossing, ending) : ending.moved;
  return ending;
}

}  // namespace sagitta
