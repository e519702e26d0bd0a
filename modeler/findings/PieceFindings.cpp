#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <set>

#include "findings/Work.hpp"
#include "layout/SlotLines.hpp"
#include "plan/Feature.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// The smallest part of a piece that a slot leaves standing on one of its sides, square to the slot.
double sliver(const Rounded& piece, const Slot& slot) {
  const Point across = left_of(unit(slot.treble_end - slot.bass_end));
  const double middle = dot(across, slot.bass_end);
  double least = std::numeric_limits<double>::infinity();
  for (const double side : {1.0, -1.0}) {
    const double part = support(piece, side * across) - side * middle - slot.width / 2;
    if (part > 0) least = std::min(least, part);
  }
  return least;
}

void judge_slots(const Subject& subject, const SimpleInlay& let, Judge& judge) {
  const Rounded piece = shrunk(let.pocket, let.inlay->clearance);
  const std::string name = inlay_name(*let.marker);
  for (const Slot& slot : subject.layout.slots) {
    if (piece.empty() || distance(piece, slot_shape(subject.layout, slot)) >= 0) continue;
    const Point at{let.marker->centre};
    const Spot spot{at, subject.surface.height(at), id_of(*let.marker), name};
    const double left = sliver(piece, slot),
                 stands = proud_at(subject, let.inlay->depth, piece_thickness(*let.inlay), at);
    judge.hold(rule("inlay-sliver"), left, spot,
               slot_name(slot) + " cuts a sliver " + judge.shown(left) + " wide off " + name,
               "shift it, or let it end well before or well behind the slot");
    judge.hold(rule("proud-in-slot-path"), stands, spot,
               name + " stands " + judge.shown(stands) + " proud when " + slot_name(slot) + " is cut through it",
               "level the pieces before slotting: put \"radius\" between \"inlay\" and \"slots\" in work.order");
  }
}

void judge_pair(const Subject& subject, const SimpleInlay& one, const SimpleInlay& other, Judge& judge) {
  // The same pocket from two inlays is one pocket.
  if (one.pocket == other.pocket) return;
  const double wall = distance(one.pocket, other.pocket);
  const Rule& close = rule("inlays-close");
  if (!judge.breaks(close, wall)) return;
  const Point at = between(one.marker->centre, other.marker->centre, 0.5);
  const std::string a = inlay_name(*one.marker), b = inlay_name(*other.marker);
  judge.hold(close, wall, {at, subject.surface.height(at), id_of(*other.marker), b},
             wall > 0 ? "between " + a + " and " + b + " only " + judge.shown(wall) + " of wood is left"
                      : a + " and " + b + " overlap by " + judge.shown(-wall) + ": there is no wood between them",
             "move them " + judge.shown(judge.limit(close) - wall) + " apart");
}

void judge_neighbours(const Subject& subject, Judge& judge) {
  const double limit = std::max(judge.limit(rule("inlays-close")), 0.0);
  for (std::size_t i = 0; i < subject.simple.size(); ++i)
    for (const int k : subject.simple_places.near(subject.simple_boxes[i], limit + tolerance::same))
      if (const auto other = static_cast<std::size_t>(k); other > i)
        judge_pair(subject, subject.simple[i], subject.simple[other], judge);
}

/// Sharpest corner of a shape as drawn, in radians; pi for one without corners.
double sharpest(const Inlay& inlay) {
  const double along = inlay.along.value_or(1), across = inlay.across.value_or(1);
  switch (inlay.shape) {
    case InlayShape::block:
      return std::numbers::pi / 2;
    case InlayShape::diamond:
      return 2 * std::atan(std::min(along, across) / std::max(along, across));
    case InlayShape::trapezoid:
      return std::atan2(along, std::abs(*inlay.across_heel - *inlay.across_nut) / 2);
    default:
      return std::numbers::pi;
  }
}

void judge_corners(const Subject& subject, Judge& judge) {
  const double cutter = inlay_cutter_radius(subject.board);
  std::set<int> told;
  for (const SimpleInlay& let : subject.simple) {
    if (!told.insert(let.marker->inlay).second) continue;
    // An inside corner of angle a keeps the middle of a round cutter r / sin(a/2) away from its point.
    const double off = cutter * (1 / std::sin(sharpest(*let.inlay) / 2) - 1);
    const Point at = let.marker->centre;
    judge.hold(rule("corner-rounded"), off,
               {at, subject.surface.height(at), id_of(*let.marker), inlay_name(*let.marker)},
               "a cutter of radius " + judge.shown(cutter) + " stays " + judge.shown(off) +
                   " away from the corners of " + inlay_name(*let.marker) + ": pocket and piece get round corners",
               "name a smaller cutter for pocket-detail and piece, or finish the corners by hand");
  }
}

}  // namespace

void judge_pieces(const Subject& subject, Judge& judge) {
  for (const SimpleInlay& let : subject.simple) judge_slots(subject, let, judge);
  judge_neighbours(subject, judge);
  judge_corners(subject, judge);
}

}  // namespace sagitta
