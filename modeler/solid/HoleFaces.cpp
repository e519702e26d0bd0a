#include "solid/HoleFaces.hpp"

#include <Geom2d_Line.hxx>
#include <Geom_Circle.hxx>
#include <Geom_CylindricalSurface.hxx>
#include <Geom_Line.hxx>
#include <Geom_Plane.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Vertex.hxx>
#include <array>
#include <gp_Ax3.hxx>
#include <numbers>

namespace sagitta {
namespace {

using std::numbers::pi;

/// A ring is a circle in two halves; ring 0 is the mouth, ring 1 the floor's. The cylinder's axis points inward, its
/// first parameter is the angle, its second the depth.
class HoleBuilder {
 public:
  HoleBuilder(const SideHole& hole, double tolerance) : hole_(hole), tolerance_(tolerance) {
    const gp_Dir inward(hole.inward.x, hole.inward.y, 0);
    axes_ = gp_Ax3(gp_Pnt(hole.mouth.x, hole.mouth.y, hole.z), inward, gp::DZ());
    cylinder_ = new Geom_CylindricalSurface(axes_, hole.radius);
  }

  HoleFaces run() {
    for (const int ring : {0, 1})
      for (const int half : {0, 1}) brep_.MakeVertex(vertices_[ring][half], at(half * pi, ring), tolerance_);
    for (const int ring : {0, 1})
      for (const int half : {0, 1}) half_circle(ring, half);
    for (const int half : {0, 1}) along(half);
    HoleFaces result;
    result.mouth = wire({{arcs_[0][0], true}, {arcs_[0][1], true}});
    for (const int half : {0, 1}) result.faces.push_back(wall(half));
    result.faces.push_back(floor());
    return result;
  }

 private:
  struct Use {
    TopoDS_Edge edge;
    bool forward;
  };

  double depth(int ring) const { return ring == 0 ? 0 : hole_.depth; }
  gp_Pnt at(double angle, int ring) const { return cylinder_->Value(angle, depth(ring)); }

  void half_circle(int ring, int half) {
    gp_Ax3 axes = axes_;
    axes.SetLocation(axes_.Location().Translated(gp_Vec(axes_.Direction()) * depth(ring)));
    TopoDS_Edge& edge = arcs_[ring][half];
    brep_.MakeEdge(edge, new Geom_Circle(axes.Ax2(), hole_.radius), tolerance_);
    brep_.Add(edge, vertices_[ring][half].Oriented(TopAbs_FORWARD));
    brep_.Add(edge, vertices_[ring][1 - half].Oriented(TopAbs_REVERSED));
    brep_.Range(edge, half * pi, (half + 1) * pi);
  }

  void along(int half) {
    TopoDS_Edge& edge = ribs_[half];
    brep_.MakeEdge(edge, new Geom_Line(at(half * pi, 0), axes_.Direction()), tolerance_);
    brep_.Add(edge, vertices_[0][half].Oriented(TopAbs_FORWARD));
    brep_.Add(edge, vertices_[1][half].Oriented(TopAbs_REVERSED));
    brep_.Range(edge, 0, hole_.depth);
  }

  TopoDS_Wire wire(const std::vector<Use>& uses) {
    TopoDS_Wire made;
    brep_.MakeWire(made);
    for (const Use& use : uses) brep_.Add(made, use.edge.Oriented(use.forward ? TopAbs_FORWARD : TopAbs_REVERSED));
    made.Closed(true);
    return made;
  }

  /// Each half has a cylinder of its own, turned so that it starts at angle 0 and never meets a seam.
  TopoDS_Face wall(int half) {
    gp_Ax3 axes = axes_;
    axes.Rotate(axes_.Axis(), half * pi);
    const Handle(Geom_CylindricalSurface) surface = new Geom_CylindricalSurface(axes, hole_.radius);
    for (const int ring : {0, 1})
      brep_.UpdateEdge(arcs_[ring][half], new Geom2d_Line(gp_Pnt2d(-half * pi, depth(ring)), gp_Dir2d(1, 0)), surface,
                       TopLoc_Location(), tolerance_);
    brep_.UpdateEdge(ribs_[half], new Geom2d_Line(gp_Pnt2d(0, 0), gp_Dir2d(0, 1)), surface, TopLoc_Location(), tolerance_);
    brep_.UpdateEdge(ribs_[1 - half], new Geom2d_Line(gp_Pnt2d(pi, 0), gp_Dir2d(0, 1)), surface, TopLoc_Location(),
                     tolerance_);
    TopoDS_Face face;
    brep_.MakeFace(face, surface, tolerance_);
    // Counter-clockwise in the cylinder's own sense; the wood lies outside it, so the face is turned over.
    brep_.Add(face, wire({{arcs_[0][half], true}, {ribs_[1 - half], true}, {arcs_[1][half], false}, {ribs_[half], false}}));
    return TopoDS::Face(face.Reversed());
  }

  TopoDS_Face floor() {
    const gp_Pnt centre = axes_.Location().Translated(gp_Vec(axes_.Direction()) * hole_.depth);
    const gp_Dir out = axes_.Direction().Reversed();
    TopoDS_Face face;
    brep_.MakeFace(face, new Geom_Plane(gp_Ax3(centre, out, gp::DZ())), tolerance_);
    brep_.Add(face, wire({{arcs_[1][1], false}, {arcs_[1][0], false}}));
    return face;
  }

  const SideHole& hole_;
  const double tolerance_;
  BRep_Builder brep_;
  gp_Ax3 axes_;
  Handle(Geom_CylindricalSurface) cylinder_;
  std::array<std::array<TopoDS_Vertex, 2>, 2> vertices_;
  std::array<std::array<TopoDS_Edge, 2>, 2> arcs_;
  std::array<TopoDS_Edge, 2> ribs_;
};

}  // namespace

HoleFaces hole_faces(const SideHole& hole, double tolerance) { return HoleBuilder(hole, tolerance).run(); }

}  // namespace sagitta
