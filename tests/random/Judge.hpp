#pragma once

/// One body judged: what must hold of every solid and mesh before anybody may have it.

#include <string>

#include "lift/Shell.hpp"

namespace sagitta::random_boards {

struct Ways {
  bool mesh = true;      ///< the mesh too
  bool step = false;     ///< the solid again after it was written to STEP and read back
  bool vertices = true;  ///< no vertex looser than `loosest_vertex`
  bool figures = true;   ///< the volume that figures() tells is the kernel's own
};

struct Body {
  std::string wrong;   ///< empty when nothing is
  double volume = 0;   ///< of the solid, mm^3; 0 where there is none that can be measured
  double seconds = 0;  ///< of the processor, that solid and mesh took to be made
};

/// Shell: every edge used once each way. Solid: BRepCheck, every edge between exactly two faces, Euler number, no
/// vertex looser than `loosest_vertex`. Mesh: closed and manifold with 32-bit coordinates, Euler number, volume within
/// its deviation of the solid's, deviation as asked. After STEP: as before, and the same volume.
/// Throws what a step throws.
Body judged(const Shell& shell, Ways ways);

/// mm. Readers take vertices closer than about this for one.
inline constexpr double loosest_vertex = 1e-5;

}  // namespace sagitta::random_boards
