#pragma once

/// One island of a drawing on its way to pieces and pockets. Lengths in mm.

#include <optional>

#include "polygon/Region.hpp"

namespace sagitta {

/// A piece of an island, its pocket, and the polygons that stand for them.
struct IslandPart {
  Loops piece, pocket;
  Region piece_polygons, pocket_polygons;
  Region kept_clear;  ///< the piece grown by the clearance, where its pocket is not that
  const Region& clear() const { return kept_clear.empty() ? pocket_polygons : kept_clear; }
};

/// A connected part of one drawn region: it is cut from the sheet apart from all others.
struct Island {
  int region = 0;            ///< index into Artwork::regions
  Region drawn;              ///< one outer polygon and its holes
  Box box;                   ///< of what is drawn
  std::vector<int> earlier;  ///< islands before this one that come near it
  std::vector<IslandPart> parts;
  std::optional<Point> narrow;  ///< a gap that the cutter does not pass, where the fit does not come to rest
};

/// What an island is cut with, mm.
struct IslandCut {
  double radius = 0;  ///< of the cutter, as it cuts
  double clearance = 0;
  /// No arc of a piece or pocket is sharper than the cutter. So the fit is made for a cutter that is larger by what
  /// refitted arcs may be smaller.
  double fitted_radius() const { return radius + room(); }
  double room() const;
};

/// The islands in the order of their regions, and what lies near each. `drawn` holds each region's polygons.
std::vector<Island> islands_of(const std::vector<Region>& drawn, const IslandCut& cut);

/// The islands in turns: each comes after all earlier ones near it, and those of one turn do not ask for each other.
std::vector<std::vector<int>> turns_of(const std::vector<Island>& islands);

/// Fits one island: it first loses what lies within the clearance of earlier pieces. Those must have been fitted.
void fit_island(std::vector<Island>& islands, int own, const IslandCut& cut, const Cancel& cancel);

}  // namespace sagitta
