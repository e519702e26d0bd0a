#include <algorithm>
#include <limits>

#include "findings/Work.hpp"
#include "layout/SlotLines.hpp"
#include "plan/Feature.hpp"

namespace sagitta {
namespace {

/// One pocket and its piece. Heights are above the pocket's floor.
struct Let {
  const Marker& marker;
  const Inlay& inlay;
  Rounded pocket;
  std::string name;
};

/// Points of a piece of outline; the surface bends by less than 0.001 mm between them.
constexpr int stations = 16;

void judge_piece(const Subject& subject, const Let& let, Judge& judge) {
  const double floor = subject.surface.thickness - let.inlay.depth;
  // The piece, not its pocket: the clearance is filled with glue.
  const Loop loop = outline(shrunk(let.pocket, let.inlay.clearance));
  double least = std::numeric_limits<double>::infinity();
  double most = subject.surface.height(let.marker.centre) - floor;
  Point thin;
  for (const Piece& piece : loop)
    for (int i = 0; i <= stations; ++i) {
      const Point p = piece.at(1.0 * i / stations);
      const double left = subject.surface.height(p) - floor;
      if (left < least) least = left, thin = p;
      most = std::max(most, left);
    }
  const Spot spot{thin, floor + least, id_of(let.marker), let.name};
  // A piece of its own thickness does not follow the pocket down.
  std::optional<Fix> deepen;
  if (!let.inlay.piece_thickness)
    deepen =
        Fix{inlay_key(let.marker, "depth"), judge.up(let.inlay.depth + judge.limit(rule("inlay-too-thin")) - least)};
  const std::string deeper = "make the pocket and the piece " +
                             judge.shown(judge.limit(rule("inlay-too-thin")) - least) +
                             " thicker, or the piece narrower";
  if (!judge.hold(rule("inlay-sanded-through"), least, spot,
                  "the radius goes through " + let.name + ": at its outer rim it is cut " + judge.shown(-least) +
                      " deeper than the pocket, and the piece is lost",
                  deeper, deepen))
    judge.hold(rule("inlay-too-thin"), least, spot,
               let.name + " is only " + judge.shown(least) + " thick at its outer rim after the radius is cut", deeper,
               deepen);
  const double thickness = let.inlay.piece_thickness.value_or(let.inlay.depth + 0.2);
  const Rule& deep = rule("pocket-too-deep");
  judge.hold(deep, thickness - most, {let.marker.centre, floor, id_of(let.marker), let.name},
             "the pocket of " + let.name + " is " + judge.shown(most) + " deep and the piece " +
                 judge.shown(thickness) + " thick: it will lie " +
                 (thickness < most ? "below the surface" : "too low to be sanded flush"),
             "make the pocket " + judge.shown(judge.limit(deep) - (thickness - most)) + " shallower",
             Fix{inlay_key(let.marker, "depth"), judge.down(let.inlay.depth - judge.limit(deep) + thickness - most)});
}

/// A dot made smaller, so that its wall grows by `lack`.
std::optional<Fix> smaller_dot(const Let& let, double lack, const Judge& judge) {
  if (let.inlay.shape != InlayShape::dot) return {};
  return Fix{inlay_key(let.marker, "diameter"), judge.down(let.inlay.diameter - 2 * lack)};
}

void judge_slot_wall(const Subject& subject, const Let& let, Judge& judge) {
  const Slot* nearest = nullptr;
  double wall = std::numeric_limits<double>::infinity();
  for (const Slot& slot : subject.layout.slots) {
    const double way = distance(let.pocket, slot_shape(subject.layout, slot));
    if (way < wall) wall = way, nearest = &slot;
  }
  if (!nearest) return;
  const Spot spot{let.marker.centre, subject.surface.height(let.marker.centre), id_of(let.marker), let.name};
  if (judge.hold(rule("inlay-on-slot"), wall, spot,
                 let.name + " lies on " + slot_name(*nearest) + ", by " + judge.shown(-wall) +
                     ": the slot cuts the piece and the fret has no wood to hold it",
                 "make it smaller or shift it by " + judge.shown(-wall),
                 smaller_dot(let, judge.limit(rule("inlay-on-slot")) - wall, judge)) ||
      wall <= 0)
    return;
  const double sure = wall - reclamp_loss(subject.board, Operation::pockets, Operation::slots);
  judge.hold(rule("thin-wall-at-slot"), sure, spot,
             "between " + let.name + " and " + slot_name(*nearest) + " only " + judge.shown(sure) +
                 " of wood is sure to stay: it may break out when the fret goes in",
             "make it " + judge.shown(2 * (judge.limit(rule("thin-wall-at-slot")) - sure)) + " shorter along the board",
             smaller_dot(let, judge.limit(rule("thin-wall-at-slot")) - sure, judge));
}

void judge_edge_wall(const Subject& subject, const Let& let, Judge& judge) {
  double wall = std::numeric_limits<double>::infinity();
  for (const Segment& edge : subject.layout.edges) {
    const Point along = unit(edge.b - edge.a);
    const Point out =
        edge.a.y + edge.b.y < 0 ? (along.x > 0 ? -1 : 1) * left_of(along) : (along.x > 0 ? 1 : -1) * left_of(along);
    wall = std::min(wall, dot(out, edge.a) - support(let.pocket, out));
  }
  const double binding = subject.board.binding ? subject.board.binding->width : 0;
  const double sure = wall - binding - reclamp_loss(subject.board, Operation::pockets, Operation::outline);
  const double lack = judge.limit(rule("thin-wall-at-edge")) - sure;
  judge.hold(rule("thin-wall-at-edge"), sure,
             {let.marker.centre, subject.surface.height(let.marker.centre), id_of(let.marker), let.name},
             "between " + let.name + " and the " + (binding > 0 ? "binding" : "edge") + " only " + judge.shown(sure) +
                 " of wood is sure to stay: it may break out",
             "make it narrower or shift it by " + judge.shown(lack), smaller_dot(let, lack, judge));
}

}  // namespace

std::string inlay_name(const Marker& marker) {
  return "inlay " + std::to_string(marker.inlay + 1) + " at fret " + std::to_string(marker.fret);
}

std::string inlay_key(const Marker& marker, const std::string& key) {
  return "inlays[" + std::to_string(marker.inlay) + "]." + key;
}

void judge_inlays(const Subject& subject, Judge& judge) {
  for (const auto& [marker, inlay, pocket] : subject.simple) {
    const Let let{*marker, *inlay, pocket, inlay_name(*marker)};
    judge_piece(subject, let, judge);
    judge_slot_wall(subject, let, judge);
    judge_edge_wall(subject, let, judge);
  }
}

}  // namespace sagitta
