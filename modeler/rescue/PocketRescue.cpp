/// Pockets that came out too deep or too wide.

#include <cmath>

#include "board/Cutters.hpp"
#include "board/ShapeKeys.hpp"
#include "inlaid/PieceDepth.hpp"
#include "layout/Measure.hpp"
#include "measured/AsMeasured.hpp"
#include "plane/Tolerance.hpp"
#include "rescue/Ways.hpp"
#include "rules/Catalogue.hpp"
#include "rules/Judge.hpp"

namespace sagitta {
namespace {

/// A pocket cut wider than planned by less than this needs no rescue, mm; common practice, no source.
constexpr double repeatable = 0.01;

/// The thickness that makes every piece of an inlay stand proud of the surface by what is wanted before sanding.
double thickness_wanted(const PreparedBoard& ready, std::size_t inlay) {
  const double proud = Judge(ready.board()).limit(rule("pocket-too-deep"));
  double wanted = 0;
  for (const InlayPiece& piece : ready.inlays().pieces)
    if (piece.inlay == static_cast<int>(inlay))
      if (const auto depth = piece_depth(ready, piece)) wanted = std::max(wanted, depth->most + proud);
  return wanted;
}

bool is_sunk(const PreparedBoard& ready, const InlayPiece& piece) {
  const auto depth = piece_depth(ready, piece);
  const double proud = Judge(ready.board()).limit(rule("pocket-too-deep"));
  return depth && depth->spare < proud - tolerance::same;
}

void offer_thicker(Ways& ways) {
  const PreparedBoard& ready = *ways.ready();
  Way way;
  std::map<std::string, double> of_material = ways.planned().measured.piece_thickness;
  bool by_material = false;
  for (std::size_t i = 0; i < ready.board().inlays.size(); ++i) {
    bool sunk = false;
    for (const InlayPiece& piece : ready.inlays().pieces)
      if (piece.inlay == static_cast<int>(i) && is_sunk(ready, piece)) {
        sunk = true;
        if (of_material.contains(piece.material)) {
          of_material[piece.material] = std::max(of_material[piece.material], thickness_wanted(ready, i));
          by_material = true;
        }
      }
    if (!sunk) continue;
    const double wanted = thickness_wanted(ready, i);
    way.edits.push_back({inlay_key(i, "piece_thickness"), wanted});
    way.figures.push_back({"thickness", wanted, "mm"});
  }
  if (way.edits.empty()) return;
  if (by_material) way.edits.push_back({"measured.piece_thickness", of_material});
  way.name = "thicker-piece";
  way.message = "cut the pieces " + in_units(ways.planned(), way.figures.front().value) + " thick";
  way.cost = "pieces from a thicker sheet";
  way.effort = WayEffort::pieces;
  ways.offer(std::move(way));
}

/// A strip under the piece lifts the floor that the piece lies on.
void offer_packing(Ways& ways) {
  const PreparedBoard& ready = *ways.ready();
  const double proud = Judge(ready.board()).limit(rule("pocket-too-deep"));
  std::map<std::string, double> depths = ways.planned().measured.pocket_depths;
  Way way;
  for (const InlayPiece& piece : ready.inlays().pieces) {
    const auto depth = piece_depth(ready, piece);
    const auto measured = depths.find(piece.name);
    if (!depth || measured == depths.end() || depth->spare >= proud - tolerance::same) continue;
    measured->second -= proud - depth->spare;
    way.figures.push_back({"packing", proud - depth->spare, "mm"});
  }
  if (way.figures.empty()) return;
  way.edits = {{"measured.pocket_depths", depths}};
  way.name = "packing";
  way.message = "glue packing under the piece, " + in_units(ways.planned(), way.figures.front().value) + " thick";
  way.cost = "a strip of veneer or sheet under each piece that lies too low";
  way.effort = WayEffort::pieces;
  ways.offer(std::move(way));
}

/// The floor is filled and cut again: also where so little wood is left that the board cannot be built.
void offer_filling(Ways& ways) {
  const Measured& measured = ways.planned().measured;
  if (measured.pocket_depths.empty() || (ways.ready() && !ways.has_finding("pocket-too-deep"))) return;
  if (!ways.ready() && !ways.has_fault(FaultCode::floor_too_low)) return;
  Board bare = ways.planned();
  bare.measured.pocket_depths.clear();
  const auto prepared = prepare(bare);
  const auto* ready = std::get_if<PreparedBoard>(&prepared);
  if (!ready) return;
  std::map<std::string, double> depths = measured.pocket_depths;
  Way way;
  for (const InlayPiece& piece : ready->inlays().pieces)
    if (const auto deep = depths.find(piece.name);
        deep != depths.end() && deep->second > piece.depth + tolerance::same) {
      way.figures.push_back({"filling", deep->second - piece.depth, "mm"});
      deep->second = ready->planned().inlays[static_cast<std::size_t>(piece.inlay)].depth;
    }
  if (way.figures.empty()) return;
  way.edits = {{"measured.pocket_depths", depths}};
  way.name = "fill-pocket";
  way.message = "fill the pocket with a plug of the board's wood and cut it again to the planned depth";
  way.cost = "a plug for each pocket; it is hidden under the piece";
  way.effort = WayEffort::cut_again;
  ways.offer(std::move(way));
}

/// By how much the pockets came out wider than the cutter's own size on their path: over both sides.
double cut_wider(const Board& board) {
  if (!cut_when_measured(board).contains(Operation::pockets)) return 0;
  double wider = 0;
  const bool detail = narrowest_cut(board, CutterUse::pocket_detail).has_value();
  for (const Cutter& cutter : board.cutters)
    if (has_use(cutter, detail ? CutterUse::pocket_detail : CutterUse::pocket_clear) && cutter.measured_cut)
      wider = std::max(wider, *cutter.measured_cut - cutter.diameter - cutter.runout);
  return wider;
}

void offer_for_wide(Ways& ways) {
  const Board& board = ways.planned();
  const double wider = cut_wider(board);
  if (wider <= repeatable || board.inlays.empty()) return;
  Way larger, looser;
  for (std::size_t i = 0; i < board.inlays.size(); ++i) {
    const Inlay& inlay = board.inlays[i];
    if (const auto size = size_all_round(inlay))
      larger.edits.push_back({inlay_key(i, size->key), size->value + wider});
    else if (inlay.shape == InlayShape::block)
      for (const InlaySize& each : sizes_of(inlay))
        larger.edits.push_back({inlay_key(i, each.key), each.value + wider});
    looser.edits.push_back({inlay_key(i, "clearance"), inlay.clearance + wider / 2});
  }
  larger.name = "larger-piece";
  larger.message = "cut the pieces " + in_units(board, wider) + " larger: they fill the pockets as these were cut";
  larger.cost = "pieces cut anew, larger than they were drawn";
  larger.effort = WayEffort::pieces;
  larger.figures = {{"larger", wider, "mm"}};
  ways.offer(std::move(larger));
  looser.name = "wider-joint";
  looser.message = "keep the pieces: the joint all round is " + in_units(board, wider / 2) + " wider";
  looser.cost = "a line of glue or filler that shows";
  looser.effort = WayEffort::numbers;
  looser.figures = {{"wider", wider / 2, "mm"}};
  ways.offer(std::move(looser));
}

}  // namespace

void pocket_ways(Ways& ways) {
  if (ways.ready() && ways.has_finding("pocket-too-deep")) {
    offer_thicker(ways);
    offer_packing(ways);
  }
  offer_filling(ways);
  if (ways.ready()) offer_for_wide(ways);
}

}  // namespace sagitta
