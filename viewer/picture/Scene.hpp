#pragma once

/// The bench and what lies on it, drawn with OpenGL. Holds only copies on the graphics card; the render meshes stay
/// with the model that made them.

#include <array>

#include "gpu/Program.hpp"
#include "gpu/Target.hpp"
#include "picture/Drawable.hpp"
#include "scene/Camera.hpp"
#include "scene/Showing.hpp"

namespace sagitta::viewer {

class Scene {
 public:
  Scene();
  void load(Part part, const RenderMesh& skin) { parts_[static_cast<std::size_t>(part)] = Drawable(skin); }
  bool has(Part part) const { return !parts_[static_cast<std::size_t>(part)].empty(); }
  void cast_from(const Footprint& footprint) { footprint_ = footprint; }
  /// Draws into the target, which must have its size; what was there is lost.
  void draw(const Target& target, const Camera& camera, const Showing& showing, const Ink& ink) const;

 private:
  void draw_bench(const Program& bench, const Camera& camera, const Ink& ink) const;
  void draw_things(const Camera& camera, const Showing& showing, const Ink& ink) const;
  void draw_lines(const Camera& camera, const Showing& showing, const Ink& ink) const;

  Program things_, lines_, bench_, quick_bench_;
  Texture noise_;
  VertexArray bench_surface_;
  Buffer bench_corners_;
  std::array<Drawable, part_count> parts_;
  Footprint footprint_{};
};

}  // namespace sagitta::viewer
