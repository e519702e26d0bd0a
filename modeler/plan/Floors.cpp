#include "plan/Floors.hpp"

#include <algorithm>

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

double Floors::most_lowered() {
  double most = 0;
  for (std::size_t i = 0; i < values_.size(); ++i) most = std::max(most, values_[i] - canonical(values_[i]));
  return most;
}

}  // namespace sagitta
