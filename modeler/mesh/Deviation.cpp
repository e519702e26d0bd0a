#include "mesh/Deviation.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {

Deviation::Deviation(const Surface& surface, const BoundingSurface& bound)
    : surface_(surface),
      bound_(bound),
      crown_(crown_of(surface, bound, 0.0)),
      fall_(bound.fallen ? surface.fall_slope : 0) {}

/// The height that is missing, square to the playing surface.
double Deviation::at(const Place& p) const {
  const auto [x, y, z] = p;
  if (surface_.flat) return std::abs(height(surface_, bound_, {x, y}) - z);
  const double radius = surface_.radius(x), upright = std::sqrt(std::max(0.0, (radius - y) * (radius + y)));
  const double over =
      bound_.form == 0 ? crown_ - fall_ * x - y * y / (radius + upright) : height(surface_, bound_, {x, y});
  return std::abs(over - z) * upright / radius;
}

double Deviation::of_side(const Place& a, const Place& b) const {
  double most = 0;
  for (const double t : {0.25, 0.5, 0.75})
    most = std::max(most, at({a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])}));
  return most;
}

double Deviation::within(const Place& a, const Place& b, const Place& c) const {
  const Place sum{(a[0] + b[0] + c[0]) / 4, (a[1] + b[1] + c[1]) / 4, (a[2] + b[2] + c[2]) / 4};
  double most = 0;
  for (const Place* p : {&a, &b, &c})
    most = std::max(most, at({sum[0] + (*p)[0] / 4, sum[1] + (*p)[1] / 4, sum[2] + (*p)[2] / 4}));
  return most;
}

double Deviation::of(const std::vector<std::array<float, 3>>& points, const std::vector<std::vector<BandPoint>>& loops,
                     std::span<const std::array<std::uint32_t, 3>> triangles) const {
  const auto place = [&](std::size_t i) { return Place{points[i][0], points[i][1], points[i][2]}; };
  double most = 0;
  for (const auto& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Place p = place(loop[i].id), next = place(loop[i + 1 < loop.size() ? i + 1 : 0].id);
      most = std::max({most, at(p), of_side(p, next)});
    }
  for (const auto& corners : triangles) {
    const std::array<Place, 3> p{place(corners[0]), place(corners[1]), place(corners[2])};
    most = std::max(most, within(p[0], p[1], p[2]));
    for (std::size_t k = 0; k < 3; ++k)  // a side inside the face is another triangle's too, the other way round
      if (corners[k] < corners[(k + 1) % 3]) most = std::max(most, of_side(p[k], p[(k + 1) % 3]));
  }
  return most;
}

}  // namespace sagitta
