#pragma once

/// Lines and circles of a board that another feature may touch, coincide with or lie flush to. Board's frame, mm.

#include <vector>

#include "board/Board.hpp"
#include "layout/Layout.hpp"
#include "random/Dice.hpp"

namespace sagitta::random_boards {

struct Carrier {
  Point at;           ///< middle of the line's part that the board has, or the circle's centre
  Point along;        ///< unit vector of a line
  double reach = 0;   ///< of a line, both ways from `at`
  double radius = 0;  ///< of a circle; 0: a line

  bool round() const { return radius > 0; }
};

/// By kind: outline, slots, nut seat, binding, ends of strip and blank with the fall's line, pockets, pins. No kind is
/// empty.
std::vector<std::vector<Carrier>> carriers(const Board& board, const Layout& layout);

/// Any kind is as likely as any other.
Carrier any_carrier(Dice& dice, const Board& board, const Layout& layout);

/// The line that touches the circle in the direction `towards` from its centre; a line stays as it is.
Carrier tangent(const Carrier& carrier, Point towards);

}  // namespace sagitta::random_boards
