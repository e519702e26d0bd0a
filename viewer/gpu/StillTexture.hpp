#pragma once

/// A picture as a texture.

#include <cstdint>
#include <vector>

#include "gpu/Object.hpp"

namespace sagitta::viewer {

/// A still picture on the graphics card, made to be shown smaller than it is.
class Image {
 public:
  /// RGB rows from the top, 3 bytes a pixel; width and height > 0.
  void load(int width, int height, const std::vector<std::uint8_t>& pixels);
  GLuint texture() const { return colour_.id(); }  ///< 0 before the first picture

 private:
  Texture colour_;
};

}  // namespace sagitta::viewer
