#include "solid/ShallowFace.hpp"

#include <BRepAdaptor_Surface.hxx>
#include <BRepLProp_SLProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <algorithm>
#include <cmath>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

bool is_shallow(const TopoDS_Face& face) {
  const BRepAdaptor_Surface surface(face);
  if (surface.GetType() == GeomAbs_Plane) return false;
  const double u = (surface.FirstUParameter() + surface.LastUParameter()) / 2;
  const double v = (surface.FirstVParameter() + surface.LastVParameter()) / 2;
  constexpr int with_curvature = 2;
  constexpr double resolution = tolerance::share;
  BRepLProp_SLProps there(surface, u, v, with_curvature, resolution);
  if (!there.IsNormalDefined() || !there.IsCurvatureDefined()) return false;
  const bool level = std::abs(there.Normal().Z()) > 0.5;
  const double most = std::max(std::abs(there.MinCurvature()), std::abs(there.MaxCurvature()));
  return level && most * least_round < 1;
}

}  // namespace

bool has_shallow_face(const TopoDS_Solid& solid) {
  for (TopExp_Explorer face(solid, TopAbs_FACE); face.More(); face.Next())
    if (is_shallow(TopoDS::Face(face.Current()))) return true;
  return false;
}

}  // namespace sagitta
