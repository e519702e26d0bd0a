#pragma once

/// Plan curves as seen by a section square to the centre line: pieces cut into strands that have one y for each x.
/// Lengths in mm, board's frame. Independent of plan/ and lift/.

#include <optional>
#include <utility>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta::oracle {

/// A piece of an outline over x0 < x < x1: a straight line, or the upper (sign +1) or lower (-1) half of a circle.
struct Strand {
  double x0 = 0, x1 = 0;
  Point a, b;  ///< ends, a at x0
  Point centre;
  double radius = 0;  ///< 0 for a line
  double sign = 1;

  bool over(double x) const { return x0 < x && x < x1; }
  double y(double x) const;
};

/// The strands of a loop; upright lines have none.
std::vector<Strand> strands_of(const Loop& loop);

/// Every y at which the strands cross the section at x, rising.
std::vector<double> crossings(const std::vector<Strand>& strands, double x);

/// The one interval that a convex region covers at x.
std::optional<std::pair<double, double>> interval(const std::vector<Strand>& strands, double x);

/// The point lies inside the region that the strands bound.
bool inside(const std::vector<Strand>& strands, Point p);

/// x of every place where the lines or circles that carry the two strands meet, as far as both strands reach; some of
/// these lie on the other half of a circle.
void add_meetings(const Strand& s, const Strand& t, std::vector<double>& xs);

}  // namespace sagitta::oracle
