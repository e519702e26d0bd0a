#include "solid/StepEdges.hpp"

#include <Interface_Check.hxx>
#include <Interface_CheckIterator.hxx>
#include <Interface_InterfaceModel.hxx>
#include <StepGeom_CartesianPoint.hxx>
#include <StepGeom_Direction.hxx>
#include <StepGeom_GeometricRepresentationItem.hxx>
#include <StepGeom_Line.hxx>
#include <StepGeom_SurfaceCurve.hxx>
#include <StepGeom_Vector.hxx>
#include <StepShape_EdgeCurve.hxx>
#include <StepShape_VertexPoint.hxx>
#include <XSControl_WorkSession.hxx>
#include <algorithm>
#include <gp.hxx>
#include <gp_XYZ.hxx>
#include <optional>

namespace sagitta {
namespace {

std::optional<gp_XYZ> point_of(const Handle(StepGeom_CartesianPoint) & point) {
  if (point.IsNull() || point->NbCoordinates() != 3) return {};
  return gp_XYZ(point->CoordinatesValue(1), point->CoordinatesValue(2), point->CoordinatesValue(3));
}

std::optional<gp_XYZ> corner_of(const Handle(StepShape_Vertex) & vertex) {
  const auto corner = Handle(StepShape_VertexPoint)::DownCast(vertex);
  if (corner.IsNull()) return {};
  return point_of(Handle(StepGeom_CartesianPoint)::DownCast(corner->VertexGeometry()));
}

Handle(StepGeom_Line) line_of(const Handle(StepShape_EdgeCurve) & edge) {
  Handle(StepGeom_Curve) curve = edge->EdgeGeometry();
  if (const auto on_surface = Handle(StepGeom_SurfaceCurve)::DownCast(curve); !on_surface.IsNull())
    curve = on_surface->Curve3d();
  return Handle(StepGeom_Line)::DownCast(curve);
}

std::optional<gp_XYZ> way_of(const Handle(StepGeom_Line) & line) {
  if (line->Dir().IsNull() || line->Dir()->Orientation().IsNull()) return {};
  const Handle(StepGeom_Direction) way = line->Dir()->Orientation();
  if (way->NbDirectionRatios() != 3) return {};
  const gp_XYZ ratios(way->DirectionRatiosValue(1), way->DirectionRatiosValue(2), way->DirectionRatiosValue(3));
  const double size = ratios.Modulus();
  return size > gp::Resolution() ? std::optional(ratios / size) : std::nullopt;
}

}  // namespace

bool has_broken_geometry(const STEPControl_Reader& reader) {
  const Handle(Interface_InterfaceModel) model = reader.WS()->Model();
  if (model.IsNull()) return true;
  Interface_CheckIterator checks = reader.WS()->ModelCheckList();
  for (checks.Start(); checks.More(); checks.Next()) {
    const int at = checks.Number();
    if (!checks.Value()->HasFailed() || at < 1 || at > model->NbEntities()) continue;
    if (model->Value(at)->IsKind(STANDARD_TYPE(StepGeom_GeometricRepresentationItem))) return true;
  }
  return false;
}

double ends_off_lines(const STEPControl_Reader& reader) {
  const Handle(Interface_InterfaceModel) model = reader.WS()->Model();
  double most = 0;
  for (int i = 1; !model.IsNull() && i <= model->NbEntities(); ++i) {
    const auto edge = Handle(StepShape_EdgeCurve)::DownCast(model->Value(i));
    if (edge.IsNull()) continue;
    const Handle(StepGeom_Line) line = line_of(edge);
    if (line.IsNull()) continue;
    const auto from = point_of(line->Pnt()), way = way_of(line);
    if (!from || !way) continue;
    for (const auto& corner : {corner_of(edge->EdgeStart()), corner_of(edge->EdgeEnd())})
      if (corner) most = std::max(most, (*corner - *from).Crossed(*way).Modulus());
  }
  return most;
}

}  // namespace sagitta
