#pragma once

/// What the graphics card is given of a thing on the bench: vertices with their normals and material, triangles, and
/// the lines of its crisp edges. A plain value, made off the GL thread.

#include <cstdint>
#include <vector>

#include "scene/Vec.hpp"

namespace sagitta::viewer {

/// How a surface takes the light; numbers are the shader's.
enum class Finish : std::uint8_t { wood = 0, composite = 1, shell = 2, bone = 3, metal = 4, plastic = 5 };

struct Colour {
  std::uint8_t red = 128, green = 128, blue = 128, alpha = 255;
  friend bool operator==(const Colour&, const Colour&) = default;
};

struct RenderVertex {
  Vec position, normal;
  Colour colour;
  float finish = 0;  ///< Finish as a number
  float change = 0;  ///< mm by which this surface lies higher than the one compared with
};

struct RenderMesh {
  std::vector<RenderVertex> vertices;
  std::vector<std::uint32_t> triangles;  ///< three a triangle
  std::vector<std::uint32_t> edges;      ///< two a line
  Vec low{1e30f, 1e30f, 1e30f}, high{-1e30f, -1e30f, -1e30f};
  bool empty() const { return triangles.empty() && edges.empty(); }
  void bound();  ///< sets low and high from the vertices
};

}  // namespace sagitta::viewer
