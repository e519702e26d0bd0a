#pragma once

/// A grid of whole numbers over the plane. Regions are clipped on one, where sums and products are exact.

#include <cstdint>
#include <stdexcept>
#include <string>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

struct GridPoint {
  std::int64_t x = 0, y = 0;
  friend bool operator==(const GridPoint&, const GridPoint&) = default;
};
/// The corners of a closed outline.
using GridPath = std::vector<GridPoint>;
using GridPaths = std::vector<GridPath>;

/// A point lies so far from the grid's origin that its whole numbers would not be exact.
struct OffGrid : std::range_error {
  using std::range_error::range_error;
};

struct Grid {
  Point origin;         ///< mm
  double per_mm = 1e6;  ///< whole numbers per mm

  /// Largest whole number: up to it every whole number is a `double`.
  static constexpr double most = 9007199254740992.0;  // 2^53

  /// The nearest point of the grid. Throws OffGrid where a coordinate, counted from the origin, is greater than
  /// `most / per_mm` mm or is no number.
  GridPoint at(Point p) const { return {whole(p.x - origin.x), whole(p.y - origin.y)}; }
  Point point(const GridPoint& p) const {
    return {origin.x + static_cast<double>(p.x) / per_mm, origin.y + static_cast<double>(p.y) / per_mm};
  }

  GridPath path(const std::vector<Point>& polygon) const {
    GridPath path;
    path.reserve(polygon.size());
    for (const Point p : polygon) path.push_back(at(p));
    return path;
  }
  std::vector<Point> polygon(const GridPath& path) const {
    std::vector<Point> polygon;
    polygon.reserve(path.size());
    for (const GridPoint& p : path) polygon.push_back(point(p));
    return polygon;
  }

  GridPaths paths(const std::vector<std::vector<Point>>& polygons) const {
    GridPaths all;
    all.reserve(polygons.size());
    for (const std::vector<Point>& polygon : polygons) all.push_back(path(polygon));
    return all;
  }
  std::vector<std::vector<Point>> polygons(const GridPaths& paths) const {
    std::vector<std::vector<Point>> all;
    all.reserve(paths.size());
    for (const GridPath& path : paths) all.push_back(polygon(path));
    return all;
  }

 private:
  std::int64_t whole(double mm) const {
    const double steps = mm * per_mm;
    if (!(steps >= -most && steps <= most))
      throw OffGrid("a polygon's point lies " + std::to_string(mm) + " mm from the origin of its grid; at most " +
                    std::to_string(most / per_mm) + " mm are possible");
    return static_cast<std::int64_t>(steps + (steps < 0 ? -0.5 : 0.5));
  }
};

/// The grid that regions are grown and cut on: a millionth of a millimetre.
inline constexpr Grid fine_grid{};

}  // namespace sagitta
