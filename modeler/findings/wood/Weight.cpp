#include "wood/Weight.hpp"

#include <algorithm>
#include <cmath>

#include "board/Materials.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "layout/SlotLines.hpp"
#include "plan/Feature.hpp"

namespace sagitta {
namespace {

constexpr double mm3_per_m3 = 1e9, grams_per_kg = 1000;

/// Three-point Gauss-Legendre rule on [0, 1].
constexpr double node[] = {0.1127016653792583, 0.5, 0.8872983346207417};
constexpr double share[] = {5.0 / 18, 8.0 / 18, 5.0 / 18};
/// Pieces that the rule is applied to on each piece of outline.
constexpr int parts = 32;

/// Integral of the height from 0 to y at x.
double area_beside(const Surface& surface, double x, double y) {
  const double under_crown = surface.crown(x) * y;
  if (surface.flat) return under_crown;
  const double r = surface.radius(x), root = std::sqrt(r * r - y * y);
  // The segment of a circle over the half chord y, less the rectangle below it; see any table of integrals.
  const double above = r * r / 2 * std::asin(y / r) + y / 2 * root - r * y;
  return under_crown + above;
}

/// The piece from t0 to t1, split where the fall begins so that no part has a kink.
double integral(const Surface& surface, const CurveSegment& segment) {
  double sum = 0;
  for (int i = 0; i < parts; ++i)
    for (int k = 0; k < 3; ++k) {
      const double t = (i + node[k]) / parts;
      const Point p = segment.at(t);
      sum -= share[k] / parts * segment.slope(t).x * area_beside(surface, p.x, p.y);
    }
  return sum;
}

double density(const Board& board, const std::string& name) {
  return material(board, name).density * grams_per_kg / mm3_per_m3;
}

double nut_volume(const Board& board, const Layout& layout, const Surface& surface) {
  if (!layout.nut) return 0;
  const double behind = layout.nut->face.x - layout.nut_end;
  const double run = layout.nut->shelf ? behind : std::min(behind, board.nut.width);
  if (board.nut.floor == NutFloor::arc)
    return run * (layout.edge(0, layout.nut->face.x) + layout.edge(1, layout.nut->face.x)) * board.nut.depth;
  const double x = layout.nut->face.x, floor = surface.thickness - layout.nut->depth;
  const auto over_floor = [&](double edge) { return area_beside(surface, x, edge) - edge * floor; };
  return run * std::max(0.0, over_floor(layout.edge(0, x)) + over_floor(layout.edge(1, x)));
}

double slot_volume(const Board& board, const Layout& layout, const Surface& surface, const Slot& slot) {
  const double covered = area(outline(slot_shape(layout, slot))), deep = slot_depth(board);
  if (board.slots.floor == SlotFloor::arc) return covered * deep;
  const double whole = distance(slot.bass_end, slot.treble_end), x = (slot.bass_end.x + slot.treble_end.x) / 2;
  const double low = whole * (layout.edge(0, x) / (layout.edge(0, x) + layout.edge(1, x))), high = whole - low;
  const double mean =
      (area_beside(surface, x, low) + area_beside(surface, x, high)) / whole - (surface.thickness - deep);
  return covered * std::max(0.0, mean);
}

}  // namespace

double volume_under(const Surface& surface, const Loop& outline) {
  double sum = 0;
  for (const CurveSegment& segment : outline) sum += integral(surface, segment);
  return sum;
}

Weights weights_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  const Surface& surface = ready.surface();
  const double wood = density(board, board.blank.material);
  const Point size = layout.blank.high - layout.blank.low;
  Weights weights{size.x * size.y * layout.blank_thickness * wood, 0};
  double volume = volume_under(surface, layout.outline) - nut_volume(board, layout, surface);
  for (const Slot& slot : layout.slots) volume -= slot_volume(board, layout, surface, slot);
  weights.board = volume * wood;
  for (const InlayPiece& piece : ready.inlays().pieces) {
    const Box box = bounds(piece.pocket);
    const double deep = piece.depth - surface.thickness + surface.height(between(box.low, box.high, 0.5));
    weights.board += area(piece.pocket) * std::max(0.0, deep) * (density(board, piece.material) - wood);
  }
  return weights;
}

}  // namespace sagitta
