#include "cad/NeckModel.hpp"

#include "cad/StepFileLines.hpp"
#include "solid/GlueFace.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

GuideLine level_line(const std::string& name, const Loop& segments) {
  GuideLine guide{name, "neck", {}};
  for (const CurveSegment& segment : segments)
    guide.pieces.push_back({segment, {BoundingSurface::Kind::level, 0, false}});
  return guide;
}

}  // namespace

StepModel neck_face_model(const PreparedBoard& ready, const NeckPlan& plan) {
  std::vector<Loop> holes;
  for (const Pin& pin : plan.face.pins) holes.push_back(circle(pin.centre, pin.radius));
  StepModel model;
  model.name = shown_name(ready.board()) + ", glue face";
  model.faces.push_back({"glue face", glue_face(plan.face.outline, holes)});
  std::vector<GuideLine> guides;
  const auto add = [&](const std::string& name, const LineSegment& segment) {
    guides.push_back(level_line(name, {line(segment.a, segment.b)}));
  };
  add("nut line", plan.face.nut_line);
  add("board's nut end", plan.ledge);
  add("neck's side at negative y", plan.sides[0]);
  add("neck's side at positive y", plan.sides[1]);
  if (plan.face.joint) add("neck joint", *plan.face.joint);
  if (plan.face.channel) guides.push_back(level_line("rod channel", *plan.face.channel));
  model.lines = step_lines(ready.surface(), guides);
  return model;
}

Shell gauge_shell(const PreparedBoard& ready, const NeckPlan& plan) {
  InlayPiece plate;
  plate.name = "neck gauge";
  plate.thickness = gauge_thickness;
  plate.piece = {plan.gauge};
  auto made = ready.piece_plan(plate, PieceState::sheet);
  if (const auto* faults = std::get_if<Faults>(&made))
    throw BuildError("neck-gauge", plate.name, faults->front().message);
  return lift(std::get<Plan>(std::move(made)));
}

}  // namespace sagitta
