#pragma once

/// Pieces laid out on the sheets that they are cut from. Lengths in mm, in the sheet's frame: its lower left corner at
/// the origin, x along its length.

#include <optional>
#include <string>
#include <vector>

#include "board/Board.hpp"
#include "inlay/Inlays.hpp"
#include "plane/Cancel.hpp"

namespace sagitta {

/// How a piece may be turned against the sheet.
enum class NestTurns {
  none,  ///< only as it lies on the board
  half,  ///< or by 180 degrees
  free   ///< in steps of 90 degrees
};

struct NestRules {
  double cutter = 0;                  ///< cutting diameter of the cutter that cuts the pieces out
  double web = 1;                     ///< what stays of the sheet between two cuts, and beside its edge
  NestTurns turns = NestTurns::free;  ///< a sheet with pattern "along" allows at most half turns
  double spacing() const { return cutter + web; }
};

/// The rules that a board asks for: the widest cut of its cutters for pieces, measured where it was.
NestRules nest_rules(const Board& board);

/// A piece on its sheet: its outline turned counter-clockwise by `turn` about the origin, then moved.
struct NestedPiece {
  std::string name;
  double turn = 0;  ///< radians
  Point move;
  Loops outline;                     ///< in the sheet's frame
  std::optional<Ellipse> ellipse{};  ///< the same, see InlayPiece
};

struct NestedSheet {
  std::string material;
  int sheet = 0;  ///< index into Board::sheets
  double length = 0, width = 0, thickness = 0;
  LineSegment along, across;  ///< the sheet's centre lines, to be marked on it as on the blank
  std::vector<NestedPiece> pieces;
  double used = 0;  ///< mm^2 of pieces
};

struct Nesting {
  std::vector<NestedSheet> sheets;   ///< every sheet that holds a piece, in the board's order
  std::vector<std::string> no_room;  ///< names of pieces that fit on no sheet, sorted
};

/// Places the pieces of every material on its sheets, each sheet there once: large ones first, each on the first sheet
/// with room, as low and then as far left as it goes there. A piece goes on sheets of its own material that are at
/// least as thick as it. Between two pieces there is at least the spacing, between a piece and a sheet's edge too, and
/// the sheet's margin, and at both of its ends the clamps' length. The same pieces give the same places. Nothing when
/// cancelled.
std::optional<Nesting> nest(const std::vector<InlayPiece>& pieces, const std::vector<Sheet>& sheets,
                            const NestRules& rules, const Cancel& cancel = {});

}  // namespace sagitta
