#include "solid/SolidFlaw.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <array>
#include <vector>

#include "plane/Tolerance.hpp"
#include "solid/NarrowCorner.hpp"
#include "solid/PcurveFace.hpp"
#include "solid/ReadBack.hpp"
#include "solid/ShallowFace.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

/// What the kernel's own measure of an edge may miss between its samples.
constexpr double sampling = tolerance::confusion;

std::array<double, 3> at(const gp_Pnt& p) { return {p.X(), p.Y(), p.Z()}; }

std::array<double, 3> middle_of(const TopoDS_Shape& shape) {
  if (shape.ShapeType() == TopAbs_EDGE) {
    const BRepAdaptor_Curve curve(TopoDS::Edge(shape));
    return at(curve.Value((curve.FirstParameter() + curve.LastParameter()) / 2));
  }
  Bnd_Box box;
  BRepBndLib::Add(shape, box);
  return at(gp_Pnt((box.CornerMin().XYZ() + box.CornerMax().XYZ()) / 2));
}

/// Wires of one face that touch in a vertex are one loop.
int loops_of(const TopoDS_Shape& face) {
  int loops = 0;
  TopTools_IndexedMapOfShape seen;
  for (TopExp_Explorer wire(face, TopAbs_WIRE); wire.More(); wire.Next(), ++loops) {
    TopTools_IndexedMapOfShape own;
    TopExp::MapShapes(wire.Current(), TopAbs_VERTEX, own);
    for (int i = 1; i <= own.Extent(); ++i)
      if (seen.Contains(own(i))) --loops;
    for (int i = 1; i <= own.Extent(); ++i) seen.Add(own(i));
  }
  return loops;
}

class Judge {
 public:
  explicit Judge(const TopoDS_Solid& solid) : solid_(solid) {
    TopExp::MapShapes(solid, TopAbs_EDGE, edges_);
    TopExp::MapShapes(solid, TopAbs_VERTEX, vertices_);
    for (TopExp_Explorer it(solid, TopAbs_FACE); it.More(); it.Next()) faces_.push_back(TopoDS::Face(it.Current()));
  }

  /// The cheapest questions first.
  std::optional<Flaw> run(int euler) {
    if (empty() || wrong_edges() || wrong_shells() || wrong_euler(euler) || uncertain() || strayed() || invalid())
      return flaw_;
    return std::nullopt;
  }

 private:
  bool tell(Flaw::Kind kind, const std::string& what, const TopoDS_Shape& shape, int face = -1) {
    flaw_ = {kind, what, middle_of(shape), face};
    return true;
  }

  bool empty() {
    flaw_ = {Flaw::Kind::empty, "it has no faces", {}, -1};
    return faces_.empty();
  }

  bool wrong_shells() {
    TopTools_IndexedMapOfShape shells;
    TopExp::MapShapes(solid_, TopAbs_SHELL, shells);
    if (shells.Extent() != 1)
      return tell(Flaw::Kind::shells, std::to_string(shells.Extent()) + " shells instead of one", solid_);
    return !BRep_Tool::IsClosed(shells(1)) && tell(Flaw::Kind::shells, "its shell is not closed", solid_);
  }

  /// Counts how the faces use each edge: once forward and once reversed.
  bool wrong_edges() {
    std::vector<std::array<int, 2>> uses(static_cast<std::size_t>(edges_.Extent()) + 1);
    std::vector<int> face_of(uses.size(), -1);
    for (std::size_t f = 0; f < faces_.size(); ++f)
      for (TopExp_Explorer it(faces_[f], TopAbs_EDGE); it.More(); it.Next()) {
        const auto e = static_cast<std::size_t>(edges_.FindIndex(it.Current()));
        ++uses[e][it.Current().Orientation() == TopAbs_FORWARD ? 0 : 1];
        face_of[e] = static_cast<int>(f);
      }
    for (std::size_t e = 1; e < uses.size(); ++e)
      if (uses[e] != std::array{1, 1})
        return tell(Flaw::Kind::edge_use,
                    "an edge is used " + std::to_string(uses[e][0]) + " times forward and " +
                        std::to_string(uses[e][1]) + " times reversed",
                    edges_(static_cast<int>(e)), face_of[e]);
    return false;
  }

  bool wrong_euler(int euler) {
    const int faces = static_cast<int>(faces_.size());
    int loops = 0;
    for (const TopoDS_Face& face : faces_) loops += loops_of(face);
    const int found = vertices_.Extent() - edges_.Extent() + faces - (loops - faces);
    return found != euler &&
           tell(Flaw::Kind::euler,
                "V - E + F - (L - F) is " + std::to_string(found) + " instead of " + std::to_string(euler), solid_);
  }

  bool uncertain() {
    const auto judge = [&](const TopoDS_Shape& shape, double tolerance, const char* what) {
      return tolerance > tolerance::vertex &&
             tell(Flaw::Kind::tolerance,
                  std::string(what) + " is known within " + std::to_string(tolerance) + " mm only", shape);
    };
    for (int v = 1; v <= vertices_.Extent(); ++v)
      if (judge(vertices_(v), BRep_Tool::Tolerance(TopoDS::Vertex(vertices_(v))), "a vertex")) return true;
    for (int e = 1; e <= edges_.Extent(); ++e)
      if (judge(edges_(e), BRep_Tool::Tolerance(TopoDS::Edge(edges_(e))), "an edge")) return true;
    return false;
  }

  bool strayed() {
    for (std::size_t f = 0; f < faces_.size(); ++f) {
      const PcurveFace imaged(faces_[f]);
      for (TopExp_Explorer it(faces_[f], TopAbs_EDGE); it.More(); it.Next()) {
        const TopoDS_Edge& edge = TopoDS::Edge(it.Current());
        const double off = imaged.deviation(edge);
        if (off > BRep_Tool::Tolerance(edge) + sampling)
          return tell(Flaw::Kind::pcurve, "an edge strays by " + std::to_string(off) + " mm from its face", edge,
                      static_cast<int>(f));
      }
    }
    return false;
  }

  bool invalid() {
    const BRepCheck_Analyzer check(solid_, true, true);
    if (check.IsValid()) return false;
    for (std::size_t f = 0; f < faces_.size(); ++f)
      if (!check.IsValid(faces_[f]))
        return tell(Flaw::Kind::kernel, "a face is invalid", faces_[f], static_cast<int>(f));
    return tell(Flaw::Kind::kernel, "the solid is invalid", solid_);
  }

  const TopoDS_Solid& solid_;
  TopTools_IndexedMapOfShape edges_, vertices_;
  std::vector<TopoDS_Face> faces_;  ///< in the order of Shell::faces
  Flaw flaw_;
};

}  // namespace

std::optional<Flaw> flaw_as_it_is(const TopoDS_Solid& solid, int euler) { return Judge(solid).run(euler); }

std::optional<Flaw> flaw_in(const TopoDS_Solid& solid, int euler) {
  if (auto flaw = flaw_as_it_is(solid, euler)) return flaw;
  if (!has_narrow_corner(solid) && !has_shallow_face(solid)) return std::nullopt;
  const std::vector<TopoDS_Solid> back = read_back(solid);
  if (back.size() != 1)
    return Flaw{Flaw::Kind::file, "its STEP file is read as " + std::to_string(back.size()) + " solids",
                middle_of(solid), -1};
  auto flaw = flaw_as_it_is(back.front(), euler);
  if (!flaw) return std::nullopt;
  return Flaw{Flaw::Kind::file, "after its STEP file is read, " + flaw->what, flaw->at, -1};
}

std::string unsound(const TopoDS_Solid& solid, int genus) {
  const auto flaw = flaw_in(solid, 2 - 2 * genus);
  return flaw ? flaw->what : "";
}

}  // namespace sagitta
