#pragma once

/// The two long edges, each a straight line of its own. mm.

#include <algorithm>
#include <array>
#include <optional>

#include "board/Board.hpp"
#include "board/Problem.hpp"
#include "layout/Layout.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// Sides as in Layout::edge: 0 is the edge at negative y, 1 the one at positive y.
struct Taper {
  std::array<double, 2> at_nut{};  ///< distance of each edge from y = 0 at x = 0
  std::array<double, 2> slope{};   ///< its change per mm of x

  double edge(int side, double x) const { return at_nut[index(side)] + slope[index(side)] * x; }
  double larger_edge(double x) const { return std::max(edge(0, x), edge(1, x)); }
  bool symmetric() const { return at_nut[0] == at_nut[1] && slope[0] == slope[1]; }
  /// Mm along an edge for each mm of x.
  double stretch(int side) const { return std::hypot(1, slope[index(side)]); }
  /// Unit vector along an edge, toward the bridge.
  Point along(int side) const { return unit({1, sign(side) * slope[index(side)]}); }
  /// The same edges mirrored in y.
  Taper mirrored() const { return {{at_nut[1], at_nut[0]}, {slope[1], slope[0]}}; }
  /// True when a line in this direction crosses both edges.
  bool crossed_by(Point direction) const;
  /// Where the line through (x, 0) in `direction` (toward +y, crossing both edges) meets an edge.
  Point meet(int side, double x, Point direction) const;

 private:
  static std::size_t index(int side) { return static_cast<std::size_t>(side); }
  static double sign(int side) { return side == 0 ? -1 : 1; }
};

/// The edges of a layout that has them, left-handed or right-handed.
Taper taper_in(const Layout& layout);

/// The edges that a right-handed board asks for: bass at side 0. `layout` must have its scale, frets, strings' spread
/// and heel end. Empty, with faults added, when the form is incomplete, names a fret that the board does not have, or a
/// width is not above 0.
std::optional<Taper> taper_of(const Board& board, const Layout& layout, Faults& faults);

}  // namespace sagitta
