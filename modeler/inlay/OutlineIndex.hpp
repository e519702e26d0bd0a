#pragma once

#include "inlay/Region.hpp"

namespace sagitta {

/// A region's outline, made ready for many questions: what is nearest to here, how wide is it there? Lengths in mm.
class OutlineIndex {
 public:
  explicit OutlineIndex(const Region& region);

  struct Nearest {
    double distance = 1e300;
    Point p;  ///< on the outline
  };
  /// The outline's nearest point.
  Nearest nearest(Point p) const;

  struct Neck {
    double width = 1e300;
    Point p;  ///< the middle of the neck
  };
  /// The narrowest place of the region (`inside`) or of what is outside it: the least width between two stretches of
  /// outline that face each other, their directions within 60 degrees of opposite. What tapers to a corner is no neck.
  /// Wider ones than `most` are not looked for: the width is then 1e300.
  Neck neck(bool inside, double most) const;

 private:
  struct Side {
    Point a, b;
    double along = 0;  ///< length of outline before it
    int loop = 0;
  };
  template <class Visit>
  void around(Point p, double reach, Visit visit) const;
  long long column(double x) const;
  long long row(double y) const;
  bool one_corner(const Side& s, const Side& t, double apart) const;

  std::vector<Side> sides_;
  std::vector<double> perimeters_;  ///< for each loop
  Point low_;
  double size_ = 1;
  long long columns_ = 1, rows_ = 1;
  std::vector<int> starts_, entries_;  ///< sides of each grid cell
};

}  // namespace sagitta
