#include "polygon/HausdorffDistance.hpp"

#include <algorithm>

#include "polygon/OutlineIndex.hpp"

namespace sagitta {
namespace {

/// Looks along an outline, at points that lie on it no further apart than a quarter of a side.
template <class Look>
void along(const Region& outline, Look look) {
  for (const Polygon& polygon : outline)
    for (std::size_t i = 0; i < polygon.size(); ++i)
      for (const double s : {0.0, 0.25, 0.5, 0.75})
        look(between(polygon[i], polygon[i + 1 < polygon.size() ? i + 1 : 0], s));
}

void judge(Point p, const OutlineIndex& other, HausdorffDistance& worst) {
  if (worst.distance > 0 && other.reaches(p, worst.distance)) return;
  const double way = other.nearest(p).distance;
  if (way > worst.distance) worst = {way, p};
}

}  // namespace

HausdorffDistance hausdorff_distance(const Region& drawn, const Region& made) {
  return hausdorff_distance(drawn, made, difference(drawn, made), difference(made, drawn));
}

HausdorffDistance hausdorff_distance(const Region& drawn, const Region& made, const Region& lost, const Region& added) {
  HausdorffDistance worst;
  const auto look = [&](const Region& points, const Region& outline) {
    if (points.empty()) return;
    const OutlineIndex index(outline);
    along(points, [&](Point p) { judge(p, index, worst); });
  };
  look(lost, made);
  look(added, drawn);
  return worst;
}

}  // namespace sagitta
