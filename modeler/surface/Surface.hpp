#pragma once

/// The playing surface: sections square to the centre line are circular arcs about a centre line that is straight but
/// for the fall-away. z = c(x) - D(x, y), D = R - sqrt(R^2 - y^2). Lengths in mm, board's frame.

#include <optional>
#include <vector>

#include "board/Board.hpp"
#include "layout/Layout.hpp"
#include "surface/ScallopedSpace.hpp"
#include "surface/WorkedEdge.hpp"

namespace sagitta {

struct Surface {
  double thickness = 0;              ///< height of the centre line before the fall
  bool flat = false;                 ///< no radius: D = 0
  double r0 = 0, r1 = 0, r2 = 0;     ///< R(x) = r0 + r1 x + r2 x^2
  std::optional<double> fall_start;  ///< x where the fall begins
  double fall_slope = 0;             ///< mm per mm beyond it
  /// What lies lower in places. `height` and all depths count from the surface without them.
  std::vector<ScallopedSpace> scallops;
  std::vector<WorkedEdge> worked_edges;

  double radius(double x) const { return r0 + x * (r1 + x * r2); }
  double radius_slope(double x) const { return r1 + 2 * x * r2; }
  /// Height of the centre line.
  double crown(double x) const;
  /// Height lost at y against the centre line: y^2 / (R + sqrt(R^2 - y^2)), free of cancellation at large R.
  /// Machinery's Handbook, 31st ed., p. 79 (h = r - 1/2 sqrt(4 r^2 - c^2)), rearranged.
  double drop(double x, double y) const;
  double height(double x, double y) const { return crown(x) - drop(x, y); }
  double height(Point p) const { return height(p.x, p.y); }
  /// Height with scallops; with rolled and bevelled edges too where the board lies within its edges.
  double lowest(double x, double y) const;
  double lowest(Point p) const { return lowest(p.x, p.y); }
  /// Height of a rolled or bevelled edge's face at p; none where the playing surface is whole.
  std::optional<double> worked_height(const WorkedEdge& edge, Point p) const;
  /// How far from the centre line an edge's face begins at x: where the roll is tangent to the playing arc, with
  /// sin a = (e - r) / (R - r); where the bevel leaves it.
  double begins(const WorkedEdge& edge, double x) const;
  /// R^2 - y^2 > 0.
  bool exists(double x, double y) const;
  friend bool operator==(const Surface&, const Surface&) = default;
};

/// The surface that the board asks for.
/// single: R constant. compound: linear from radius_at_nut at x = 0 to radius_at_heel at the heel end (or the last
/// fret's middle). string-line: R(x)/R(0) = spread(x)/spread(0). even-edge: R = w^2/8h + h/2 with h the drop at x = 0.
Surface surface_of(const Board& board, const Layout& layout);

/// What is wrong with it over the board: R not over half the width, or less than `least_floor` of wood at an edge.
Faults surface_faults(const Board& board, const Layout& layout, const Surface& surface);

}  // namespace sagitta
