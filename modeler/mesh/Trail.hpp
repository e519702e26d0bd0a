#pragma once

/// The plan's edges as polylines of 32-bit points, shared by every face that stands on them.

#include <vector>

#include "lift/Shell.hpp"

namespace sagitta {

struct Trails {
  std::vector<Point> vertices;             ///< plan vertices, rounded to floats
  std::vector<std::vector<Point>> edges;   ///< for each plan edge: points strictly between its ends, from `from` on
  std::vector<double> lines;               ///< the y of the bands, rising; floats
};

/// Chords within `budget` (mm) of the curve from above and of every surface above it; cut where they cross the bands,
/// which are so narrow that a chord across one stays within 1.5 times the budget of the playing surface.
Trails trails_of(const Shell& shell, double budget);

/// Rounded to the nearest 32-bit floats.
Point rounded(Point p);

}  // namespace sagitta
