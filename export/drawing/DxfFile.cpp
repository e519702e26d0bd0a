#include "drawing/DxfFile.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "drawing/DxfTags.hpp"
#include "text/DrawingNumber.hpp"

namespace sagitta {
namespace {

constexpr double scale_bar = 100, text_height = 3;

/// Nearest of the seven basic colours of the format.
int colour_number(const std::string& colour) {
  constexpr struct {
    int number, red, green, blue;
  } known[] = {{1, 255, 0, 0}, {2, 255, 255, 0}, {3, 0, 255, 0}, {4, 0, 255, 255},
               {5, 0, 0, 255}, {6, 255, 0, 255}, {7, 0, 0, 0},   {8, 128, 128, 128}};
  const long value = std::strtol(colour.c_str() + 1, nullptr, 16);
  const long red = value >> 16, green = value >> 8 & 255, blue = value & 255;
  int best = 7;
  long nearest = 1L << 30;
  for (const auto& each : known) {
    const long r = red - each.red, g = green - each.green, b = blue - each.blue, off = r * r + g * g + b * b;
    if (off < nearest) nearest = off, best = each.number;
  }
  return best;
}

double bulge(const CurveSegment& segment) { return segment.is_arc() ? std::tan(segment.sweep / 4) : 0; }

/// The entities of one drawing, in either version.
class Entities {
 public:
  Entities(DxfTags& tags, DxfVersion version) : tags_(tags), version_(version) {}

  void draw(const Layer& layer, const Figure& figure) {
    layer_ = layer.name;
    if (is_circle(figure)) {
      begin("CIRCLE", "AcDbCircle");
      tags_.point(10, figure.pieces.front().centre).number(40, figure.pieces.front().radius);
    } else if (figure.ellipse && version_ == DxfVersion::r2000) {
      begin("ELLIPSE", "AcDbEllipse");
      tags_.point(10, figure.ellipse->centre).point(11, figure.ellipse->major).number(40, figure.ellipse->ratio);
      tags_.number(41, 0).text(42, "6.283185307179586");  // readers compare it with a whole turn
    } else if (!figure.closed && figure.pieces.size() == 1) {
      stroke(figure.pieces.front());
    } else if (version_ == DxfVersion::r12) {
      polyline(figure);
    } else {
      light_polyline(figure);
    }
  }

  void draw_scale_bar(Point at) {
    layer_ = "scale-bar";
    stroke(line(at, at + Point{scale_bar, 0}));
    begin("TEXT", "AcDbText");
    tags_.point(10, at + Point{0, text_height / 2}).number(40, text_height).text(1, "100 mm");
    if (version_ == DxfVersion::r2000) tags_.text(100, "AcDbText");
  }

 private:
  void begin(const char* kind, const char* subclass) {
    tags_.text(0, kind);
    if (version_ == DxfVersion::r2000) tags_.handle().text(330, model_space).text(100, "AcDbEntity");
    tags_.text(8, layer_);
    if (version_ == DxfVersion::r2000) tags_.text(100, subclass);
  }

  void stroke(const CurveSegment& segment) {
    if (!segment.is_arc()) {
      begin("LINE", "AcDbLine");
      tags_.point(10, segment.a).point(11, segment.b);
      return;
    }
    const double end = segment.start + segment.sweep;
    const double degrees = 180 / std::numbers::pi;
    begin("ARC", "AcDbCircle");
    tags_.point(10, segment.centre).number(40, segment.radius);
    if (version_ == DxfVersion::r2000) tags_.text(100, "AcDbArc");
    tags_.number(50, std::min(segment.start, end) * degrees).number(51, std::max(segment.start, end) * degrees);
  }

  void light_polyline(const Figure& figure) {
    begin("LWPOLYLINE", "AcDbPolyline");
    tags_.whole(90, static_cast<int>(figure.pieces.size()) + !figure.closed).whole(70, figure.closed);
    for (const CurveSegment& segment : figure.pieces) {
      tags_.flat_point(10, segment.a);
      if (segment.is_arc()) tags_.number(42, bulge(segment));
    }
    if (!figure.closed) tags_.flat_point(10, figure.pieces.back().b);
  }

  void polyline(const Figure& figure) {
    begin("POLYLINE", "");
    tags_.whole(66, 1).point(10, {}).whole(70, figure.closed);
    const auto vertex = [&](Point p, double bulge) {
      begin("VERTEX", "");
      tags_.point(10, p);
      if (bulge != 0) tags_.number(42, bulge);
    };
    for (const CurveSegment& segment : figure.pieces) vertex(segment.a, bulge(segment));
    if (!figure.closed) vertex(figure.pieces.back().b, 0);
    begin("SEQEND", "");
  }

  DxfTags& tags_;
  DxfVersion version_;
  std::string layer_;
};

Box extents(const Drawing& drawing) {
  Box box = drawing.page;
  for (const Layer& layer : drawing.layers)
    for (const Figure& figure : layer.figures) {
      const Box each = bounds(figure.pieces);
      box.add(each.low), box.add(each.high);
    }
  return box;
}

std::vector<DxfLayer> layers_of(const Drawing& drawing, DxfVersion version) {
  std::vector<DxfLayer> layers;
  for (const Layer& layer : drawing.layers) layers.push_back({layer.name, colour_number(layer.colour)});
  if (version == DxfVersion::r12) layers.push_back({"scale-bar", 8});
  return layers;
}

}  // namespace

std::string dxf_text(const Drawing& drawing, DxfVersion version) {
  DxfTags tags;
  const Box box = extents(drawing);
  tags.text(999, drawing.title);
  for (const std::string& note : drawing.notes) tags.text(999, note);
  const DxfFrame frame{layers_of(drawing, version), box, version == DxfVersion::r2000};
  open_dxf(tags, frame);
  Entities entities(tags, version);
  for (const Layer& layer : drawing.layers)
    for (const Figure& figure : layer.figures) entities.draw(layer, figure);
  if (version == DxfVersion::r12) entities.draw_scale_bar({box.low.x, box.low.y - 4 * text_height});
  close_dxf(tags, frame);
  return tags.finished();
}

}  // namespace sagitta
