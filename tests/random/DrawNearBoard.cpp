// Boards whose own lines come within a hair of each other: corners and slots, nut and nut end, binding and blind slots.

#include <algorithm>
#include <cmath>

#include "random/Draw.hpp"
#include "random/Hair.hpp"

namespace sagitta::random_boards {
namespace {

using Lengths = std::vector<double*>;

void add(std::optional<double>& value, Lengths& out) {
  if (value) out.push_back(&*value);
}

/// Every length of a plain board.
Lengths lengths_of(Board& b) {
  Lengths all{&b.strings.nut_spread,  &b.strings.saddle_spread,
              &b.board.thickness,     &b.board.past_last_fret,
              &b.board.corner_radius, &b.nut.width,
              &b.nut.depth,           &b.nut.compensation,
              &b.nut.distance,        &b.slots.width,
              &b.slots.edge_left};
  for (auto* value :
       {&b.scale.length, &b.scale.bass, &b.scale.treble, &b.board.nut_width, &b.board.heel_width, &b.board.behind_nut,
        &b.board.heel_arc_radius, &b.surface.radius_at_nut, &b.surface.radius_at_heel, &b.surface.fall, &b.slots.depth})
    add(*value, all);
  for (auto* margin : {&b.board.edge_margin, &b.board.nut_margin, &b.board.heel_margin})
    if (*margin) all.insert(all.end(), {&(*margin)->first, &(*margin)->second});
  return all;
}

void near_outline(Dice& dice, Board& board) {
  if (dice.chance(0.35)) board.strings.saddle_spread = board.strings.nut_spread;
  if (dice.chance(0.5)) board.board.corner_radius = dice.real(0.5, 12);
  if (board.board.heel_arc_radius && dice.chance(0.4)) board.board.heel_arc_radius = dice.real(35, 74);
  if (board.nut.seat != NutSeat::none && dice.chance(0.3)) board.board.behind_nut = board.nut.width + hair(dice);
  if (board.nut.seat != NutSeat::none && dice.chance(0.3)) board.nut.depth = *board.slots.depth + hair(dice);
  if (dice.chance(0.2))
    board.board.past_last_fret = board.board.corner_radius + board.slots.width / 2 + std::abs(hair(dice));
  if (dice.chance(0.15)) {
    const double factor = dice.one_of({0.3, 2.0, 2.5});
    for (double* length : lengths_of(board)) *length *= factor;
  }
}

void near_binding(Dice& dice, Board& board) {
  Binding binding;
  binding.width = board.slots.ends == SlotEnds::blind && dice.chance(0.6)
                      ? board.slots.edge_left + dice.one_of({0.0, 1.0}) * board.slots.width + hair(dice)
                      : dice.real(0.5, 3);
  binding.width = std::max(0.2, binding.width);
  if (dice.chance(0.7))
    binding.height = dice.chance(0.6) ? slot_depth(board) + hair(dice) : dice.real(0.4, 0.7 * board.board.thickness);
  board.binding = binding;
}

/// Holes whose top or bottom meets a floor, whose end touches a pocket, or whose pairs nearly touch.
void near_side_dots(Dice& dice, Board& board) {
  SideDots dots;
  for (int fret = 1; fret <= board.scale.frets; ++fret)
    if (dice.chance(0.4)) (dice.chance(0.2) ? dots.double_frets : dots.frets).push_back(fret);
  if (dots.frets.empty() && dots.double_frets.empty()) return;
  const double middle = 0.45 * board.board.thickness;
  const double floor = board.inlays.empty() ? slot_depth(board) : dice.one_of(board.inlays).depth;
  const double to_floor = 2 * std::abs(board.board.thickness - floor - middle) + hair(dice);
  dots.diameter = std::clamp(dice.chance(0.5) ? to_floor : dice.real(0.5, 3), 0.3, 0.7 * board.board.thickness);
  dots.depth = dice.real(0.5, 6);
  dots.spread = dots.diameter + dice.one_of({0.0, dice.real(0.5, 3)}) + 2e-4 + std::abs(hair(dice));
  board.side_dots = dots;
  const auto layout = lay_out(board);
  if (!std::holds_alternative<Layout>(layout)) return;
  const Layout& sound = std::get<Layout>(layout);
  if (sound.markers.empty() || !dice.chance(0.6)) return;
  const Marker& marker = dice.one_of(sound.markers);
  const SideDot& dot_ = dice.one_of(sound.side_dots);
  const Inlay& inlay = board.inlays[static_cast<std::size_t>(marker.inlay)];
  const double half = (inlay.shape == InlayShape::dot ? inlay.diameter : inlay.along.value_or(1)) / 2 + inlay.clearance;
  const double to_pocket = dot(marker.centre - dot_.mouth, dot_.inward) + dice.one_of({-1.0, 0.0, 1.0}) * half;
  board.side_dots->depth = std::max(0.5, to_pocket + hair(dice));
}

void any_order(Dice& dice, Board& board) {
  for (std::size_t i = board.order.size(); i > 1; --i)
    std::swap(board.order[i - 1], board.order[static_cast<std::size_t>(dice.whole(0, static_cast<int>(i) - 1))]);
  const auto pockets = std::find(board.order.begin(), board.order.end(), Operation::pockets);
  const auto inlay = std::find(board.order.begin(), board.order.end(), Operation::inlay);
  if (inlay < pockets) std::iter_swap(inlay, pockets);
}

}  // namespace

void draw_near_board(Dice& dice, Board& board) {
  near_outline(dice, board);
  if (dice.chance(0.25)) near_binding(dice, board);
  if (dice.chance(0.4)) any_order(dice, board);
}

void draw_near_extras(Dice& dice, Board& board) {
  if (dice.chance(0.2)) near_side_dots(dice, board);
  if (dice.chance(0.15)) board.sanding = dice.chance(0.3) ? 1e-3 : dice.real(0.05, 0.4);
}

}  // namespace sagitta::random_boards
