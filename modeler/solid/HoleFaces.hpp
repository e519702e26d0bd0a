#pragma once

#include <BRep_Builder.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Wire.hxx>
#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

/// A clear side hole in B-Rep: its mouth's wire, to be added to the wall's face, its round wall in two halves, its floor.
struct HoleFaces {
  TopoDS_Wire mouth;
  std::vector<TopoDS_Face> faces;
};

HoleFaces hole_faces(const SideHole& hole, double tolerance);

}  // namespace sagitta
