#include "plan/Floors.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {

double Floors::canonical(double value) {
  if (!sorted_) {
    std::sort(values_.begin(), values_.end());
    sorted_ = true;
  }
  auto at = std::lower_bound(values_.begin(), values_.end(), value);
  if (at == values_.end() || *at > value) return value;
  while (at != values_.begin() && *at - *(at - 1) <= one_floor) --at;
  return *at;
}

double Floors::clear(double value) {
  const double level = canonical(value);
  for (const double saddle : saddles_) {
    if (std::abs(level - saddle) >= one_floor) continue;
    const double away = level > saddle ? saddle + one_floor : saddle - one_floor;
    kept_off_ = std::max(kept_off_, std::abs(away - level));
    return away;
  }
  return level;
}

double Floors::most_lowered() {
  double most = kept_off_;
  for (std::size_t i = 0; i < values_.size(); ++i) most = std::max(most, values_[i] - canonical(values_[i]));
  return most;
}

}  // namespace sagitta
