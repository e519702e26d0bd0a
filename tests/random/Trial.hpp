#pragma once

/// One board through the whole chain, checked: what the tests of random boards ask of each of them.

#include <string>

#include "board/Board.hpp"

namespace sagitta::random_boards {

struct Asked {
  bool booleans = false;   ///< compare with the 3D-boolean oracle as well as with quadrature
  bool all_stages = true;  ///< every stage that the board goes through, else only `board`
  bool mesh = true;
};

struct Verdict {
  std::string trouble;         ///< what is wrong, empty when nothing is
  bool refused = false;        ///< the plan says that wood comes loose, and it does
  double seconds = 0;          ///< plan, lift, solid and mesh of the slowest stage
  double worst = 0;            ///< largest relative difference of a solid's volume from quadrature
  std::string oracle_trouble;  ///< the oracle itself failed: kernel error, unsound, or not one with quadrature
};

/// Never throws: what a step throws is trouble.
Verdict tried(const Board& board, Asked asked = {});

}  // namespace sagitta::random_boards
