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

}  // namespace

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
