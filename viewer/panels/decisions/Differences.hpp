#pragma once

/// The keys in which two boards differ.

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "widgets/LengthText.hpp"

namespace sagitta::viewer {

/// One value that differs between two boards.
struct Difference {
  std::string key, here, there;
};

/// Every key of the field table that differs, in the order of the table.
std::vector<Difference> differences(const Board& here, const Board& there, const Manner& manner);

}  // namespace sagitta::viewer
