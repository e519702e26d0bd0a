#pragma once

/// The cut list of the strips of veneer that are let in as lines. Lengths in mm.

#include <string>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One strip. It stands upright in its slot, so that it is as long as the slot is from above.
struct LinePiece {
  int fret = 0;
  std::string material;
  double length = 0;     ///< from edge to edge, or to the binding; between the tips of a blind slot
  double thickness = 0;  ///< slots.line_thickness
  /// From the lowest of the slot's floor to the highest of the surface along it: a strip as wide stands nowhere under
  /// the surface.
  double height = 0;
  friend bool operator==(const LinePiece&, const LinePiece&) = default;
};

/// One strip a slot, in the order of the slots; none on a board without lines.
std::vector<LinePiece> line_list(const PreparedBoard& ready);

/// Strip for all of them.
double total_line(const std::vector<LinePiece>& list);

}  // namespace sagitta
