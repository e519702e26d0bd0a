#include "layout/OutlineReach.hpp"

#include <algorithm>
#include <limits>
#include <numbers>

namespace sagitta {

std::pair<double, double> reach_in(const Loop& outline, Point p, Point d) {
  double least = std::numeric_limits<double>::infinity(), most = -least;
  const auto meet = [&](double t) { least = std::min(least, t), most = std::max(most, t); };
  for (const CurveSegment& segment : outline) {
    if (!segment.is_arc()) {
      const double a = cross(d, segment.a - p), b = cross(d, segment.b - p);
      if (a != b && a * b <= 0) meet(dot(d, between(segment.a, segment.b, a / (a - b)) - p));
      continue;
    }
    const double off = cross(d, segment.centre - p), half = segment.radius * segment.radius - off * off;
    if (half < 0) continue;
    for (const int side : {-1, 1}) {
      const double t = dot(d, segment.centre - p) + side * std::sqrt(half);
      const Point from = p + t * d - segment.centre;
      double turn = std::remainder(std::atan2(from.y, from.x) - segment.start, 2 * std::numbers::pi);
      if (segment.sweep < 0) turn = -turn;
      if (turn < 0) turn += 2 * std::numbers::pi;
      if (turn <= std::abs(segment.sweep)) meet(t);
    }
  }
  return {least, most};
}

}  // namespace sagitta
