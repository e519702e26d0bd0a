#include "surface/FloorCheck.hpp"

#include <algorithm>
#include <limits>

#include "board/CutSide.hpp"
#include "layout/Measure.hpp"
#include "layout/SlotLines.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double least = tolerance::least_floor - tolerance::same;

/// "leaves 0.2 mm", or that nothing is left.
std::string left_over(const Board& board, double mm) {
  return mm > 0 ? "leaves " + in_units_down(board, mm) : std::string("leaves nothing");
}

void check_level(const Board& board, const std::string& key, const std::string& what, double thickness, double depth,
                 Faults& faults) {
  if (thickness - depth >= least) return;
  faults.push_back({FaultCode::floor_too_low, key,
                    what + " " + in_units(board, depth) + " deep " + left_over(board, thickness - depth) +
                        " of a board " + in_units(board, thickness) + " thick; the least is " +
                        in_units(board, tolerance::least_floor),
                    "cut no deeper than " + in_units_down(board, thickness - tolerance::least_floor)});
}

/// The lowest height of the surface along the two ends of a slot.
double lowest_over(const Layout& layout, const Surface& surface, const Slot& slot) {
  double height = std::numeric_limits<double>::infinity();
  for (Point p : slot_shape(layout, slot).core) height = std::min(height, surface.height(p));
  return height;
}

void check_slots(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  const double depth = slot_depth(board);
  if (board.slots.floor == SlotFloor::level)
    return check_level(board, "slots.depth", "a level slot", surface.thickness, depth, faults);
  for (const Slot& slot : layout.slots) {
    const double height = lowest_over(layout, surface, slot);
    if (height - depth >= least) continue;
    faults.push_back({FaultCode::floor_too_low, "slots.depth",
                      slot_name(slot) + ", " + in_units(board, depth) + " deep, " + left_over(board, height - depth) +
                          " under its lower end, where the board is " + in_units(board, height) +
                          " thick; the least is " + in_units(board, tolerance::least_floor),
                      "cut shallower slots, or use a thicker board or a larger radius"});
    return;
  }
}

/// A floor that follows the surface is lowest where the outline is: it runs on behind the nut's face.
void check_nut(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  if (board.nut.floor == NutFloor::level)
    return check_level(board, "nut.depth", "a seat for the nut", surface.thickness, board.nut.depth, faults);
  double height = std::numeric_limits<double>::infinity();
  const Point face = layout.nut->face, back = layout.nut->shelf ? Point{layout.nut_end, 0} : layout.nut->back;
  for (const LineSegment& edge : layout.edges)
    for (const Point on : {face, back}) {
      const Point way = edge.b - edge.a, across = layout.nut->direction;
      height = std::min(height, surface.height(edge.a + (cross(on - edge.a, across) / cross(way, across)) * way));
    }
  if (height - board.nut.depth >= least) return;
  faults.push_back({FaultCode::floor_too_low, "nut.depth",
                    "a seat for the nut " + in_units(board, board.nut.depth) + " deep leaves " +
                        in_units_down(board, height - board.nut.depth) +
                        " under its floor at an edge, where the board is " + in_units(board, height) +
                        " thick; the least is " + in_units(board, tolerance::least_floor),
                    "cut a shallower seat, or use a thicker board or a larger radius"});
}

void check_binding(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  if (!board.binding || board.binding->height == 0) return;
  double height = std::numeric_limits<double>::infinity();
  for (const LineSegment& edge : layout.edges)
    for (int i = 0; i <= 16; ++i) height = std::min(height, surface.height(between(edge.a, edge.b, i / 16.0)));
  if (height - board.binding->height >= least) return;
  faults.push_back({FaultCode::floor_too_low, "binding.height",
                    "a binding " + in_units(board, board.binding->height) + " high " +
                        left_over(board, height - board.binding->height) + " under it: the edge is " +
                        in_units(board, height) + " high at its lowest; the least is " +
                        in_units(board, tolerance::least_floor),
                    "use a lower binding, or height = 0 for one that goes all the way"});
}

/// Height of the surface over the part of the hole that is nearest to the centre line: where most wood is left.
double highest_over(const Surface& surface, const Pin& pin) {
  const double y = std::max(0.0, std::abs(pin.centre.y) - pin.radius);
  double height = -std::numeric_limits<double>::infinity();
  for (double x : {pin.centre.x - pin.radius, pin.centre.x, pin.centre.x + pin.radius})
    if (surface.exists(x, y)) height = std::max(height, surface.height(x, y));
  return height;
}

void check_pins(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  for (std::size_t i = 0; i < layout.pins.size(); ++i) {
    const Pin& pin = layout.pins[i];
    if (!bounds(layout.outline).overlaps(bounds(circle(pin.centre, pin.radius)))) continue;
    const double height = highest_over(surface, pin);
    if (pin.depth < height - tolerance::snap) continue;
    faults.push_back({FaultCode::pin_through,
                      "pins.depth",
                      "pin " + std::to_string(i + 1) + ", " + in_units(board, pin.depth) +
                          " deep, comes out at the top: " +
                          (height > 0 ? "the board is " + in_units(board, height) + " thick there"
                                      : std::string("nothing is left of the board there")),
                      "make pins.depth smaller",
                      {FeatureId::Kind::pin, static_cast<int>(i)}});
    return;
  }
}

void check_side_dots(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  for (const SideDot& dot : layout.side_dots) {
    const double height = surface.height(dot.mouth);
    if (height / 2 - dot.radius >= tolerance::least_floor) continue;
    faults.push_back({FaultCode::side_dot_too_large, "side_dots.diameter",
                      "side dots of " + in_units(board, 2 * dot.radius) + " do not fit in the edge, which is " +
                          in_units(board, height) + " high at space " + std::to_string(dot.fret) +
                          "; the least to be left above and below is " + in_units(board, tolerance::least_floor),
                      height > 2 * tolerance::least_floor
                          ? "use side dots of at most " + in_units_down(board, height - 2 * tolerance::least_floor)
                          : std::string("leave out the side dots, or use a thicker board")});
    return;
  }
}

}  // namespace

void check_floors(const Board& board, const Layout& layout, const Surface& surface, Faults& faults) {
  for (std::size_t i = 0; i < board.inlays.size(); ++i)
    check_level(board, "inlays[" + std::to_string(i) + "].depth", "a pocket", surface.thickness, board.inlays[i].depth,
                faults);
  for (std::size_t i = 0; i < board.cuts.size(); ++i)
    if (!is_through(board.cuts[i]) && !is_from_below(board.cuts[i]))
      check_level(board, "cuts[" + std::to_string(i) + "].depth", "a cut", surface.thickness, board.cuts[i].depth,
                  faults);
  if (layout.nut) check_nut(board, layout, surface, faults);
  check_slots(board, layout, surface, faults);
  check_binding(board, layout, surface, faults);
  check_pins(board, layout, surface, faults);
  check_side_dots(board, layout, surface, faults);
}

}  // namespace sagitta
