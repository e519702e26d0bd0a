#include "rules/Work.hpp"

#include <algorithm>

#include "board/CutSide.hpp"
#include "layout/SlotLines.hpp"

namespace sagitta {

bool comes_before(const Board& board, Operation a, Operation b) {
  return std::find(board.order.begin(), board.order.end(), a) < std::find(board.order.begin(), board.order.end(), b);
}

double top_before(const Subject& subject, Operation operation) {
  for (const Operation done : subject.prepared.board().order) {
    if (done == operation) break;
    if (done == Operation::radius) return subject.prepared.surface().thickness + subject.prepared.board().sanding;
  }
  return operation == Operation::thickness ? subject.prepared.layout().blank_thickness
                                           : raw_top(subject.prepared.board(), subject.prepared.layout());
}

const Setup* setup_of(const Board& board, Operation operation) {
  for (const Setup& setup : board.setups)
    if (std::find(setup.operations.begin(), setup.operations.end(), operation) != setup.operations.end()) return &setup;
  return nullptr;
}

double reclamp_loss(const Board& board, Operation a, Operation b) {
  const Setup *first = setup_of(board, a), *second = setup_of(board, b);
  if (!first || !second || first == second) return 0;
  return std::max(first->reclamp_error, second->reclamp_error);
}

double proud_at(const Subject& subject, double depth, double thickness, Point p) {
  const Board& board = subject.prepared.board();
  if (comes_before(board, Operation::slots, Operation::inlay)) return 0;
  const bool radius_done = comes_before(board, Operation::radius, Operation::slots);
  if (radius_done && comes_before(board, Operation::inlay, Operation::radius)) return 0;  // cut with the wood
  const double wood =
      radius_done ? subject.prepared.surface().height(p) + board.sanding : raw_top(board, subject.prepared.layout());
  return subject.prepared.surface().thickness - depth + thickness - wood;
}

std::string_view operation_name(Operation operation) {
  switch (operation) {
    case Operation::pockets:
      return "pockets";
    case Operation::inlay:
      return "inlay";
    case Operation::radius:
      return "radius";
    case Operation::slots:
      return "slots";
    case Operation::thickness:
      return "thickness";
    case Operation::outline:
      break;
  }
  return "outline";
}

double lowest_floor(const Subject& subject, Point p) {
  const RoundedPolygon here{{p}, 0};
  double floor = subject.prepared.surface().height(p);
  for (const Slot& slot : subject.prepared.layout().slots)
    if (distance(here, slot_shape(subject.prepared.layout(), slot)) <= 0)
      floor = std::min(floor, slot_floor(subject, p));
  for (const int i : subject.let_places.near({p, p})) {
    const LetPiece& let = subject.let[static_cast<std::size_t>(i)];
    if (let.has_pocket_at(p)) floor = std::min(floor, let.floor());
  }
  const Board& board = subject.prepared.board();
  for (const FittedCut& fitted : subject.prepared.inlays().cuts) {
    const Cut& cut = board.cuts[static_cast<std::size_t>(fitted.cut)];
    if (!is_from_below(cut) && covers(fitted, p))
      floor = std::min(floor, is_through(cut) ? 0 : board.board.thickness - cut.depth);
  }
  if (const auto& nut = subject.prepared.layout().nut) {
    const Point across{nut->direction.y, -nut->direction.x};  // toward the bridge
    const bool before_face = dot(p - nut->face, across) <= 0;
    if (before_face && (nut->shelf || dot(p - nut->back, across) >= 0)) floor = std::min(floor, seat_floor(subject, p));
  }
  return floor;
}

}  // namespace sagitta
