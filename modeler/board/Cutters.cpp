#include "board/Cutters.hpp"

#include <algorithm>

namespace sagitta {

bool has_use(const Cutter& cutter, CutterUse use) {
  return std::find(cutter.use.begin(), cutter.use.end(), use) != cutter.use.end();
}

double cut_width(const Cutter& cutter) { return cutter.measured_cut.value_or(cutter.diameter + cutter.runout); }

std::optional<double> widest_cut(const Board& board, CutterUse use) {
  std::optional<double> widest;
  for (const Cutter& cutter : board.cutters)
    if (has_use(cutter, use)) widest = std::max(widest.value_or(0), cut_width(cutter));
  return widest;
}

std::optional<double> narrowest_cut(const Board& board, CutterUse use) {
  std::optional<double> narrowest;
  for (const Cutter& cutter : board.cutters)
    if (has_use(cutter, use)) narrowest = std::min(narrowest.value_or(cut_width(cutter)), cut_width(cutter));
  return narrowest;
}

}  // namespace sagitta
