#pragma once

#include <polyclipping/clipper.hpp>

#include "plane/Plane.hpp"

namespace sagitta {

/// Clipper's whole numbers, per mm.
inline constexpr double clip_units = 1e6;

inline ClipperLib::IntPoint clip_point(Point p) {
  const auto whole = [](double mm) { return static_cast<ClipperLib::cInt>(mm * clip_units + (mm < 0 ? -0.5 : 0.5)); };
  return {whole(p.x), whole(p.y)};
}

}  // namespace sagitta
