#pragma once

/// A section of the finished board square to its centre line. Lengths in mm.

#include <optional>
#include <string>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One edge of a section. Distances are from y = 0.
struct SectionSide {
  double edge = 0;              ///< distance of the edge
  double height = 0;            ///< thickness there
  double slot_end = 0;          ///< distance of the end of a slot cut here
  double floor = 0, depth = 0;  ///< of the slot at its end: above the glue face, below the surface
  friend bool operator==(const SectionSide&, const SectionSide&) = default;
};

struct Section {
  std::string name;  ///< "at the nut"
  double x = 0;
  std::optional<double> radius;  ///< none where the surface is flat
  double middle = 0;             ///< thickness on the centre line
  /// A slot cut here, in the middle: its floor above the glue face and its depth below the surface.
  double floor_middle = 0, depth_middle = 0;
  SectionSide sides[2];  ///< at negative y, at positive y
  double width() const { return sides[0].edge + sides[1].edge; }
};

/// At the nut line, at the fret nearest to the octave (none on a board without one), at the heel end.
std::vector<Section> sections_of(const PreparedBoard& ready);

}  // namespace sagitta
