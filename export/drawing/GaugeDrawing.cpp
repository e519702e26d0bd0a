#include "drawing/GaugeDrawing.hpp"

#include <algorithm>
#include <cmath>

#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Between two gauges, and from the outer string to the strip's end. mm.
constexpr double gap = 10, strip_end = 8;

double drop_of(const RadiusGauge& gauge) {
  return gauge.radius - std::sqrt(gauge.radius * gauge.radius - gauge.width * gauge.width / 4);
}

Layer strip_layer(const StringStrip& strip, double foot) {
  const double reach = strip_reach(strip);
  Layer layer{plain_name("strings-" + strip.name), "#2060a0", {}};
  layer.figures.push_back({"strip, " + strip.name, rectangle({-reach, foot}, {reach, foot + strip_height}), true});
  for (std::size_t i = 0; i < strip.places.size(); ++i)
    layer.figures.push_back({"string " + std::to_string(i + 1),
                             {line({strip.places[i], foot}, {strip.places[i], foot + strip_height / 2})},
                             false});
  return layer;
}

}  // namespace

std::vector<RadiusGauge> radius_gauges(const PreparedBoard& ready) {
  const Layout& layout = ready.layout();
  std::vector<RadiusGauge> gauges;
  if (ready.surface().flat) return gauges;
  const auto add = [&](const std::string& name, double x) {
    gauges.push_back({name, x, ready.surface().radius(x), 2 * layout.half_width(x)});
  };
  add("nut", 0);
  for (const int fret : {7, 12})
    if (fret <= layout.frets.back().fret)
      add("fret " + std::to_string(fret), layout.frets[static_cast<std::size_t>(fret)].middle.x);
  add("body end", layout.heel_end);
  return gauges;
}

Loop gauge_outline(const RadiusGauge& gauge, Point apex, double height) {
  const double half = gauge.width / 2;
  const Point left = apex + Point{-half, -drop_of(gauge)}, right = apex + Point{half, -drop_of(gauge)};
  const Point up_right{right.x, apex.y + height}, up_left{left.x, apex.y + height};
  return {arc_between(apex - Point{0, gauge.radius}, gauge.radius, left, right, false), line(right, up_right),
          line(up_right, up_left), line(up_left, left)};
}

std::vector<StringStrip> string_strips(const PreparedBoard& ready) {
  StringStrip nut{"nut", {}}, saddle{"saddle", {}};
  for (const LineSegment& string : ready.layout().strings) {
    nut.places.push_back(string.a.y);
    saddle.places.push_back(string.b.y);
  }
  return {nut, saddle};
}

double strip_reach(const StringStrip& strip) {
  double most = 0;
  for (const double place : strip.places) most = std::max(most, std::abs(place));
  return most + strip_end;
}

Drawing gauge_drawing(const PreparedBoard& ready) {
  Drawing drawing{shown_name(ready.board()) + ", gauges",
                  {"True size, millimetres. The radius gauges sit on the board; the strips show the strings' places."},
                  {},
                  {}};
  double y = 0;
  for (const RadiusGauge& gauge : radius_gauges(ready)) {
    y -= gauge_height;
    drawing.layers.push_back({plain_name("gauge-" + gauge.name),
                              "#303030",
                              {{"radius gauge, " + gauge.name, gauge_outline(gauge, {0, y}, gauge_height), true}}});
    y -= drop_of(gauge) + gap;
  }
  for (const StringStrip& strip : string_strips(ready)) {
    y -= strip_height;
    drawing.layers.push_back(strip_layer(strip, y));
    y -= gap;
  }
  Box box;
  bool first = true;
  for (const Layer& layer : drawing.layers) {
    const Box own = bounds(layer.figures.front().pieces);
    box =
        first ? own : Box{{std::min(box.low.x, own.low.x), own.low.y}, {std::max(box.high.x, own.high.x), box.high.y}};
    first = false;
  }
  drawing.page = box;
  return drawing;
}

}  // namespace sagitta
