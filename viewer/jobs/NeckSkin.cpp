#include "jobs/Dressing.hpp"

namespace sagitta::viewer {

namespace {

Vec vec(const std::array<float, 3>& p) { return {p[0], p[1], p[2]}; }

}  // namespace

RenderMesh dress_neck_wood(const NeckWood& wood) {
  RenderMesh skin;
  for (const auto& point : wood.points)
    skin.vertices.push_back({vec(point), {}, neck_colour, static_cast<float>(Finish::wood), 0});
  // Faces share no points: within a face the light runs smoothly, between faces it breaks.
  for (const auto& triangle : wood.triangles) {
    RenderVertex* const corners[] = {&skin.vertices[triangle[0]], &skin.vertices[triangle[1]],
                                     &skin.vertices[triangle[2]]};
    const Vec normal = cross(corners[1]->position - corners[0]->position, corners[2]->position - corners[0]->position);
    for (RenderVertex* corner : corners) corner->normal = corner->normal + normal;
    skin.triangles.insert(skin.triangles.end(), triangle.begin(), triangle.end());
  }
  for (RenderVertex& v : skin.vertices) v.normal = unit(v.normal);
  for (const auto& edge : wood.edges) skin.edges.insert(skin.edges.end(), edge.begin(), edge.end());
  skin.bound();
  return skin;
}

}  // namespace sagitta::viewer
