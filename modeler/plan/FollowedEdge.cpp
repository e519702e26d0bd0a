#include "plan/FollowedEdge.hpp"

#include <algorithm>
#include <functional>
#include <optional>

#include "plan/Roots.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// The box that an edge lies in: that of its ends.
Box around(Point a, Point b) {
  Box box;
  box.add(a);
  box.add(b);
  return box;
}

/// The same, with room for ends that lie off the curve by what two heights may differ by and still be one.
Box well_around(Point a, Point b) {
  constexpr double part = 1e-3;
  return around(a, b).grown(part * distance(a, b) + 2 * tolerance::snap);
}

/// The root next to 0 between low <= 0 and high >= 0 where f rises, or falls with `sense` < 0: the next branch of a
/// curve, where it does the other, may lie nearer.
std::optional<double> nearest_root(const std::function<double(double)>& f, double low, double high, double sense) {
  const double here = f(0);
  if (here == 0) return 0;
  const double end = (here < 0) == (sense > 0) ? high : low;
  constexpr int halvings = 12;
  double inner = 0;
  for (int k = halvings; k >= 0; --k) {
    const double outer = std::ldexp(end, -k);
    if ((f(outer) > 0) != (here > 0)) return root_between(f, std::min(inner, outer), std::max(inner, outer));
    inner = outer;
  }
  return std::nullopt;
}

/// How far along `way`, a unit vector, p stays within the box, at least 0.
double room(const Box& box, Point p, Point way) {
  const double in_x = way.x == 0 ? 1e300 : ((way.x > 0 ? box.high.x : box.low.x) - p.x) / way.x;
  const double in_y = way.y == 0 ? 1e300 : ((way.y > 0 ? box.high.y : box.low.y) - p.y) / way.y;
  return std::max(0.0, std::min(in_x, in_y));
}

/// The gap's direction of steepest ascent at p, which is square to the curve there.
Point gradient(const SurfacePair& meeting, Point p) {
  constexpr double step = 1e-4;  // mm, for central differences
  const auto slope = [&](Point way) { return meeting.gap(p + step * way) - meeting.gap(p - step * way); };
  const Point steepest{slope({1, 0}), slope({0, 1})};
  const double size = length(steepest);
  return size > 0 ? (1 / size) * steepest : Point{};
}

/// The gap's gradients at both ends of an edge.
struct Ends {
  Point at_a, at_b;
  /// Whether the gap rises along a way where the curve passes (> 0) or falls.
  double sense(Point way) const {
    const double a = dot(at_a, way), b = dot(at_b, way);
    return std::abs(a) > std::abs(b) ? a : b;
  }
};

/// Where the curve passes, from `base` along `way` or against it; `base` where it does not within the edge's box.
Point met(const SurfacePair& meeting, Point a, Point b, Point base, Point way, double sense) {
  const auto gap = [&](double s) { return meeting.gap(base + s * way); };
  for (const Box& box : {around(a, b), well_around(a, b)})
    if (const auto root = nearest_root(gap, -room(box, base, -1 * way), room(box, base, way), sense))
      return base + *root * way;
  return base;
}

/// The axis that the curve's direction at an end is square to, where the chord leaves that end mostly along this axis:
/// the curve turns sharply there.
std::optional<Point> turned_axis(Point steepest, Point chord) {
  constexpr double square = 1e-3, along = 0.5;  // as cosines
  for (const Point axis : {Point{1, 0}, Point{0, 1}})
    if (1 - std::abs(dot(steepest, axis)) < square * square && std::abs(dot(chord, axis)) > along) return axis;
  return std::nullopt;
}

/// The direction in which an edge's places are looked for.
Point direction_of(const Ends& ends, Point chord) {
  constexpr double least = 0.02;  // cosine between the direction and the curve's normal at either end
  const auto axis_a = turned_axis(ends.at_a, chord), axis_b = turned_axis(ends.at_b, chord);
  const std::optional<Point> axis = axis_a ? axis_a : axis_b;
  const bool fits = axis && std::abs(dot(*axis, ends.at_a)) > least && std::abs(dot(*axis, ends.at_b)) > least;
  return fits ? *axis : left_of(chord);
}

}  // namespace

FollowedEdge::FollowedEdge(const SurfacePair& meeting, Point a, Point b) : meeting_(meeting), a_(a), b_(b) {
  const Ends ends{gradient(meeting, a), gradient(meeting, b)};
  direction_ = direction_of(ends, unit(b - a));
  sense_ = ends.sense(direction_);
}

Point FollowedEdge::at(double t) const { return met(meeting_, a_, b_, between(a_, b_, t), direction_, sense_); }

double followed_y(const SurfacePair& meeting, Point a, Point b, double x) {
  const Ends ends{gradient(meeting, a), gradient(meeting, b)};
  const Point on_chord{x, a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y)}, upward{0, 1};
  return met(meeting, a, b, on_chord, upward, ends.sense(upward)).y;
}

}  // namespace sagitta
