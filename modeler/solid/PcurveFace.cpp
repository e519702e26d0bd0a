#include "solid/PcurveFace.hpp"

#include <BRep_CurveRepresentation.hxx>
#include <BRep_ListOfCurveRepresentation.hxx>
#include <BRep_TEdge.hxx>
#include <BRep_Tool.hxx>
#include <Geom_BSplineCurve.hxx>
#include <algorithm>
#include <gp_Pln.hxx>
#include <vector>

namespace sagitta {
namespace {

constexpr double no_pcurve = 1e300;  // mm

std::vector<double> spans_of(const Handle(Geom_Curve) & curve, double first, double last) {
  const auto spline = Handle(Geom_BSplineCurve)::DownCast(curve);
  if (spline.IsNull()) return {first, first + (last - first) / 3, last - (last - first) / 3, last};
  std::vector<double> spans{first};
  for (int i = 1; i <= spline->NbKnots(); ++i)
    if (spline->Knot(i) > first && spline->Knot(i) < last) spans.push_back(spline->Knot(i));
  spans.push_back(last);
  return spans;
}

}  // namespace

PcurveFace::PcurveFace(const TopoDS_Face& face)
    : surface_(BRep_Tool::Surface(face)), plane_(Handle(Geom_Plane)::DownCast(surface_)) {}

double PcurveFace::deviation(const TopoDS_Edge& edge) const {
  double first = 0, last = 0, most = 0;
  const Handle(Geom_Curve) curve = BRep_Tool::Curve(edge, first, last);
  const Handle(BRep_GCurve) pcurve = pcurve_of(edge);
  if (curve.IsNull() || (pcurve.IsNull() && plane_.IsNull())) return no_pcurve;
  if (!pcurve.IsNull() && (pcurve->First() != first || pcurve->Last() != last)) return no_pcurve;
  const std::vector<double> spans = spans_of(curve, first, last);
  const auto judge = [&](double t) {
    const gp_Pnt p = curve->Value(t);
    if (!plane_.IsNull()) most = std::max(most, plane_->Pln().Distance(p));
    if (pcurve.IsNull()) return;
    gp_Pnt on;
    pcurve->D0(t, on);
    most = std::max(most, p.Distance(on));
  };
  for (std::size_t i = 0; i + 1 < spans.size(); ++i)
    for (const double s : {1.0 / 6, 0.5, 5.0 / 6}) judge(spans[i] + s * (spans[i + 1] - spans[i]));
  return most;
}

/// A plane's pcurves are often not kept, and found anew by whoever asks the kernel's tool.
Handle(BRep_GCurve) PcurveFace::pcurve_of(const TopoDS_Edge& edge) const {
  for (const Handle(BRep_CurveRepresentation) & each : Handle(BRep_TEdge)::DownCast(edge.TShape())->Curves())
    if (each->IsCurveOnSurface(surface_, edge.Location())) return Handle(BRep_GCurve)::DownCast(each);
  return {};
}

}  // namespace sagitta
