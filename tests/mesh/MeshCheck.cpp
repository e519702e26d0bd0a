#include "mesh/MeshCheck.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <sstream>

namespace sagitta {

namespace {

std::string between(const Mesh& mesh, std::pair<std::uint32_t, std::uint32_t> edge) {
  std::ostringstream text;
  text.precision(9);
  for (const std::uint32_t i : {edge.first, edge.second})
    text << " (" << mesh.points[i][0] << ", " << mesh.points[i][1] << ", " << mesh.points[i][2] << ")";
  return text.str();
}

}  // namespace

std::string unsound(const Mesh& mesh, int genus) {
  if (mesh.triangles.empty()) return "no triangles";
  if (std::set(mesh.points.begin(), mesh.points.end()).size() != mesh.points.size()) return "two points are equal";
  std::map<std::pair<std::uint32_t, std::uint32_t>, int> uses;
  std::set<std::uint32_t> used;
  for (const auto& t : mesh.triangles) {
    for (int i = 0; i < 3; ++i) {
      if (t[i] >= mesh.points.size()) return "an index points nowhere";
      ++uses[{t[i], t[(i + 1) % 3]}];
      used.insert(t[i]);
    }
  }
  for (const auto& [edge, times] : uses) {
    if (edge.first == edge.second) return "a triangle has two equal corners";
    if (times != 1) return "a directed edge is used " + std::to_string(times) + " times" + between(mesh, edge);
    if (!uses.contains({edge.second, edge.first})) return "an open edge" + between(mesh, edge);
  }
  const auto euler =
      static_cast<long>(used.size()) - static_cast<long>(uses.size() / 2) + static_cast<long>(mesh.triangles.size());
  if (euler != 2 - 2 * genus) return "Euler number " + std::to_string(euler);
  return {};
}

namespace {

double area(const Mesh& mesh, const std::array<std::uint32_t, 3>& t) {
  double u[3], v[3];
  for (std::size_t k = 0; k < 3; ++k) {
    u[k] = double(mesh.points[t[1]][k]) - double(mesh.points[t[0]][k]);
    v[k] = double(mesh.points[t[2]][k]) - double(mesh.points[t[0]][k]);
  }
  return 0.5 * std::hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]);
}

bool flat(const Shell& shell, const ShellFace& face) {
  if (face.kind == ShellFace::Kind::wall) return !face.piece.is_arc();
  return face.bound.kind == Bound::Kind::level || (face.bound.kind == Bound::Kind::arc && shell.plan.surface.flat);
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
  return mesh.deviation * curved + 0.5 * double(step) * all;
}

}  // namespace sagitta
