#pragma once

/// The cut list of the fret wire. Lengths in mm.

#include <optional>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct WirePiece {
  int fret = 0;
  std::optional<int> part;  ///< of a slot that the heel end cuts: counted from the bass side, from 0
  double straight = 0;      ///< from finished edge to finished edge, or to where the heel end cuts, seen from above
  double along = 0;         ///< the same along the surface's arc
  double cut = 0;           ///< what to cut off the roll: `along` and wire.overhang at each end
  /// Radius of the circle through the fret's two ends and its middle; none where the surface is flat along it.
  /// Machinery's Handbook, 31st ed., p. 79: r = (c^2 + 4 h^2) / 8 h.
  std::optional<double> bend_radius;
  /// Tang to nip away at each end, from the finished edge inward along the fret: what the binding or the wood left by a
  /// blind slot takes, and the round of the slot's end. 0 for a through slot without binding.
  double nip_bass = 0, nip_treble = 0;
  double tang = 0;  ///< tang that stays: `along` less both nips
  friend bool operator==(const WirePiece&, const WirePiece&) = default;
};

/// One piece a slot, in the order of the slots.
std::vector<WirePiece> wire_list(const PreparedBoard& ready);

/// Wire for all of them: the sum of `cut`.
double total_wire(const std::vector<WirePiece>& list);

}  // namespace sagitta
