#include "solid/RoundCurve.hpp"

#include <algorithm>

#include "plan/Unrolled.hpp"
#include "plane/Tolerance.hpp"
#include "solid/Conic.hpp"

namespace sagitta {
namespace {

EdgeCurve of_fit(const std::function<std::array<Jet, 3>(double)>& f) {
  return fitted_curve([f](double t, std::size_t) { return f(t); }, {0, 1});
}

/// An upright plane cuts a side hole's wall in an ellipse: a rational quadratic up to a third of a turn, which stays
/// sound however long the ellipse.
EdgeCurve over_hole_line(const BoundingSurface& bound, Point a, Point b) {
  const Tunnel& tunnel = bound.tunnel;
  const double sense = bound.kind == BoundingSurface::Kind::vault ? 1 : -1, r = tunnel.radius;
  const double from = tunnel.angle(tunnel.across(a)), to = tunnel.angle(tunnel.across(b));
  const auto z = [&](double angle, double reach) { return bound.value + sense * reach * r * std::cos(angle); };
  if (std::abs(to - from) < tolerance::same) return straight_curve(a, z(from, 1), b, z(to, 1));
  const double run = tunnel.across(b) - tunnel.across(a);
  const auto place = [=](Jet angle) {
    const Jet s = (1 / run) * (r * sin(angle) - constant(tunnel.across(a)));
    return std::array<Jet, 3>{a.x + (b.x - a.x) * s, a.y + (b.y - a.y) * s, bound.value + (sense * r) * cos(angle)};
  };
  constexpr double third = 2.1;  // radians
  if (std::abs(to - from) <= third) {
    const double middle = (from + to) / 2, weight = std::cos((to - from) / 2);
    const double s = (r * std::sin(middle) / weight - tunnel.across(a)) / run;
    return conic_curve({a, between(a, b, s), b, z(from, 1), z(middle, 1 / weight), z(to, 1), weight});
  }
  return of_fit([=](double t) { return place(Jet{from + t * (to - from), to - from, 0}); });
}

/// A rolled edge over a straight line: by the angle about its axis, or by the way along where the line runs beside it.
EdgeCurve over_roll_line(const Surface& surface, const BoundingSurface& bound, Point a, Point b) {
  const Tunnel& tunnel = bound.tunnel;
  const double rise = rise_of(surface, bound), run = tunnel.across(b) - tunnel.across(a);
  const double from = tunnel.angle(tunnel.across(a)), to = tunnel.angle(tunnel.across(b));
  const bool beside = std::abs(run) <= tolerance::same || std::abs(to - from) <= tolerance::same;
  return of_fit([=](double at) {
    const Jet t{at, 1, 0}, angle = from + (to - from) * t;
    const Jet s = beside ? t : (1 / run) * (tunnel.radius * sin(angle) - constant(tunnel.across(a)));
    const Jet x = a.x + (b.x - a.x) * s;
    return std::array<Jet, 3>{x, a.y + (b.y - a.y) * s, axis_of(surface, bound, x) + rise * cos(angle)};
  });
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
  return of_fit([=, guide = Guide(chord, gap)](double at) {
    const Jet t{at, 1, 0};
    const auto [c1, c2] = guide.at(t);
    const auto [n1, n2] = guide.normal(t);
    const auto plain = [&](double first, double second) { return gap(constant(first), constant(second)).v; };
    const auto [away, slope] = foot(plain, c1.v, c2.v, n1.v, n2.v);
    Jet s = constant(away);
    constexpr int orders = 3;  // each step makes one more derivative right
    for (int i = 0; i < orders; ++i) s = s - (1 / slope) * gap(c1 + n1 * s, c2 + n2 * s);
    return place(c1 + n1 * s, c2 + n2 * s);
  });
}

/// A corner's arc that is tangent to a rolled edge: with t its turn from there and a the roll's angle from the side,
/// r (1 - cos a) = R (1 - cos t).
std::optional<EdgeCurve> over_tangent_arc(const Surface& surface, const BoundingSurface& bound,
                                          const CurveSegment& arc) {
  const Tunnel tunnel = bound.tunnel;
  const auto at_side = [&](Point p) { return tunnel.radius - tunnel.across(p) <= tolerance::vertex; };
  const bool leaves = at_side(arc.a);
  const double off = tunnel.across(arc.centre) + arc.radius - tunnel.radius;
  if (leaves == at_side(arc.b) || std::abs(off) > tolerance::vertex) return std::nullopt;
  const double share = std::sqrt(arc.radius / tunnel.radius), rise = rise_of(surface, bound),
               turn = std::abs(arc.sweep);
  return of_fit([=](double at) {
    const Jet t{at, 1, 0}, half = share * sin((turn / 2) * (leaves ? t : 1 - t));
    const Jet angle = arc.start + arc.sweep * t;
    const Jet x = arc.centre.x + arc.radius * cos(angle), y = arc.centre.y + arc.radius * sin(angle);
    return std::array<Jet, 3>{x, y, axis_of(surface, bound, x) + (2 * rise) * (half * sqrt((1 - half) * (1 + half)))};
  });
}

/// A rolled edge over an arc, by the arc's angle: smooth where the arc stays clear of the roll's upright side.
EdgeCurve over_arc_by_angle(const Surface& surface, const BoundingSurface& bound, const CurveSegment& arc) {
  const Tunnel tunnel = bound.tunnel;
  const double rise = rise_of(surface, bound);
  return of_fit([=](double at) {
    const Jet angle = arc.start + arc.sweep * Jet{at, 1, 0};
    const Jet x = arc.centre.x + arc.radius * cos(angle), y = arc.centre.y + arc.radius * sin(angle);
    const Jet share = (1 / tunnel.radius) * (tunnel.nx * x + tunnel.ny * y - constant(tunnel.offset));
    return std::array<Jet, 3>{x, y, axis_of(surface, bound, x) + rise * sqrt((1 - share) * (1 + share))};
  });
}

}  // namespace

EdgeCurve over_round_line(const Surface& surface, const BoundingSurface& bound, Point a, Point b) {
  return bound.of_hole() ? over_hole_line(bound, a, b) : over_roll_line(surface, bound, a, b);
}

/// A round wall that stands across a side hole or a rolled edge: the angle about its own centre against the angle about
/// the hole's or the roll's axis.
EdgeCurve over_round_arc(const Surface& surface, const BoundingSurface& bound, const CurveSegment& arc) {
  if (!bound.of_hole())
    if (std::optional<EdgeCurve> tangent = over_tangent_arc(surface, bound, arc)) return *tangent;
  const Tunnel tunnel = bound.tunnel;
  const double sense = bound.kind == BoundingSurface::Kind::trough ? -1 : 1, r = tunnel.radius, big = arc.radius;
  const double first = r * tunnel.angle(tunnel.across(arc.a)), last = r * tunnel.angle(tunnel.across(arc.b));
  const WallChord chord{big * arc.start, first, big * (arc.start + arc.sweep), last};
  const auto across = [=](Jet v) {
    const Jet angle = (1 / big) * v;
    return tunnel.nx * (arc.centre.x + big * cos(angle)) + tunnel.ny * (arc.centre.y + big * sin(angle)) -
           constant(tunnel.offset);
  };
  EdgeCurve followed = along_wall(
      chord, [=](Jet v, Jet w) { return across(v) - r * sin((1 / r) * w); },
      [=](Jet v, Jet w) {
        const Jet angle = (1 / big) * v, x = arc.centre.x + big * cos(angle);
        return std::array<Jet, 3>{x, arc.centre.y + big * sin(angle),
                                  axis_of(surface, bound, x) + (sense * rise_of(surface, bound)) * cos((1 / r) * w)};
      });
  if (bound.of_hole() || followed.deviation <= tolerance::confusion) return followed;
  EdgeCurve by_angle = over_arc_by_angle(surface, bound, arc);
  return by_angle.deviation < followed.deviation ? by_angle : followed;
}

/// Where a round wall meets another surface.
EdgeCurve on_round_wall(const IntersectionCurve& curve, Point a, Point b) {
  const Tunnel tunnel = *curve.tunnel;
  const double r = tunnel.radius;
  const WallChord chord{tunnel.along(a), r * tunnel.angle(tunnel.across(a)), tunnel.along(b),
                        r * tunnel.angle(tunnel.across(b))};
  return along_wall(
      chord, [=](Jet u, Jet w) { return above_wall(curve, u, (1 / r) * w); },
      [=](Jet u, Jet w) {
        const Jet angle = (1 / r) * w, across = tunnel.offset + r * sin(angle);
        const Jet x = tunnel.nx * across + tunnel.ny * u, y = tunnel.ny * across - tunnel.nx * u;
        if (!curve.meeting) return std::array<Jet, 3>{x, y, curve.axis + (curve.side * r) * cos(angle)};
        const SurfacePair& pair = *curve.meeting;
        return std::array<Jet, 3>{
            x, y, axis_of(pair.surface, pair.upper, x) + rise_of(pair.surface, pair.upper) * cos(angle)};
      });
}

}  // namespace sagitta
