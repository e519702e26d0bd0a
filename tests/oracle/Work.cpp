#include "oracle/Work.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "board/CutSide.hpp"
#include "oracle/Pocket.hpp"

namespace sagitta::oracle {
namespace {

constexpr double pi = std::numbers::pi;

/// The operations that are done when the stage is reached.
std::vector<Operation> done_at(const Board& board, Stage stage) {
  if (stage == Stage::blank) return {};
  if (stage == Stage::finished) return board.order;
  const Operation last = stage == Stage::pocketed      ? Operation::pockets
                         : stage == Stage::radiused    ? Operation::radius
                         : stage == Stage::slotted     ? Operation::slots
                         : stage == Stage::thicknessed ? Operation::thickness
                                                       : Operation::outline;
  const auto end = std::find(board.order.begin(), board.order.end(), last);
  return {board.order.begin(), end == board.order.end() ? end : end + 1};
}

/// What lies between two parallel lines, `from` and `to` measured to the left of the line through p along d, within the
/// box.
std::vector<Point> band(const Box& box, Point p, Point d, double from, double to) {
  const Point n = left_of(d);
  const std::vector<Point> all{box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
  const Point a = p + from * n, b = p + to * n;
  return left_part(left_part(all, a, a + d), b + d, b);
}

/// A straight slot with round ends, tips at a and b.
Loop stadium(Point a, Point b, double width) {
  const double r = width / 2;
  const Point d = unit(b - a), side = r * left_of(d);
  const Point ca = a + r * d, cb = b - r * d;
  const double angle = std::atan2(d.y, d.x);
  CurveSegment at_b = arc(cb, r, angle - pi / 2, pi), at_a = arc(ca, r, angle + pi / 2, pi);
  at_b.a = cb - side, at_b.b = cb + side, at_a.a = ca + side, at_a.b = ca - side;
  return {line(ca - side, cb - side), at_b, line(cb + side, ca + side), at_a};
}

/// The parts of a segment that lie at least `low` along n, a unit vector, in order.
std::vector<CurveSegment> beyond(const CurveSegment& segment, Point n, double low) {
  std::vector<double> cuts{0, 1};
  if (segment.is_arc()) {
    const double cosine = std::clamp((low - dot(n, segment.centre)) / segment.radius, -1.0, 1.0);
    for (const double away : {-std::acos(cosine), std::acos(cosine)})
      for (int turn = -2; turn <= 2; ++turn)
        cuts.push_back((std::atan2(n.y, n.x) + away + 2 * pi * turn - segment.start) / segment.sweep);
  } else if (dot(n, segment.b - segment.a) != 0) {
    cuts.push_back((low - dot(n, segment.a)) / dot(n, segment.b - segment.a));
  }
  std::sort(cuts.begin(), cuts.end());
  std::vector<CurveSegment> parts;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    const double from = std::max(cuts[i], 0.0), to = std::min(cuts[i + 1], 1.0);
    if (to <= from || dot(n, segment.at((from + to) / 2)) < low) continue;
    parts.push_back(segment.is_arc() ? arc(segment.centre, segment.radius, segment.start + from * segment.sweep,
                                           (to - from) * segment.sweep)
                                     : line(segment.at(from), segment.at(to)));
  }
  return parts;
}

/// A convex loop without what lies less than `low` along n.
Loop clipped(const Loop& loop, Point n, double low) {
  constexpr double gap = 1e-9;
  Loop kept;
  for (const CurveSegment& segment : loop)
    for (const CurveSegment& part : beyond(segment, n, low)) {
      if (!kept.empty() && distance(kept.back().b, part.a) > gap) kept.push_back(line(kept.back().b, part.a));
      kept.push_back(part);
    }
  if (!kept.empty() && distance(kept.back().b, kept.front().a) > gap)
    kept.push_back(line(kept.back().b, kept.front().a));
  return kept;
}

/// What of a slot lies within the strip that is machined: on a line that the heel end cuts it may run beyond it.
Loop within(Loop loop, const Box& strip) {
  const Box box = bounds(loop);
  if (box.low.x < strip.low.x) loop = clipped(loop, {1, 0}, strip.low.x);
  if (box.high.x > strip.high.x) loop = clipped(loop, {-1, 0}, -strip.high.x);
  if (box.low.y < strip.low.y) loop = clipped(loop, {0, 1}, strip.low.y);
  if (box.high.y > strip.high.y) loop = clipped(loop, {0, -1}, -strip.high.y);
  return loop;
}

void add_slots(const Board& board, const Layout& layout, Work& work) {
  const double depth = slot_depth(board);
  const bool level = board.slots.floor == SlotFloor::level;
  for (const Slot& slot : layout.slots) {
    if (slot.part > 0) continue;  // the first part stands for the whole slot: the outline cuts the rest
    const double half = slot.width / 2;
    const FretLine& fret = layout.frets[static_cast<std::size_t>(slot.fret)];
    const Point along = unit(slot.treble_end - slot.bass_end), left = board.slots.edge_left * along;
    std::vector<Point> strip = band(layout.strip, slot.bass_end, along, -half, half);
    if (slot.on_tongue) {
      const LineSegment& side = layout.tongue->bass_side;
      const bool bass_low = along.y > 0;
      strip = left_part(strip, bass_low ? side.a : side.b, bass_low ? side.b : side.a);
    }
    const Loop region = slot.blind
                            ? within(stadium(fret.bass_edge + left, fret.treble_edge - left, slot.width), layout.strip)
                            : polygon_loop(strip);
    work.cuts.push_back({region, level ? Cut::Floor::level : Cut::Floor::arc,
                         level ? board.board.thickness - depth : depth, "slot " + std::to_string(slot.fret)});
  }
  if (!layout.nut) return;
  const NutGround& nut = *layout.nut;
  const Point d = nut.direction.y >= 0 ? nut.direction : -1.0 * nut.direction;  // left of it lies behind the nut
  const double back = nut.shelf ? 1e4 : dot(nut.back - nut.face, left_of(d));
  const bool arc = board.nut.floor == NutFloor::arc;
  work.cuts.push_back({polygon_loop(band(layout.strip, nut.face, d, 0, back)),
                       arc ? Cut::Floor::arc : Cut::Floor::level, arc ? nut.depth : board.board.thickness - nut.depth,
                       "nut"});
}

void add_pockets(const Board& board, const Layout& layout, Work& work) {
  for (const Marker& marker : layout.markers) {
    const double floor = board.board.thickness - board.inlays[static_cast<std::size_t>(marker.inlay)].depth;
    const Loop pocket = pocket_of(board, marker);
    if (!pocket.empty())
      work.cuts.push_back({pocket, Cut::Floor::level, floor, "pocket " + std::to_string(marker.fret)});
  }
}

/// The builder's own cuts: from the top and right through, or from below.
void add_own_cuts(const Board& board, bool from_below, Work& work) {
  for (const sagitta::Cut& own : board.cuts) {
    if (is_from_below(own) != from_below) continue;
    const double z = is_through(own) ? 0 : from_below ? own.depth : board.board.thickness - own.depth;
    (from_below ? work.hollows : work.cuts).push_back({cut_outline_of(board, own), Cut::Floor::level, z, own.name});
  }
}

void add_binding(const Board& board, const Layout& layout, Work& work) {
  if (!board.binding) return;
  double ledge = board.binding->width;
  for (const double line : board.binding->lines) ledge += line;
  for (int side = 0; side < 2; ++side) {
    LineSegment edge = layout.edges[side];
    if ((edge.b.x > edge.a.x) != (side == 0)) std::swap(edge.a, edge.b);  // the wood to the left
    const Loop region = polygon_loop(band(layout.strip, edge.a, unit(edge.b - edge.a), -1e3, ledge));
    const bool all = board.binding->height == 0;
    work.cuts.push_back(
        {region, all ? Cut::Floor::level : Cut::Floor::arc, all ? 0 : board.binding->height, "binding"});
  }
}

void cut_outline(const Board& board, const Layout& layout, Work& work) {
  work.outline = layout.outline;
  add_binding(board, layout, work);
  work.pins = layout.pins;
  add_own_cuts(board, true, work);
  if (board.side_dots && board.side_dots->in == DotIn::binding) return;
  for (const SideDot& dot : layout.side_dots) work.holes.push_back({dot, work.surface.height(dot.mouth) / 2});
}

Loop box_loop(const Box& box) {
  return polygon_loop({box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}});
}

}  // namespace

Work work_at(const Board& board, const Layout& layout, const Surface& surface, Stage stage) {
  Work work{surface, box_loop(layout.blank), layout.blank_thickness, {}, {}, {}, {}};
  const double left_on = stage == Stage::finished ? 0 : board.sanding;
  for (const Operation operation : done_at(board, stage)) {
    if (operation == Operation::thickness)
      work.top = board.thickness_to.value_or(board.board.thickness + board.sanding + 0.3);
    if (operation == Operation::pockets) {
      add_pockets(board, layout, work);
      add_own_cuts(board, false, work);
    }
    if (operation == Operation::radius)
      work.cuts.push_back({box_loop(layout.strip), Cut::Floor::arc, -left_on, "radius"});
    if (operation == Operation::slots) add_slots(board, layout, work);
    if (operation == Operation::outline) cut_outline(board, layout, work);
  }
  return work;
}

}  // namespace sagitta::oracle
