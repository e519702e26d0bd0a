// Inlays and pins a hair from touching, coinciding with or lying flush to what the board has already.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "random/Carrier.hpp"
#include "random/Draw.hpp"
#include "random/Hair.hpp"

namespace sagitta::random_boards {
namespace {

constexpr double pi = std::numbers::pi;

/// At times along an axis.
Point any_direction(Dice& dice) {
  const double angle = dice.chance(0.4) ? dice.whole(0, 3) * pi / 2 : dice.real(0, 2 * pi);
  return turned({1, 0}, angle);
}

/// The middle of a line's part at times, or a hair from its end.
Point point_on(Dice& dice, const Carrier& line) {
  const double share = dice.chance(0.2) ? dice.one_of({-1.0, 0.0, 1.0}) : dice.real(-1, 1);
  return line.at + (share * line.reach + hair(dice)) * line.along;
}

/// A round feature beside a carrier.
struct Spot {
  Point centre;
  double radius = 0;
};

Spot spot_at_circle(Dice& dice, const Carrier& circle, double radius) {
  const Point to = any_direction(dice);
  switch (dice.whole(0, 4)) {
    case 0:
      return {circle.at + hair(dice) * to, radius};
    case 1:
      return {circle.at + (circle.radius + radius + hair(dice)) * to, radius};
    case 2:
      return {circle.at + (circle.radius - radius + hair(dice)) * to, radius};
    default:
      return {circle.at + hair(dice) * to, circle.radius + hair(dice)};
  }
}

Spot spot_at_line(Dice& dice, const Carrier& line, double radius) {
  const double side = dice.one_of({-1.0, 0.0, 1.0, 1.0, -1.0});
  return {point_on(dice, line) + (side * radius + hair(dice)) * left_of(line.along), radius};
}

Spot spot_at(Dice& dice, const Carrier& carrier, double radius) {
  return carrier.round() ? spot_at_circle(dice, carrier, radius) : spot_at_line(dice, carrier, radius);
}

double side_of(const Board& board) { return board.hand == Hand::left ? -1 : 1; }

/// Space whose middle is nearest, with the shifts that bring a piece to `centre`.
void place(Dice& dice, const Board& board, const Layout& layout, Point centre, Inlay& inlay) {
  const auto middle = [&](int space) {
    const auto i = static_cast<std::size_t>(space);
    return (layout.frets[i - 1].middle.x + layout.frets[i].middle.x) / 2;
  };
  int nearest = 1;
  for (int space = 2; space <= board.scale.frets; ++space)
    if (std::abs(middle(space) - centre.x) < std::abs(middle(nearest) - centre.x)) nearest = space;
  inlay.frets = {nearest};
  inlay.shift_along = typed(dice, centre.x - middle(nearest));
  inlay.shift_across = typed(dice, side_of(board) * centre.y);
}

/// A floor that another cut has, a hair beside it, or any.
double near_depth(Dice& dice, const Board& board) {
  std::vector<double> depths{slot_depth(board)};
  if (board.nut.seat != NutSeat::none) depths.push_back(board.nut.depth);
  if (board.pins) depths.push_back(board.board.thickness - board.pins->depth);
  for (const Inlay& inlay : board.inlays) depths.push_back(inlay.depth);
  const double depth = dice.chance(0.4) ? dice.real(0.1, 0.6 * board.board.thickness)
                                        : dice.one_of(depths) + (dice.chance(0.5) ? hair(dice) : 0);
  return std::clamp(depth, 0.1, 0.9 * board.board.thickness);
}

void add_dot(Dice& dice, const Layout& layout, Board& board) {
  Inlay dot;
  dot.clearance = dice.one_of({0.0, 0.0, 0.05, 0.0625});
  const Spot spot = spot_at(dice, any_carrier(dice, board, layout), dice.real(0.5, 6));
  dot.diameter = std::clamp(2 * (spot.radius - dot.clearance), 0.3, 150.0);
  dot.depth = near_depth(dice, board);
  place(dice, board, layout, spot.centre, dot);
  board.inlays.push_back(dot);
}

/// Dots that are nearly one.
void add_copies(Dice& dice, Board& board) {
  const Inlay original = board.inlays.back();
  if (original.shape != InlayShape::dot) return;
  for (int copies = dice.whole(1, 3); copies > 0; --copies) {
    Inlay copy = original;
    if (dice.chance(0.7)) copy.shift_along += hair(dice);
    if (dice.chance(0.5)) copy.shift_across += hair(dice);
    if (dice.chance(0.6)) copy.diameter = std::clamp(copy.diameter + hair(dice), 0.3, 150.0);
    if (dice.chance(0.6)) copy.depth = near_depth(dice, board);
    board.inlays.push_back(copy);
  }
}

/// The length that fills the space, slot edge to slot edge, at times; else any.
double near_length(Dice& dice, const Board& board, const Layout& layout, double clearance) {
  const auto space = static_cast<std::size_t>(dice.whole(1, board.scale.frets));
  const double room = layout.frets[space].middle.x - layout.frets[space - 1].middle.x - board.slots.width;
  const double length = dice.chance(0.3) ? room + hair(dice) : dice.real(1, std::max(1.5, std::min(room, 25.0)));
  return std::clamp(typed(dice, length - 2 * clearance), 0.3, 1000.0);
}

/// A block, trapezoid or diamond with a side, or a diamond's corner, on a line or touching a circle.
void add_polygon(Dice& dice, const Layout& layout, Board& board) {
  Inlay inlay;
  inlay.shape = dice.one_of({InlayShape::block, InlayShape::block, InlayShape::trapezoid, InlayShape::diamond});
  inlay.clearance = dice.one_of({0.0, 0.0, 0.05});
  const Carrier line = tangent(any_carrier(dice, board, layout), any_direction(dice));
  inlay.along = near_length(dice, board, layout, inlay.clearance);
  const double across = dice.real(1, layout.half_width_at_nut);
  if (inlay.shape == InlayShape::trapezoid) {
    inlay.across_nut = across;
    inlay.across_heel = dice.real(1, layout.half_width_at_nut);
  } else {
    inlay.across = across;
  }
  const bool endways = inlay.shape == InlayShape::trapezoid || dice.chance(0.7);
  const Point out = (dice.chance(0.5) ? 1.0 : -1.0) * left_of(line.along);
  const double half = (endways ? *inlay.along : across) / 2 + inlay.clearance;
  const double turn = std::atan2(out.y, out.x) * 180 / pi - (endways ? 0 : 90);
  inlay.turn_degrees = typed_turn(dice, side_of(board) * std::remainder(turn, 180));
  inlay.depth = near_depth(dice, board);
  place(dice, board, layout, point_on(dice, line) + (half + hair(dice)) * out, inlay);
  board.inlays.push_back(inlay);
}

/// As wide as the board or the wood within its binding, with sides that follow both edges.
void add_full_width(Dice& dice, const Layout& layout, Board& board) {
  Inlay inlay;
  inlay.shape = InlayShape::trapezoid;
  inlay.clearance = 0;
  inlay.along = near_length(dice, board, layout, 0);
  const double x = dice.real(0, layout.heel_end);
  const double inset = board.binding && dice.chance(0.5) ? board.binding->width : 0;
  inlay.across_nut = std::clamp(2 * (layout.half_width(x - *inlay.along / 2) - inset) + hair(dice), 0.3, 300.0);
  inlay.across_heel = std::clamp(2 * (layout.half_width(x + *inlay.along / 2) - inset) + hair(dice), 0.3, 300.0);
  if (dice.chance(0.3)) inlay.turn_degrees = typed_turn(dice, 0);
  inlay.depth = near_depth(dice, board);
  place(dice, board, layout, {x, hair(dice)}, inlay);
  board.inlays.push_back(inlay);
}

void add_pin(Dice& dice, const Layout& layout, Board& board) {
  const Carrier carrier = any_carrier(dice, board, layout);
  const bool first = !board.pins;
  if (first) {
    board.pins = Pins{};
    board.pins->diameter = dice.real(0.5, 6);
  }
  const Spot spot = spot_at(dice, carrier, board.pins->diameter / 2);
  if (first) {
    board.pins->diameter = std::clamp(2 * spot.radius, 0.5, 20.0);
    board.pins->depth = dice.chance(0.5) ? dice.real(0.5, 0.9 * board.board.thickness)
                                         : board.board.thickness - near_depth(dice, board) + hair(dice);
    board.pins->depth = std::max(0.3, board.pins->depth);
  }
  board.pins->at.push_back({typed(dice, spot.centre.x), typed(dice, side_of(board) * spot.centre.y)});
}

}  // namespace

void draw_near(Dice& dice, Board& board) {
  for (int features = dice.whole(1, 4); features > 0; --features) {
    const auto layout = lay_out(board);
    if (!std::holds_alternative<Layout>(layout)) return;
    const Layout& sound = std::get<Layout>(layout);
    const int kind = dice.whole(0, 9);
    if (kind < 3)
      add_dot(dice, sound, board);
    else if (kind < 6)
      add_polygon(dice, sound, board);
    else if (kind < 7)
      add_full_width(dice, sound, board);
    else
      add_pin(dice, sound, board);
    if (kind < 3 && dice.chance(0.3)) add_copies(dice, board);
  }
}

}  // namespace sagitta::random_boards
