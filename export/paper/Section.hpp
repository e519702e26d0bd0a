#pragma once

/// A section of the finished board square to its centre line. Lengths in mm.

#include <optional>
#include <string>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct Section {
  std::string name;  ///< "at the nut"
  double x = 0;
  double half_width = 0;
  std::optional<double> radius;  ///< none where the surface is flat
  double middle = 0, edge = 0;   ///< thickness on the centre line and at the edges
  /// A slot cut here: its floor above the glue face and its depth below the surface, in the middle and at its ends.
  double slot_end = 0;  ///< distance of the slot's end from the centre line
  double floor_middle = 0, floor_edge = 0;
  double depth_middle = 0, depth_edge = 0;
};

/// At the nut line, at the fret nearest to the octave (none on a board without one), at the heel end.
std::vector<Section> sections_of(const PreparedBoard& ready);

}  // namespace sagitta
