#pragma once

/// Boards that trigger a finding, and the nearest that do not.

#include <functional>

#include "GoodBoard.hpp"
#include "neck/NeckShape.hpp"

namespace sagitta::test {

struct Pair {
  const char* name;
  double good, bad;                           ///< the number that is changed
  std::function<void(Board&, double)> apply;  ///< puts it into a good board
  std::function<NeckReading(double)> neck{};  ///< the neck's file, where it matters
};

inline Neck& neck_of(Board& board) { return board.neck ? *board.neck : board.neck.emplace(); }

inline void add_cutters(Board& board, double length, double cut) {
  Cutter all;
  all.name = "all";
  all.use = {CutterUse::pocket_clear, CutterUse::piece, CutterUse::radius, CutterUse::outline, CutterUse::nut};
  all.diameter = 2;
  all.cutting_length = 10;
  all.shape = CutterShape::ball;
  Cutter slot;
  slot.name = "slot";
  slot.use = {CutterUse::slot};
  slot.diameter = cut;
  slot.cutting_length = length;
  board.cutters = {all, slot};
}

}  // namespace sagitta::test
