#pragma once

/// Points that keep a distance from each other, found by place.

#include <cstdint>
#include <unordered_map>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Points of a plane that are to be `radius` apart, found by place.
class Seats {
 public:
  /// Over a list that may grow by `add` only.
  Seats(std::vector<Point>& points, double radius);

  /// The nearest point closer to p than the radius; -1 where there is none.
  int near(Point p) const;
  int add(Point p);

 private:
  using Key = std::int64_t;
  Key bucket(double v) const;
  static Key key(Key x, Key y) { return x * 0x1000003 + y; }
  void keep(int i);

  std::vector<Point>* points_;
  double radius_;
  std::unordered_map<Key, int> latest_;  ///< point in each square of a grid
  std::vector<int> earlier_;             ///< for each point, the one before it in its square; -1: none
};

}  // namespace sagitta
