#pragma once

/// The solids of a neck's STEP file, moved to where the board lies on them. Lengths in mm.

#include <TopoDS_Compound.hxx>

#include "neck/BoardSeat.hpp"
#include "neck/NeckPlace.hpp"

namespace sagitta {

/// The file's solids, and closed shells as the solids that they bound.
TopoDS_Shape solids_of(const TopoDS_Shape& shape);

/// The file's solids in the board's frame, without those that lie on the glue face as the board does.
struct PlacedNeck {
  TopoDS_Compound wood;
  int boards = 0;
};
PlacedNeck placed(const TopoDS_Shape& solids, const NeckPlace& place, const BoardSeat& seat);

}  // namespace sagitta
