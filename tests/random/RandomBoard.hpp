#pragma once

/// Random boards that a builder's file could hold: drawn from a number, the same for ever, free of problems in reader,
/// layout and surface.

#include <cstdint>
#include <string>
#include <vector>

#include "board/Board.hpp"
#include "layout/Layout.hpp"
#include "surface/Surface.hpp"

namespace sagitta::random_boards {

enum class Space {
  core,   ///< straight slots, arc and level floors, flat, single, compound and string-line surfaces, nut, dots, blocks
  whole,  ///< every key that shapes the wood, with the corners of their ranges
  near,   ///< short boards of the whole space whose features are a hair from touching, coinciding or lying flush
  ends,   ///< the whole space with heel ends that cut slots, and tongues
  kinds   ///< boards of more kinds: every key that shapes the wood
};

struct Sample {
  Board board;
  Layout layout;
  Surface surface;
  int draws = 0;  ///< boards drawn until one was sound
};

/// The sound board of this number. Every number gives one.
Sample random_board(std::uint64_t number, Space space);

/// The board as it comes back from a file, its layout and surface; empty where any step finds a problem.
std::optional<Sample> sound(const Board& board);

/// What is special about a board, for figures by category: "fan", "level floors", "side dots", ...
std::vector<std::string> categories(const Board& board);

}  // namespace sagitta::random_boards
