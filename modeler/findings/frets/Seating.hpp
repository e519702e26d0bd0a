#pragma once

/// What frets that are pressed in do to the loose board: an estimate.

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// The tangs wedge the upper layer of the board, as deep as the slots, longer; the layer below holds it back, and the
/// board bends backwards.
struct Seating {
  double interference =
      0;              ///< tang over its barbs less the slot's width, mm; negative: the barbs do not reach the wood
  double length = 0;  ///< first slot to last, along the centre line, mm
  double rise = 0;    ///< of the board's ends over its middle, over that length, mm; 0 without interference
  double load = 0;    ///< on the middle, that presses it flat, N
};

/// Strain of the upper layer: interference times (slots - 1) over the length. Curvature: two layers of one modulus,
/// 6 strain d (h - d) / h^3 with d the slots' depth and h the board's thickness (S. Timoshenko, "Analysis of bi-metal
/// thermostats", J. Opt. Soc. Am. 11 (1925) 233, with E1 = E2). Rise: curvature length^2 / 8. Load: 48 E I rise /
/// length^3, a beam on two supports (USDA Wood Handbook, FPL-GTR-190, eq. 9-1), I = b h^3 / 12 with b the board's
/// middle width. It is the most that can be: wood that gives way at the barbs bends the board less. None without two
/// slots.
std::optional<Seating> seating_of(const PreparedBoard& ready);

}  // namespace sagitta
