#pragma once

/// The curves of a shell's edges for the geometry kernel.

#include <Geom_Curve.hxx>
#include <vector>

#include "lift/Shell.hpp"
#include "solid/Conic.hpp"
#include "solid/HermiteSpline.hpp"

namespace sagitta {

/// The exact curve of a shell edge.
struct EdgeCurve {
  Handle(Geom_Curve) curve;
  double first = 0, last = 1;
  bool reversed = false;       ///< the curve runs from the edge's `to` to its `from`
  double deviation = 0;        ///< of the curve from the exact one, or from the two faces that meet in it, mm
  double moved = 0;            ///< by how much its ends had to be moved to end in the vertices, mm
  std::vector<double> breaks;  ///< parameters strictly between first and last where the second derivative jumps
  ParametricCurve<3> place;    ///< x, y and z with derivatives by the curve's parameter

  /// first, the breaks and last.
  std::vector<double> spans() const;
};

/// The line between two points, over its length.
EdgeCurve straight_curve(Point a, double za, Point b, double zb);

/// A conic as a rational quadratic.
EdgeCurve conic_curve(const Conic& conic);

/// The curve of a run of arcs at one height, over its length from above.
EdgeCurve level_run(const std::vector<CurveSegment>& run, double z);

/// The spline near a course within 1e-7 mm, or with its deviation said.
EdgeCurve fitted_curve(const ParametricCurve<3>& exact, const std::vector<double>& spans);

/// Lines, circles, ellipses and conics exactly: a straight wall's section of the playing surface is rational quadratic,
/// as is the curve where a level floor meets it. Round and elliptic walls, and straight ones on an even-edge surface,
/// within 1e-7 mm.
EdgeCurve curve_of(const Shell& shell, const ShellEdge& edge);

}  // namespace sagitta
