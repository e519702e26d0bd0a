#include "layout/HeelEnd.hpp"

#include <algorithm>

#include "layout/Frets.hpp"
#include "layout/LastFret.hpp"
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
  const RoundedCorner corner =
      rounded_corner(taper.meet(0, heel.x, heel.direction), taper.along(0), heel.direction, rounding);
  return {corner.begin, corner.centre, corner.end};
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

std::optional<Corners> corners(const Taper& taper, const Bare& heel, double rounding, NutCorners nut) {
  const auto low = low_corner(taper, heel, rounding), high = high_corner(taper, heel, rounding);
  if (!low || !high) return std::nullopt;
  if (dot(high->on_heel - low->on_heel, heel.direction) < -tolerance::same) return std::nullopt;
  if (low->on_edge.x <= nut.low.x || high->on_edge.x <= nut.high.x) return std::nullopt;
  return Corners{*low, *high};
}

double largest_rounding(const Taper& taper, const Bare& heel, double too_large, NutCorners nut) {
  double fits = 0;
  for (int i = 0; i < 40; ++i) {
    const double middle = (fits + too_large) / 2;
    (corners(taper, heel, middle, nut) ? fits : too_large) = middle;
  }
  return std::floor(fits * 100) / 100;
}

std::optional<Bare> bare_heel(const Board& board, const Layout& layout, const Taper& taper, Faults& faults) {
  const Shape& shape = board.board;
  Bare heel{layout.heel_end, straight_heel(board, layout), 0, false};
  if (shape.heel == Heel::slant && !taper.crossed_by(heel.direction)) {
    faults.push_back({FaultCode::end_not_crossing,
                      "board.heel_angle",
                      "a heel end turned by " + plain(*shape.heel_angle) + " degrees does not cross both long edges",
                      "turn it less",
                      {FeatureId::Kind::heel_end}});
    return std::nullopt;
  }
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

void report_no_heel(const Board& board, const Bare& heel, const Layout& layout, const Taper& taper, Faults& faults) {
  if (heel.radius > 0)
    faults.push_back({FaultCode::heel_arc_too_small, "board.heel_arc_radius",
                      "an arc of radius " + in_units(board, heel.radius) + " does not reach both edges: the board is " +
                          in_units(board, taper.larger_edge(layout.heel_end)) +
                          " wide at the heel on one side of y = 0",
                      "give a radius larger than that"});
  else
    faults.push_back({FaultCode::heel_meets_nut, "board.past_last_fret",
                      "the heel end crosses the nut end: nothing is left of an edge", ""});
}

/// A drawn end between the edges, clear of the nut end.
std::optional<HeelEnd> drawn_heel(const Board& board, const DrawnEnd* drawn, const Layout& layout, const Taper& taper,
                                  NutCorners nut, Faults& faults) {
  const auto pieces = placed_end(board, drawn ? *drawn : DrawnEnd{}, layout, taper, faults);
  if (!pieces) return std::nullopt;
  const double nut_end = std::max(nut.low.x, nut.high.x);
  if (bounds(*pieces).low.x <= nut_end + tolerance::snap) {
    faults.push_back({FaultCode::heel_meets_nut, "board.past_last_fret",
                      "the drawn heel end reaches back to the nut end", "make board.past_last_fret larger"});
    return std::nullopt;
  }
  return HeelEnd{pieces->front().a, pieces->back().b, *pieces};
}

}  // namespace

Point straight_heel(const Board& board, const Layout& layout) {
  constexpr double degree = std::numbers::pi / 180;
  if (board.board.heel == Heel::fret) return direction(last_fret(layout));
  if (board.board.heel == Heel::slant) return turned({0, 1}, board.board.heel_angle.value_or(0) * degree);
  return {0, 1};
}

RoundedCorner rounded_corner(Point at, Point u, Point v, double rounding) {
  if (rounding == 0) return {at, at, at};
  const double tangent = rounding * (1 - dot(u, v)) / cross(u, v);
  const Point begin = at - tangent * u;
  return {begin, begin + rounding * left_of(u), at + tangent * v};
}

std::optional<HeelEnd> heel_end(const Board& board, const Layout& layout, const Taper& taper, const DrawnEnd* drawn,
                                NutCorners nut, Faults& faults) {
  if (board.board.heel == Heel::drawn) return drawn_heel(board, drawn, layout, taper, nut, faults);
  const auto heel = bare_heel(board, layout, taper, faults);
  if (!heel) return std::nullopt;
  if (!corners(taper, *heel, 0, nut)) {
    report_no_heel(board, *heel, layout, taper, faults);
    return std::nullopt;
  }
  const double rounding = board.board.corner_radius;
  const auto rounded = corners(taper, *heel, rounding, nut);
  if (rounded) return joined(*heel, *rounded, rounding);
  faults.push_back(
      {FaultCode::corner_too_large, "board.corner_radius",
       "corners of radius " + in_units(board, rounding) + " do not fit this heel end",
       "the largest that fit have a radius of " + in_units_down(board, largest_rounding(taper, *heel, rounding, nut))});
  return std::nullopt;
}

}  // namespace sagitta
