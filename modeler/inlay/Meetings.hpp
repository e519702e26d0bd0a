#pragma once

/// Pockets of one drawing that come near each other. Lengths in mm.

#include "inlay/Island.hpp"

namespace sagitta {

/// Two pockets between which less wood than the clearance is left: they are cut as one.
struct PartMeeting {
  int a = 0, b = 0;        ///< their parts, counted through all islands; a < b
  double wood = 0;         ///< between the two pockets; < 0: they overlap
  double drawn_apart = 0;  ///< between the two islands as they are drawn
  Point at;                ///< midway between the two pieces, where they are nearest
  friend bool operator==(const PartMeeting&, const PartMeeting&) = default;
};

/// All of them, in the order of a and b. Parts of one island are not looked at: their gap is the cutter's.
std::vector<PartMeeting> meetings_of(const std::vector<Island>& islands, const IslandCut& cut);

/// The wall of wood between two pockets that do not overlap, where it is thinner than the clearance and the cutter can
/// take it away. It cannot where the wall is shorter than the cutter is wide.
Region wall_between(const Region& a, const Region& b, const IslandCut& cut, const Cancel& cancel);

}  // namespace sagitta
