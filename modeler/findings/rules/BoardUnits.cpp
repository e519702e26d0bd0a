#include "rules/BoardUnits.hpp"

#include <algorithm>

#include "board/Length.hpp"
#include "rules/Catalogue.hpp"

namespace sagitta {

Board told_in(Board board, Units units) {
  if (board.units == units) return board;
  for (auto& [name, limit] : board.limits) {
    const auto* rule = std::ranges::find(catalogue, name, &Rule::name);
    if (rule != catalogue.end() && rule->unit == "mm") limit = to_mm(limit, board.units) / mm_per(units);
  }
  board.units = units;
  return board;
}

}  // namespace sagitta
