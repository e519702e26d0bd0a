#include "scene/Slabs.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta::viewer {

namespace {

/// A side of the region, from its left end to its right.
struct Side {
  Point a, b;
  double at(double x) const { return a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y); }
};

std::vector<Side> sides_of(const Region& region) {
  std::vector<Side> sides;
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point p = polygon[i], q = polygon[(i + 1) % polygon.size()];
      if (std::abs(p.x - q.x) > tolerance::snap) sides.push_back(p.x < q.x ? Side{p, q} : Side{q, p});
    }
  std::sort(sides.begin(), sides.end(), [](const Side& s, const Side& t) { return s.a.x < t.a.x; });
  return sides;
}

std::vector<double> places_of(const Region& region) {
  std::vector<double> places;
  for (const Polygon& polygon : region)
    for (const Point p : polygon) places.push_back(p.x);
  std::sort(places.begin(), places.end());
  const auto near = [](double p, double q) { return q - p < tolerance::snap; };
  places.erase(std::unique(places.begin(), places.end(), near), places.end());
  return places;
}

}  // namespace

std::vector<Slab> slabs(const Region& region) {
  const std::vector<Side> sides = sides_of(region);
  const std::vector<double> places = places_of(region);
  std::vector<Slab> out;
  std::vector<const Side*> across;  // the sides that cross the slab in hand
  std::size_t next = 0;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const double a = places[i], b = places[i + 1], middle = (a + b) / 2;
    std::erase_if(across, [&](const Side* s) { return s->b.x < middle; });
    for (; next < sides.size() && sides[next].a.x < middle; ++next)
      if (sides[next].b.x > middle) across.push_back(&sides[next]);
    std::sort(across.begin(), across.end(),
              [&](const Side* s, const Side* t) { return s->at(middle) < t->at(middle); });
    for (std::size_t k = 0; k + 1 < across.size(); k += 2)
      out.push_back({a, b, across[k]->at(a), across[k + 1]->at(a), across[k]->at(b), across[k + 1]->at(b)});
  }
  return out;
}

}  // namespace sagitta::viewer
