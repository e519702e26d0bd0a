#include "solid/CutHoles.hpp"

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <gp_Ax2.hxx>

#include "solid/Solid.hpp"

namespace sagitta {
namespace {

/// How far the cutting cylinder reaches out of the wall. mm.
constexpr double overreach = 1;

TopoDS_Shape cylinder(const SideHole& hole) {
  const Point start = hole.mouth - overreach * hole.inward;
  const gp_Ax2 axes(gp_Pnt(start.x, start.y, hole.z), gp_Dir(hole.inward.x, hole.inward.y, 0), gp::DZ());
  return BRepPrimAPI_MakeCylinder(axes, hole.radius, hole.depth + overreach).Shape();
}

}  // namespace

TopoDS_Solid cut_holes(const TopoDS_Solid& solid, const std::vector<SideHole>& holes) {
  TopTools_ListOfShape objects, tools;
  objects.Append(solid);
  for (const SideHole& hole : holes)
    if (!hole.clear) tools.Append(cylinder(hole));
  BRepAlgoAPI_Cut cut;
  cut.SetArguments(objects);
  cut.SetTools(tools);
  cut.Build();
  if (!cut.IsDone() || cut.HasErrors()) throw BuildError("board", "side dots", "the side dots could not be cut");
  TopExp_Explorer solids(cut.Shape(), TopAbs_SOLID);
  if (!solids.More()) throw BuildError("board", "side dots", "the side dots leave no wood");
  const TopoDS_Solid result = TopoDS::Solid(solids.Current());
  solids.Next();
  if (solids.More()) throw BuildError("board", "side dots", "the side dots cut the board in pieces");
  return result;
}

}  // namespace sagitta
