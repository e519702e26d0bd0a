#include <BRepAdaptor_Surface.hxx>
#include <BRepBndLib.hxx>
#include <BRepGProp_Domain.hxx>
#include <BRepGProp_Face.hxx>
#include <BRepGProp_Sinert.hxx>
#include <BRepGProp_Vinert.hxx>
#include <Bnd_Box.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <vector>

#include "plane/ParallelFor.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

/// Relative error asked of the integrals over faces.
constexpr double integration = 1e-7;

/// A face's area, and the cone between it and a point.
struct FaceFigures {
  double area = 0;
  double volume = 0;  ///< of the cone; negative where the face looks to the point
  gp_XYZ centroid;    ///< of the cone
};

/// A cone over a plane: a third of area times height, its centroid three quarters of the way to the plane's. Source:
/// common textbook formulas, from memory.
FaceFigures over_plane(BRepGProp_Face& face, const GProp_GProps& plane, const gp_Pnt& from) {
  double u1, u2, v1, v2;
  face.Bounds(u1, u2, v1, v2);
  gp_Pnt on;
  gp_Vec outward;
  face.Normal((u1 + u2) / 2, (v1 + v2) / 2, on, outward);
  const double height = gp_Vec(from, on).Dot(outward.Normalized());
  const gp_XYZ to = plane.CentreOfMass().XYZ();
  return {plane.Mass(), plane.Mass() * height / 3, from.XYZ() + 0.75 * (to - from.XYZ())};
}

/// Adaptive integrals throughout: those of fixed order miss 1e-4 of a plane inside a long spline, and 1e-6 beside the
/// tip of an ellipse.
FaceFigures measured(const TopoDS_Face& shape, const gp_Pnt& from) {
  BRepGProp_Face face(shape);
  BRepGProp_Domain border(shape);
  const BRepGProp_Sinert surface(face, border, from, integration);
  if (BRepAdaptor_Surface(shape, false).GetType() == GeomAbs_Plane) return over_plane(face, surface, from);
  BRepGProp_Domain again(shape);
  const BRepGProp_Vinert cone(face, again, from, integration);
  return {surface.Mass(), cone.Mass(), cone.CentreOfMass().XYZ()};
}

}  // namespace

SolidFigures figures(const TopoDS_Solid& solid) {
  SolidFigures result;
  Bnd_Box box;
  BRepBndLib::AddOptimal(solid, box, false, false);
  box.Get(result.low[0], result.low[1], result.low[2], result.high[0], result.high[1], result.high[2]);
  const gp_Pnt middle((box.CornerMin().XYZ() + box.CornerMax().XYZ()) / 2);
  std::vector<TopoDS_Face> shapes;
  for (TopExp_Explorer it(solid, TopAbs_FACE); it.More(); it.Next()) shapes.push_back(TopoDS::Face(it.Current()));
  std::vector<FaceFigures> faces(shapes.size());
  parallel_for(static_cast<int>(shapes.size()), [&](int i) { faces[i] = measured(shapes[i], middle); });
  gp_XYZ moment(0, 0, 0);
  for (const FaceFigures& face : faces) {
    result.area += face.area;
    result.volume += face.volume;
    moment += face.volume * face.centroid;
  }
  const gp_XYZ centroid = moment / result.volume;
  for (int i = 0; i < 3; ++i) result.centroid[i] = centroid.Coord(i + 1);
  return result;
}

}  // namespace sagitta
