#pragma once

/// The plan's edges as polylines of 32-bit points, shared by every face that stands on them.

#include <map>
#include <vector>

#include "lift/Shell.hpp"

namespace sagitta {

/// A place of the mesh from above. A round wall is upright at its sides, and a form may be steep: there heights are
/// those of the place before rounding.
struct PolylinePoint {
  Point p;  ///< 32-bit floats held in doubles
  Point exact;
};

struct EdgePolylines {
  std::vector<PolylinePoint> vertices;  ///< one a plan vertex
  std::vector<std::vector<PolylinePoint>>
      edges;                  ///< for each plan edge: places strictly between its ends, from `from` on
  std::vector<double> lines;  ///< the y of the bands, rising; floats
  std::map<Tunnel, std::vector<double>> across;  ///< bands of a side hole's wall: distances from its axis, rising
};

/// Chords so close to their curves, from above and on every surface above them, that triangles between them can be
/// within `deviation` (mm) of the surfaces; cut where they cross the bands, which are so narrow that a chord across one
/// takes 3/8 of that on the playing surface.
EdgePolylines edge_polylines(const Shell& shell, double deviation);

/// Of the two surfaces that meet along an edge, the one that gives the heights of its polyline: beside the curve, on
/// its chords, the height of a roll, which is upright at its side, may be far from the curve's.
const BoundingSurface& height_along(const Subdivision& map, const PlanEdge& edge, const BoundingSurface& bound);

/// Rounded to 32-bit floats that are whole multiples of 2^-30 mm.
Point rounded(Point p);

}  // namespace sagitta
