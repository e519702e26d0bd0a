#include "inlay/Region.hpp"

#include <algorithm>
#include <cmath>
#include <polyclipping/clipper.hpp>

namespace sagitta {
namespace {

using namespace ClipperLib;

constexpr double units = 1e6;             // Clipper's whole numbers, per mm
constexpr double arc_tolerance = 0.00015;  // mm between an offset's arc and its chords
constexpr double offset_noise = 0.00005;   // mm; points that an offset leaves within this of a line say nothing

Paths paths_of(const Region& region) {
  Paths paths;
  paths.reserve(region.size());
  for (const Polygon& polygon : region) {
    Path& path = paths.emplace_back();
    path.reserve(polygon.size());
    for (const Point& p : polygon) path.emplace_back(std::llround(p.x * units), std::llround(p.y * units));
  }
  return paths;
}

Polygon polygon_of(const Path& path) {
  Polygon polygon;
  polygon.reserve(path.size());
  for (const IntPoint& p : path) polygon.push_back({static_cast<double>(p.X) / units, static_cast<double>(p.Y) / units});
  return polygon;
}

Region region_of(const Paths& paths) {
  Region region;
  region.reserve(paths.size());
  for (const Path& path : paths) region.push_back(polygon_of(path));
  return region;
}

Region clipped(const Region& a, const Region& b, ClipType how) {
  Clipper clipper;
  clipper.AddPaths(paths_of(a), ptSubject, true);
  clipper.AddPaths(paths_of(b), ptClip, true);
  Paths result;
  clipper.Execute(how, result, pftNonZero, pftNonZero);
  return region_of(result);
}

/// Distance from p to the line through a and b, or to a where the two are one point.
double off_line(Point p, Point a, Point b) {
  const Point d = b - a;
  const double size = length(d);
  return size > 0 ? std::abs(cross(d, p - a)) / size : distance(p, a);
}

Polygon thinned(const Polygon& polygon, double tolerance) {
  constexpr std::size_t window = 64;  // points that one line may stand for
  const std::size_t n = polygon.size();
  if (n < 4) return polygon;
  Polygon kept{polygon.front()};
  std::size_t last = 0;
  for (std::size_t next = 2; next <= n; ++next) {
    bool serves = next - last < window;
    for (std::size_t i = last + 1; i < next && serves; ++i)
      serves = off_line(polygon[i], polygon[last], polygon[next % n]) <= tolerance;
    if (serves) continue;
    last = next - 1;
    kept.push_back(polygon[last]);
  }
  return kept.size() < 3 ? polygon : kept;
}

IntPoint placed(Point p) { return {std::llround(p.x * units), std::llround(p.y * units)}; }

Polygon without_repeats(const Polygon& polygon) {
  Polygon kept;
  for (const Point p : polygon)
    if (kept.empty() || distance(p, kept.back()) > 2 / units) kept.push_back(p);
  while (kept.size() > 1 && distance(kept.front(), kept.back()) <= 2 / units) kept.pop_back();
  return kept;
}

/// The polygon with every side moved out by `by` and joined to the next: round an outer corner by an arc; at an inner
/// one where the two sides meet, or by way of the corner itself where one is too short for that. It may wind about
/// itself; what it winds about counter-clockwise is the grown region.
Path moved_out(const Polygon& drawn, double by) {
  const Polygon polygon = without_repeats(drawn);
  const std::size_t n = polygon.size();
  Path path;
  if (n < 3) return path;
  const double radius = std::abs(by), step = 2 * std::acos(std::max(0.0, 1 - arc_tolerance / radius));
  path.reserve(2 * n);
  Point d = unit(polygon[0] - polygon[n - 1]);
  double before = distance(polygon[0], polygon[n - 1]);
  for (std::size_t i = 0; i < n; ++i) {
    const Point p = polygon[i], side = polygon[(i + 1) % n] - p;
    const double after = length(side);
    const Point e = (1 / after) * side;
    const Point m = -by * left_of(d), o = -by * left_of(e);
    const double turn = std::atan2(cross(d, e), dot(d, e));
    const double reach = radius * std::abs(std::tan(turn / 2));  // of the two moved sides' meeting point
    const bool outer = (turn > 0) == (by > 0);
    const bool meets = outer ? radius / std::cos(turn / 2) - radius <= arc_tolerance : 2 * reach <= std::min(before, after);
    if (meets && std::abs(turn) < 3) {
      path.push_back(placed(p + (1 / (1 + dot(d, e))) * (m + o)));
    } else if (outer) {
      const int steps = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / step)));
      for (int k = 0; k <= steps; ++k) path.push_back(placed(p + turned(m, turn * k / steps)));
    } else {
      path.push_back(placed(p + m));
      path.push_back(placed(p));
      path.push_back(placed(p + o));
    }
    d = e;
    before = after;
  }
  return path;
}

void add_parts(const PolyNode& node, std::vector<Region>& found) {
  for (const PolyNode* outer : node.Childs) {
    Region part{polygon_of(outer->Contour)};
    for (const PolyNode* hole : outer->Childs) {
      part.push_back(polygon_of(hole->Contour));
      add_parts(*hole, found);
    }
    found.push_back(std::move(part));
  }
}

}  // namespace

double area(const Region& region) {
  double sum = 0;
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i)
      sum += cross(polygon[i] - polygon[0], polygon[(i + 1) % polygon.size()] - polygon[0]) / 2;
  return sum;
}

Box bounds(const Region& region) {
  Box box;
  for (const Polygon& polygon : region)
    for (const Point p : polygon) box.add(p);
  return box;
}

Region grown(const Region& region, double by) {
  if (region.empty() || by == 0) return region;
  Paths moved;
  for (const Polygon& polygon : region) moved.push_back(moved_out(polygon, by));
  Clipper clipper;
  clipper.AddPaths(moved, ptSubject, true);
  Paths result;
  clipper.Execute(ctUnion, result, pftPositive, pftPositive);
  return thinned(region_of(result), offset_noise);
}

Region without(const Region& a, const Region& b) { return clipped(a, b, ctDifference); }
Region united(const Region& a, const Region& b) { return clipped(a, b, ctUnion); }
Region common(const Region& a, const Region& b) { return clipped(a, b, ctIntersection); }

Region filled(const Region& polygons) {
  Clipper clipper;
  clipper.AddPaths(paths_of(polygons), ptSubject, true);
  Paths result;
  clipper.Execute(ctUnion, result, pftPositive, pftPositive);
  return region_of(result);
}

std::vector<Region> parts(const Region& region) {
  Clipper clipper;
  clipper.AddPaths(paths_of(region), ptSubject, true);
  PolyTree tree;
  clipper.Execute(ctUnion, tree, pftNonZero, pftNonZero);
  std::vector<Region> found;
  add_parts(tree, found);
  return found;
}

Region thinned(const Region& region, double tolerance) {
  Region result;
  result.reserve(region.size());
  for (const Polygon& polygon : region) result.push_back(thinned(polygon, tolerance));
  return result;
}

bool contains(const Region& region, Point p) {
  bool inside = false;
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i], b = polygon[(i + 1) % polygon.size()];
      if ((a.y <= p.y) == (b.y <= p.y)) continue;
      if (a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) > p.x) inside = !inside;
    }
  return inside;
}

}  // namespace sagitta
