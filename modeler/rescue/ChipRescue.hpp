#pragma once

/// Shapes that cover a chip.

#include <optional>

#include "inlaid/ChipCover.hpp"

namespace sagitta {

/// The smallest k, at least 1, by which the inlay, all its sizes multiplied by k about the middle that `place` gives,
/// covers the chip, within 1e-9; nothing where 50 is not enough, or for artwork. Convex shapes cover more as they grow.
std::optional<double> smallest_growth(const Board& board, const Inlay& inlay, const Marker& marker, const Chip& chip);

/// The inlay with all its sizes multiplied.
Inlay grown(Inlay inlay, double by);

}  // namespace sagitta
