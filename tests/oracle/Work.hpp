#pragma once

/// A stage of a board as a list of cuts from above into a block of wood: the plain reading of the board file that both
/// checks (quadrature, 3D booleans) start from. Uses Layout and Surface only, never plan/ or lift/.

#include <string>
#include <vector>

#include "layout/Layout.hpp"
#include "plan/Stage.hpp"
#include "surface/Surface.hpp"

namespace sagitta::oracle {

/// Everything above a floor is cut away over a convex region.
struct Cut {
  enum class Floor { level, arc };
  Loop region;  ///< convex, counter-clockwise
  Floor floor = Floor::level;
  double value = 0;  ///< level: height of the floor; arc: how far the floor lies under the playing surface
  std::string name;
};

/// A flat-bottomed round hole into a long edge.
struct SideHole {
  SideDot dot;
  double z = 0;  ///< height of its axis
};

struct Work {
  Surface surface;
  Loop outline;    ///< of the wood, counter-clockwise
  double top = 0;  ///< of the uncut blank
  std::vector<Cut> cuts;
  std::vector<Pin> pins;
  std::vector<Cut> hollows;  ///< cut from below, up to a level ceiling
  std::vector<SideHole> holes;
};

Work work_at(const Board& board, const Layout& layout, const Surface& surface, Stage stage);

}  // namespace sagitta::oracle
