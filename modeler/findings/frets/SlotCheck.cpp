#include "frets/SlotCheck.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {

double cents_per_tenth(const Layout& layout, int fret) {
  const FretLine& line = layout.frets[static_cast<std::size_t>(fret)];
  const double left = std::min(line.bass_to_saddle, line.treble_to_saddle);
  return 1200 * std::log2(left / (left - 0.1));
}

std::vector<SlotError> slot_errors(const std::vector<double>& measured, const Layout& layout) {
  std::vector<SlotError> errors;
  auto next = measured.begin();
  for (const Slot& slot : layout.slots) {
    if (slot.part > 0) continue;
    if (next == measured.end()) break;
    const FretLine& line = layout.frets[static_cast<std::size_t>(slot.fret)];
    const double x = line.middle.x, found = *next++;
    const double left = layout.mean_scale - x;
    const double cents = 1200 * std::log2(left / (left - (found - x)));
    errors.push_back({line.fret, x, found, found - x, cents});
  }
  return errors;
}

SlotDrift slot_drift(const std::vector<SlotError>& errors) {
  if (errors.size() < 3) return {};
  double x = 0, off = 0;
  for (const SlotError& error : errors) x += error.place, off += error.off;
  x /= static_cast<double>(errors.size()), off /= static_cast<double>(errors.size());
  double xx = 0, xo = 0;
  for (const SlotError& error : errors)
    xx += (error.place - x) * (error.place - x), xo += (error.place - x) * (error.off - off);
  return {xo / xx, errors.back().place - errors.front().place};
}

int slots_to_measure(const Layout& layout) {
  return static_cast<int>(
      std::count_if(layout.slots.begin(), layout.slots.end(), [](const Slot& slot) { return slot.part == 0; }));
}

}  // namespace sagitta
