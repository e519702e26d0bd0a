#pragma once

/// The board cut square to the centre line: what the cutting plane shows. Lengths in mm.

#include <optional>
#include <string>
#include <vector>

#include "scene/StageModel.hpp"

namespace sagitta::viewer {

struct SliceLine {
  Point a, b;  ///< x is across (y of the board), y is up (z)
};

struct Slice {
  double x = 0;
  std::vector<SliceLine> lines;
  double low_y = 0, high_y = 0, low_z = 0, high_z = 0;

  std::optional<double> radius;           ///< of the playing surface; nothing when it is flat or not yet cut
  bool shaped = false;                    ///< the playing surface has been cut
  double middle = 0;                      ///< thickness at the centre line, where no cut is: the surface's height
  double bass_edge = 0, treble_edge = 0;  ///< thickness of the wood at the edges
  std::optional<double> cut_depth;        ///< deepest cut below the surface on this plane
  double cut_at = 0;                      ///< y of it
  double least_left = 0;                  ///< least wood between the glue face and any floor above it
  std::string where;                      ///< "fret 7 slot", or between which frets
};

Slice slice_of(const StageModel& stage, const Layout& layout, const Surface& surface, double x);

/// Height of the highest wood at y, or nothing beside the board.
std::optional<double> top_at(const Slice& slice, double y);

/// Height of the wood at y before anything was cut into it: the playing surface, or the blank's top before it is cut.
double uncut_at(const Slice& slice, const Surface& surface, double y);

/// x of the slots' middles on the centre line, in order.
std::vector<double> slot_places(const Layout& layout);

}  // namespace sagitta::viewer
