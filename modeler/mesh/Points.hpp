#pragma once

/// All points of a mesh, each once.

#include <array>
#include <cstdint>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Over one place, heights closer than two tolerances are one point, so that faces which meet along an edge find the
/// same points whichever of them computes the height.
class Points {
 public:
  /// The point at height z over p (mm), made where there is none; p is 32-bit floats held in doubles.
  int at(Point p, double z);

  /// Appends the points over p with z between those of two points, both left out, rising.
  void add_strictly_between(Point p, int low, int high, std::vector<int>& to) const;

  std::vector<std::array<float, 3>> points;

 private:
  /// Where a place's first point stands, or would stand.
  std::size_t slot_of(Point p) const;
  void grow();

  std::vector<int> slots_;  ///< a place's first point, or -1: a hash table of a power of 2 places, at most half full
  std::vector<int> above_;  ///< for each point: the next one made over the same place, or -1
  std::size_t places_ = 0;
};

}  // namespace sagitta
