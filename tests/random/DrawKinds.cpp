// Boards of more kinds: margins, courses, lines, fretless boards, ends and tongues, worked edges, scallops.

#include <algorithm>

#include "random/Draw.hpp"

namespace sagitta::random_boards {
namespace {

double rounded(Dice& dice, double value) { return dice.chance(0.7) ? std::round(value * 100) / 100 : value; }

LengthPair draw_pair(Dice& dice, double low, double high) {
  const double first = rounded(dice, dice.real(low, high));
  return dice.chance(0.3) ? LengthPair(first) : LengthPair(first, rounded(dice, dice.real(low, high)));
}

void draw_widths(Dice& dice, Board& board) {
  Shape& shape = board.board;
  if (shape.edge_margin) shape.edge_margin = draw_pair(dice, 1, 7);
  if (shape.nut_margin) shape.nut_margin = draw_pair(dice, 1, 6);
  if (shape.heel_margin) shape.heel_margin = draw_pair(dice, 1, 8);
  if (!shape.nut_width || board.scale.frets < 1 || dice.chance(0.3)) return;
  shape.heel_width.reset();
  const int fret = dice.whole(1, board.scale.frets);
  shape.width_at_fret = {static_cast<double>(fret), rounded(dice, *shape.nut_width + dice.real(0.2, 1) * fret)};
}

void draw_courses(Dice& dice, Strings& strings) {
  strings.course = dice.one_of({2, 2, 2, 3, 4});
  strings.count = strings.course * dice.whole(2, 6);
  strings.course_gap = rounded(dice, dice.real(1, 0.7 * strings.nut_spread / strings.count));
}

void draw_fretless(Dice& dice, Board& board) {
  board.scale.frets = board.scale.square_fret = 0;
  board.scale.cents.clear();
  board.scale.zero_fret = false;
  board.slots = Slots{};
  board.surface.fall_from_fret.reset();
  board.surface.fall.reset();
  board.surface.heel_at = HeelAt::heel;
  if (board.board.heel == Heel::fret) board.board.heel = Heel::square;
  board.board.past_last_fret = rounded(dice, dice.real(60, 500));
}

/// Shallower than a third of the wood at the lower end of an edge.
double depth_into(Dice& dice, const Layout& layout, const Board& board) {
  const Surface surface = surface_of(board, layout);
  double low = board.board.thickness;
  for (const LineSegment& edge : layout.edges)
    for (const Point p : {edge.a, edge.b}) low = std::min(low, surface.height(p));
  return dice.chance(0.15) ? slot_depth(board) : dice.real(0.1, std::max(0.2, 0.4 * low));
}

void draw_edges(Dice& dice, const Layout& layout, Board& board) {
  Edges edges;
  edges.stage = dice.one_of({EdgeStage::hand, EdgeStage::machine});
  const double depth = depth_into(dice, layout, board);
  if (dice.chance(0.6)) {
    edges.roll = rounded(dice, depth);
  } else {
    edges.bevel_angle_degrees = dice.chance(0.3) ? 45 : rounded(dice, dice.real(15, 75));
    edges.bevel = std::clamp(rounded(dice, dice.real(0.3, 1) * depth), 0.1, 6.0);
  }
  board.edges = edges;
}

void draw_scallop(Dice& dice, const Layout& layout, Board& board) {
  Scallop scallop;
  scallop.from_fret = dice.chance(0.2) ? 0 : dice.whole(0, board.scale.frets - 1);
  scallop.to_fret = dice.chance(0.2) ? board.scale.frets : dice.whole(scallop.from_fret + 1, board.scale.frets);
  const double depth = depth_into(dice, layout, board);
  scallop.depth = dice.chance(0.5) ? LengthPair(depth) : LengthPair(depth, depth * dice.real(0.3, 1));
  if (!board.inlays.empty() && dice.chance(0.3)) scallop.depth = board.inlays.back().depth;
  scallop.land = dice.chance(0.2) ? board.slots.width / 2 : rounded(dice, dice.real(0.4, 3));
  board.scallop = scallop;
}

void draw_purfling(Dice& dice, Binding& binding) {
  for (int lines = dice.whole(1, 3); lines > 0; --lines) {
    binding.lines.push_back(rounded(dice, dice.real(0.2, 0.8)));
    binding.line_materials.push_back(lines % 2 == 0 ? "maple" : "ebony");
  }
}

}  // namespace

void draw_kinds(Dice& dice, Board& board) {
  if (dice.chance(0.05))
    draw_fretless(dice, board);
  else if (dice.chance(0.35))
    draw_ends(dice, board);
  draw_widths(dice, board);
  if (dice.chance(0.25)) draw_courses(dice, board.strings);
  if (board.nut.seat != NutSeat::none && dice.chance(0.5)) board.nut.floor = NutFloor::arc;
  if (board.scale.frets > 0 && dice.chance(0.15)) {
    board.slots.cut = SlotCut::lines;
    if (dice.chance(0.5)) board.slots.line_thickness = board.slots.width * dice.real(0.7, 1);
  } else if (dice.chance(0.04)) {
    board.slots.cut = SlotCut::none;
  }
}

void draw_forms(Dice& dice, const Layout& layout, Board& board) {
  if (dice.chance(0.4)) draw_edges(dice, layout, board);
  if (board.scale.frets > 0 && dice.chance(0.3)) draw_scallop(dice, layout, board);
  if (board.binding && dice.chance(0.4)) draw_purfling(dice, *board.binding);
  if (board.side_dots) {
    board.side_dots->edge = dice.one_of({DotEdge::bass, DotEdge::treble, DotEdge::both});
    if (board.binding && dice.chance(0.3)) {
      board.side_dots->in = DotIn::binding;
      board.side_dots->depth = std::min(board.side_dots->depth, board.binding->width);
    }
  }
  if (dice.chance(0.15)) {
    board.order.insert(board.order.begin(), Operation::thickness);
    if (dice.chance(0.5)) board.thickness_to = board.board.thickness + board.sanding + dice.real(0, 0.7);
  }
}

}  // namespace sagitta::random_boards
