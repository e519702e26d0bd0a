#pragma once

/// One board through the whole chain, judged: what the tests of random boards and the campaign ask of each of them.

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "plan/Stage.hpp"

namespace sagitta::random_boards {

struct Asked {
  bool booleans = false;        ///< compare with the 3D-boolean oracle as well as with quadrature
  std::vector<Stage> stages{};  ///< empty: every stage that the board goes through
  bool confirm = true;          ///< ask the booleans whether wood comes loose where the plan says so
  bool mesh = true;
  bool figures = true;        ///< the volume that figures() tells is right too
  bool vertices = false;      ///< no vertex looser than `loosest_vertex`
  bool pieces = false;        ///< with the last stage: every piece of inlay as cut, in the blank and in the board
  std::vector<Stage> step{};  ///< these are also written to STEP, read back and judged again
};

/// The plan of a stage refuses the board by a fault that it documents.
struct Refusal {
  Stage stage = Stage::board;
  std::string key;         ///< the fault's, without indices: "pins.depth"
  bool confirmed = false;  ///< the kernel's own cuts leave several bodies there too: wood comes loose
};

struct Verdict {
  std::string trouble;            ///< what is wrong, empty when nothing is
  std::string unconfirmed;        ///< what refusals say that are not confirmed
  bool threw = false;             ///< a step threw: a fault of the program
  std::vector<Stage> failed;      ///< stages with trouble
  std::vector<Refusal> refusals;  ///< in the order of the stages
  int stages = 0;                 ///< judged
  double seconds = 0;             ///< of the processor: plan, lift, solid and mesh of the slowest stage
  double worst = 0;               ///< largest relative difference of a solid's volume from quadrature
  int overruled = 0;              ///< stages whose booleans quadrature rules against: wrong, unsound or failed
  std::string overruled_why;      ///< what was wrong with the booleans
};

/// Every stage, every one of them through STEP too.
Asked everything(const Board& board);

/// Never throws: what a step throws is trouble.
Verdict tried(const Board& board, const Asked& asked = {});

}  // namespace sagitta::random_boards
