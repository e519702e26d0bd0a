#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "inlaid/InlayFamilies.hpp"
#include "layout/SlotLines.hpp"
#include "plan/Feature.hpp"
#include "plane/Tolerance.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

constexpr double none = std::numeric_limits<double>::infinity();
/// Points along a side dot's hole and round a pin's.
constexpr int stations = 16;

std::string dot_name(const SideDot& dot) {
  return "the side dot at fret " + std::to_string(dot.fret) + (dot.side > 0 ? " in the treble edge" : "");
}

void judge_dot(const Subject& subject, const SideDot& dot, Judge& judge) {
  const double edge = subject.prepared.surface().height(dot.mouth), z = edge / 2, left = z - dot.radius;
  const Rule& thin = rule("thin-at-side-dot");
  judge.hold(thin, left, {dot.mouth, z, id_of(dot), dot_name(dot)},
             "above and below " + dot_name(dot) + " the edge has " + judge.shown(left) + " of wood left",
             "use side dots at most " + judge.shown(2 * (z - judge.limit(thin))) + " across",
             Fix{"side_dots.diameter", judge.down(2 * (z - judge.limit(thin)))});
}

/// Wood between a side dot's hole and the floors over it, and where; the surface itself is judged at the edge.
void judge_over_dot(const Subject& subject, const SideDot& dot, Judge& judge) {
  const double z = subject.prepared.surface().height(dot.mouth) / 2 + dot.radius;
  double least = none;
  Point at;
  for (int i = 0; i <= stations; ++i)
    for (const double side : {-1.0, 0.0, 1.0}) {
      const Point p = dot.mouth + (dot.depth * i / stations) * dot.inward + (side * dot.radius) * left_of(dot.inward);
      const double floor = lowest_floor(subject, p);
      if (floor < subject.prepared.surface().height(p) && floor - z < least) least = floor - z, at = p;
    }
  if (least == none) return;
  const Rule& near = rule("side-dot-near-cut");
  judge.hold(near, least, {at, z, id_of(dot), dot_name(dot)},
             least > 0 ? "between " + dot_name(dot) + " and the floor of a cut over it only " + judge.shown(least) +
                             " of wood is left"
                       : dot_name(dot) + " breaks into a cut that lies over it",
             "make side_dots.depth smaller, or the dot thinner");
}

/// The binding's ledge over a side dot's hole.
struct LedgeOverDot {
  double least = none;  ///< height of the ledge's floor over the hole's wall, where it is least; < 0: it opens the hole
  bool covers = true;   ///< whether it takes all of the hole as far in as the binding reaches
};

/// `binding`: with a height of its own; its ledge is the surface moved down by that height.
LedgeOverDot ledge_over(const Subject& subject, const Binding& binding, const SideDot& dot) {
  const double z = subject.prepared.surface().height(dot.mouth) / 2, inside = std::min(dot.depth, ledge_width(binding));
  LedgeOverDot over;
  for (int i = 0; i <= stations; ++i)
    for (int k = -stations; k <= stations; ++k) {
      const double aside = dot.radius * k / stations;
      const Point p = dot.mouth + (inside * i / stations) * dot.inward + aside * left_of(dot.inward);
      const double floor = subject.prepared.surface().height(p) - binding.height;
      const double half = std::sqrt(std::max(0.0, dot.radius * dot.radius - aside * aside));
      over.least = std::min(over.least, floor - (z + half));
      over.covers = over.covers && floor <= z - half;
    }
  return over;
}

void judge_ledge(const Subject& subject, const SideDot& dot, const LedgeOverDot& over, Judge& judge) {
  const Rule& opens = rule("side-dot-in-ledge");
  const double most = subject.prepared.board().binding->height + over.least - judge.limit(opens);
  judge.hold(opens, over.least,
             {dot.mouth, subject.prepared.surface().height(dot.mouth) / 2, id_of(dot), dot_name(dot)},
             over.least < 0 ? "the hole of " + dot_name(dot) + " reaches " + judge.shown(-over.least) +
                                  " above the floor of the binding's ledge and opens into it"
                            : "between the hole of " + dot_name(dot) + " and the floor of the binding's ledge only " +
                                  judge.shown(over.least) + " of wood is left",
             most > 0 ? "make binding.height at most " + judge.shown(most) + ", or the side dots smaller"
                      : std::string("make the side dots smaller or the board thicker"),
             judge.down(most) > 0 ? std::optional(Fix{"binding.height", judge.down(most)}) : std::nullopt);
}

/// What is left of a hole behind a binding that takes all of it as far as it reaches. All holes are as deep, so one
/// finding stands for all of them.
void judge_behind_binding(const Subject& subject, const SideDot& first, Judge& judge) {
  const Binding& binding = *subject.prepared.board().binding;
  const double width = ledge_width(binding), left = first.depth - width;
  judge.hold(rule("side-dots-in-binding"), left,
             {first.mouth, subject.prepared.surface().height(first.mouth) / 2, id_of(first), dot_name(first)},
             (binding.lines.empty() ? "the binding is " : "the binding with its lines is ") + judge.shown(width) +
                 " wide and the side dots' holes are " + judge.shown(first.depth) + " deep: " +
                 (left > 0 ? "only " + judge.shown(left) + " of them is in the wood"
                           : std::string("no part of them is in the wood")),
             "make side_dots.depth larger than binding.width by the depth that the dots need in the wood");
}

void judge_dots_in_binding(const Subject& subject, Judge& judge) {
  const std::optional<Binding>& binding = subject.prepared.board().binding;
  if (!binding) return;
  const SideDot* behind = nullptr;
  for (const SideDot& dot : subject.prepared.layout().side_dots) {
    const LedgeOverDot over = binding->height > 0 ? ledge_over(subject, *binding, dot) : LedgeOverDot{};
    if (over.covers && !behind) behind = &dot;
    const bool swallowed = over.covers && dot.depth <= ledge_width(*binding) + tolerance::vertex;
    if (binding->height > 0 && !swallowed) judge_ledge(subject, dot, over, judge);
  }
  if (behind) judge_behind_binding(subject, *behind, judge);
}

/// Dots that are drilled into the binding: how much of it stays under the holes, by the one where that is least.
void judge_binding_under_dots(const Subject& subject, Judge& judge) {
  const Binding& binding = *subject.prepared.board().binding;
  const SideDot* worst = nullptr;
  double least = none;
  for (const SideDot& dot : subject.prepared.layout().side_dots) {
    const double edge = subject.prepared.surface().height(dot.mouth);
    const double bottom = binding.height > 0 ? edge - binding.height : 0;
    if (const double under = edge / 2 - dot.radius - bottom; under < least) least = under, worst = &dot;
  }
  if (!worst) return;
  judge.hold(rule("side-dot-off-binding"), least,
             {worst->mouth, subject.prepared.surface().height(worst->mouth) / 2, id_of(*worst), dot_name(*worst)},
             least > 0 ? "under " + dot_name(*worst) + " only " + judge.shown(least) + " of the binding is left"
                       : dot_name(*worst) + " reaches " + judge.shown(-least) + " below the binding, which is " +
                             judge.shown(binding.height) + " high",
             "make binding.height larger, or the side dots smaller");
}

void judge_over_pin(const Subject& subject, const Pin& pin, const FeatureId& id, const std::string& name,
                    Judge& judge) {
  double least = lowest_floor(subject, pin.centre);
  for (int i = 0; i < stations; ++i)
    least = std::min(least,
                     lowest_floor(subject, pin.centre + turned({pin.radius, 0}, 2 * std::numbers::pi * i / stations)));
  const double over = least - pin.depth;
  const Rule& thin = rule("thin-over-pin");
  const double lack = judge.limit(thin) - over;
  judge.hold(thin, over, {pin.centre, pin.depth, id, name},
             over > 0 ? "over " + name + " only " + judge.shown(over) + " of wood is left"
                      : name + " comes out through what is cut from above",
             "make pins.depth " + judge.shown(lack) + " less, or move the pin",
             Fix{"pins.depth", judge.down(pin.depth - lack)});
}

void judge_pin_edge(const Subject& subject, const Pin& pin, const FeatureId& id, const std::string& name,
                    Judge& judge) {
  double wall = none;
  for (const LineSegment& edge : subject.prepared.layout().edges) {
    const Point along = unit(edge.b - edge.a);
    const double way = std::abs(cross(along, pin.centre - edge.a)) - pin.radius;
    wall = std::min(wall, way);
  }
  const auto& bound = subject.prepared.board().binding;
  const double binding = bound ? ledge_width(*bound) : 0;
  const std::string side = binding > 0 ? "binding" : "edge";
  judge.hold(rule("pin-near-edge"), wall - binding, {pin.centre, 0, id, name},
             wall - binding < 0 ? name + " reaches " + judge.shown(binding - wall) + " over the " + side
                                : "between " + name + " and the " + side + " " + judge.wood_left(wall - binding),
             "move the pin inward by " + judge.shown(judge.limit(rule("pin-near-edge")) - wall + binding));
}

}  // namespace

void judge_holes(const Subject& subject, Judge& judge) {
  const auto& dots = subject.prepared.board().side_dots;
  if (dots && dots->in == DotIn::binding) {
    judge_binding_under_dots(subject, judge);
  } else {
    for (const SideDot& dot : subject.prepared.layout().side_dots) {
      judge_dot(subject, dot, judge);
      judge_over_dot(subject, dot, judge);
    }
    judge_dots_in_binding(subject, judge);
  }
  for (std::size_t i = 0; i < subject.prepared.layout().pins.size(); ++i) {
    const FeatureId id{Kind::pin, static_cast<int>(i)};
    const std::string name = feature_name(id);
    judge_over_pin(subject, subject.prepared.layout().pins[i], id, name, judge);
    judge_pin_edge(subject, subject.prepared.layout().pins[i], id, name, judge);
  }
  const double pins = static_cast<double>(subject.prepared.layout().pins.size());
  judge.hold(rule("few-pins"), pins, {{}, 0, {Kind::glue_face}, "the glue face"},
             "fewer than two locating pins: the board slides on wet glue while it is clamped",
             "put in two pins, or go through two slots with nails of the slot's width");
}

}  // namespace sagitta
