#include "findings/ArtworkFindings.hpp"

#include "findings/Judge.hpp"
#include "findings/PieceDepth.hpp"

namespace sagitta {
namespace {

void judge_depth(const Board& board, const InlayPiece& piece, const PieceDepth& depth, Judge& judge) {
  const std::string name =
      piece.name + " of inlay " + std::to_string(piece.inlay + 1) + " at fret " + std::to_string(piece.fret);
  const std::string key = "inlays[" + std::to_string(piece.inlay) + "].depth";
  const double floor = board.board.thickness - piece.depth;
  const Spot thin{depth.least_at, floor + depth.least, name};
  const double lack = judge.limit(rule("inlay-too-thin")) - depth.least;
  const std::string deeper = "make the pocket and the piece " + judge.shown(lack) + " thicker, or the drawing narrower";
  const bool own_thickness = board.inlays[static_cast<std::size_t>(piece.inlay)].piece_thickness.has_value();
  std::optional<Fix> deepen;
  if (!own_thickness) deepen = Fix{key, judge.up(piece.depth + lack)};
  if (!judge.hold(rule("inlay-sanded-through"), depth.least, thin,
                  "the radius goes through " + name + ": where it lies farthest out it is cut " +
                      judge.shown(-depth.least) + " deeper than the pocket, and the piece is lost",
                  deeper, deepen))
    judge.hold(
        rule("inlay-too-thin"), depth.least, thin,
        name + " is only " + judge.shown(depth.least) + " thick where it lies farthest out after the radius is cut",
        deeper, deepen);
  const Rule& deep = rule("pocket-too-deep");
  judge.hold(deep, depth.spare, {depth.most_at, floor, name},
             "the pocket of " + name + " is " + judge.shown(depth.most) + " deep and the piece " +
                 judge.shown(piece.thickness) + " thick: it will lie " +
                 (depth.spare < 0 ? "below the surface" : "too low to be sanded flush"),
             "make the pocket " + judge.shown(judge.limit(deep) - depth.spare) + " shallower",
             Fix{key, judge.down(piece.depth - judge.limit(deep) + depth.spare)});
}

}  // namespace

std::vector<Finding> artwork_findings(const Board& board, const Layout& layout, const Surface& surface,
                                      const Inlays& inlays) {
  Judge judge(board);
  for (const InlayPiece& piece : inlays.pieces) {
    if (piece.shape) continue;  // findings_of() has judged it
    if (const auto depth = piece_depth(board, layout, surface, piece)) judge_depth(board, piece, *depth, judge);
  }
  return judge.take();
}

}  // namespace sagitta
