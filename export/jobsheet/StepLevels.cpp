#include "jobsheet/StepLevels.hpp"

#include <algorithm>
#include <cmath>

#include "board/CutSide.hpp"
#include "drawing/WoodTop.hpp"
#include "jobsheet/InlayHeights.hpp"
#include "plane/Tolerance.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

struct Height {
  std::string what;
  double at = 0;  ///< mm above the glue face
};

class Levels {
 public:
  explicit Levels(const PreparedBoard& ready) : ready_(ready), board_(ready.board()) {}

  std::vector<Height> heights(WalkKind kind) {
    add("glue face", 0);
    if (!own(kind)) return {};
    std::ranges::stable_sort(heights_, {}, &Height::at);
    std::vector<Height> merged;
    for (const Height& each : heights_)
      if (!merged.empty() && each.at - merged.back().at < tolerance::same)
        merged.back().what += ", " + each.what;
      else
        merged.push_back(each);
    return merged;
  }

 private:
  void add(const std::string& what, double at) { heights_.push_back({what, at}); }
  void finished() { add("finished top", board_.board.thickness); }
  void now(Operation operation) { add("wood's top now", wood_top_before(ready_, operation)); }

  /// The heights of one step; false: it has none of its own.
  bool own(WalkKind kind) {
    switch (kind) {
      case WalkKind::thickness:
        add("milled top", thickness_to(board_));
        now(Operation::thickness);
        return true;
      case WalkKind::pockets:
        return pockets();
      case WalkKind::gluing:
      case WalkKind::levelling:
        return glued();
      case WalkKind::radius:
        return radius();
      case WalkKind::slots:
        add("slots' floor at the nut", board_.slots.floor == SlotFloor::level
                                           ? board_.board.thickness - slot_depth(board_)
                                           : ready_.surface().height(0, 0) - slot_depth(board_));
        finished();
        now(Operation::slots);
        return true;
      case WalkKind::nut:
        add("nut seat's floor", board_.board.thickness - ready_.layout().nut->depth);
        finished();
        now(Operation::slots);
        return true;
      default:
        return false;
    }
  }

  bool pockets() {
    for (const auto& [name, height] : named_heights(ready_)) add("floor of " + name, height.floor);
    for (const Cut& cut : board_.cuts)
      if (operation_of(cut) == Operation::pockets && !is_through(cut))
        add("floor of \"" + cut.name + "\"", board_.board.thickness - cut.depth);
    if (heights_.size() == 1) return false;
    finished();
    now(Operation::pockets);
    return true;
  }

  bool glued() {
    for (const auto& [name, height] : named_heights(ready_)) {
      add("floor of " + name, height.floor);
      add("top of " + name, height.piece_top);
    }
    finished();
    now(Operation::inlay);
    return true;
  }

  bool radius() {
    if (!ready_.surface().scallops.empty()) {
      double most = 0;
      for (const ScallopedSpace& each : ready_.surface().scallops) most = std::max(most, each.depth);
      add("deepest scallop", board_.board.thickness - most);
    }
    finished();
    if (board_.sanding > 0) add("top as it is cut", board_.board.thickness + board_.sanding);
    now(Operation::radius);
    return true;
  }

  const PreparedBoard& ready_;
  const Board& board_;
  std::vector<Height> heights_;
};

}  // namespace

std::vector<JobLevel> step_levels(const PreparedBoard& ready, const ResolvedSetup* setup, WalkKind kind) {
  const Board& board = ready.board();
  const std::vector<Height> heights = Levels(ready).heights(kind);
  std::vector<JobLevel> levels;
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const double at = heights[i].at, z = setup ? setup->z_from_board(at) : at;
    levels.push_back({heights[i].what, setup ? "z = " + fine_measure(board, z) : "height " + fine_measure(board, z),
                      setup && std::abs(z) < tolerance::same,
                      i + 1 < heights.size() ? fine_measure(board, heights[i + 1].at - at) : std::string()});
  }
  return levels;
}

}  // namespace sagitta
