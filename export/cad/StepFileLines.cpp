#include "cad/StepFileLines.hpp"

#include <BRep_Builder.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Vertex.hxx>

#include "plane/Tolerance.hpp"
#include "solid/EdgeCurve.hpp"

namespace sagitta {
namespace {

constexpr double vertex_tolerance = tolerance::confusion;

/// The colour of a layer's lines: far from wood and from each other.
std::string colour_of(const std::string& layer) {
  if (layer == "slot middle lines") return "#c8102e";
  if (layer == "pockets") return "#0057b8";
  return "#00843d";
}

TopoDS_Vertex vertex(const Surface& surface, const GuidePiece& segment, Point p) {
  TopoDS_Vertex made;
  BRep_Builder().MakeVertex(made, gp_Pnt(p.x, p.y, height(surface, segment.bound, p)), vertex_tolerance);
  return made;
}

/// The edge from `first` to `last` along the piece.
TopoDS_Edge edge(const Surface& surface, const GuidePiece& guide, const TopoDS_Vertex& first,
                 const TopoDS_Vertex& last) {
  Shell shell;
  shell.plan.surface = surface;
  const auto lifted_end = [&](Point p) { return ShellVertex{p, height(surface, guide.bound, p)}; };
  shell.vertices = {lifted_end(guide.segment.a), lifted_end(guide.segment.b)};
  ShellEdge lifted;
  lifted.from = 0;
  lifted.to = 1;
  lifted.bound = guide.bound;
  lifted.segment = guide.segment;
  const EdgeCurve curve = curve_of(shell, lifted);
  BRep_Builder builder;
  TopoDS_Edge made;
  builder.MakeEdge(made, curve.curve, std::max(vertex_tolerance, curve.deviation));
  const TopoDS_Vertex &low = curve.reversed ? last : first, &high = curve.reversed ? first : last;
  builder.Add(made, low.Oriented(TopAbs_FORWARD));
  builder.Add(made, high.Oriented(TopAbs_REVERSED));
  builder.Range(made, curve.first, curve.last);
  if (curve.reversed) made.Reverse();
  return made;
}

TopoDS_Wire wire(const Surface& surface, const std::vector<GuidePiece>& pieces) {
  BRep_Builder builder;
  TopoDS_Wire made;
  builder.MakeWire(made);
  const bool closed = distance(pieces.front().segment.a, pieces.back().segment.b) <= tolerance::vertex;
  const TopoDS_Vertex first = vertex(surface, pieces.front(), pieces.front().segment.a);
  TopoDS_Vertex from = first;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const bool closes = closed && i + 1 == pieces.size();
    const TopoDS_Vertex to = closes ? first : vertex(surface, pieces[i], pieces[i].segment.b);
    builder.Add(made, edge(surface, pieces[i], from, to));
    from = to;
  }
  made.Closed(closed);
  return made;
}

}  // namespace

std::vector<StepLine> step_lines(const Surface& surface, const std::vector<GuideLine>& guides) {
  std::vector<StepLine> lines;
  for (const GuideLine& guide : guides)
    lines.push_back({guide.name, guide.layer, colour_of(guide.layer), wire(surface, guide.pieces)});
  return lines;
}

}  // namespace sagitta
