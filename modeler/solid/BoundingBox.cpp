#include "solid/BoundingBox.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepBndLib.hxx>
#include <BRep_Tool.hxx>
#include <Geom_BSplineCurve.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <vector>

namespace sagitta {
namespace {

class Boxer {
 public:
  explicit Boxer(const TopoDS_Solid& solid) {
    box_.SetGap(0);
    for (const TopoDS_Shape& vertex : all(solid, TopAbs_VERTEX)) box_.Add(BRep_Tool::Pnt(TopoDS::Vertex(vertex)));
    for (const TopoDS_Shape& edge : all(solid, TopAbs_EDGE)) add(TopoDS::Edge(edge));
    for (const TopoDS_Shape& face : all(solid, TopAbs_FACE))
      if (is_round(TopoDS::Face(face))) BRepBndLib::AddOptimal(face, box_, false, false);
  }

  const Bnd_Box& box() const { return box_; }

 private:
  static std::vector<TopoDS_Shape> all(const TopoDS_Solid& solid, TopAbs_ShapeEnum kind) {
    TopTools_IndexedMapOfShape found;
    TopExp::MapShapes(solid, kind, found);
    std::vector<TopoDS_Shape> shapes;
    for (int i = 1; i <= found.Extent(); ++i) shapes.push_back(found(i));
    return shapes;
  }

  /// A sphere or a torus may reach beyond its edges.
  static bool is_round(const TopoDS_Face& face) {
    const GeomAbs_SurfaceType type = BRepAdaptor_Surface(face, false).GetType();
    return type == GeomAbs_Sphere || type == GeomAbs_Torus;
  }

  /// Beyond its ends a straight edge reaches nowhere, and a spline no further than its poles.
  void add(const TopoDS_Edge& edge) {
    if (BRep_Tool::Degenerated(edge)) return;
    const BRepAdaptor_Curve curve(edge);
    if (curve.GetType() == GeomAbs_Line || holds_poles(curve)) return;
    for (int i = 1; i <= 3; ++i) add_extrema(curve, i);
  }

  bool holds_poles(const BRepAdaptor_Curve& curve) const {
    if (curve.GetType() != GeomAbs_BSplineCurve) return false;
    const Handle(Geom_BSplineCurve) spline = curve.BSpline();
    for (int i = 1; i <= spline->NbPoles(); ++i)
      if (box_.IsOut(spline->Pole(i))) return false;
    return true;
  }

  /// Where a coordinate turns between two of the samples.
  void add_extrema(const BRepAdaptor_Curve& curve, int coordinate) {
    TColStd_Array1OfReal ends(1, curve.NbIntervals(GeomAbs_C2) + 1);
    curve.Intervals(ends, GeomAbs_C2);
    constexpr int samples = 16;
    for (int span = ends.Lower(); span < ends.Upper(); ++span) {
      const auto at = [&](int k) { return ends(span) + (ends(span + 1) - ends(span)) * k / samples; };
      double last = slope(curve, at(0), coordinate);
      for (int k = 1; k <= samples; ++k) {
        const double next = slope(curve, at(k), coordinate);
        if ((last > 0) != (next > 0)) add_turn(curve, coordinate, at(k - 1), at(k));
        last = next;
      }
    }
  }

  /// By bisection: beside the turn the curve is so level that half the digits of the place are enough.
  void add_turn(const BRepAdaptor_Curve& curve, int coordinate, double low, double high) {
    const bool rises = slope(curve, low, coordinate) > 0;
    constexpr int halvings = 30;
    for (int i = 0; i < halvings; ++i) {
      const double middle = (low + high) / 2;
      ((slope(curve, middle, coordinate) > 0) == rises ? low : high) = middle;
    }
    box_.Add(curve.Value((low + high) / 2));
  }

  static double slope(const BRepAdaptor_Curve& curve, double t, int coordinate) {
    gp_Pnt p;
    gp_Vec d;
    curve.D1(t, p, d);
    return d.Coord(coordinate);
  }

  Bnd_Box box_;
};

}  // namespace

Bnd_Box bounding_box(const TopoDS_Solid& solid) { return Boxer(solid).box(); }

}  // namespace sagitta
