#pragma once

/// One drawing fitted at one size: its pieces, its pockets and its figures in the drawing's own frame, the middle of
/// its bounding box at the origin. Lengths in mm.

#include "inlay/Inlays.hpp"
#include "inlay/Meetings.hpp"
#include "plane/ProgressCounter.hpp"

namespace sagitta {

struct FittedFigure {
  struct Part {
    int region = 0;  ///< index into Artwork::regions
    Loops piece, pocket;
  };
  std::vector<Part> parts;
  Loops pockets;                       ///< all parts' pockets run together
  std::vector<PartMeeting> meetings;   ///< of parts
  std::vector<RegionFigures> figures;  ///< one a region; `inlay`, `fret` and `material` are not set
};

/// What a figure is cut with. Radii of the cutters as they cut.
struct FigureCut {
  double scale = 1;  ///< of the drawing
  double radius = 0, clearance = 0;
  double clearing_radius = 0;  ///< 0: no clearing cutter
  Region within = {};          ///< in the figure's frame: the drawing is cut off outside of it; empty: nowhere
  friend bool operator==(const FigureCut&, const FigureCut&) = default;
};

/// Each island of a region is fitted for itself. In the drawing's order each later one first loses what lies within the
/// clearance of an earlier piece. Pockets between which less wood than the clearance would be left run together where
/// the cutter can take it away. Faults: a drawing of which nothing is left. Cancelled: no parts and no faults.
std::variant<FittedFigure, Faults> fit_figure(const Artwork& artwork, const FigureCut& cut, const Cancel& cancel,
                                              const ProgressCounter& progress = {});

}  // namespace sagitta
