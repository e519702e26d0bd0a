#pragma once

/// Boards that a builder would draw: every number within what is usual, chosen to fit the others.

#include <algorithm>
#include <cmath>

#include "board/Board.hpp"
#include "layout/Layout.hpp"
#include "random/Dice.hpp"

namespace sagitta::test {

using random_boards::Dice;

inline void draw_strings(Dice& dice, Board& board) {
  const double scale = dice.real(345, 870);
  if (dice.chance(0.2) && scale > 600) {
    board.scale.treble = scale;
    board.scale.bass = scale * dice.real(1.01, 1.06);
    board.scale.square_fret = dice.whole(5, 10);
  } else {
    board.scale.length = scale;
  }
  board.scale.frets = scale < 450 ? dice.whole(12, 17) : dice.whole(18, 24);
  board.strings.count = scale > 780 ? 4 : dice.whole(4, 7);
  const double between = dice.real(6.5, 9);
  board.strings.nut_spread = between * (board.strings.count - 1);
  board.strings.saddle_spread = board.strings.nut_spread * dice.real(1.25, 1.5);
}

inline void draw_surface(Dice& dice, Board& board) {
  SurfaceSpec& surface = board.surface;
  surface.profile =
      dice.one_of({Profile::flat, Profile::single, Profile::compound, Profile::string_line, Profile::even_edge});
  if (surface.profile != Profile::flat) surface.radius_at_nut = dice.real(220, 420);
  if (surface.profile == Profile::compound) surface.radius_at_heel = *surface.radius_at_nut * dice.real(1.2, 1.6);
  if (dice.chance(0.2)) {
    surface.fall_from_fret = 12;
    surface.fall = dice.real(0.1, 0.5);
  }
}

/// Dots or blocks as long as their space allows, let in as deep as the radius asks.
inline void draw_pieces(Dice& dice, Board& board) {
  Inlay inlay;
  inlay.frets = {3, 5, 7, 9};
  if (dice.chance(0.5))
    inlay.double_frets = {12};
  else
    inlay.frets.push_back(12);
  const double scale = board.scale.treble.value_or(board.scale.length.value_or(0));
  const double space = scale * (std::exp2(-11 / 12.0) - std::exp2(-1.0));
  // Two slots, two walls of 1.2 mm and the clearance; on a fan the slots lean into the space.
  const double room = std::min(8.0, (space - 0.6 - 2.4 - 0.2) * (board.scale.treble ? 0.5 : 1));
  double reach = 6;
  if (dice.chance(0.3) && inlay.double_frets.empty() && !board.scale.treble) {
    inlay.shape = InlayShape::block;
    inlay.along = room * dice.real(0.7, 1);
    inlay.across = board.strings.nut_spread * dice.real(0.4, 0.8);
    reach = *inlay.across / 2;
  } else {
    inlay.diameter = room * dice.real(0.6, 0.9);
    inlay.spread = board.strings.nut_spread * 0.5;
    reach = inlay.double_frets.empty() ? inlay.diameter / 2 : *inlay.spread / 2 + inlay.diameter / 2;
  }
  const double radius = board.surface.radius_at_nut.value_or(1e9);
  inlay.depth = std::max(dice.real(1.2, 1.8), 0.5 + reach * reach / (1.9 * radius));
  board.inlays = {inlay};
}

inline void draw_tools(Dice& dice, Board& board) {
  Cutter slot;
  slot.name = "slot";
  slot.use = {CutterUse::slot};
  slot.diameter = board.slots.width - dice.real(0, 0.02);
  slot.cutting_length = *board.slots.depth + dice.real(1, 1.4);
  Cutter all;
  all.name = "all";
  all.use = {CutterUse::pocket_clear, CutterUse::piece, CutterUse::nut};
  all.diameter = dice.real(0.8, 1.6);
  all.cutting_length = 4.9;
  Cutter large;
  large.name = "large";
  large.use = {CutterUse::radius, CutterUse::outline};
  large.shape = CutterShape::ball;
  large.diameter = 6;
  large.cutting_length = dice.real(12, 22);
  board.cutters = {slot, all, large};
}

inline Board sensible_board(std::uint64_t number) {
  Dice dice(number);
  Board board;
  board.hand = dice.chance(0.2) ? Hand::left : Hand::right;
  draw_strings(dice, board);
  board.board.thickness = dice.real(5.8, 7.2);
  board.board.edge_margin = dice.real(3, 4.5);
  board.board.past_last_fret = dice.real(8, 14);
  // The frets of a fan lean: a square end would cut the last one.
  if (board.scale.bass) board.board.heel = Heel::fret;
  draw_surface(dice, board);
  board.nut.seat = dice.one_of({NutSeat::none, NutSeat::slot, NutSeat::shelf});
  board.wire.tang_depth = dice.real(1.4, 1.8);
  board.wire.crown_width = dice.real(2, 2.6);
  board.slots.width = board.wire.tang_width + dice.real(0.04, 0.1);
  board.slots.depth = board.wire.tang_depth + dice.real(0.25, 0.5);
  if (dice.chance(0.2)) board.binding = Binding{1.5, 0, {}, {}};
  if (board.binding && dice.chance(0.5)) board.slots.ends = SlotEnds::blind, board.slots.edge_left = 1.9;
  draw_pieces(dice, board);
  if (dice.chance(0.5)) draw_tools(dice, board);
  if (dice.chance(0.3)) {
    board.side_dots.emplace();
    board.side_dots->frets = {3, 5, 7, 9};
    board.side_dots->double_frets = {12};
  }
  if (dice.chance(0.3)) board.sanding = dice.real(0.05, 0.2);
  return board;
}

}  // namespace sagitta::test
