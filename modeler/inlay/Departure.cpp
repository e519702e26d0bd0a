#include "inlay/Departure.hpp"

#include <algorithm>

#include "inlay/OutlineIndex.hpp"

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

void judge(Point p, const OutlineIndex& other, Departure& worst) {
  if (worst.distance > 0 && other.reaches(p, worst.distance)) return;
  const double way = other.nearest(p).distance;
  if (way > worst.distance) worst = {way, p};
}

/// Of the outline's points outside of the other region only those are looked for that lie further off than any yet.
void judge_outside(const Region& outline, const Region& other, Departure& worst) {
  constexpr std::size_t few = 256;
  const OutlineIndex index(other);
  std::vector<Point> far;
  along(outline, [&](Point p) {
    if (far.size() < few && !index.reaches(p, worst.distance)) far.push_back(p);
  });
  if (far.size() < few) {
    for (const Point p : far)
      if (!index.reaches(p, worst.distance) && !contains(other, p)) judge(p, index, worst);
  } else {
    along(without(outline, other), [&](Point p) { judge(p, index, worst); });
  }
}

}  // namespace

Departure departure(const Region& drawn, const Region& made) { return departure(drawn, made, without(drawn, made)); }

Departure departure(const Region& drawn, const Region& made, const Region& lost) {
  Departure worst;
  if (!lost.empty()) {
    const OutlineIndex index(made);
    along(lost, [&](Point p) { judge(p, index, worst); });
  }
  judge_outside(made, drawn, worst);
  return worst;
}

bool outlines_differ(const Region& a, const Region& b, double by) {
  const auto leaves = [&](const Region& points, const Region& outline) {
    const OutlineIndex index(outline);
    return std::any_of(points.begin(), points.end(), [&](const Polygon& polygon) {
      return std::any_of(polygon.begin(), polygon.end(), [&](Point p) { return !index.reaches(p, by); });
    });
  };
  return leaves(a, b) || leaves(b, a);
}

}  // namespace sagitta
