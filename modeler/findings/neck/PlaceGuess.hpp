#pragma once

/// Motions worth trying: what of a face could be the line through the middle of the neck, and which of its ends could
/// lie at which end of the board. Lengths in mm, angles in radians.

#include <vector>

#include "neck/NeckPlace.hpp"
#include "neck/PlaceFit.hpp"

namespace sagitta {

/// A candidate in its own plane: right-handed, z out of the wood.
struct FlatFace {
  NeckOutlines outlines;
  Place3 middle{}, first{1, 0, 0}, second{0, 1, 0}, up{0, 0, 1};  ///< frame in the file: zero, x, y, z

  Point flat(const Place3& point) const;      ///< a point of the file
  Point direction(const Place3& axis) const;  ///< an axis of the file, projected
  double height(const Place3& point) const;
};
FlatFace flat_face(const FaceCandidate& candidate);

/// A motion, and what speaks for its place along the neck.
struct Guess {
  FlatMotion motion;
  PlacedBy by = PlacedBy::widths;
  /// What speaks against it, as a distance: 0 where the file's frame or both ends agree. mm.
  double doubt = 0;
};

/// All guesses on this face, each with its middle line refined.
std::vector<Guess> guesses(const FlatFace& face, const BoardSeat& seat);

/// The guess with its middle line on a line that the file itself draws there, the zero axis or the rod channel's
/// middle, where the sides fit as well so.
FlatMotion on_drawn_line(const FlatFace& face, const FlatMotion& motion, const BoardSeat& seat);

}  // namespace sagitta
