#include <algorithm>
#include <cmath>

#include "random/Draw.hpp"

namespace sagitta::random_boards {
namespace {

/// A fret space and the room between its two slots on the centre line.
struct Room {
  int space = 0;
  double length = 0;      ///< slot edge to slot edge
  double half_width = 0;  ///< of the board there
};

Room draw_room(Dice& dice, const Layout& layout, const Board& board) {
  const int space = dice.whole(1, board.scale.frets);
  const FretLine &before = layout.frets[static_cast<std::size_t>(space - 1)],
                 &at = layout.frets[static_cast<std::size_t>(space)];
  const double middle = 0.5 * (before.middle.x + at.middle.x);
  return {space, at.middle.x - before.middle.x - board.slots.width, layout.half_width(middle)};
}

double draw_depth(Dice& dice, const Board& board) {
  const double slot = slot_depth(board);
  if (dice.chance(0.25)) return slot;
  if (!board.inlays.empty() && dice.chance(0.2)) return board.inlays.back().depth;
  if (dice.chance(0.15)) return board.slots.floor == SlotFloor::level ? slot : board.nut.depth;
  return dice.real(0.1, 0.6 * board.board.thickness);
}

/// Along the board: inside the space, exactly filling it, a hair more or less, or across slots.
double draw_length(Dice& dice, const Room& room, double slot_width) {
  switch (dice.whole(0, 6)) {
    case 0:
      return room.length;
    case 1:
      return room.length + dice.one_of({-1e-3, 1e-3, 1e-5, -1e-5});
    case 2:
      return room.length + 2 * slot_width;
    case 3:
      return room.length + dice.real(0, 30);
    default:
      return std::min(room.length, 60.0) * dice.real(0.2, 0.9);
  }
}

/// Across the board: within it, exactly as wide, or hanging over.
double draw_breadth(Dice& dice, const Room& room) {
  switch (dice.whole(0, 5)) {
    case 0:
      return 2 * room.half_width;
    case 1:
      return 2 * room.half_width + dice.real(0, 8);
    default:
      return 2 * room.half_width * dice.real(0.05, 0.95);
  }
}

void draw_shape(Dice& dice, Space space, const Room& room, double slot_width, Inlay& inlay) {
  inlay.shape = space == Space::core ? dice.one_of({InlayShape::dot, InlayShape::dot, InlayShape::block})
                : space == Space::kinds && dice.chance(0.3)
                    ? InlayShape::oval
                    : dice.one_of({InlayShape::dot, InlayShape::block, InlayShape::trapezoid, InlayShape::diamond});
  const double grown = 2 * inlay.clearance;
  const auto piece = [&](double pocket) { return std::max(0.5, pocket - grown); };
  if (inlay.shape == InlayShape::dot) {
    inlay.diameter = std::min(140.0, piece(dice.chance(0.6) ? dice.real(1, 12) : draw_length(dice, room, slot_width)));
    return;
  }
  inlay.along = piece(draw_length(dice, room, slot_width));
  const double across = piece(draw_breadth(dice, room));
  if (inlay.shape == InlayShape::trapezoid) {
    inlay.across_nut = across;
    inlay.across_heel = piece(draw_breadth(dice, room));
  } else {
    inlay.across = across;
  }
}

/// Pairs: apart, touching each other, or touching the outline.
void draw_place(Dice& dice, const Room& room, double breadth, Inlay& inlay) {
  if (dice.chance(0.4)) {
    inlay.double_frets = {room.space};
    const double pocket = breadth + 2 * inlay.clearance;
    switch (dice.whole(0, 4)) {
      case 0:
        inlay.spread = pocket;
        break;
      case 1:
        inlay.spread = pocket + dice.one_of({1e-3, -1e-3, 1e-5, -1e-5});
        break;
      case 2:
        inlay.spread = 2 * room.half_width - pocket;
        break;
      case 3:
        inlay.spread = 2 * room.half_width * dice.real(0.2, 1);
        break;
      default:
        break;
    }
    if (inlay.spread && *inlay.spread < 0.5) inlay.spread.reset();
  } else {
    inlay.frets = {room.space};
  }
  if (dice.chance(0.25)) inlay.shift_along = dice.chance(0.4) ? room.length / 2 : dice.real(-15, 15);
  if (dice.chance(0.2)) inlay.shift_across = dice.real(-12, 12);
  if (inlay.shape != InlayShape::dot && dice.chance(0.35))
    inlay.turn_degrees = dice.chance(0.3) ? dice.one_of({90.0, 45.0, 180.0, -90.0}) : dice.real(-180, 180);
}

void add_space(Dice& dice, const Board& board, std::vector<int>& frets) {
  const int space = dice.whole(1, board.scale.frets);
  if (std::find(frets.begin(), frets.end(), space) == frets.end()) frets.push_back(space);
}

/// Diameter of the largest round cutter that enters the piece, or less.
double least_room(const Inlay& inlay) {
  if (inlay.shape == InlayShape::dot) return inlay.diameter;
  const double along = *inlay.along;
  const double across = inlay.across.value_or(std::min(inlay.across_nut.value_or(0), inlay.across_heel.value_or(0)));
  const bool ends_far = inlay.shape == InlayShape::block || inlay.shape == InlayShape::oval;
  const double inscribed = ends_far ? 1 : 0.5;
  return inscribed * std::min(along, across);
}

void draw_cutter(Dice& dice, Board& board) {
  Cutter cutter;
  cutter.name = "detail";
  cutter.use = {CutterUse::pocket_detail, CutterUse::piece};
  cutter.diameter = dice.real(0.4, 1.6);
  cutter.cutting_length = 6;
  for (const Inlay& inlay : board.inlays)
    if (least_room(inlay) < cutter.diameter) return;
  board.cutters.push_back(cutter);
}

}  // namespace

void draw_inlays(Dice& dice, Space space, const Layout& layout, Board& board) {
  const int kinds = dice.whole(0, 4);
  for (int i = 0; i < kinds; ++i) {
    if (i > 0 && dice.chance(0.1)) {
      board.inlays.push_back(board.inlays.back());
      continue;
    }
    Inlay inlay;
    inlay.clearance = dice.one_of({0.0, 0.05, 0.0625});
    const Room room = draw_room(dice, layout, board);
    draw_shape(dice, space, room, board.slots.width, inlay);
    inlay.depth = draw_depth(dice, board);
    const double breadth =
        inlay.shape == InlayShape::dot ? inlay.diameter : inlay.across.value_or(inlay.across_nut.value_or(1));
    draw_place(dice, room, breadth, inlay);
    for (int more = dice.whole(0, 3); more > 0; --more)
      add_space(dice, board, inlay.frets.empty() ? inlay.double_frets : inlay.frets);
    board.inlays.push_back(inlay);
  }
  if (!board.inlays.empty() && dice.chance(0.25)) draw_cutter(dice, board);
}

}  // namespace sagitta::random_boards
