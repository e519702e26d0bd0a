#include "artwork/DxfCurves.hpp"

#include <algorithm>
#include <cmath>

#include "artwork/Colour.hpp"
#include "artwork/Spline.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double degree = pi / 180;

/// Counter-clockwise from one angle to the other: more than nothing, at most a full turn.
double turn_between(double from, double to) {
  const double turn = std::fmod(to - from, 2 * pi);
  return turn <= tolerance::same ? turn + 2 * pi : turn;
}

/// A vertex and the bulge of what follows it: the tangent of a quarter of the arc's angle, counter-clockwise positive.
struct Vertex {
  Point at;
  double bulge = 0;
};

Curve bulged(Point a, Point b, double bulge) {
  if (std::abs(bulge) < tolerance::same) return LineSegment{a, b};
  const Point centre = between(a, b, 0.5) + ((1 - bulge * bulge) / (4 * bulge)) * left_of(b - a);
  const double radius = distance(a, b) * (1 + bulge * bulge) / (4 * std::abs(bulge));
  const Point from = a - centre;
  return EllipseArc{a, b, centre, {radius, 0}, {0, radius}, std::atan2(from.y, from.x), 4 * std::atan(bulge)};
}

Subpath through(const std::vector<Vertex>& vertices, bool closed) {
  Subpath trail;
  trail.closed = closed;
  for (std::size_t i = 0; i < vertices.size(); ++i) {
    if (i + 1 == vertices.size() && !closed) break;
    const Vertex& next = vertices[(i + 1) % vertices.size()];
    if (next.at != vertices[i].at) trail.curves.push_back(bulged(vertices[i].at, next.at, vertices[i].bulge));
  }
  return trail;
}

Subpath light_polyline(const DxfEntity& entity) {
  std::vector<Vertex> vertices;
  double x = 0;
  for (const DxfTag& tag : entity.tags) {
    if (tag.code != 10 && tag.code != 20 && tag.code != 42) continue;
    const double value = DxfEntity{{}, 1, {tag}, {}}.number(tag.code);
    if (tag.code == 10) x = value;
    if (tag.code == 20) vertices.push_back({{x, value}, 0});
    if (tag.code == 42 && !vertices.empty()) vertices.back().bulge = value;
  }
  return through(vertices, (entity.whole(70) & 1) != 0);
}

std::variant<Subpath, std::string> old_polyline(const DxfEntity& entity) {
  const int flags = entity.whole(70);
  if (flags & (16 | 64)) return std::string("a mesh is no outline and was left out");
  std::vector<Vertex> vertices;
  for (const DxfEntity& part : entity.parts) {
    const bool frame = (part.whole(70) & 16) != 0;  // the poles of a spline that the other vertices follow
    if (part.type == "VERTEX" && !frame) vertices.push_back({part.point(10), part.number(42)});
  }
  return through(vertices, (flags & 1) != 0);
}

/// Full ellipses and circles close by themselves.
Subpath around(const EllipseArc& arc) { return {{arc}, std::abs(arc.sweep) > 2 * pi - tolerance::same}; }

Subpath ellipse(const DxfEntity& entity) {
  const Point major = entity.point(11);
  const double side = entity.number(230, 1) < 0 ? -1 : 1;
  const Point minor = (side * entity.number(40, 1)) * left_of(major);
  const double start = entity.number(41), end = entity.number(42, 2 * pi);
  return around(ellipse_arc(entity.point(10), major, minor, start, turn_between(start, end)));
}

std::variant<Subpath, std::string> spline(const DxfEntity& entity) {
  Spline one;
  one.degree = entity.whole(71, 3);
  one.knots = entity.numbers(40);
  one.weights = entity.numbers(41);
  const std::vector<double> x = entity.numbers(10), y = entity.numbers(20);
  for (std::size_t i = 0; i < std::min(x.size(), y.size()); ++i) one.poles.push_back({x[i], y[i]});
  if (one.poles.empty()) return std::string("a spline that is known only by points on it was left out");
  const auto pieces = beziers(one);
  if (!pieces) return std::string("a spline whose knots do not fit its control points was left out");
  Subpath trail;
  for (const Bezier& piece : *pieces) trail.curves.emplace_back(piece);
  return trail;
}

}  // namespace

bool is_dxf_curve(const DxfEntity& entity) {
  for (const char* type : {"LINE", "ARC", "CIRCLE", "LWPOLYLINE", "POLYLINE", "ELLIPSE", "SPLINE"})
    if (entity.type == type) return true;
  return false;
}

std::variant<Subpath, std::string> dxf_curves(const DxfEntity& entity) {
  const double radius = entity.number(40);
  if ((entity.type == "CIRCLE" || entity.type == "ARC") && radius <= 0)
    return std::string("a circle without a radius was left out");
  if (entity.type == "LINE") return Subpath{{LineSegment{entity.point(10), entity.point(11)}}, false};
  if (entity.type == "CIRCLE") return around(ellipse_arc(entity.point(10), {radius, 0}, {0, radius}, 0, 2 * pi));
  if (entity.type == "ARC") {
    const double start = std::fmod(entity.number(50), 360) * degree, end = std::fmod(entity.number(51), 360) * degree;
    return around(ellipse_arc(entity.point(10), {radius, 0}, {0, radius}, start, turn_between(start, end)));
  }
  if (entity.type == "LWPOLYLINE") return light_polyline(entity);
  if (entity.type == "POLYLINE") return old_polyline(entity);
  if (entity.type == "ELLIPSE") return ellipse(entity);
  return spline(entity);
}

std::optional<Affine> dxf_plane(const DxfEntity& entity) {
  const double x = entity.number(210), y = entity.number(220), z = entity.number(230, 1);
  if (std::abs(x) > tolerance::height || std::abs(y) > tolerance::height || z == 0) return std::nullopt;
  const bool in_space = entity.type == "LINE" || entity.type == "SPLINE" || entity.type == "ELLIPSE" ||
                        (entity.type == "POLYLINE" && (entity.whole(70) & 8) != 0);
  return z < 0 && !in_space ? scale_by(-1, 1) : Affine{};
}

std::string index_colour(int index) {
  constexpr int first[10][3] = {{0, 0, 0},   {255, 0, 0},   {255, 255, 0}, {0, 255, 0},     {0, 255, 255},
                                {0, 0, 255}, {255, 0, 255}, {0, 0, 0},     {128, 128, 128}, {192, 192, 192}};
  if (index >= 0 && index < 10) return colour_code(first[index][0], first[index][1], first[index][2]);
  if (index >= 250) {
    constexpr int greys[6] = {0, 101, 102, 153, 204, 255};
    const int grey = greys[std::min(index, 255) - 250];
    return colour_code(grey, grey, grey);
  }
  // a wheel of 24 hues, five brightnesses, each full and half strong
  constexpr double brightness[5] = {1, 0.65, 0.5, 0.3, 0.15};
  const double top = 255 * brightness[index % 10 / 2];
  const double hue = (index - 10) / 10 / 4.0;  // in sixths of the wheel
  const auto part = [&](double shift) {
    const double away = std::abs(std::remainder(hue - shift, 6));
    const double strength = std::clamp(2 - away, 0.0, 1.0);
    return static_cast<int>(top * (index % 2 ? (1 + strength) / 2 : strength));
  };
  return colour_code(part(0), part(2), part(4));
}

}  // namespace sagitta
