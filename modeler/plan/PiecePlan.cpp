#include "plan/PiecePlan.hpp"

#include <algorithm>

#include "plan/Feature.hpp"

namespace sagitta {
namespace {

Loop joined(const Loops& loops) {
  Loop all;
  for (const Loop& loop : loops) all.insert(all.end(), loop.begin(), loop.end());
  return all;
}

Box extent_of(const Feature& feature) { return bounds(feature.shape ? outline(*feature.shape) : feature.loop); }

Feature piece_feature(const InlayPiece& piece, double floor, double top) {
  Feature f = feature_called(id_of(piece));
  f.role = Feature::Role::piece;
  f.kind = Source::Kind::pocket;
  f.name = piece.name;
  f.key = "inlays[" + std::to_string(piece.inlay) + "]";
  f.bound = {BoundingSurface::Kind::level, floor};
  f.ceiling = {BoundingSurface::Kind::level, top};
  f.shape = piece.shape;
  f.drawn = !piece.shape;
  if (piece.ellipse) f.ellipse = {*piece.ellipse, 0};
  if (f.drawn) f.loop = joined(piece.piece);
  return f;
}

Feature stock_around(const Box& box) {
  Feature f = feature_called({.kind = FeatureId::Kind::blank});
  f.role = Feature::Role::stock;
  f.kind = Source::Kind::blank;
  f.loop = rectangle(box.low, box.high);
  return f;
}

/// How far the stock of a piece by itself is drawn around it. mm.
constexpr double around = 5;

}  // namespace

std::variant<Plan, Faults> make_piece_plan(const Board& board, const Layout& layout, const Surface& surface,
                                           const InlayPiece& piece, PieceState state, const Selection& selection) {
  const double floor = state == PieceState::sheet ? 0 : board.board.thickness - piece.depth;
  const double whole = floor + piece.thickness;
  const double top = state == PieceState::sheet ? whole : std::min(whole, raw_top(board, layout));
  Feature own = piece_feature(piece, floor, top);
  const Box box = extent_of(own).grown(around);
  if (state != PieceState::job) return plan_of(surface, top, Stage::pocketed, {}, {stock_around(box), std::move(own)});
  const Stage last = stages_of(board).back();
  WorkDone done = work_done_at(board, last);
  done.pockets = false;
  std::vector<Feature> features;
  for (Feature& feature : features_of(board, layout, surface, {}, done))
    if (feature.role == Feature::Role::stock || (selection.has(feature.id) && extent_of(feature).overlaps(box)))
      features.push_back(std::move(feature));
  features.push_back(std::move(own));
  return plan_of(surface, stock_top(board, layout, done), last, done, std::move(features));
}

bool has_wood(const Plan& plan) {
  return std::any_of(plan.cells.begin(), plan.cells.end(), [](const Cell& cell) { return cell.wood(); });
}

}  // namespace sagitta
