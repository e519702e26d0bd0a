/// A radius cut too deep.

#include <cmath>

#include "inlaid/PieceDepth.hpp"
#include "layout/Measure.hpp"
#include "measured/AsMeasured.hpp"
#include "plane/Tolerance.hpp"
#include "rescue/Ways.hpp"
#include "rules/Catalogue.hpp"
#include "rules/Judge.hpp"

namespace sagitta {
namespace {

/// What each piece keeps of its thickness where it is thinnest.
std::vector<WayFigure> kept(const Board& board) {
  std::vector<WayFigure> figures{{"thickness", board.board.thickness, "mm"}};
  const auto prepared = prepare(board);
  if (const auto* ready = std::get_if<PreparedBoard>(&prepared))
    for (const InlayPiece& piece : ready->inlays().pieces)
      if (const auto depth = piece_depth(*ready, piece)) figures.push_back({piece.name + " keeps", depth->least, "mm"});
  return figures;
}

/// Pockets deepened until their pieces keep what is wanted at their rims; pieces that are thicker by as much.
bool deepen(Board& board) {
  const auto prepared = prepare(board);
  const auto* ready = std::get_if<PreparedBoard>(&prepared);
  if (!ready) return false;
  const double wanted = Judge(board).limit(rule("inlay-too-thin"));
  std::map<int, double> lack;
  for (const InlayPiece& piece : ready->inlays().pieces)
    if (const auto depth = piece_depth(*ready, piece); depth && depth->least < wanted - tolerance::same)
      lack[piece.inlay] = std::max(lack[piece.inlay], wanted - depth->least);
  for (const auto& [index, by] : lack) {
    Inlay& inlay = board.inlays[static_cast<std::size_t>(index)];
    inlay.piece_thickness = piece_thickness(inlay) + by;
    inlay.depth += by;
  }
  return !lack.empty();
}

}  // namespace

void surface_ways(Ways& ways) {
  if (ways.planned().measured.thickness.empty()) return;
  const auto measured = as_measured(ways.planned());
  const auto* taken = std::get_if<Board>(&measured);
  if (!taken) return;
  const double lost = ways.planned().board.thickness - taken->board.thickness;
  if (lost <= tolerance::same) return;
  Way keep;
  keep.name = "thinner-board";
  keep.edits = edits_between(ways.planned(), *taken);
  keep.figures = kept(*taken);
  keep.message = "go on with a board of " + in_units(ways.planned(), taken->board.thickness);
  keep.cost = "the board and its edges are " + in_units(ways.planned(), lost) +
              " lower; pieces and slots that are cut keep less";
  keep.effort = WayEffort::numbers;
  ways.offer(std::move(keep));
  Board deeper = *taken;
  if (!deepen(deeper)) return;
  Way way;
  way.name = "deeper-pockets";
  way.edits = edits_between(ways.planned(), deeper);
  way.figures = kept(deeper);
  way.message = "cut the pockets of the pieces that keep too little deeper, and make these pieces anew";
  way.cost = "pieces cut out, pockets cut again, new pieces";
  way.effort = WayEffort::cut_again;
  ways.offer(std::move(way));
}

}  // namespace sagitta
