#pragma once

/// The pointer's shapes that desktops do not bring along: drawn here, as pictures.

#include <cstdint>
#include <optional>
#include <vector>

namespace sagitta::viewer {

/// Beside ImGui's numbers: turning something about its middle.
inline constexpr int turning_pointer = 10;

/// A square picture, RGBA, rows from the top; its middle is where it points.
struct PointerPicture {
  int side = 0;
  std::vector<std::uint8_t> pixels;
};

/// The picture of a shape at a scale (1: 24 pixels wide); nothing for a shape that the desktop has itself.
std::optional<PointerPicture> pointer_picture(int shape, float scale);

}  // namespace sagitta::viewer
