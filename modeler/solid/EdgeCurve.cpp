#include "solid/EdgeCurve.hpp"

#include <Geom_BSplineCurve.hxx>
#include <Geom_Circle.hxx>
#include <Geom_Line.hxx>
#include <algorithm>
#include <gp_Ax2.hxx>

#include "plan/FollowedEdge.hpp"
#include "plane/Tolerance.hpp"
#include "solid/CompositeCurve.hpp"
#include "solid/Conic.hpp"
#include "solid/EllipseRun.hpp"
#include "solid/Height.hpp"
#include "solid/Pcurve.hpp"
#include "solid/RoundCurve.hpp"

namespace sagitta {
namespace {

constexpr double aim = tolerance::confusion;

gp_Pnt point(Point p, double z) { return {p.x, p.y, z}; }

EdgeCurve of_fit(const std::function<std::array<Jet, 3>(double)>& f, double last) {
  return fitted_curve([f](double t, std::size_t) { return f(t); }, {0, last});
}

EdgeCurve over_line(const Surface& surface, const BoundingSurface& bound, Point a, Point b) {
  if (bound.round()) return over_round_line(surface, bound, a, b);
  const bool sections_are_conic = bound.form == 0 && (surface.r2 == 0 || std::abs(b.x - a.x) <= tolerance::same);
  if (bound.plane(surface)) return straight_curve(a, height(surface, bound, a), b, height(surface, bound, b));
  if (sections_are_conic) return conic_curve(wall_section(surface, bound, a, b));
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

/// A followed curve, with its derivatives by Newton's method on jets: each step makes one more right.
EdgeCurve followed_crossing(const IntersectionCurve& curve, Point a, Point b) {
  const auto pair = curve.meeting;
  const FollowedEdge edge(*pair, a, b);
  const Point way = b - a, square = edge.direction();
  const auto gap = [pair](Jet x, Jet y) {
    return height(pair->surface, pair->upper, x, y) - height(pair->surface, pair->other, x, y);
  };
  return of_fit(
      [=](double at) {
        const Jet t{at, 1, 0}, on_x = a.x + way.x * t, on_y = a.y + way.y * t;
        const Point p = at <= 0 ? a : at >= 1 ? b : edge.at(at);
        const double slope = gap(Jet{p.x, square.x, 0}, Jet{p.y, square.y, 0}).d;
        Jet s = constant(dot(p - between(a, b, at), square));
        constexpr int orders = 3;
        for (int i = 0; i < orders; ++i) s = s - (1 / slope) * gap(on_x + square.x * s, on_y + square.y * s);
        const Jet x = on_x + square.x * s, y = on_y + square.y * s;
        return std::array<Jet, 3>{x, y, height(pair->surface, pair->other, x, y)};
      },
      1);
}

EdgeCurve over_crossing(const IntersectionCurve& curve, Point a, Point b) {
  if (curve.tunnel) return on_round_wall(curve, a, b);
  if (curve.meeting) return followed_crossing(curve, a, b);
  return curve.r2 == 0 ? conic_curve(level_section(curve, a, b)) : fitted_crossing(curve, a, b);
}

/// How far a curve where two surfaces meet leaves them in height. What it is moved sideways by may be far more: the two
/// meet at a flat angle.
double off_surfaces(const Surface& surface, const IntersectionCurve& crossing, const EdgeCurve& curve) {
  std::vector<BoundingSurface> both{{BoundingSurface::Kind::offset_surface, crossing.offset, crossing.fallen}};
  if (crossing.meeting) both = {crossing.meeting->upper, crossing.meeting->other};
  constexpr int samples = 64;
  double most = 0;
  for (int k = 0; k <= samples; ++k) {
    const double t = curve.first + (curve.last - curve.first) * k / samples;
    const std::array<Jet, 3> p = curve.place(t, 0);
    for (const BoundingSurface& one : both)
      most = std::max(most, std::abs(height(surface, one, Point{p[0].v, p[1].v}) - p[2].v));
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
  if (edge.upright) return straight_curve(a.p, a.z, b.p, b.z);
  if (edge.crossing >= 0) return over_crossing(shell.plan.map.crossings[edge.crossing], a.p, b.p);
  if (edge.ellipse) return over_ellipse(shell.plan.surface, edge.bound, {*edge.ellipse, edge.run});
  if (!edge.run.empty()) return over_run(shell.plan.surface, edge.bound, edge.run);
  if (edge.segment.is_arc() && edge.bound.round()) return over_round_arc(shell.plan.surface, edge.bound, edge.segment);
  if (edge.segment.is_arc()) return over_arc(shell.plan.surface, edge.bound, edge.segment);
  return over_line(shell.plan.surface, edge.bound, a.p, b.p);
}

}  // namespace

EdgeCurve straight_curve(Point a, double za, Point b, double zb) {
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

EdgeCurve conic_curve(const Conic& c) {
  if (c.straight()) return straight_curve(c.a, c.za, c.b, c.zb);
  const std::array poles{point(c.a, c.za), point(c.m, c.zm), point(c.b, c.zb)};
  const std::array weights{1.0, c.weight, 1.0};
  const std::array knots{0.0, 1.0};
  const std::array multiplicities{3, 3};
  EdgeCurve result;
  result.curve =
      new Geom_BSplineCurve(TColgp_Array1OfPnt(poles[0], 1, 3), TColStd_Array1OfReal(weights[0], 1, 3),
                            TColStd_Array1OfReal(knots[0], 1, 2), TColStd_Array1OfInteger(multiplicities[0], 1, 2), 2);
  result.place = [c](double t, std::size_t) {
    const Jet p{t, 1, 0}, q = 1 - p;
    const Jet b0 = q * q, b1 = (2 * c.weight) * (p * q), b2 = p * p, sum = b0 + b1 + b2;
    const auto mixed = [&](double a, double m, double b) { return (a * b0 + m * b1 + b * b2) / sum; };
    return std::array<Jet, 3>{mixed(c.a.x, c.m.x, c.b.x), mixed(c.a.y, c.m.y, c.b.y), mixed(c.za, c.zm, c.zb)};
  };
  return result;
}

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
  const bool whole = edge.bound.kind == BoundingSurface::Kind::level || edge.bound.of_hole();
  if (edge.upright || (edge.crossing < 0 && whole)) return exact;
  EdgeCurve ending = ending_in(a, b, std::move(exact));
  const IntersectionCurve* crossing = edge.crossing < 0 ? nullptr : &shell.plan.map.crossings[edge.crossing];
  const bool in_floor = crossing && !crossing->tunnel;
  ending.deviation += in_floor ? off_surfaces(shell.plan.surface, *crossing, ending) : ending.moved;
  return ending;
}

}  // namespace sagitta
