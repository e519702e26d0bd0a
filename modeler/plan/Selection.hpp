#pragma once

/// What of a board a job does, said by the ids of its features. The board and its layout stay whole: nothing moves and
/// nothing gets another name.

#include <optional>
#include <set>

#include "board/Board.hpp"
#include "board/FeatureId.hpp"

namespace sagitta {

struct Selection {
  std::set<int> frets;                 ///< slots of these frets, inlays and side dots of these spaces; empty: all
  std::set<FeatureId> pieces;          ///< of kind piece; empty: all
  std::optional<Operation> operation;  ///< the only one that is done; none: all

  bool whole() const { return frets.empty() && pieces.empty() && !operation; }
  /// Whether a slot, an inlay's pocket, a piece or a side dot is part of the job; what belongs to no fret always is.
  bool has(const FeatureId& id) const;
  friend bool operator==(const Selection&, const Selection&) = default;
};

}  // namespace sagitta
