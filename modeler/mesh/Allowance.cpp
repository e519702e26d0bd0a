#include "mesh/Allowance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sagitta {
namespace {

double area(const Mesh& mesh, const std::array<std::uint32_t, 3>& t) {
  double u[3], v[3];
  for (std::size_t k = 0; k < 3; ++k) {
    u[k] = double{mesh.points[t[1]][k]} - double{mesh.points[t[0]][k]};
    v[k] = double{mesh.points[t[2]][k]} - double{mesh.points[t[0]][k]};
  }
  return 0.5 * std::hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]);
}

bool flat(const Shell& shell, const ShellFace& face) {
  if (face.kind == ShellFace::Kind::wall) return !face.segment.is_arc();
  return face.bound.plane(shell.plan.surface);
}

}  // namespace

double volume_allowance(const Mesh& mesh, const Shell& shell) {
  float largest = 0;
  for (const auto& point : mesh.points)
    for (const float value : point) largest = std::max(largest, std::abs(value));
  const float step = std::nextafter(largest, std::numeric_limits<float>::max()) - largest;
  double all = 0, curved = 0;
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    const double here = area(mesh, mesh.triangles[i]);
    all += here;
    if (mesh.face[i] < 0 || !flat(shell, shell.faces[static_cast<std::size_t>(mesh.face[i])])) curved += here;
  }
  return mesh.deviation * curved + 0.5 * double{step} * all;
}

}  // namespace sagitta
