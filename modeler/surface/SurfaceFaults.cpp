#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "layout/Measure.hpp"
#include "layout/Taper.hpp"
#include "plane/Tolerance.hpp"
#include "surface/FloorCheck.hpp"
#include "surface/FormCheck.hpp"
#include "surface/Surface.hpp"

namespace sagitta {
namespace {

/// Points of the outline close enough to find where the surface is lowest: all corners, and points along each piece.
/// Along a straight line a surface with linear R is lowest at an end; along arcs and on even-edge it may be between.
std::vector<Point> rim(const Layout& layout) {
  constexpr int steps = 16;
  std::vector<Point> points;
  for (const CurveSegment& segment : layout.outline)
    for (int i = 0; i < steps; ++i) points.push_back(segment.at(static_cast<double>(i) / steps));
  return points;
}

const char* radius_key(const Board& board, double x, const Layout& layout) {
  const bool heel = board.surface.profile == Profile::compound && x > layout.heel_end / 2;
  return heel ? "surface.radius_at_heel" : "surface.radius_at_nut";
}

/// The point where the radius falls shortest of |y|, when it does not exceed it.
std::optional<Point> missing(const Surface& surface, const std::vector<Point>& points) {
  std::optional<Point> worst;
  double least = tolerance::same;
  for (Point p : points) {
    const double room = surface.radius(p.x) - std::abs(p.y);
    if (surface.flat || room > least) continue;
    least = room;
    worst = p;
  }
  return worst;
}

std::string shortfall(const Board& board, const Surface& surface, Point p) {
  return "at x = " + number_in_units(board, p.x) + " the radius is " + in_units_down(board, surface.radius(p.x));
}

bool check_existence(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  if (board.surface.profile == Profile::string_line && !(layout.spread_at_nut > 0)) {
    faults.push_back({FaultCode::strings_cross, "surface.profile",
                      "a string-line surface needs outer strings that lie apart at the nut",
                      "choose the profile single or compound"});
    return false;
  }
  if (board.surface.profile == Profile::even_edge && !taper_in(layout).symmetric()) {
    faults.push_back({FaultCode::edges_differ, "surface.profile",
                      "an even-edge surface keeps one height along both edges, but the margins at the bass and the "
                      "treble edge differ: the surface would be lower at the wider side",
                      "choose the profile single, compound or string-line, or make both margins the same"});
    return false;
  }
  if (board.surface.profile == Profile::even_edge && !(surface.r0 > layout.half_width_at_nut)) {
    faults.push_back({FaultCode::no_surface, "surface.radius_at_nut",
                      "there is no such playing surface: the radius is " + in_units(board, surface.r0) +
                          ", not more than half the board's width at the nut, " +
                          in_units(board, layout.half_width_at_nut),
                      "use a larger radius"});
    return false;
  }
  const auto gone = missing(surface, rim(layout));
  if (!gone) return true;
  faults.push_back({FaultCode::no_surface, radius_key(board, gone->x, layout),
                    "there is no such playing surface: " + shortfall(board, surface, *gone) +
                        ", not more than the distance of the edge from the middle line there, " +
                        in_units(board, std::abs(gone->y)),
                    "use a larger radius or a narrower board"});
  return false;
}

void check_thickness(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  const std::vector<Point> points = rim(layout);
  const Point low = *std::min_element(points.begin(), points.end(),
                                      [&](Point a, Point b) { return surface.height(a) < surface.height(b); });
  const double height = surface.height(low);
  if (height >= tolerance::least_floor - tolerance::same) return;
  faults.push_back(
      {FaultCode::floor_too_low, "board.thickness",
       (height > 0 ? "the board is only " + in_units_down(board, height) + " thick at its edge"
                   : "nothing is left of the board's thickness at its edge, which the playing surface reaches " +
                         in_units(board, -height) + " too low") +
           " (x = " + number_in_units(board, low.x) + ", y = " + number_in_units(board, low.y) + "); the least is " +
           in_units(board, tolerance::least_floor),
       "use a thicker board, a larger radius or less fall"});
}

/// The radius is cut over a strip wider than the board; the board itself is known to be sound here.
void check_strip(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  const Box& strip = layout.strip;
  const std::vector<Point> corners{strip.low, {strip.high.x, strip.low.y}, strip.high, {strip.low.x, strip.high.y}};
  std::vector<Point> sides = corners;
  for (int i = 1; i < 16; ++i) sides.push_back(between(strip.low, {strip.high.x, strip.low.y}, i / 16.0));
  for (int i = 1; i < 16; ++i) sides.push_back(between({strip.low.x, strip.high.y}, strip.high, i / 16.0));
  const std::string area = "the board itself is sound, but the radius is cut over a rectangle " +
                           in_units(board, bounds(layout.outline).low.x - strip.low.x) + " larger all round, " +
                           in_units(board, strip.high.y - strip.low.y) + " wide";
  if (const auto gone = missing(surface, sides)) {
    faults.push_back({FaultCode::no_surface_beside, radius_key(board, gone->x, layout),
                      area + ", and there is no such surface there: " + shortfall(board, surface, *gone) +
                          ", not more than the distance of its side from the middle line, " +
                          in_units(board, std::abs(gone->y)),
                      "use a radius above " + in_units_up(board, std::abs(gone->y)) + " there, or a narrower board"});
    return;
  }
  const Point low = *std::min_element(sides.begin(), sides.end(),
                                      [&](Point a, Point b) { return surface.height(a) < surface.height(b); });
  if (surface.height(low) > tolerance::snap) return;
  faults.push_back({FaultCode::cuts_into_bed, radius_key(board, low.x, layout),
                    area + ", and at x = " + number_in_units(board, low.x) + " it would cut " +
                        in_units(board, -surface.height(low)) + " into the bed under the blank",
                    "use a larger radius or a thicker board"});
}

}  // namespace

Faults surface_faults(const Board& board, const Layout& layout, const Surface& surface) {
  Faults faults;
  if (!check_existence(board, layout, surface, faults)) return faults;
  const std::size_t before = faults.size();
  check_thickness(board, layout, surface, faults);
  check_floors(board, layout, surface, faults);
  check_forms(board, layout, surface, faults);
  if (faults.size() == before) check_strip(board, layout, surface, faults);
  return faults;
}

}  // namespace sagitta
