#pragma once

/// What covers a chip in the playing surface.

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// A place where the wood is broken out, in the board's frame. mm.
struct Chip {
  Point middle;
  double radius = 0;
};

/// measured.chips, mirrored for a left-handed board as everything that its file places.
std::vector<Chip> chips_of(const Board& board);

/// How far the chip reaches beyond what covers most of it: a piece of inlay, the binding, or the waste beside the
/// board. At most 0: it is covered. mm.
double chip_left(const PreparedBoard& ready, const Chip& chip);

}  // namespace sagitta
