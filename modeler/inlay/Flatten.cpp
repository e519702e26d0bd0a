#include "inlay/Flatten.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {
namespace {

constexpr int most_chords = 4096;  // of an arc
constexpr int most_halvings = 12;  // of a Bezier

/// Chords for an arc: each strays from it by r (1 - cos(angle / 2)).
int chords(const CurveSegment& segment, double off) {
  if (!segment.is_arc()) return 1;
  const double step = 2 * std::acos(std::max(0.0, 1 - off / segment.radius));
  return std::clamp(static_cast<int>(std::ceil(std::abs(segment.sweep) / step)), 1, most_chords);
}

/// A Bezier as points from its beginning up to before its end, halved until each part strays by less than `off` from
/// its chord: by at most max |B'' x chord| h^2 / 8, with B'' between six times the second differences of the control
/// points.
void add_chords(const Bezier& curve, double off, int halvings, Polygon& polygon) {
  const Point chord = curve.b - curve.a, u = curve.a - 2 * curve.c + curve.d, v = curve.c - 2 * curve.d + curve.b;
  const double size = length(chord), most = 8 * off / 6;
  // A part that does not turn back along its chord strays from it as far as from the line through it.
  const bool ahead =
      dot(curve.c - curve.a, chord) >= 0 && dot(curve.d - curve.c, chord) >= 0 && dot(curve.b - curve.d, chord) >= 0;
  const bool serves = ahead && std::max(std::abs(cross(u, chord)), std::abs(cross(v, chord))) <= most * size;
  if (halvings == 0 || serves || std::max(length(u), length(v)) <= most) {
    polygon.push_back(curve.a);
    return;
  }
  const Point ac = between(curve.a, curve.c, 0.5), cd = between(curve.c, curve.d, 0.5),
              db = between(curve.d, curve.b, 0.5), acd = between(ac, cd, 0.5), cdb = between(cd, db, 0.5),
              middle = between(acd, cdb, 0.5);
  add_chords({curve.a, ac, acd, middle}, off, halvings - 1, polygon);
  add_chords({middle, cdb, db, curve.b}, off, halvings - 1, polygon);
}

Polygon polygon_of(const PathLoop& loop, double scale, Point middle) {
  Polygon polygon;
  for (const PathSegment& stroke : loop) {
    if (const auto* curve = std::get_if<Bezier>(&stroke)) {
      add_chords(*curve, tolerance::flattening / scale, most_halvings, polygon);
      continue;
    }
    const CurveSegment& segment = std::get<CurveSegment>(stroke);
    const int n = chords(segment, tolerance::flattening / scale);
    for (int i = 0; i < n; ++i) polygon.push_back(segment.at(1.0 * i / n));
  }
  for (Point& p : polygon) p = scale * (p - middle);
  return polygon;
}

/// Roots in (0, 1) of a t^2 + b t + c.
void roots(double a, double b, double c, std::vector<double>& found) {
  const double inside = b * b - 4 * a * c;
  if (inside < 0) return;
  const double q = -0.5 * (b + (b < 0 ? -1 : 1) * std::sqrt(inside));
  for (const double t : {a != 0 ? q / a : -1, q != 0 ? c / q : -1})
    if (t > 0 && t < 1) found.push_back(t);
}

void add(const Bezier& curve, Box& box) {
  std::vector<double> ts{0, 1};
  const Point p = curve.c - curve.a, q = curve.d - curve.c, r = curve.b - curve.d;
  roots(p.x - 2 * q.x + r.x, 2 * (q.x - p.x), p.x, ts);
  roots(p.y - 2 * q.y + r.y, 2 * (q.y - p.y), p.y, ts);
  for (const double t : ts) box.add(curve.at(t));
}

}  // namespace

Region flattened(const std::vector<PathLoop>& outlines, double scale, Point middle) {
  Region region;
  for (const PathLoop& loop : outlines) region.push_back(polygon_of(loop, scale, middle));
  return region;
}

Region flattened(const Loops& loops, double chord) {
  Region region;
  for (const Loop& loop : loops) {
    Polygon& polygon = region.emplace_back();
    for (const CurveSegment& segment : loop) {
      const int n = chords(segment, chord);
      for (int i = 0; i < n; ++i) polygon.push_back(segment.at(1.0 * i / n));
    }
  }
  return region;
}

Box bounds(const Artwork& artwork) {
  Box box;
  for (const DrawnRegion& region : artwork.regions)
    for (const PathLoop& loop : region.outlines)
      for (const PathSegment& stroke : loop) {
        if (const auto* curve = std::get_if<Bezier>(&stroke)) {
          add(*curve, box);
        } else {
          const Box own = bounds(std::get<CurveSegment>(stroke));
          box.add(own.low);
          box.add(own.high);
        }
      }
  return box;
}

}  // namespace sagitta
