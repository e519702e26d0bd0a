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
  const std::size_t count = std::min(measured.size(), layout.slots.size());
  for (std::size_t i = 0; i < count; ++i) {
    const FretLine& line = layout.frets[static_cast<std::size_t>(layout.slots[i].fret)];
    const double x = line.middle.x, found = measured[i];
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

}  // namespace sagitta
