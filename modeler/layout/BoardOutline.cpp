#include "layout/BoardOutline.hpp"

#include <algorithm>
#include <limits>

#include "layout/HeelEnd.hpp"
#include "layout/Measure.hpp"
#include "layout/SlotLines.hpp"
#include "layout/TongueOutline.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Wood between a slot and a straight end; negative when the slot reaches over it.
double wood_to_line(const RoundedPolygon& slot, const CurveSegment& end) {
  const Point outward = unit(-1.0 * left_of(end.b - end.a));
  return dot(outward, end.a) - support(slot, outward);
}

/// The same for an arc of the heel end. Counter-clockwise: the wood lies inside the circle, which counts where the arc
/// itself runs and beyond its chord (on a widening board a slanted slot can pass the arc's end); clockwise: outside it.
double wood_to_arc(const RoundedPolygon& slot, const CurveSegment& end) {
  if (end.sweep < 0) return distance(slot, RoundedPolygon{{end.centre}, end.radius});
  double least = std::min(distance(slot, RoundedPolygon{{end.a}, 0}), distance(slot, RoundedPolygon{{end.b}, 0}));
  for (Point p : slot.core) {
    const bool ahead = cross(end.a - end.centre, p - end.centre) >= 0 && cross(p - end.centre, end.b - end.centre) >= 0;
    const bool beyond_chord = cross(end.b - end.a, p - end.a) <= 0;
    if (ahead || beyond_chord) least = std::min(least, end.radius - distance(p, end.centre) - slot.radius);
  }
  return least;
}

double wood_to(const RoundedPolygon& slot, const CurveSegment& end) {
  return end.is_arc() ? wood_to_arc(slot, end) : wood_to_line(slot, end);
}

/// How far a piece of an end must move along the board to clear the slot.
double shift_needed(const RoundedPolygon& slot, const CurveSegment& end) {
  if (!end.is_arc()) return -wood_to_line(slot, end) / std::abs(unit(left_of(end.b - end.a)).x);
  double most = 0;
  for (Point p : slot.core) {
    const double reach = std::sqrt(std::max(0.0, end.radius * end.radius - p.y * p.y));
    most = std::max(most, p.x + slot.radius - (end.centre.x + (end.sweep > 0 ? reach : -reach)));
  }
  return most;
}

std::string overlap(const Board& board, double wood) {
  return wood < -tolerance::snap ? " by " + in_units(board, -wood) : std::string(": they touch");
}

std::string larger(const Board& board, const char* key, double now, double shift) {
  return std::string("make ") + key + " larger than " + in_units_up(board, now + std::max(0.0, shift));
}

/// A piece of an end and the wood that a slot leaves before it.
struct Contact {
  double wood = std::numeric_limits<double>::infinity();
  const CurveSegment* segment = nullptr;
  bool corner = false;
};

/// Whether the end may lie about the slot in any way: a drawn one, or a straight one beside a tongue.
bool bends(const Board& board, const Slot& slot) {
  return board.board.heel == Heel::drawn || (board.tongue && !slot.on_tongue);
}

Fault heel_fault(const Board& board, const Slot& slot, const RoundedPolygon& shape, const Contact& at) {
  if (slot.on_tongue)
    return {FaultCode::slot_at_end, at.corner ? "tongue.corner_radius" : "tongue.past_last_fret",
            slot_name(slot) + " meets the end of the tongue" + overlap(board, at.wood),
            at.corner ? "use a smaller tongue.corner_radius, or make tongue.past_last_fret larger"
                      : "make tongue.past_last_fret larger by " + in_units_up(board, shift_needed(shape, *at.segment)),
            id_of(slot)};
  if (at.corner)
    return {FaultCode::slot_at_end, "board.corner_radius",
            slot_name(slot) + " meets the rounded corner of the heel end" + overlap(board, at.wood),
            "use a corner_radius smaller than " + in_units_down(board, board.board.corner_radius) +
                ", or make board.past_last_fret larger",
            id_of(slot)};
  return {FaultCode::slot_at_end, "board.past_last_fret",
          slot_name(slot) + " meets the heel end of the board" + overlap(board, at.wood),
          bends(board, slot)
              ? "make board.past_last_fret larger"
              : larger(board, "board.past_last_fret", board.board.past_last_fret, shift_needed(shape, *at.segment)),
          id_of(slot)};
}

/// The corner of a round heel begins before the heel's own arc: it may take up to the slot's width off the ends of a
/// through slot.
double corner_wood(const Board& board, const Slot& slot, double wood) {
  const bool round = board.board.heel == Heel::arc || board.board.heel == Heel::hollow;
  return round && !slot.blind ? wood + slot.width : wood;
}

/// The outline's pieces between the two long edges, in its order: of the heel end, corner arcs included, with the
/// tongue's side, and of the tongue's end.
struct EndPieces {
  Loop heel, tongue;
};

EndPieces end_pieces(const Layout& layout) {
  const Loop all(layout.outline.begin() + 1, layout.outline.end() - 2);
  if (!layout.tongue) return {all, {}};
  const Point inner = layout.tongue->bass_side.a, way = unit(layout.tongue->bass_side.b - inner);
  const auto is_side = [&](const CurveSegment& piece) {
    if (piece.is_arc() || (piece.a != inner && piece.b != inner)) return false;
    return dot(way, unit((piece.a == inner ? piece.b : piece.a) - inner)) > 1 - tolerance::same;
  };
  const auto side = std::find_if(all.begin(), all.end(), is_side);
  if (side->a == inner) return {{all.begin(), side + 1}, {side + 1, all.end()}};
  return {{side, all.end()}, {all.begin(), side}};
}

/// Chords that stand for pieces of an end, within tolerance::vertex of them.
Loop chords_of(const Loop& pieces) {
  Loop chords;
  for (const CurveSegment& piece : pieces) {
    // A chord of half the angle f lies r (1 - cos f), nearly r f^2 / 2, off its arc.
    const double step = piece.is_arc() ? 2 * std::sqrt(2 * tolerance::vertex / piece.radius) : 1;
    const int count = piece.is_arc() ? 1 + static_cast<int>(std::abs(piece.sweep) / step) : 1;
    for (int i = 0; i < count; ++i) chords.push_back(line(piece.at(1.0 * i / count), piece.at(1.0 * (i + 1) / count)));
  }
  return chords;
}

/// Wood between a slot and such an end.
Contact nearest_bent(const Layout& layout, const Loop& pieces, const RoundedPolygon& shape) {
  Contact found;
  for (const CurveSegment& piece : pieces)
    for (const CurveSegment& chord : chords_of({piece})) {
      const double wood = distance(shape, RoundedPolygon{{chord.a, chord.b}, 0});
      if (wood < found.wood) found = {wood, &piece, false};
    }
  Point middle;
  for (const Point p : shape.core) middle = middle + 1.0 / static_cast<double>(shape.core.size()) * p;
  if (winding(layout.outline, middle) == 0) found.wood = -std::abs(found.wood);
  return found;
}

/// `pieces`: those of the end that the slot lies before.
Contact nearest(const Board& board, const Layout& layout, const Loop& pieces, const Slot& slot,
                const RoundedPolygon& shape) {
  if (bends(board, slot)) return nearest_bent(layout, pieces, shape);
  Contact found;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const CurveSegment& segment = pieces[i];
    const bool corner = pieces.size() > 1 && (i == 0 || i + 1 == pieces.size()) && segment.is_arc();
    const double wood = corner ? corner_wood(board, slot, wood_to(shape, segment)) : wood_to(shape, segment);
    if (wood < found.wood) found = {wood, &segment, corner};
  }
  return found;
}

}  // namespace

EndWood wood_behind(const Board& board, const Layout& layout, const Slot& slot) {
  constexpr int stations = 64;  // along the slot, for the place only
  const EndPieces ends = end_pieces(layout);
  const Loop& pieces = slot.on_tongue ? ends.tongue : ends.heel;
  const bool bent = bends(board, slot);
  const auto wood_before = [&](const Loop& some, const RoundedPolygon& shape) {
    if (bent) return nearest_bent(layout, some, shape);
    Contact found;
    for (const CurveSegment& piece : some)
      if (const double wood = wood_to(shape, piece); wood < found.wood) found = {wood, &piece, false};
    return found;
  };
  const Contact whole = wood_before(pieces, slot_shape(layout, slot));
  EndWood least{whole.wood, {}};
  if (!whole.segment) return least;
  const Loop one{*whole.segment};
  double nearest_way = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= stations; ++i) {
    const Point p = between(slot.bass_end, slot.treble_end, 1.0 * i / stations);
    const double way = wood_before(bent ? pieces : one, RoundedPolygon{{p}, slot.width / 2}).wood;
    if (way < nearest_way) nearest_way = way, least.at = p;
  }
  return least;
}

bool draw_outline(const Board& board, const DrawnEnd* end, const Taper& taper, Layout& layout, Faults& faults) {
  const Point low = taper.meet(0, layout.nut_end, layout.nut_direction);
  const Point high = taper.meet(1, layout.nut_end, layout.nut_direction);
  if (low.y >= 0 || high.y <= 0) {
    faults.push_back(
        {FaultCode::no_width, "board.behind_nut",
         "the board narrows to nothing before it ends, " + in_units(board, behind_nut(board)) + " behind the nut",
         "make board.behind_nut smaller"});
    return false;
  }
  const auto heel = layout.tongue ? heel_with_tongue(board, layout, taper, {low, high}, faults)
                                  : heel_end(board, layout, taper, end, {low, high}, faults);
  if (!heel) return false;
  layout.edges[0] = {low, heel->low};
  layout.edges[1] = {high, heel->high};
  layout.outline.push_back(line(low, heel->low));
  layout.outline.insert(layout.outline.end(), heel->pieces.begin(), heel->pieces.end());
  layout.outline.push_back(line(heel->high, high));
  layout.outline.push_back(line(high, low));
  return true;
}

void check_nut_end(const Board& board, const Layout& layout, Faults& faults) {
  const CurveSegment& nut_end = layout.outline.back();
  for (const Slot& slot : layout.slots) {
    const RoundedPolygon shape = slot_shape(layout, slot);
    const double wood = wood_to(shape, nut_end);
    if (wood > tolerance::snap) break;
    faults.push_back({FaultCode::slot_at_end, "board.behind_nut",
                      slot_name(slot) + " meets the nut end of the board" + overlap(board, wood),
                      larger(board, "board.behind_nut", behind_nut(board), shift_needed(shape, nut_end)), id_of(slot)});
  }
}

void check_ends(const Board& board, const Layout& layout, Faults& faults) {
  check_nut_end(board, layout, faults);
  const EndPieces ends = end_pieces(layout);
  for (const bool on_tongue : {true, false})
    for (auto slot = layout.slots.rbegin(); slot != layout.slots.rend(); ++slot) {
      if (slot->on_tongue != on_tongue || (board.board.ends_cut_slots && !on_tongue)) continue;
      const RoundedPolygon shape = slot_shape(layout, *slot);
      const Contact at = nearest(board, layout, on_tongue ? ends.tongue : ends.heel, *slot, shape);
      if (at.wood > tolerance::snap && !bends(board, *slot)) break;
      if (at.wood <= tolerance::snap) faults.push_back(heel_fault(board, *slot, shape, at));
    }
}

}  // namespace sagitta
