#pragma once

/// The edges of the board against the edges of the neck.

#include <array>
#include <optional>
#include <vector>

#include "neck/NeckShape.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta::viewer {

/// The board's edge against the neck's at one place of one side, mm.
struct FitStation {
  double x = 0;
  double over = 0;  ///< from the neck's edge out to the board's: over the neck when positive, short of it when negative
};

struct NeckFit {
  /// Along the bass edge (negative y) and the treble edge, by rising x.
  std::array<std::vector<FitStation>, 2> sides;
  FitStation widest, narrowest;  ///< where the board stands out most, and where it falls short most
  int widest_side = 0, narrowest_side = 0;
  std::array<FitStation, 2> most;  ///< of each side: where board and neck differ most
  bool from_file = false;          ///< by the neck's STEP file, not by its widths
};

/// From the neck's STEP file where that was read, else from its widths at nut and body; nothing without either. A rough
/// neck counts as trimmed.
std::optional<NeckFit> neck_fit(const PreparedBoard& prepared, const NeckReading* neck);
/// The neck's half width on a side (0 the bass edge, 1 the treble), its ends carried on.
double neck_edge(const NeckFit& fit, const Layout& layout, std::size_t side, double x);

}  // namespace sagitta::viewer
