#include "layout/SlotParts.hpp"

#include <algorithm>

#include "layout/ChainCrossings.hpp"
#include "layout/Measure.hpp"
#include "layout/SlotLines.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// A part of a straight line, in mm from where the line begins.
struct Stretch {
  double from = 0, to = 0;
};

/// The parts of the line from a to b that lie within the outline. `end`: the outline's pieces between the two edges.
std::vector<Stretch> on_board(const Layout& layout, const Loop& end, Point a, Point b) {
  const Point along = unit(b - a);
  std::vector<double> stops{0, distance(a, b)};
  for (const ChainPlace& met : meetings(end, a, along))
    if (const double s = dot(met.at - a, along); s > 0 && s < stops[1]) stops.push_back(s);
  std::sort(stops.begin(), stops.end());
  std::vector<Stretch> found;
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    const double from = stops[i], to = stops[i + 1];
    if (to - from <= tolerance::snap || winding(layout.outline, a + (from + to) / 2 * along) == 0) continue;
    if (!found.empty() && from - found.back().to <= tolerance::snap)
      found.back().to = to;
    else
      found.push_back({from, to});
  }
  return found;
}

class Parter {
 public:
  Parter(const Board& board, const Layout& layout, Faults& faults) : board_(board), layout_(layout), faults_(faults) {
    end_.assign(layout.outline.begin() + 1, layout.outline.end() - 2);
  }

  /// What is left of the slot.
  std::vector<Slot> parts_of(const Slot& slot) {
    const FretLine& fret = layout_.frets[static_cast<std::size_t>(slot.fret)];
    const double left = slot.blind ? board_.slots.edge_left : 0;
    const Point a = fret.bass_edge, b = fret.treble_edge, along = unit(b - a);
    const double whole = distance(a, b);
    std::vector<Slot> parts;
    for (const Stretch& stretch : on_board(layout_, end_, a, b)) {
      Slot part = slot;
      part.bass_open = stretch.from > left + tolerance::snap;
      part.treble_open = stretch.to < whole - left - tolerance::snap;
      if (part.bass_open) part.bass_end = a + stretch.from * along;
      if (part.treble_open) part.treble_end = a + stretch.to * along;
      if (dot(part.treble_end - part.bass_end, along) <= 0) continue;
      part.part = static_cast<int>(parts.size());
      parts.push_back(part);
    }
    check(slot, parts);
    return parts;
  }

 private:
  void lose(const Slot& slot, FaultCode code, const std::string& what) {
    faults_.push_back({code, "board.past_last_fret", what,
                       "make board.past_last_fret larger, or give the board one fret less", id_of(slot)});
  }

  void check(const Slot& slot, const std::vector<Slot>& parts) {
    const std::string name = slot_name(slot);
    if (parts.empty()) return lose(slot, FaultCode::slot_lost, "the heel end leaves nothing of " + name);
    for (const Slot& part : parts) {
      const double length = distance(part.bass_end, part.treble_end);
      if (is_parted(part) && length < 2 * slot.width - tolerance::same)
        return lose(part, FaultCode::slot_lost,
                    "the heel end leaves a piece of " + name + " that is " + in_units(board_, length) +
                        " long; the least is two slot widths, " + in_units(board_, 2 * slot.width));
      if (!has_wood_beyond(part))
        return lose(part, FaultCode::slot_at_end,
                    "the heel end runs along " + name + " and leaves no wood on its bridge side");
    }
  }

  /// Whether there is wood on the side of the part that looks at the bridge.
  bool has_wood_beyond(const Slot& part) const {
    const Point along = unit(part.treble_end - part.bass_end);
    const Point aside = (part.width / 2 + tolerance::snap) * Point{along.y, -along.x};
    return !on_board(layout_, end_, part.bass_end + aside, part.treble_end + aside).empty();
  }

  const Board& board_;
  const Layout& layout_;
  Faults& faults_;
  Loop end_;
};

}  // namespace

bool is_parted(const Slot& slot) { return slot.bass_open || slot.treble_open; }

void part_slots(const Board& board, Layout& layout, Faults& faults) {
  Parter parter(board, layout, faults);
  std::vector<Slot> slots;
  for (const Slot& slot : layout.slots) {
    if (slot.on_tongue)
      slots.push_back(slot);
    else
      for (const Slot& part : parter.parts_of(slot)) slots.push_back(part);
  }
  layout.slots = std::move(slots);
}

}  // namespace sagitta
