#include "artwork/SvgBasics.hpp"

#include <pugixml.hpp>

#include "artwork/SvgPath.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;
using EdgePolylines = std::variant<std::vector<Subpath>, std::string>;

/// Lengths out of an element's attributes; remembers the first that cannot be read.
struct Lengths {
  const pugi::xml_node& element;
  const Viewport& viewport;
  std::string error;

  bool has(const char* name) const {
    return element.attribute(name) && std::string_view(element.attribute(name).value()) != "auto";
  }

  double operator()(const char* name, Along along, bool size = false) {
    if (!has(name)) return 0;
    const std::string_view text = element.attribute(name).value();
    const auto value = svg_length(text, viewport, along);
    const std::string shown = std::string(name) + "=\"" + std::string(text.substr(0, 40)) + "\"";
    if (!value && error.empty()) error = shown + " is no length that is read here";
    if (value && size && *value < 0 && error.empty()) error = shown + " is negative";
    return value.value_or(0);
  }
};

std::vector<Subpath> closed(std::vector<Curve> curves) { return {Subpath{std::move(curves), true}}; }

/// Section 9.2: a side, then the corner that follows it.
std::vector<Subpath> rectangle_trail(Point low, Point size, double rx, double ry) {
  const Point high = low + size;
  std::vector<Curve> curves;
  Point at{low.x + rx, low.y};
  const auto side = [&](Point to) {
    if (at != to) curves.emplace_back(LineSegment{at, to});
    at = to;
  };
  const auto corner = [&](Point to) {
    if (rx > 0 && ry > 0) curves.push_back(svg_arc(at, to, rx, ry, 0, false, true));
    at = to;
  };
  side({high.x - rx, low.y});
  corner({high.x, low.y + ry});
  side({high.x, high.y - ry});
  corner({high.x - rx, high.y});
  side({low.x + rx, high.y});
  corner({low.x, high.y - ry});
  side({low.x, low.y + ry});
  corner({low.x + rx, low.y});
  return closed(std::move(curves));
}

EdgePolylines rectangle_of(Lengths& length) {
  const Point low{length("x", Along::x), length("y", Along::y)};
  const Point size{length("width", Along::x, true), length("height", Along::y, true)};
  double rx = length("rx", Along::x, true), ry = length("ry", Along::y, true);
  if (!length.has("rx")) rx = ry;
  if (!length.has("ry")) ry = rx;
  if (!length.error.empty()) return length.error;
  if (size.x == 0 || size.y == 0) return std::vector<Subpath>{};
  return rectangle_trail(low, size, std::min(rx, size.x / 2), std::min(ry, size.y / 2));
}

EdgePolylines ellipse_of(Lengths& length, bool circle) {
  const Point centre{length("cx", Along::x), length("cy", Along::y)};
  const double rx = circle ? length("r", Along::both, true) : length("rx", Along::x, true);
  const double ry = circle ? rx : length("ry", Along::y, true);
  if (!length.error.empty()) return length.error;
  if (rx == 0 || ry == 0) return std::vector<Subpath>{};
  return closed({ellipse_arc(centre, {rx, 0}, {0, ry}, 0, 2 * pi)});
}

EdgePolylines line_of(Lengths& length) {
  const Point a{length("x1", Along::x), length("y1", Along::y)}, b{length("x2", Along::x), length("y2", Along::y)};
  if (!length.error.empty()) return length.error;
  return std::vector<Subpath>{{{LineSegment{a, b}}, false}};
}

}  // namespace

bool is_basic_shape(std::string_view name) {
  return name == "path" || name == "rect" || name == "circle" || name == "ellipse" || name == "line" ||
         name == "polyline" || name == "polygon";
}

EdgePolylines basic_shape(const pugi::xml_node& element, std::string_view name, const Viewport& viewport) {
  Lengths length{element, viewport, {}};
  if (name == "rect") return rectangle_of(length);
  if (name == "circle" || name == "ellipse") return ellipse_of(length, name == "circle");
  if (name == "line") return line_of(length);
  const auto wrong = [](const PathError& error, const char* attribute) {
    return std::string(attribute) + ", character " + std::to_string(error.at + 1) + ": " + error.message;
  };
  if (name == "path") {
    auto read = read_path(element.attribute("d").value());
    if (const auto* error = std::get_if<PathError>(&read)) return wrong(*error, "d");
    return std::move(std::get<0>(read));
  }
  auto read = read_points(element.attribute("points").value(), name == "polygon");
  if (const auto* error = std::get_if<PathError>(&read)) return wrong(*error, "points");
  return std::vector<Subpath>{std::move(std::get<0>(read))};
}

}  // namespace sagitta
