#pragma once

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "jobs/Model.hpp"
#include "panels/Figures.hpp"

namespace sagitta::viewer {

/// One value that differs between two boards.
struct Difference {
  std::string key, here, there;
};

/// Every key of the field table that differs, in the order of the table.
std::vector<Difference> differences(const Board& here, const Board& there, const Manner& manner);

/// The other board that is drawn over this one.
struct Comparison {
  std::string name;
  Board board;
  ModelPtr model;  ///< once it is built
};

/// Sets each vertex's `change`: how much higher this stage's top lies than the other board's surface, mm.
/// Returns the largest amount.
double mark_changes(Skin& body, const Surface& other);

}  // namespace sagitta::viewer
