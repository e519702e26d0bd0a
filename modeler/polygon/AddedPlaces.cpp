#include "polygon/AddedPlaces.hpp"

#include <algorithm>
#include <cmath>

#include "polygon/Clusters.hpp"
#include "polygon/OutlineIndex.hpp"
#include "polygon/PolygonFigures.hpp"
#include "polygon/TiledBoolean.hpp"

namespace sagitta {
namespace {

/// Boxes about the stretches of an outline that leave another one. Points are looked at no further apart than `step`.
class Leaving {
 public:
  Leaving(const Region& other, double by, double step, const Cancel& cancel)
      : other_(other), by_(by), step_(step), cancel_(cancel) {}

  void look(const Region& outline, std::vector<Box>& found) const {
    for (const Polygon& polygon : outline) look(polygon, found);
  }

 private:
  void look(const Polygon& polygon, std::vector<Box>& found) const {
    bool left = false;
    Point before = polygon.back();
    for (std::size_t i = 0; i < polygon.size() && !cancel_.wanted(); ++i) {
      const Point a = polygon[i], b = polygon[i + 1 < polygon.size() ? i + 1 : 0];
      const double square = dot(b - a, b - a);
      const int n = square < step_ * step_ ? 1 : 1 + static_cast<int>(std::sqrt(square) / step_);
      for (int k = 0; k < n; ++k) {
        const Point p = between(a, b, 1.0 * k / n);
        const bool leaves = !other_.reaches(p, by_);
        if (leaves && !left) {
          found.emplace_back();
          found.back().add(before);
        }
        if (leaves || left) found.back().add(p);
        left = leaves;
        before = p;
      }
    }
    if (left) found.back().add(polygon.front());
  }

  OutlineIndex other_;
  double by_, step_;
  const Cancel& cancel_;
};

/// Boxes that overlap made one, until none do.
std::vector<Box> apart(std::vector<Box> boxes) {
  for (std::size_t count = boxes.size() + 1; boxes.size() < count;) {
    count = boxes.size();
    std::vector<Box> joined;
    for (const std::vector<int>& group : clusters(boxes, 0)) {
      Box box;
      for (const int i : group) box.add(boxes[i].low), box.add(boxes[i].high);
      joined.push_back(box);
    }
    boxes = std::move(joined);
  }
  return boxes;
}

Box about(const std::vector<Box>& boxes) {
  Box all;
  for (const Box& box : boxes) all.add(box.low), all.add(box.high);
  return all;
}

double Point::*const axes[] = {&Point::x, &Point::y};

/// What of a polygon lies on one side of an upright or level line, closed along it (Sutherland and Hodgman 1974): it
/// winds about points of that side as before.
Polygon side_of(const Polygon& polygon, double Point::*axis, double cut, bool greater) {
  Polygon kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point p = polygon[i], q = polygon[i + 1 < polygon.size() ? i + 1 : 0];
    const bool here = (p.*axis > cut) == greater, there = (q.*axis > cut) == greater;
    if (here) kept.push_back(p);
    if (here != there) kept.push_back(between(p, q, (cut - p.*axis) / (q.*axis - p.*axis)));
  }
  return kept;
}

/// What of the polygons lies in a box.
Region inside(const Region& region, const Box& box) {
  Region found;
  for (const Polygon& polygon : region) {
    const Box own = bounds(polygon);
    if (!own.overlaps(box)) continue;
    Polygon part = polygon;
    for (const auto axis : axes) {
      if (own.low.*axis < box.low.*axis) part = side_of(part, axis, box.low.*axis, true);
      if (own.high.*axis > box.high.*axis) part = side_of(part, axis, box.high.*axis, false);
    }
    if (part.size() > 2) found.push_back(std::move(part));
  }
  return found;
}

Region clipped_difference(const Region& a, const Region& b, const Cancel& cancel) {
  return fine_grid.polygons(
      tiled_boolean({fine_grid.paths(a), fine_grid.paths(b), SetOperation::without, FillRule::nonzero}, cancel));
}

/// The windows are halved until one is left, and the outlines with them.
void add_in(std::vector<Box> windows, const Region& whole, const Region& region, Region& found, const Cancel& cancel) {
  if (cancel.wanted()) return;
  const Box all = about(windows);
  const Region own = inside(whole, all), other = inside(region, all);
  if (windows.size() == 1) {
    for (Polygon& polygon : clipped_difference(own, other, cancel)) found.push_back(std::move(polygon));
    return;
  }
  const auto axis = axes[all.high.x - all.low.x < all.high.y - all.low.y ? 1 : 0];
  const auto middle = windows.begin() + static_cast<std::ptrdiff_t>(windows.size() / 2);
  std::nth_element(windows.begin(), middle, windows.end(),
                   [&](const Box& a, const Box& b) { return a.low.*axis + a.high.*axis < b.low.*axis + b.high.*axis; });
  add_in({windows.begin(), middle}, own, other, found, cancel);
  add_in({middle, windows.end()}, own, other, found, cancel);
}

}  // namespace

Region added_places(const Region& whole, const Region& region, double by, double reach, const Cancel& cancel) {
  std::vector<Box> windows;
  Leaving(region, by, reach, cancel).look(whole, windows);
  if (cancel.wanted()) return {};
  Leaving(whole, by, reach, cancel).look(region, windows);
  for (Box& window : windows) window = window.grown(reach);
  windows = apart(std::move(windows));
  Region found;
  if (!windows.empty()) add_in(std::move(windows), whole, region, found, cancel);
  return found;
}

}  // namespace sagitta
