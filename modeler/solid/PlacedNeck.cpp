#include "solid/PlacedNeck.hpp"

#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeSolid.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepLib.hxx>
#include <BRep_Builder.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Solid.hxx>
#include <cmath>
#include <gp_Ax3.hxx>

namespace sagitta {
namespace {

/// A body that begins no lower than this under the glue face, and no higher above it, lies on it. mm.
constexpr double lies_on = 0.05;

bool is_board(const TopoDS_Shape& solid, const BoardSeat& seat) {
  Bnd_Box box;
  BRepBndLib::AddOptimal(solid, box, false, false);
  const gp_Pnt low = box.CornerMin(), high = box.CornerMax();
  const double length = seat.heel_end - seat.nut_end;
  return std::abs(low.Z()) < lies_on && high.Z() < 2 * seat.thickness && high.X() - low.X() > 0.5 * length &&
         low.X() > seat.nut_end - 0.1 * length && high.X() < seat.heel_end + 0.1 * length;
}

}  // namespace

TopoDS_Shape solids_of(const TopoDS_Shape& shape) {
  TopoDS_Compound all;
  BRep_Builder builder;
  builder.MakeCompound(all);
  for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next()) builder.Add(all, it.Current());
  for (TopExp_Explorer it(shape, TopAbs_SHELL, TopAbs_SOLID); it.More(); it.Next()) {
    if (!BRep_Tool::IsClosed(it.Current())) continue;
    TopoDS_Solid solid = BRepBuilderAPI_MakeSolid(TopoDS::Shell(it.Current())).Solid();
    if (BRepLib::OrientClosedSolid(solid)) builder.Add(all, solid);
  }
  return all;
}

PlacedNeck placed(const TopoDS_Shape& shape, const NeckPlace& place, const BoardSeat& seat) {
  const gp_Ax3 frame(gp_Pnt(place.origin[0], place.origin[1], place.origin[2]),
                     gp_Dir(place.up[0], place.up[1], place.up[2]),
                     gp_Dir(place.along[0], place.along[1], place.along[2]));
  gp_Trsf motion;
  motion.SetTransformation(frame);
  PlacedNeck neck;
  BRep_Builder builder;
  builder.MakeCompound(neck.wood);
  const TopoDS_Shape moved = BRepBuilderAPI_Transform(shape, motion, true).Shape();
  for (TopExp_Explorer it(moved, TopAbs_SOLID); it.More(); it.Next())
    if (is_board(it.Current(), seat))
      ++neck.boards;
    else
      builder.Add(neck.wood, it.Current());
  return neck;
}

}  // namespace sagitta
