#pragma once

/// The sizes of an inlay, whatever keys its shape gives them in. mm.

#include <optional>

#include "overlay/InlayFrame.hpp"
#include "prepared/InlayFitter.hpp"

namespace sagitta::viewer {

/// Along and across, before it is turned, in a space where it is `growth` times as large; 0, 0 when it cannot be told.
Point size_of(const Inlay& inlay, const FittedInlays& fitted, double growth = 1);

/// The first of the keys that give its size; 0 when it has none.
double leading_size(const Inlay& inlay);
/// The inlay with its first size made `leading` and the others in proportion; each stays in its key's range.
Inlay sized(const Inlay& inlay, double leading);

/// Its outline before it is turned, its middle at the origin; empty when its drawing is not there.
Region outline_of(const Inlay& inlay, const FittedInlays& fitted, double growth = 1);

/// By how much an outline, placed as the frame lies, can be enlarged before it comes nearer than `wood` to the wall of
/// a slot of its own space, or to the nut. Nothing where its middle does not lie between the two.
std::optional<double> room_between_frets(const Board& board, const Layout& layout, const InlayFrame& frame,
                                         const Region& outline, double wood);

}  // namespace sagitta::viewer
