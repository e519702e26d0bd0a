#pragma once

/// The faces of a neck's solids that a board could be glued to: flat, or curved by no more than a millimetre.

#include <TopoDS_Shape.hxx>
#include <vector>

#include "neck/NeckPlace.hpp"

namespace sagitta {

/// One or several faces in one plane, or that carry on each other's bow.
struct NeckFaceGroup {
  FaceCandidate candidate;
  bool planar = true;
  double open = 0;      ///< how far the edges of the faces' borders and their corners miss each other, at most. mm
  bool closed = true;   ///< the faces of its solids leave no gap
  double rounding = 0;  ///< widest rounded edge, from above; its outlines are among the candidate's
};

/// The largest first. `least`: faces that are shorter than this are not looked at. mm.
std::vector<NeckFaceGroup> neck_faces(const TopoDS_Shape& shape, double least);

}  // namespace sagitta
