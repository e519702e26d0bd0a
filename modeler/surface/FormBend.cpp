#include "surface/FormBend.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sagitta {

// With w the width, g(s) the wave and l(s) the lean of the line s = const: s_x = 1/w, s_y = -l/w, s_xy = -w'/w^2 and
// s_yy = 2 l w'/w^2; |g'| <= pi depth and |g''| <= 2 pi^2 depth.
Bend bend_of(const ScallopedSpace& space, double low, double high) {
  const double width = std::min(space.width(low), space.width(high));
  const double lean = std::max(std::abs(space.low_lean), std::abs(space.high_lean));
  const double widening = std::abs(space.high_lean - space.low_lean);
  const double first = std::numbers::pi * space.depth / (width * width), second = 2 * std::numbers::pi * first;
  return {second, second * lean + first * widening, (second * lean + 2 * first * widening) * lean};
}

Bend bend_of(const WorkedEdge& edge, double radius) { return {2 * edge.slope * edge.slope / radius}; }

Bend bend_of_form(const Surface& surface, int form, double x, double low, double high) {
  if (form > 0) return bend_of(surface.scallops[static_cast<std::size_t>(form - 1)], low, high);
  if (form == 0 || surface.flat) return {};
  return bend_of(surface.worked_edges[static_cast<std::size_t>(-1 - form)], surface.radius(x));
}

}  // namespace sagitta
