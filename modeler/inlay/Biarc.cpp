#include "inlay/Biarc.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double most_turn = 3;                 // radians; arc_between() takes the shorter way round
constexpr double one_centre = tolerance::snap;  // arcs of one circle found twice

}  // namespace

CurveSegment arc_along(Point p, Point t, Point q, double flat) {
  const Point chord = q - p;
  const double aside = cross(t, chord), square = dot(chord, chord);
  // Height of the arc over its chord: half the chord times tan(quarter turn), nearly aside / 4.
  if (std::abs(aside) / 4 < flat && dot(t, chord) > 0) return line(p, q);
  const double radius = square / (2 * aside);  // to the left
  const Point centre = p + radius * left_of(t);
  return arc_between(centre, std::abs(radius), p, q, radius > 0);
}

std::vector<CurveSegment> biarc(Point p, Point t, Point q, Point u, double share, double flat) {
  const Point chord = q - p, sum = t + u;
  const double square = dot(chord, chord), along = dot(chord, sum), spread = 2 * (1 - dot(t, u));
  double leg = 0;
  if (spread < tolerance::share) {
    if (along <= 0) return {};
    leg = square / (2 * along);
  } else {
    leg = (-along + std::sqrt(along * along + spread * square)) / spread;
  }
  // The legs' ends are as far apart as both legs are long.
  const double first_leg = share * leg;
  const double second_leg = (square / 2 - first_leg * dot(chord, t)) / (dot(chord, u) + first_leg * (1 - dot(t, u)));
  if (!(first_leg > 0) || !(second_leg > 0)) return {};
  const Point joint = between(p + first_leg * t, q - second_leg * u, first_leg / (first_leg + second_leg));
  const CurveSegment first = arc_along(p, t, joint, flat);
  const CurveSegment second = arc_along(q, -1.0 * u, joint, flat).reversed();
  for (const CurveSegment& segment : {first, second}) {
    if (segment.is_arc() && std::abs(segment.sweep) > most_turn) return {};
  }
  // The way round that was asked for, not the shorter one.
  if (dot(joint - p, t) < 0 || dot(q - joint, u) < 0) return {};
  if (!first.is_arc() && !second.is_arc() && std::abs(cross(t, chord)) < flat) return {line(p, q)};
  if (first.is_arc() && second.is_arc() && distance(first.centre, second.centre) < one_centre &&
      std::abs(first.sweep + second.sweep) < most_turn && (first.sweep > 0) == (second.sweep > 0))
    return {arc_along(p, t, q, flat)};
  return {first, second};
}

Point end_direction(const CurveSegment& segment) { return unit(segment.slope(1)); }

double off_chain(const std::vector<CurveSegment>& chain, Point x) {
  double least = 1e300;
  for (const CurveSegment& segment : chain) {
    double off = std::min(distance(x, segment.a), distance(x, segment.b));
    if (!segment.is_arc()) {
      const Point d = segment.b - segment.a;
      const double s = dot(x - segment.a, d);
      if (s > 0 && s < dot(d, d)) off = std::abs(cross(d, x - segment.a)) / length(d);
    } else {
      const Point from_centre = x - segment.centre;
      const double turn = segment.sweep > 0 ? 1 : -1;
      const bool between_rays = turn * cross(segment.a - segment.centre, from_centre) >= 0 &&
                                turn * cross(from_centre, segment.b - segment.centre) >= 0;
      if (between_rays) off = std::abs(length(from_centre) - segment.radius);
    }
    least = std::min(least, off);
  }
  return least;
}

}  // namespace sagitta
