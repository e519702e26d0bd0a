#pragma once

/// What round cutters do not reach of a fitted figure. Areas in mm^2, lengths in mm.

#include <algorithm>

#include "inlay/FittedFigure.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/OpenClose.hpp"

namespace sagitta::test {

/// The area of a region, but for slivers that are thinner than an offset's noise.
inline double true_area(const Region& region) {
  constexpr double noise = 0.0001;
  return area(opened(region, noise / 2));
}

/// The greatest of any piece or pocket.
struct Unreached {
  double piece_opened = 0, piece_closed = 0, pocket_opened = 0, pocket_closed = 0;
  double most() const { return std::max({piece_opened, piece_closed, pocket_opened, pocket_closed}); }
};

/// What opening takes off and closing adds, by a cutter of radius r. A pocket is cut from inside only: beside it the
/// cutter's outline runs the clearance further in, so closing it by r less the clearance adds nothing.
inline Unreached unreached(const Loops& piece_outlines, const Loops& pocket_outlines, double r, double clearance) {
  constexpr double chord = 0.00001;
  const Region piece = flattened(piece_outlines, chord), pocket = flattened(pocket_outlines, chord);
  return {true_area(difference(piece, opened(piece, r))), true_area(difference(closed(piece, r), piece)),
          true_area(difference(pocket, opened(pocket, r))),
          true_area(difference(closed(pocket, std::max(0.0, r - clearance)), pocket))};
}

inline void add(const Unreached& own, Unreached& worst) {
  worst.piece_opened = std::max(worst.piece_opened, own.piece_opened);
  worst.piece_closed = std::max(worst.piece_closed, own.piece_closed);
  worst.pocket_opened = std::max(worst.pocket_opened, own.pocket_opened);
  worst.pocket_closed = std::max(worst.pocket_closed, own.pocket_closed);
}

inline Unreached unreached(const FittedFigure& figure, double r, double clearance) {
  Unreached worst;
  for (const FittedFigure::Part& part : figure.parts) add(unreached(part.piece, part.pocket, r, clearance), worst);
  const Region all = flattened(figure.pockets, 0.00001);
  worst.pocket_opened = std::max(worst.pocket_opened, true_area(difference(all, opened(all, r))));
  return worst;
}

}  // namespace sagitta::test
