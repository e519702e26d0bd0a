#pragma once

/// Volume of a stage by quadrature: section areas in closed form, integrated along x between all events by adaptive
/// Gauss-Legendre. Depends on Layout and Surface only; the check that plan, lift, solid and mesh are measured against.

#include "oracle/Work.hpp"

namespace sagitta::oracle {

struct Volume {
  double value = 0;   ///< mm^3
  double change = 0;  ///< sum of |change| under the last refinement, mm^3
};

/// Side holes are integrated over their own plan.
Volume quadrature(const Work& work);
Volume quadrature(const Board& board, const Layout& layout, const Surface& surface, Stage stage = Stage::board);

}  // namespace sagitta::oracle
