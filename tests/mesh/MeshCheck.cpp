#include "mesh/MeshCheck.hpp"

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

}  // namespace sagitta
