#pragma once

/// The same work by OCCT's 3D booleans with exact tools: the oracle for plan and lift, and the route that the benchmark
/// races against.

#include <TopoDS_Shape.hxx>
#include <string>

#include "oracle/Work.hpp"

namespace sagitta::oracle {

struct Booleans {
  TopoDS_Shape shape;
  int solids = 0;
  double volume = 0;    ///< mm^3
  bool sound = false;   ///< BRepCheck finds nothing and no error was reported
  std::string trouble;  ///< what the kernel reported, empty when all went well
};

struct Route {
  bool two_steps = true;  ///< first the radius, then everything else in one multi-tool cut; else all in one
  bool parallel = true;   ///< OCCT's parallel mode
  bool boxes = true;      ///< oriented bounding boxes before intersecting
  bool check = true;      ///< BRepCheck and volume afterwards; off for the race
};

Booleans booleans(const Work& work, Route route = {});

}  // namespace sagitta::oracle
