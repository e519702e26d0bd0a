#include "drawing/Drawing.hpp"

#include <algorithm>
#include <cctype>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

void mirror(Figure& figure) {
  if (figure.ellipse) figure.ellipse = figure.ellipse->mirrored();
  if (figure.closed)
    figure.pieces = mirrored(figure.pieces);
  else
    for (CurveSegment& segment : figure.pieces) segment = segment.mirrored();
}

}  // namespace

bool is_circle(const Figure& figure) {
  if (!figure.closed || figure.pieces.empty()) return false;
  double turn = 0;
  for (const CurveSegment& segment : figure.pieces) {
    if (!segment.is_arc() || distance(segment.centre, figure.pieces.front().centre) > tolerance::same) return false;
    turn += segment.sweep;
  }
  return std::abs(std::abs(turn) - 2 * std::numbers::pi) < tolerance::same;
}

const Layer* layer_named(const Drawing& drawing, std::string_view name) {
  for (const Layer& layer : drawing.layers)
    if (layer.name == name) return &layer;
  return nullptr;
}

std::string plain_name(std::string_view text) {
  std::string name;
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if ((code & 0xc0) == 0x80) continue;  // the rest of a letter that is not ASCII
    name += code < 0x80 && (std::isalnum(code) || c == '-' || c == '_') ? c : '_';
  }
  return name.substr(0, longest_layer_name);
}

Drawing from_below(const Drawing& drawing) {
  Drawing below = mirrored(drawing);
  below.title += ", from below";
  std::erase_if(below.layers, [](const Layer& layer) {
    for (const char* kept :
         {"cuts-through", "cuts-below", "pins", "dowels", "outline", "blank", "blank-centre", "centre-line"})
      if (layer.name == kept) return false;
    return true;
  });
  below.notes = {"Seen from below: the blank is turned over about its long axis; x stays and y changes its sign.",
                 "True size, millimetres; x = 0 at the nut line on the centre line, x toward the bridge."};
  return below;
}

Drawing moved(Drawing drawing, Point by) {
  drawing.page = {drawing.page.low + by, drawing.page.high + by};
  for (Layer& layer : drawing.layers)
    for (Figure& figure : layer.figures) {
      if (figure.ellipse) figure.ellipse = figure.ellipse->moved(by);
      for (CurveSegment& segment : figure.pieces) {
        segment.a = segment.a + by;
        segment.b = segment.b + by;
        segment.centre = segment.centre + by;
      }
    }
  return drawing;
}

Drawing mirrored(Drawing drawing) {
  drawing.page = {{drawing.page.low.x, -drawing.page.high.y}, {drawing.page.high.x, -drawing.page.low.y}};
  for (Layer& layer : drawing.layers)
    for (Figure& figure : layer.figures) mirror(figure);
  return drawing;
}

}  // namespace sagitta
