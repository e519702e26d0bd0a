#pragma once

#include <optional>
#include <vector>

#include "layout/Layout.hpp"

namespace sagitta::viewer {

/// The board's edge against the neck's at one place. Both edges are alike: the neck is centred. mm.
struct FitStation {
  double x = 0;
  double over = 0;  ///< the board's half width less the neck's: over the neck when positive, short of it when negative
};

struct NeckFit {
  std::vector<FitStation> stations;  ///< from the nut to the body end, every fret among them
  FitStation widest, narrowest;      ///< where the board stands out most, and where it falls short most
  std::optional<double> crossing;    ///< x where one becomes the other
};

/// The neck's half width at x, its straight sides carried on; nothing while the neck's widths are not given. A rough
/// neck counts as trimmed.
std::optional<double> neck_half_width(const Board& board, const Layout& layout, double x);
/// Nothing while the neck's widths are not given.
std::optional<NeckFit> neck_fit(const Board& board, const Layout& layout);

}  // namespace sagitta::viewer
