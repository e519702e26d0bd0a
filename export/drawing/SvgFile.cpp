#include "drawing/SvgFile.hpp"

#include "text/DrawingNumber.hpp"
#include "text/Markup.hpp"

namespace sagitta {
namespace {

std::string spot(Point p) { return drawn_number(p.x) + " " + drawn_number(-p.y); }

std::string path_of(const Figure& figure) {
  std::string path = "M" + spot(figure.pieces.front().a);
  for (std::size_t i = 0; i < figure.pieces.size(); ++i) {
    const CurveSegment& segment = figure.pieces[i];
    const bool last = figure.closed && i + 1 == figure.pieces.size();
    if (segment.is_arc()) {
      const std::string radius = drawn_number(segment.radius);
      const bool large = std::abs(segment.sweep) > std::numbers::pi;
      path += "A" + radius + " " + radius + " 0 " + (large ? "1 " : "0 ") + (segment.sweep > 0 ? "0 " : "1 ") +
              spot(last ? figure.pieces.front().a : segment.b);
    } else if (!last) {
      path += "L" + spot(segment.b);
    }
  }
  return path + (figure.closed ? "Z" : "");
}

std::string element(const Figure& figure) {
  const std::string title = "><title>" + markup_text(figure.name) + "</title>";
  if (!is_circle(figure)) return "<path d=\"" + path_of(figure) + "\"" + title + "</path>";
  const CurveSegment& segment = figure.pieces.front();
  return "<circle cx=\"" + drawn_number(segment.centre.x) + "\" cy=\"" + drawn_number(-segment.centre.y) + "\" r=\"" +
         drawn_number(segment.radius) + "\"" + title + "</circle>";
}

}  // namespace

std::string svg_text(const Drawing& drawing) {
  const Point size = drawing.page.high - drawing.page.low;
  const std::string width = drawn_number(size.x), height = drawn_number(size.y);
  std::string text =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"";
  text += " width=\"" + width + "mm\" height=\"" + height + "mm\" viewBox=\"" +
          spot({drawing.page.low.x, drawing.page.high.y}) + " " + width + " " + height + "\" overflow=\"visible\"";
  text += " fill=\"none\" stroke-width=\"0.1\">\n<title>" + markup_text(drawing.title) + "</title>\n<desc>";
  for (const std::string& note : drawing.notes)
    text += (&note == &drawing.notes.front() ? "" : " ") + markup_text(note);
  text += "</desc>\n";
  for (const Layer& layer : drawing.layers) {
    text += "<g id=\"" + layer.name + "\" stroke=\"" + layer.colour + "\">\n";
    for (const Figure& figure : layer.figures) text += element(figure) + "\n";
    text += "</g>\n";
  }
  return text + "</svg>\n";
}

}  // namespace sagitta
