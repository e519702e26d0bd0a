#include "inlay/FittedShape.hpp"

#include <algorithm>

#include "inlay/FitTolerance.hpp"
#include "inlay/Oval.hpp"
#include "layout/Layout.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Arcs that stand for an ellipse, or for the curve beside one, stray from it by no more. A fifth of what a vertex may,
/// so that where others cut them the solid's own curve goes through that vertex too, whatever heights are one there.
/// mm.
constexpr double beside_ellipse = tolerance::vertex / 5;

/// Of shapes with straight sides, and of the dot.
RoundedPolygon core_of(const Inlay& inlay) {
  const double x = inlay.along.value_or(0) / 2, y = inlay.across.value_or(0) / 2;
  switch (inlay.shape) {
    case InlayShape::dot:
      return {{{0, 0}}, inlay.diameter / 2};
    case InlayShape::block:
      return {{{-x, -y}, {x, -y}, {x, y}, {-x, y}}, 0};
    case InlayShape::diamond:
      return {{{-x, 0}, {0, -y}, {x, 0}, {0, y}}, 0};
    case InlayShape::trapezoid: {
      const double n = inlay.across_nut.value_or(0) / 2, h = inlay.across_heel.value_or(0) / 2;
      return {{{-x, -n}, {x, -h}, {x, h}, {-x, n}}, 0};
    }
    default:
      break;
  }
  return {};
}

/// How far a cutter of radius r stays away from the sharpest corner, and which that is: an inside corner of angle a
/// keeps its middle r / sin(a/2) away from its point. 0 for shapes without corners.
std::pair<double, Point> off_corners(const RoundedPolygon& shape, double cutter) {
  const std::size_t n = shape.core.size();
  double sharpest = std::numbers::pi;
  Point at;
  for (std::size_t i = 0; n > 2 && shape.radius == 0 && i < n; ++i) {
    const Point p = shape.core[i], to = unit(shape.core[(i + 1) % n] - p), from = unit(shape.core[(i + n - 1) % n] - p);
    const double angle = std::atan2(cross(to, from), dot(to, from));
    if (angle < sharpest) sharpest = angle, at = p;
  }
  return {cutter * (1 / std::sin(sharpest / 2) - 1), at};
}

/// A point of a shape that is its own mirror image, on the board.
Point placed(const Placement& place, Point p) {
  return place.centre + turned(p, place.mirrored ? -place.turn : place.turn);
}

FittedShape fit(const RoundedPolygon& drawn, double cutter, double clearance, const Placement& place) {
  FittedShape fitted;
  const RoundedPolygon core = shrunk(drawn, cutter);
  if (core.empty()) return fitted;
  const RoundedPolygon pocket = shrunk(core, -(cutter + clearance));
  const double turn = place.mirrored ? -place.turn : place.turn;
  fitted.rounded_pocket = moved(turn == 0 ? pocket : turned(pocket, turn), place.centre);
  fitted.rounded = shrunk(*fitted.rounded_pocket, clearance);
  fitted.piece = {outline(*fitted.rounded)};
  fitted.pocket = {outline(*fitted.rounded_pocket)};
  const auto [departure, at] = off_corners(drawn, cutter);
  fitted.departure = departure;
  fitted.departure_at = placed(place, at);
  return fitted;
}

FittedShape fit(const Oval& oval, double clearance, const Placement& place) {
  FittedShape fitted;
  if (oval.empty()) return fitted;
  fitted.piece = place(Loops{oval.outline(0, beside_ellipse)});
  fitted.pocket = place(Loops{oval.outline(clearance, beside_ellipse)});
  const bool upright = oval.y > oval.x;
  const Point end = upright ? Point{0, oval.y} : Point{oval.x, 0};
  if (oval.whole())
    fitted.ellipse = Ellipse{place.centre, place(end) - place.centre, upright ? oval.x / oval.y : oval.y / oval.x};
  fitted.departure = oval.off_ends();
  fitted.departure_at = place(end);
  return fitted;
}

Oval oval_of(const Inlay& inlay, double cutter) {
  return {inlay.along.value_or(0) / 2, inlay.across.value_or(0) / 2, cutter};
}

}  // namespace

FittedShape fit_shape(const Board& board, const Inlay& inlay, const Placement& place) {
  return fit_shape(inlay, inlay_cutter_radius(board), place);
}

FittedShape fit_shape(const Inlay& inlay, double cutter, const Placement& place) {
  if (inlay.shape == InlayShape::oval) return fit(oval_of(inlay, cutter), inlay.clearance, place);
  return fit(core_of(inlay), cutter, inlay.clearance, place);
}

Loops shape_outline(const Inlay& inlay) {
  if (inlay.shape == InlayShape::oval) return {oval_of(inlay, 0).outline(0, beside_ellipse)};
  return {outline(core_of(inlay))};
}

}  // namespace sagitta
