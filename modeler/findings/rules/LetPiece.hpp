#pragma once

/// A piece of inlay and its pocket, whatever their outline, measured against what is cut beside it. Lengths in mm.

#include <string>

#include "inlay/Inlays.hpp"
#include "layout/Layout.hpp"
#include "polygon/Gap.hpp"

namespace sagitta {

/// What a slot leaves of a piece and of the wood between them.
struct SlotMeeting {
  double wall = 0;  ///< between pocket and slot; < 0: the shortest way along the board that would part them
  Point at;         ///< where they are nearest
  bool cuts_piece = false;
  double sliver = 0;  ///< the narrowest part that it leaves of the piece, square to the slot
  Point sliver_at;
};

/// A wall of wood: how thick it is, and where it is thinnest; < 0: there is none.
struct WoodWall {
  double width = 1e300;
  Point at;
};

/// How a piece is called in findings: where its marker has no other piece, by the marker.
struct LetName {
  FeatureId where;
  std::string name;  ///< "inlay 2 at fret 7", "shell-03 of inlay 2 at fret 7"
  int marker = 0;    ///< the same number for all pieces of one marker
};

class LetPiece {
 public:
  /// `let` must live as long as this.
  LetPiece(const Board& board, const InlayPiece& let, LetName name);

  const InlayPiece& piece() const { return *piece_; }
  const std::string& name() const { return name_.name; }
  const FeatureId& where() const { return name_.where; }
  int marker() const { return name_.marker; }
  double floor() const { return floor_; }  ///< of the pocket, above the glue face
  const Box& box() const { return box_; }  ///< of the pocket
  Point middle() const { return between(box_.low, box_.high, 0.5); }
  bool has_pocket_at(Point p) const;
  /// What an outline takes of the pocket.
  Region taken(const Loop& cut) const;

  SlotMeeting against(const Layout& layout, const Slot& slot) const;
  /// Between the pocket and the board's edge; < 0: how far it runs over it.
  WoodWall against_edges(const Layout& layout) const;
  /// Between the two pockets, where it is no more than `most`; < 0: the shortest way that would part them, where both
  /// are convex; else the least width of what they have in common where that is widest, within two
  /// `tolerance::fine_chords`.
  WoodWall wall(const LetPiece& other, double most) const;

 private:
  double sliver_width(const Reach& part, const Reach& whole) const;

  const InlayPiece* piece_;
  LetName name_;
  double floor_;
  Region body_, pocket_;  ///< polygons within `tolerance::fine_chords`: for what is cut off them
  Box box_;
};

/// Every piece, in the order of `inlays`.
std::vector<LetPiece> let_pieces(const Board& board, const Inlays& inlays);

}  // namespace sagitta
