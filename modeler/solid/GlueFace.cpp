#include "solid/GlueFace.hpp"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Circ.hxx>
#include <gp_Pln.hxx>

#include "solid/Solid.hpp"

namespace sagitta {
namespace {

gp_Pnt at_zero(Point p) { return {p.x, p.y, 0}; }

TopoDS_Edge edge_of(const CurveSegment& segment) {
  if (!segment.is_arc()) return BRepBuilderAPI_MakeEdge(at_zero(segment.a), at_zero(segment.b));
  const bool rising = segment.sweep > 0;
  const gp_Ax2 axis(at_zero(segment.centre), rising ? gp::DZ() : gp::DZ().Reversed(), gp::DX());
  // About -z the angle runs the other way.
  const double from = rising ? segment.start : -segment.start, turn = std::abs(segment.sweep);
  return BRepBuilderAPI_MakeEdge(gp_Circ(axis, segment.radius), from, from + turn);
}

TopoDS_Wire wire_of(const Loop& loop) {
  BRepBuilderAPI_MakeWire wire;
  for (const CurveSegment& segment : loop) wire.Add(edge_of(segment));
  if (!wire.IsDone()) throw BuildError("neck-face", "the glue face", "its outline does not close");
  return wire.Wire();
}

}  // namespace

TopoDS_Face glue_face(const Loop& outline, const std::vector<Loop>& holes) {
  BRepBuilderAPI_MakeFace face(gp_Pln(gp::Origin(), gp::DZ()), wire_of(outline), true);
  for (const Loop& hole : holes) face.Add(TopoDS::Wire(wire_of(hole).Reversed()));
  if (!face.IsDone()) throw BuildError("neck-face", "the glue face", "the kernel makes no face of its outline");
  return face.Face();
}

}  // namespace sagitta
