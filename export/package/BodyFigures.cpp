#include "package/BodyFigures.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {
namespace {

double area_of(const std::array<float, 3>& a, const std::array<float, 3>& b, const std::array<float, 3>& c) {
  const double u[3] = {double{b[0]} - a[0], double{b[1]} - a[1], double{b[2]} - a[2]};
  const double v[3] = {double{c[0]} - a[0], double{c[1]} - a[1], double{c[2]} - a[2]};
  return std::hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
}

}  // namespace

ManifestBody figures_of(const Mesh& mesh) {
  ManifestBody body;
  body.volume = volume(mesh);
  for (const auto& [a, b, c] : mesh.triangles) body.area += area_of(mesh.points[a], mesh.points[b], mesh.points[c]);
  for (std::size_t i = 0; i < 3; ++i) {
    body.low[i] = mesh.points[0][i];
    body.high[i] = mesh.points[0][i];
    for (const auto& point : mesh.points) {
      body.low[i] = std::min(body.low[i], double{point[i]});
      body.high[i] = std::max(body.high[i], double{point[i]});
    }
  }
  return body;
}

ManifestBody figures_of(const MassProperties& solid) {
  ManifestBody body;
  body.volume = solid.volume;
  body.area = solid.area;
  std::copy(std::begin(solid.low), std::end(solid.low), body.low.begin());
  std::copy(std::begin(solid.high), std::end(solid.high), body.high.begin());
  return body;
}

}  // namespace sagitta
