#pragma once

/// Slots as measured after cutting, and how much a fret's place matters. Lengths in mm.

#include <vector>

#include "board/Board.hpp"
#include "layout/Layout.hpp"

namespace sagitta {

/// Pitch error of a fret that stands 0.1 mm off its place, in cents: 1200 log2 of the ratio of the string's lengths.
/// Of the shorter scale on a board with two.
double cents_per_tenth(const Layout& layout, int fret);

struct SlotError {
  int fret = 0;
  double place = 0;     ///< x where the slot's middle belongs
  double measured = 0;  ///< x where it is
  double off = 0;       ///< measured - place
  double cents = 0;     ///< of the note that it gives against the one meant; positive is sharp
};

/// One for each slot that was measured; `measured` as under measured.slots.
std::vector<SlotError> slot_errors(const std::vector<double>& measured, const Layout& layout);

/// Places that measured.slots can have: one a fret, however many parts the heel end leaves of its slot.
int slots_to_measure(const Layout& layout);

/// How the error grows: the straight line through the errors, by least squares.
struct SlotDrift {
  double per_mm = 0;  ///< growth of the error per mm of x; the machine's scale along x is off by this part
  double run = 0;     ///< first to last measured slot
  double growth() const { return per_mm * run; }
};
/// Needs three measured slots; otherwise no drift.
SlotDrift slot_drift(const std::vector<SlotError>& errors);

}  // namespace sagitta
