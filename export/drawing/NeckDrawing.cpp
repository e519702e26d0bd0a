#include "drawing/NeckDrawing.hpp"

#include <algorithm>

#include "text/Measures.hpp"

namespace sagitta {
namespace {

Figure open_line(const std::string& name, const LineSegment& segment) {
  return {name, {line(segment.a, segment.b)}, false};
}

}  // namespace

Drawing neck_drawing(const Board& board, const NeckPlan& plan) {
  const std::string allowance =
      board.neck && board.neck->allowance > 0
          ? "The neck's sides stand " + measured_length(board.units, board.neck->allowance) + " outside the board's."
          : "The neck's sides are the board's.";
  Drawing drawing{shown_name(board) + ", the neck's glue face",
                  {"The neck lies with its glue face up: x = 0 at the nut, x toward the bridge.", allowance},
                  bounds(plan.gauge),
                  {}};
  drawing.layers.push_back({"outline", "#303030", {{"outline of the board", plan.face.outline, true}}});
  drawing.layers.push_back(
      {"neck-sides",
       "#000000",
       {open_line("lower side of the neck", plan.sides[0]), open_line("upper side of the neck", plan.sides[1])}});
  drawing.layers.push_back({"nut-line", "#2060a0", {open_line("nut line", plan.face.nut_line)}});
  drawing.layers.push_back({"nut-end", "#5090d0", {open_line("end of the board at the nut", plan.ledge)}});
  if (plan.face.joint) drawing.layers.push_back({"joint", "#a04020", {open_line("neck joint", *plan.face.joint)}});
  Layer pins{"pins", "#208040", {}};
  for (const Pin& pin : plan.face.pins) pins.figures.push_back({"pin", circle(pin.centre, pin.radius), true});
  if (!pins.figures.empty()) drawing.layers.push_back(pins);
  if (plan.face.channel) drawing.layers.push_back({"channel", "#806020", {{"rod channel", *plan.face.channel, true}}});
  Layer deep{"deep-cuts", "#c02020", {}};
  for (const DeepCut& cut : plan.deep_cuts)
    for (const Loop& loop : cut.outlines)
      deep.figures.push_back({cut.name + " is deep: nothing may rise here", loop, true});
  if (!deep.figures.empty()) drawing.layers.push_back(deep);
  return drawing;
}

Drawing neck_drawing_face_down(const Board& board, const NeckPlan& plan) {
  Drawing drawing = mirrored(neck_drawing(board, plan));
  drawing.notes.front() = "The neck lies with its glue face down: this is the mirror image of neck-face.";
  return drawing;
}

}  // namespace sagitta
