#pragma once

/// The wood of a neck as triangles, for a picture of it: moved to where the board lies on it, as in NeckShape. Lengths
/// in mm.

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace sagitta {

struct NeckWood {
  std::vector<std::array<float, 3>> points;  ///< faces share none
  /// Corners counter-clockwise seen from outside.
  std::vector<std::array<std::uint32_t, 3>> triangles;
  std::vector<std::array<std::uint32_t, 2>> edges;  ///< lines where two faces meet at an angle
  std::string failure;                              ///< in words for the builder; empty when there are triangles
  friend bool operator==(const NeckWood&, const NeckWood&) = default;
};

}  // namespace sagitta
