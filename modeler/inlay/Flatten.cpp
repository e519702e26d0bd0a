#include "inlay/Flatten.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {
namespace {

constexpr int most_chords = 4096;

/// Chords for an arc: each strays from it by r (1 - cos(angle / 2)).
int chords(const Piece& piece, double off) {
  if (!piece.is_arc()) return 1;
  const double step = 2 * std::acos(std::max(0.0, 1 - off / piece.radius));
  return std::clamp(static_cast<int>(std::ceil(std::abs(piece.sweep) / step)), 1, most_chords);
}

/// Chords for a Bezier of equal steps in t: each strays by at most max |B''| / (8 n^2), and |B''| is at most six times
/// the greater second difference of the control points.
int chords(const Bezier& curve, double scale) {
  const Point u = curve.a - 2 * curve.c + curve.d, v = curve.c - 2 * curve.d + curve.b;
  const double bend = 6 * scale * std::max(length(u), length(v));
  return std::clamp(static_cast<int>(std::ceil(std::sqrt(bend / (8 * flattening)))), 1, most_chords);
}

Polygon polygon_of(const StrokeLoop& loop, double scale, Point middle) {
  Polygon polygon;
  for (const Stroke& stroke : loop) {
    const auto* piece = std::get_if<Piece>(&stroke);
    const auto* curve = std::get_if<Bezier>(&stroke);
    Piece larger = piece ? *piece : Piece{};
    larger.radius *= scale;
    const int n = piece ? chords(larger, flattening) : chords(*curve, scale);
    for (int i = 0; i < n; ++i) {
      const double t = 1.0 * i / n;
      polygon.push_back(scale * ((piece ? piece->at(t) : curve->at(t)) - middle));
    }
  }
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

Region flattened(const std::vector<StrokeLoop>& outlines, double scale, Point middle) {
  Region region;
  for (const StrokeLoop& loop : outlines) region.push_back(polygon_of(loop, scale, middle));
  return region;
}

Region flattened(const Loops& loops, double chord) {
  Region region;
  for (const Loop& loop : loops) {
    Polygon& polygon = region.emplace_back();
    for (const Piece& piece : loop) {
      const int n = chords(piece, chord);
      for (int i = 0; i < n; ++i) polygon.push_back(piece.at(1.0 * i / n));
    }
  }
  return region;
}

Box bounds(const Artwork& artwork) {
  Box box;
  for (const DrawnRegion& region : artwork.regions)
    for (const StrokeLoop& loop : region.outlines)
      for (const Stroke& stroke : loop) {
        if (const auto* curve = std::get_if<Bezier>(&stroke)) {
          add(*curve, box);
        } else {
          const Box own = bounds(std::get<Piece>(stroke));
          box.add(own.low);
          box.add(own.high);
        }
      }
  return box;
}

}  // namespace sagitta
