#pragma once

/// The nearest point of a region's outline.

#include "polygon/Region.hpp"

namespace sagitta {

/// An index of a region's outline for many nearest-point queries. Lengths in mm.
class OutlineIndex {
 public:
  explicit OutlineIndex(const Region& region);

  struct Nearest {
    double distance = 1e300;
    Point p;  ///< on the outline
  };
  /// The outline's nearest point.
  Nearest nearest(Point p) const;
  /// Whether the outline comes within `reach` of a point.
  bool reaches(Point p, double reach) const;
  /// Whether another outline comes within `reach` of this one; perhaps, where it comes within that and half a
  /// millimetre.
  bool reaches(const Region& other, double reach) const;

 private:
  struct Side {
    Point a, b;
  };
  template <class Visit>
  void around(Point p, double reach, Visit visit) const;
  long long column(double x) const;
  long long row(double y) const;

  std::vector<Side> sides_;
  Point low_;
  double size_ = 1;
  long long columns_ = 1, rows_ = 1;
  std::vector<int> starts_, entries_;  ///< sides of each grid cell
};

}  // namespace sagitta
