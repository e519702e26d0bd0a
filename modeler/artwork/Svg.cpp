#include "artwork/Svg.hpp"

#include <pugixml.hpp>

#include "artwork/SvgPath.hpp"

namespace sagitta {
namespace {

StrokeLoop closed_strokes(const Trail& trail, const Affine& frame) {
  StrokeLoop strokes;
  for (const Curve& curve : trail.curves) draw(curve, frame, strokes);
  if (!strokes.empty() && end_of(strokes.back()) != start_of(strokes.front()))
    strokes.push_back(line(end_of(strokes.back()), start_of(strokes.front())));
  return strokes;
}

}  // namespace

std::variant<Shapes, Faults> svg_shapes(std::string_view text) {
  pugi::xml_document document;
  const pugi::xml_parse_result parsed = document.load_buffer(text.data(), text.size());
  if (!parsed)
    return Faults{{"", std::string("this is no sound XML: ") + parsed.description(), "save the drawing again"}};
  Shapes out;
  const Affine frame = scale_by(25.4 / 96, -25.4 / 96);
  for (const pugi::xpath_node& found : document.select_nodes("//*[local-name() = 'path']")) {
    const auto read = read_path(found.node().attribute("d").value());
    if (const auto* error = std::get_if<PathError>(&read)) return Faults{{"", "in a <path>: " + error->message, ""}};
    Shape shape;
    shape.colour = found.node().attribute("fill").as_string("#000000");
    for (const Trail& trail : std::get<0>(read))
      if (StrokeLoop strokes = closed_strokes(trail, frame); !strokes.empty())
        shape.outlines.push_back(make_outline(std::move(strokes)));
    out.shapes.push_back(std::move(shape));
  }
  return out;
}

}  // namespace sagitta
