#pragma once

/// Pictures of meshes, painted without a display.

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "mesh/Mesh.hpp"

namespace sagitta {

/// A painted picture: rows from the top, sRGB, three bytes a pixel.
struct Picture {
  int width = 0, height = 0;
  std::vector<std::uint8_t> pixels;
};

/// A body to be painted.
struct PaintedBody {
  const Mesh* mesh = nullptr;
  std::string colour;  ///< "#rrggbb"
};

/// The bodies seen from the player's side and above, without perspective, nut to the left, on white: calm light, and a
/// thin line wherever one face ends. The picture is `width` wide and as high as the bodies need. No display is used;
/// the same bodies give the same picture.
Picture paint(const std::vector<PaintedBody>& bodies, int width);

/// The colour as pictures that are printed have it: light enough for the cuts in dark wood to be seen. "#rrggbb".
std::string on_paper(const std::string& colour);

}  // namespace sagitta
