#pragma once

/// What a picture of the bench shows and in which colours. Plain values; lengths in mm.

#include <array>
#include <cstddef>
#include <optional>

namespace sagitta::viewer {

enum class Part { body, pieces, frets, strings, neck, other };
inline constexpr std::size_t part_count = 6;

enum class Shade { materials, height, change, remaining };

/// Colours of the picture, 0 .. 1, as shown on the screen.
struct Ink {
  std::array<float, 3> bench{0.86f, 0.85f, 0.82f};
  std::array<float, 3> far{0.93f, 0.92f, 0.90f};
  std::array<float, 4> edge{0.05f, 0.04f, 0.03f, 0.75f};
  std::array<float, 4> accent{0.70f, 0.33f, 0.11f, 1};
  float shadow = 0.55f;
};

struct Showing {
  std::array<bool, part_count> parts{true, true, true, false, false, false};
  bool edges = true;
  bool bench = true;
  bool quick = false;  ///< a plainer bench, for a picture that is soon replaced
  Shade shade = Shade::materials;
  std::array<float, 2> span{0, 1};  ///< lowest and highest of the shade, mm
  float lift = 0;                   ///< pieces stand this much above their pockets, mm
  bool neck_solid = false;          ///< the neck is wood, not a sketch of it
  float apart = 0;                  ///< the neck lies this much lower, mm
  std::optional<float> cut;         ///< x of the cutting plane; wood on the nut's side is taken away
  friend bool operator==(const Showing&, const Showing&) = default;
};

/// The convex quadrilateral that casts the shadow, counter-clockwise, mm.
using Footprint = std::array<std::array<float, 2>, 4>;

}  // namespace sagitta::viewer
