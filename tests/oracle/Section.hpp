#pragma once

/// Area of the wood's section square to the centre line, in closed form: the lowest of all floors over each stretch of
/// y between region edges and places where two floors cross.

#include <utility>
#include <vector>

#include "oracle/Strand.hpp"
#include "oracle/Work.hpp"

namespace sagitta::oracle {

/// A bound of the wood with its region as strands.
struct Region {
  std::vector<Strand> strands;
  Box box;
  Cut::Floor floor = Cut::Floor::level;
  double value = 0;
};

/// Work made ready for sections. Side holes are left out.
struct Sections {
  Surface surface;
  std::vector<Strand> outline;
  double top = 0;
  std::vector<Region> cuts;
  std::vector<Region> pins;  ///< and hollows; value: height of the ceiling

  explicit Sections(const Work& work);
  /// mm^2 at x; x must not be the end of a strand.
  double area(double x) const;
  /// Top and bottom of the wood at p, side holes left out; top <= bottom where there is none.
  std::pair<double, double> column(Point p) const;
  /// How far a level lies under the crown of the surface moved down by `offset`: the two cross where the drop equals
  /// it.
  double depth_under(double level, double offset, double x) const { return surface.crown(x) - offset - level; }
};

/// Integral of the drop R - sqrt(R^2 - y^2) from 0 to y.
double drop_integral(double radius, double y);

}  // namespace sagitta::oracle
