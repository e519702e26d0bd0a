#include "solid/NarrowCorner.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Vertex.hxx>
#include <algorithm>
#include <array>
#include <gp_Vec.hxx>
#include <vector>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double nothing = tolerance::confusion;
/// Edges that leave a vertex at this angle are that far apart at tolerance::vertex from it. Radians.
constexpr double narrow = nothing / tolerance::vertex;

/// How an edge leaves its first vertex and its last.
struct Leaving {
  std::array<int, 2> vertex{};
  std::array<gp_Vec, 2> way;
};

Leaving leaving(const TopoDS_Edge& edge, const TopTools_IndexedMapOfShape& vertices) {
  const BRepAdaptor_Curve curve(edge);
  Leaving found;
  gp_Pnt p;
  curve.D1(curve.FirstParameter(), p, found.way[0]);
  curve.D1(curve.LastParameter(), p, found.way[1]);
  found.way[1].Reverse();
  found.vertex = {vertices.FindIndex(TopExp::FirstVertex(edge)), vertices.FindIndex(TopExp::LastVertex(edge))};
  return found;
}

bool is_narrow(const gp_Vec& a, const gp_Vec& b) {
  return a.Dot(b) > 0 && a.Crossed(b).Magnitude() <= narrow * a.Magnitude() * b.Magnitude();
}

}  // namespace

bool has_narrow_corner(const TopoDS_Solid& solid) {
  TopTools_IndexedMapOfShape edges, vertices;
  TopExp::MapShapes(solid, TopAbs_EDGE, edges);
  TopExp::MapShapes(solid, TopAbs_VERTEX, vertices);
  std::vector<Leaving> leaves{{}};
  for (int e = 1; e <= edges.Extent(); ++e) {
    TopoDS_Edge edge = TopoDS::Edge(edges(e));
    edge.Orientation(TopAbs_FORWARD);
    leaves.push_back(leaving(edge, vertices));
    const auto [from, to] = leaves.back().vertex;
    const auto place = [&](int v) { return BRep_Tool::Pnt(TopoDS::Vertex(vertices(v))); };
    if (from == to || place(from).Distance(place(to)) <= tolerance::vertex) return true;
  }
  std::vector<std::pair<int, const gp_Vec*>> ways;  // of a face, by vertex
  for (TopExp_Explorer face(solid, TopAbs_FACE); face.More(); face.Next()) {
    ways.clear();
    for (TopExp_Explorer edge(face.Current(), TopAbs_EDGE); edge.More(); edge.Next()) {
      const Leaving& leaves_so = leaves[static_cast<std::size_t>(edges.FindIndex(edge.Current()))];
      for (std::size_t end = 0; end < 2; ++end) ways.emplace_back(leaves_so.vertex[end], &leaves_so.way[end]);
    }
    std::sort(ways.begin(), ways.end());
    for (std::size_t i = 0; i < ways.size(); ++i)
      for (std::size_t k = i + 1; k < ways.size() && ways[k].first == ways[i].first; ++k)
        if (is_narrow(*ways[i].second, *ways[k].second)) return true;
  }
  return false;
}

}  // namespace sagitta
