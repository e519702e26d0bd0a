#include "layout/HeelEnd.hpp"

#include <algorithm>

#include "layout/Frets.hpp"
#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// The end line before its corners are rounded: straight along `direction` through (x, 0), or a circle's arc.
struct Bare {
  double x = 0;           ///< on the centre line
  Point direction{0, 1};  ///< straight: unit vector toward +y
  double radius = 0;      ///< 0: straight
  bool hollow = false;
  Point centre() const { return {hollow ? x + radius : x - radius, 0}; }
};

/// A corner at the edge at negative y; without rounding all three points are one.
struct Corner {
  Point on_edge, centre, on_heel;
  Corner mirrored() const { return {{on_edge.x, -on_edge.y}, {centre.x, -centre.y}, {on_heel.x, -on_heel.y}}; }
};

Corner straight_corner(const Taper& taper, const Bare& heel, double rounding) {
  const Point corner = taper.meet(0, heel.x, heel.direction);
  if (rounding == 0) return {corner, corner, corner};
  const Point u = taper.along(0), v = heel.direction;
  const double tangent = rounding * (1 - dot(u, v)) / cross(u, v);
  const Point on_edge = corner - tangent * u;
  return {on_edge, on_edge + rounding * left_of(u), corner + tangent * v};
}

/// Where the edge at negative y, moved inward by `inward`, meets the circle of `radius` about the heel arc's centre.
std::optional<Point> edge_on_circle(const Taper& taper, const Bare& heel, double inward, double radius) {
  const double centre = heel.centre().x, stretch = taper.stretch(0), slope = taper.slope[0];
  const double half = taper.edge(0, centre) - inward * stretch;
  double room = radius * radius * stretch * stretch - half * half;
  if (std::abs(room) <= tolerance::same) room = 0;
  if (radius <= 0 || room < 0) return std::nullopt;
  const double root = heel.hollow ? -std::sqrt(room) : std::sqrt(room);
  const double x = (-half * slope + root) / (stretch * stretch);
  return Point{centre + x, -(half + slope * x)};
}

std::optional<Corner> arc_corner(const Taper& taper, const Bare& heel, double rounding) {
  const auto sharp = edge_on_circle(taper, heel, 0, heel.radius);
  if (!sharp) return std::nullopt;
  if (rounding == 0) return Corner{*sharp, *sharp, *sharp};
  const auto centre =
      edge_on_circle(taper, heel, rounding, heel.hollow ? heel.radius + rounding : heel.radius - rounding);
  if (!centre) return std::nullopt;
  const Point outward = -1.0 * left_of(taper.along(0));
  return Corner{*centre + rounding * outward, *centre, heel.centre() + heel.radius * unit(*centre - heel.centre())};
}

std::optional<Corner> low_corner(const Taper& taper, const Bare& heel, double rounding) {
  return heel.radius > 0 ? arc_corner(taper, heel, rounding) : straight_corner(taper, heel, rounding);
}

std::optional<Corner> high_corner(const Taper& taper, Bare heel, double rounding) {
  heel.direction.x = -heel.direction.x;
  const auto corner = low_corner(taper.mirrored(), heel, rounding);
  return corner ? std::optional(corner->mirrored()) : std::nullopt;
}

struct Corners {
  Corner low, high;
};

std::optional<Corners> corners(const Taper& taper, const Bare& heel, double rounding, Point nut_low, Point nut_high) {
  const auto low = low_corner(taper, heel, rounding), high = high_corner(taper, heel, rounding);
  if (!low || !high) return std::nullopt;
  if (dot(high->on_heel - low->on_heel, heel.direction) < -tolerance::same) return std::nullopt;
  if (low->on_edge.x <= nut_low.x || high->on_edge.x <= nut_high.x) return std::nullopt;
  return Corners{*low, *high};
}

double largest_rounding(const Taper& taper, const Bare& heel, double too_large, Point nut_low, Point nut_high) {
  double fits = 0;
  for (int i = 0; i < 40; ++i) {
    const double middle = (fits + too_large) / 2;
    (corners(taper, heel, middle, nut_low, nut_high) ? fits : too_large) = middle;
  }
  return std::floor(fits * 100) / 100;
}

std::optional<Bare> bare_heel(const Shape& shape, const Layout& layout, Faults& faults) {
  Bare heel{layout.heel_end, {0, 1}, 0, false};
  if (shape.heel == Heel::fret) heel.direction = direction(layout.frets.back());
  if (shape.heel != Heel::arc && shape.heel != Heel::hollow) return heel;
  if (!shape.heel_arc_radius || *shape.heel_arc_radius <= 0) {
    faults.push_back(
        {FaultCode::missing_key, "board.heel_arc_radius", "a round heel needs the radius of its arc, above 0", ""});
    return std::nullopt;
  }
  heel.radius = *shape.heel_arc_radius;
  heel.hollow = shape.heel == Heel::hollow;
  return heel;
}

HeelEnd joined(const Bare& heel, const Corners& at, double rounding) {
  HeelEnd end{at.low.on_edge, at.high.on_edge, {}};
  const Point low = at.low.on_heel;
  Point high = at.high.on_heel;
  const bool closed = distance(low, high) <= tolerance::same;
  if (closed) high = low;
  const bool rounded = rounding > 0 && distance(low, at.low.on_edge) > tolerance::same;
  if (rounded) end.pieces.push_back(arc_between(at.low.centre, rounding, at.low.on_edge, low, true));
  if (!closed)
    end.pieces.push_back(heel.radius > 0 ? arc_between(heel.centre(), heel.radius, low, high, !heel.hollow)
                                         : line(low, high));
  if (rounded) end.pieces.push_back(arc_between(at.high.centre, rounding, high, at.high.on_edge, true));
  return end;
}

}  // namespace

std::optional<HeelEnd> heel_end(const Board& board, const Layout& layout, const Taper& taper, Point nut_low,
                                Point nut_high, Faults& faults) {
  const auto heel = bare_heel(board.board, layout, faults);
  if (!heel) return std::nullopt;
  if (!corners(taper, *heel, 0, nut_low, nut_high)) {
    if (heel->radius > 0)
      faults.push_back(
          {FaultCode::heel_arc_too_small, "board.heel_arc_radius",
           "an arc of radius " + in_units(board, heel->radius) + " does not reach both edges: the board is " +
               in_units(board, taper.larger_edge(layout.heel_end)) + " wide at the heel on one side of y = 0",
           "give a radius larger than that"});
    else
      faults.push_back({FaultCode::heel_meets_nut, "board.past_last_fret",
                        "the heel end crosses the nut end: nothing is left of an edge", ""});
    return std::nullopt;
  }
  const double rounding = board.board.corner_radius;
  const auto rounded = corners(taper, *heel, rounding, nut_low, nut_high);
  if (rounded) return joined(*heel, *rounded, rounding);
  faults.push_back({FaultCode::corner_too_large, "board.corner_radius",
                    "corners of radius " + in_units(board, rounding) + " do not fit this heel end",
                    "the largest that fit have a radius of " +
                        in_units(board, largest_rounding(taper, *heel, rounding, nut_low, nut_high))});
  return std::nullopt;
}

}  // namespace sagitta
