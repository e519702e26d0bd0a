#include "solid/StageMesh.hpp"

#include <BRepAdaptor_Surface.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <IMeshTools_Parameters.hxx>
#include <Poly_Triangulation.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <algorithm>
#include <map>

#include "solid/Solid.hpp"

namespace sagitta {
namespace {

/// The kernel's chords stray up to twice what it is asked for.
constexpr double kernel_share = 0.4;

class Gatherer {
 public:
  void add(const TopoDS_Face& face) {
    TopLoc_Location place;
    const Handle(Poly_Triangulation) net = BRep_Tool::Triangulation(face, place);
    if (net.IsNull()) throw BuildError("board", "side dots", "a face could not be triangulated");
    std::vector<std::uint32_t> ids;
    for (int i = 1; i <= net->NbNodes(); ++i) ids.push_back(point(net->Node(i).Transformed(place)));
    const BRepAdaptor_Surface surface(face);
    for (int i = 1; i <= net->NbTriangles(); ++i) {
      int a = 0, b = 0, c = 0;
      net->Triangle(i).Get(a, b, c);
      if (face.Orientation() == TopAbs_REVERSED) std::swap(b, c);
      const std::array<std::uint32_t, 3> t{ids[a - 1], ids[b - 1], ids[c - 1]};
      if (t[0] == t[1] || t[1] == t[2] || t[2] == t[0]) continue;
      mesh.triangles.push_back(t);
      mesh.face.push_back(-1);
      if (net->HasUVNodes()) measure(*net, surface, a, b, c);
    }
  }

  Mesh mesh;

 private:
  std::uint32_t point(const gp_Pnt& p) {
    const std::array<float, 3> rounded{static_cast<float>(p.X()), static_cast<float>(p.Y()), static_cast<float>(p.Z())};
    const auto [found, fresh] = places_.try_emplace(rounded, static_cast<std::uint32_t>(mesh.points.size()));
    if (fresh) mesh.points.push_back(rounded);
    return found->second;
  }

  void measure(const Poly_Triangulation& net, const BRepAdaptor_Surface& surface, int a, int b, int c) {
    const gp_XY u = net.UVNode(a).XY(), v = net.UVNode(b).XY(), w = net.UVNode(c).XY();
    const gp_XYZ p = net.Node(a).XYZ(), q = net.Node(b).XYZ(), r = net.Node(c).XYZ();
    const auto judge = [&](double s, double t) {
      const gp_XY at = u * s + v * t + w * (1 - s - t);
      const gp_XYZ off = surface.Value(at.X(), at.Y()).XYZ() - (p * s + q * t + r * (1 - s - t));
      const gp_XYZ n = (q - p).Crossed(r - p);
      if (n.Modulus() > 0) mesh.deviation = std::max(mesh.deviation, std::abs(off.Dot(n)) / n.Modulus());
    };
    judge(0.5, 0.5);
    judge(0.5, 0);
    judge(0, 0.5);
    judge(1.0 / 3, 1.0 / 3);
  }

  std::map<std::array<float, 3>, std::uint32_t> places_;
};

Mesh kernel_mesh(const TopoDS_Solid& solid, double deviation) {
  IMeshTools_Parameters parameters;
  parameters.Deflection = kernel_share * deviation;
  parameters.Angle = 0.2;
  parameters.MeshAlgo = IMeshTools_MeshAlgoType_Delabella;
  BRepMesh_IncrementalMesh(solid, parameters);
  Gatherer gatherer;
  for (TopExp_Explorer it(solid, TopAbs_FACE); it.More(); it.Next()) gatherer.add(TopoDS::Face(it.Current()));
  return std::move(gatherer.mesh);
}

}  // namespace

Mesh stage_mesh(const Shell& shell, double deviation, const Cancel& cancel) {
  if (!holes_left(shell)) return make_mesh(shell, deviation, cancel);
  const TopoDS_Solid solid = make_solid(shell);  // our own copy: the kernel keeps its triangles in the shape
  if (cancel.wanted()) return {};
  try {
    return kernel_mesh(solid, deviation);
  } catch (const Standard_Failure& failure) {
    throw BuildError("board", "side dots", failure.GetMessageString());
  }
}

}  // namespace sagitta
