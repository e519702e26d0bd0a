#include <algorithm>
#include <limits>
#include <numbers>

#include "findings/Work.hpp"
#include "layout/SlotLines.hpp"
#include "plan/Feature.hpp"

namespace sagitta {
namespace {

constexpr double none = std::numeric_limits<double>::infinity();
/// Points along a side dot's hole and round a pin's.
constexpr int stations = 16;

std::string dot_name(const SideDot& dot) { return "the side dot at fret " + std::to_string(dot.fret); }

void judge_dot(const Subject& subject, const SideDot& dot, Judge& judge) {
  const double edge = subject.surface.height(dot.mouth), z = edge / 2, left = z - dot.radius;
  const Rule& thin = rule("thin-at-side-dot");
  judge.hold(thin, left, {dot.mouth, z, dot_name(dot)},
             "above and below " + dot_name(dot) + " the edge has " + judge.shown(left) + " of wood left",
             "use side dots at most " + judge.shown(2 * (z - judge.limit(thin))) + " across",
             Fix{"side_dots.diameter", judge.down(2 * (z - judge.limit(thin)))});
}

/// Wood between a side dot's hole and the floors over it, and where; the surface itself is judged at the edge.
void judge_over_dot(const Subject& subject, const SideDot& dot, Judge& judge) {
  const double z = subject.surface.height(dot.mouth) / 2 + dot.radius;
  double least = none;
  Point at;
  for (int i = 0; i <= stations; ++i)
    for (const double side : {-1.0, 0.0, 1.0}) {
      const Point p = dot.mouth + (dot.depth * i / stations) * dot.inward + (side * dot.radius) * left_of(dot.inward);
      const double floor = lowest_floor(subject, p);
      if (floor < subject.surface.height(p) && floor - z < least) least = floor - z, at = p;
    }
  if (least == none) return;
  const Rule& near = rule("side-dot-near-cut");
  judge.hold(near, least, {at, z, dot_name(dot)},
             least > 0 ? "between " + dot_name(dot) + " and the floor of a cut over it only " + judge.shown(least) +
                             " of wood is left"
                       : dot_name(dot) + " breaks into a cut that lies over it",
             "make side_dots.depth smaller, or the dot thinner");
}

void judge_over_pin(const Subject& subject, const Pin& pin, const std::string& name, Judge& judge) {
  double least = lowest_floor(subject, pin.centre);
  for (int i = 0; i < stations; ++i)
    least = std::min(least,
                     lowest_floor(subject, pin.centre + turned({pin.radius, 0}, 2 * std::numbers::pi * i / stations)));
  const double over = least - pin.depth;
  const Rule& thin = rule("thin-over-pin");
  const double lack = judge.limit(thin) - over;
  judge.hold(thin, over, {pin.centre, pin.depth, name},
             over > 0 ? "over " + name + " only " + judge.shown(over) + " of wood is left"
                      : name + " comes out through what is cut from above",
             "make pins.depth " + judge.shown(lack) + " less, or move the pin",
             Fix{"pins.depth", judge.down(pin.depth - lack)});
}

void judge_pin_edge(const Subject& subject, const Pin& pin, const std::string& name, Judge& judge) {
  double wall = none;
  for (const Segment& edge : subject.layout.edges) {
    const Point along = unit(edge.b - edge.a);
    const double way = std::abs(cross(along, pin.centre - edge.a)) - pin.radius;
    wall = std::min(wall, way);
  }
  const double binding = subject.board.binding ? subject.board.binding->width : 0;
  judge.hold(rule("pin-near-edge"), wall - binding, {pin.centre, 0, name},
             "between " + name + " and the " + (binding > 0 ? "binding" : "edge") + " only " +
                 judge.shown(wall - binding) + " of wood is left",
             "move the pin inward by " + judge.shown(judge.limit(rule("pin-near-edge")) - wall + binding));
}

}  // namespace

void judge_holes(const Subject& subject, Judge& judge) {
  for (const SideDot& dot : subject.layout.side_dots) {
    judge_dot(subject, dot, judge);
    judge_over_dot(subject, dot, judge);
  }
  for (std::size_t i = 0; i < subject.layout.pins.size(); ++i) {
    const std::string name = "pin " + std::to_string(i + 1);
    judge_over_pin(subject, subject.layout.pins[i], name, judge);
    judge_pin_edge(subject, subject.layout.pins[i], name, judge);
  }
  const double pins = static_cast<double>(subject.layout.pins.size());
  judge.hold(rule("few-pins"), pins, {{}, 0, "the glue face"},
             "fewer than two locating pins: the board slides on wet glue while it is clamped",
             "put in two pins, or go through two slots with nails of the slot's width");
}

}  // namespace sagitta
