#pragma once

/// A piece of any outline and its pocket, measured against what is cut beside it. Lengths in mm.

#include <string>

#include "inlay/Inlays.hpp"
#include "layout/Layout.hpp"

namespace sagitta {

/// What a slot leaves of a piece and of the wood between them.
struct SlotMeeting {
  double wall = 0;  ///< between pocket and slot; < 0: the shortest way along the board that would part them
  Point at;         ///< where they are nearest
  bool cuts_piece = false;
  double sliver = 0;  ///< the narrowest part that it leaves of the piece, square to the slot
  Point sliver_at;
};

struct EdgeMeeting {
  double wall = 0;  ///< between the pocket and the board's edge; < 0: how far it runs over it
  Point at;
};

class LetPiece {
 public:
  /// `let` must live as long as this.
  LetPiece(const Board& board, const InlayPiece& let);

  const InlayPiece& piece() const { return *piece_; }
  const std::string& name() const { return name_; }  ///< "shell-03 of inlay 2 at fret 7"
  double floor() const { return floor_; }            ///< of the pocket, above the glue face
  const Region& pocket() const { return pocket_; }
  const Box& box() const { return box_; }  ///< of the pocket

  SlotMeeting against(const Layout& layout, const Slot& slot) const;
  EdgeMeeting against_edges(const Layout& layout) const;
  /// Wood between the two pockets; < 0: they overlap by so much where they overlap most, along or across.
  double wall(const LetPiece& other) const;

 private:
  const InlayPiece* piece_;
  std::string name_;
  double floor_;
  Region body_, pocket_;
  Box box_;
};

}  // namespace sagitta
