#pragma once

/// A face seen from above, cut into bands along lines of constant y and triangulated band by band.

#include <array>
#include <functional>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

struct BandPoint {
  Point p;  ///< 32-bit floats held in doubles
  int id = -1;
};

/// Loops counter-clockwise about the face (holes clockwise); every line of `lines` that a loop crosses must have a
/// point on the loop there. `lines` rise; each loop crosses at least one of them. `between` may place more points on a
/// line between two neighbours, rising in x. Within a band triangles are Delaunay once x is `stretch` times as long, a
/// whole power of 2. Returns triangles of ids, counter-clockwise.
std::vector<std::array<int, 3>> triangulate_in_bands(
    const std::vector<std::vector<BandPoint>>& loops, const std::vector<double>& lines,
    const std::function<std::vector<BandPoint>(const BandPoint&, const BandPoint&)>& between, double stretch = 1);

}  // namespace sagitta
