#include "inlay/PocketShape.hpp"

#include <algorithm>

#include "inlay/Inlays.hpp"

namespace sagitta {
namespace {

Rounded piece_core(const Inlay& inlay) {
  const double x = inlay.along.value_or(0) / 2, y = inlay.across.value_or(0) / 2;
  switch (inlay.shape) {
    case InlayShape::dot:
      return {{{0, 0}}, inlay.diameter / 2};
    case InlayShape::block:
      return {{{-x, -y}, {x, -y}, {x, y}, {-x, y}}, 0};
    case InlayShape::diamond:
      return {{{-x, 0}, {0, -y}, {x, 0}, {0, y}}, 0};
    case InlayShape::trapezoid: {
      const double n = inlay.across_nut.value_or(0) / 2, h = inlay.across_heel.value_or(0) / 2;
      return {{{-x, -n}, {x, -h}, {x, h}, {-x, n}}, 0};
    }
    case InlayShape::artwork:
      break;
  }
  return {};
}

/// An unplaced point of the shape, on the board.
Point placed(const Board& board, const Inlay& inlay, Point centre, Point p) {
  const double hand = board.hand == Hand::left ? -1 : 1;
  return centre + turned(p, hand * inlay.turn_degrees * std::numbers::pi / 180);
}

}  // namespace

std::pair<double, Point> off_corners(const Board& board, const Inlay& inlay, Point centre) {
  const Rounded shape = piece_core(inlay);
  const std::size_t n = shape.core.size();
  double sharpest = std::numbers::pi;
  Point at;
  for (std::size_t i = 0; n > 2 && shape.radius == 0 && i < n; ++i) {
    const Point p = shape.core[i], to = unit(shape.core[(i + 1) % n] - p), from = unit(shape.core[(i + n - 1) % n] - p);
    const double angle = std::atan2(cross(to, from), dot(to, from));
    if (angle < sharpest) sharpest = angle, at = p;
  }
  return {inlay_cutter_radius(board) * (1 / std::sin(sharpest / 2) - 1), placed(board, inlay, centre, at)};
}

InlaySize largest_size(const Inlay& inlay) {
  if (inlay.shape == InlayShape::dot) return {"diameter", inlay.diameter};
  InlaySize largest;
  for (const auto& [key, size] :
       {std::pair{"along", inlay.along}, std::pair{"across", inlay.across}, std::pair{"across_nut", inlay.across_nut},
        std::pair{"across_heel", inlay.across_heel}})
    if (size.value_or(0) > largest.value) largest = {key, *size};
  return largest;
}

std::optional<InlaySize> size_all_round(const Inlay& inlay) {
  if (inlay.shape == InlayShape::dot) return InlaySize{"diameter", inlay.diameter};
  return {};
}

Rounded pocket_shape(const Board& board, const Inlay& inlay, Point centre) {
  const double cutter = inlay_cutter_radius(board);
  const Rounded core = shrunk(piece_core(inlay), cutter);
  if (core.empty()) return {};
  const Rounded pocket = shrunk(core, -(cutter + inlay.clearance));
  const double hand = board.hand == Hand::left ? -1 : 1;
  const double turn = inlay.turn_degrees * std::numbers::pi / 180;
  Rounded shape = turn == 0 ? pocket : turned(pocket, hand * turn);
  return moved(shape, centre);
}

double piece_thickness(const Inlay& inlay) { return inlay.piece_thickness.value_or(inlay.depth + 0.2); }

}  // namespace sagitta
