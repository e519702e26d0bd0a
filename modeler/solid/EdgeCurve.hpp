#pragma once

#include <Geom_Curve.hxx>
#include <array>
#include <functional>

#include "lift/Shell.hpp"
#include "solid/Jet.hpp"

namespace sagitta {

/// The exact curve of a shell edge.
struct EdgeCurve {
  Handle(Geom_Curve) curve;
  double first = 0, last = 1;
  bool reversed = false;  ///< the curve runs from the edge's `to` to its `from`
  double deviation = 0;   ///< of the curve from the exact one, mm
  /// x, y and z with derivatives by the curve's parameter.
  std::function<std::array<Jet, 3>(double)> place;
};

/// Lines, circles and conics exactly: a straight wall's section of the playing surface is rational quadratic, as is the
/// curve where a level floor meets it. Round walls, and straight ones on an even-edge surface, within 1e-7 mm.
EdgeCurve curve_of(const Shell& shell, const ShellEdge& edge);

}  // namespace sagitta
