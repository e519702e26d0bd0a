#include "drawing/MatingDrawing.hpp"

namespace sagitta {
namespace {

Figure open_line(const std::string& name, const LineSegment& segment) {
  return {name, {line(segment.a, segment.b)}, false};
}

}  // namespace

Drawing mating_drawing(const Board& board, const MatingFace& face) {
  Drawing drawing{
      board.name + ", the face that is glued to the neck",
      {"Seen from above as the neck lies: x = 0 at the nut, x toward the bridge, the centre line at y = 0."},
      bounds(face.outline),
      {}};
  drawing.layers.push_back({"outline", "#303030", {{"outline of the board", face.outline, true}}});
  drawing.layers.push_back({"nut-line", "#2060a0", {open_line("nut line", face.nut_line)}});
  if (face.joint) drawing.layers.push_back({"joint", "#a04020", {open_line("neck joint", *face.joint)}});
  Layer pins{"pins", "#208040", {}};
  for (const Pin& pin : face.pins) pins.figures.push_back({"pin", circle(pin.centre, pin.radius), true});
  if (!pins.figures.empty()) drawing.layers.push_back(pins);
  if (face.channel) drawing.layers.push_back({"channel", "#806020", {{"channel", *face.channel, true}}});
  return drawing;
}

}  // namespace sagitta
