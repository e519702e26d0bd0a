#pragma once

/// A render mesh on the graphics card.

#include "gpu/Object.hpp"
#include "scene/RenderMesh.hpp"

namespace sagitta::viewer {

/// A render mesh on the graphics card. The render mesh is the canonical copy; this one is replaced whole.
class Drawable {
 public:
  Drawable() = default;
  explicit Drawable(const RenderMesh& skin);
  void draw_triangles() const;
  void draw_edges() const;
  bool empty() const { return triangles_ == 0 && edges_ == 0; }

 private:
  VertexArray surface_;
  Buffer vertices_, indices_;
  GLsizei triangles_ = 0, edges_ = 0;  ///< numbers of indices
};

}  // namespace sagitta::viewer
