#pragma once

/// B-splines, rational or not, as Bezier curves.

#include <optional>
#include <vector>

#include "artwork/Artwork.hpp"

namespace sagitta {

struct Spline {
  int degree = 3;
  std::vector<double> knots;  ///< poles + degree + 1, rising
  std::vector<Point> poles;
  std::vector<double> weights;  ///< one a pole, positive; empty: all equal
};

/// Cubic Bezier curves head to tail. Exact up to degree 3 with equal weights; else within tolerance::drawn_chord of the
/// poles' largest extent. Nothing when the knots do not fit the poles or the degree is not 1 to 10.
std::optional<std::vector<Bezier>> beziers(const Spline& spline);

}  // namespace sagitta
