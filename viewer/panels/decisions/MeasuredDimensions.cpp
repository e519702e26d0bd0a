#include <cmath>

#include "decisions/Sketch.hpp"
#include "frets/SlotCheck.hpp"
#include "inlaid/ChipCover.hpp"

namespace sagitta::viewer {

namespace {

/// The first slot, the last one measured and the one that is furthest off.
void slots(Sketch& s) {
  const std::vector<SlotError> errors = slot_errors(s.board.measured.slots, s.layout);
  std::size_t worst = 0;
  for (std::size_t i = 0; i < errors.size(); ++i)
    if (std::abs(errors[i].off) > std::abs(errors[worst].off)) worst = i;
  for (std::size_t i = 0; i < errors.size(); ++i)
    if (i == 0 || i == worst || i + 1 == errors.size())
      s.note(s.on(s.board.measured.slots[i], 0, 1),
             "slot " + std::to_string(errors[i].fret) + ": " + s.mm(errors[i].off) + " off");
}

void chips(Sketch& s) {
  for (const Chip& chip : chips_of(s.board)) {
    const Point m = chip.middle;
    s.between(s.on(m.x - chip.radius, m.y), s.on(m.x + chip.radius, m.y), "chip \u00f8 " + s.mm(2 * chip.radius));
  }
}

}  // namespace

void dimension_measured(Sketch& s, const std::string& key) {
  const Measured& m = s.board.measured;
  const Layout& l = s.layout;
  if (key == "measured.slots" && !m.slots.empty()) return slots(s);
  if (key == "measured.slot_width" && !l.slots.empty()) {
    const Slot& slot = l.slots[l.slots.size() / 2];
    return s.note(s.on((slot.bass_end.x + slot.treble_end.x) / 2, 0, 1), s.named(key));
  }
  if (key == "measured.widths" && !m.widths.empty()) {
    for (const auto& [x, width] : m.widths) s.between(s.on(x, -l.edge(0, x)), s.on(x, l.edge(1, x)), s.mm(width));
    return;
  }
  if (key == "measured.thickness" && !m.thickness.empty()) {
    for (const auto& [x, across, thickness] : m.thickness) {
      const double y = s.board.hand == Hand::left ? -across : across;
      s.between(s.at(x, y, 0), s.at(x, y, thickness), s.mm(thickness));
    }
    return;
  }
  if (key == "measured.chips") return chips(s);
  if ((key == "measured.pocket_depths" || key == "measured.piece_thickness") && !l.markers.empty())
    return s.note(s.on(l.markers.front().centre.x, l.markers.front().centre.y, 1), s.named(key));
  const Box& b = l.blank;
  if (key == "measured.blank_thickness")
    return s.between(s.at(b.low.x, b.low.y, 0), s.at(b.low.x, b.low.y, l.blank_thickness), s.mm(l.blank_thickness));
  if (key == "measured.tape") s.note(s.at(b.low.x, b.low.y, 0), s.named(key));
}

}  // namespace sagitta::viewer
