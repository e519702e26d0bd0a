#include "rules/Subject.hpp"

#include "layout/SlotLines.hpp"
#include "plan/Feature.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {

std::optional<Fix> widened(const Subject& subject, double x, double by, const Judge& judge) {
  const Shape& shape = subject.prepared.board().board;
  // A fix is one number: it would make margins equal that are meant to differ.
  for (const auto& margin : {shape.edge_margin, shape.nut_margin, shape.heel_margin})
    if (margin && !margin->equal()) return {};
  if (shape.edge_margin) return Fix{"board.edge_margin", judge.up(shape.edge_margin->first + by / 2)};
  const bool at_nut = x <= tolerance::same;
  // The width is straight from x = 0 to the heel end: what is added at the heel is there in proportion.
  const double part = at_nut ? 1 : x / subject.prepared.layout().heel_end;
  if (shape.nut_margin && shape.heel_margin)
    return at_nut ? Fix{"board.nut_margin", judge.up(shape.nut_margin->first + by / 2)}
                  : Fix{"board.heel_margin", judge.up(shape.heel_margin->first + by / 2 / part)};
  if (shape.nut_width && shape.heel_width)
    return at_nut ? Fix{"board.nut_width", judge.up(*shape.nut_width + by)}
                  : Fix{"board.heel_width", judge.up(*shape.heel_width + by / part)};
  if (shape.nut_width && at_nut) return Fix{"board.nut_width", judge.up(*shape.nut_width + by)};
  return {};
}

std::string inlay_name(const Marker& marker) {
  return "inlay " + std::to_string(marker.inlay + 1) + " at fret " + std::to_string(marker.fret);
}

double slot_floor(const Subject& subject, Point p) {
  const double depth = slot_depth(subject.prepared.board());
  if (subject.prepared.board().slots.floor == SlotFloor::level) return subject.prepared.surface().thickness - depth;
  return subject.prepared.surface().height(p) - depth;
}

double seat_floor(const Subject& subject, Point p) {
  const Board& board = subject.prepared.board();
  const Surface& surface = subject.prepared.surface();
  return (board.nut.floor == NutFloor::arc ? surface.height(p) : surface.thickness) - board.nut.depth;
}

}  // namespace sagitta
