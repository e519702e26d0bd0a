#pragma once

/// What lies under the pointer: a ray against the mesh, on the CPU, with the names that the shell gives.

#include <optional>
#include <string>

#include "layout/Layout.hpp"
#include "mesh/Mesh.hpp"
#include "scene/Camera.hpp"

namespace sagitta::viewer {

struct Hit {
  double distance = 0;  ///< mm along the ray
  Vec place;
  Vec normal;  ///< of the triangle, length 1, out of the wood
  std::uint32_t triangle = 0;
  int face = -1;  ///< index into Shell::faces
};

/// The first triangle that the ray meets from outside; wood at x below `cut` counts as taken away.
std::optional<Hit> cast(const Mesh& mesh, const Ray& ray, std::optional<float> cut = std::nullopt);

/// What was hit; the board where the mesh does not know its faces.
FeatureId feature_at(const Shell& shell, const Hit& hit);
/// The same in the trade's words.
std::string name_at(const Shell& shell, const Hit& hit);

enum class Snap { face, corner, edge, slot_centre };

/// A point picked for measuring.
struct Picked {
  Snap snap = Snap::face;
  Vec place;
  Vec normal;        ///< of the face under the pointer
  std::string name;  ///< what it belongs to
};

/// The point meant: a corner, else a slot's middle line, else an edge, when one lies within `reach` pixels of the
/// pointer; else the point on the face.
Picked snapped(const Shell& shell, const Mesh& mesh, const Layout& layout, const Hit& hit, const Camera& camera,
               float reach);

/// What two picked points are apart, mm.
struct Measured {
  double straight = 0, along = 0, across = 0, up = 0;
  std::optional<double> faces;  ///< between two parallel faces, square to them
};
Measured measure(const Picked& a, const Picked& b);

/// The inlay that a feature belongs to, an index into Board::inlays.
std::optional<int> inlay_of(const FeatureId& id);

}  // namespace sagitta::viewer
