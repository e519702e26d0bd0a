#pragma once

#include <polyclipping/clipper.hpp>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Clipper's whole numbers, per mm.
inline constexpr double clip_units = 1e6;

inline ClipperLib::IntPoint clip_point(Point p) {
  const auto whole = [](double mm) { return static_cast<ClipperLib::cInt>(mm * clip_units + (mm < 0 ? -0.5 : 0.5)); };
  return {whole(p.x), whole(p.y)};
}

inline ClipperLib::Path path_of(const std::vector<Point>& polygon) {
  ClipperLib::Path path;
  path.reserve(polygon.size());
  for (const Point& p : polygon) path.push_back(clip_point(p));
  return path;
}

inline std::vector<Point> polygon_of(const ClipperLib::Path& path) {
  std::vector<Point> polygon;
  polygon.reserve(path.size());
  for (const ClipperLib::IntPoint& p : path)
    polygon.push_back({static_cast<double>(p.X) / clip_units, static_cast<double>(p.Y) / clip_units});
  return polygon;
}

}  // namespace sagitta
