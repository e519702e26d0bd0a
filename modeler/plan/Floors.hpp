#pragma once

/// Heights of floors that are close enough to be one.

#include <vector>

#include "plane/Tolerance.hpp"

namespace sagitta {

/// Floors up to this far apart are one: a mesh makes one point of heights within twice tolerance::height. mm.
inline constexpr double one_floor = 3 * tolerance::height;

/// Heights of floors, mm. Those closer than `one_floor` stand for the least of them.
class Floors {
 public:
  void add(double value) { values_.push_back(value); }
  /// What stands for a height that was added.
  double canonical(double value);
  /// How far the least of a group lies under another of it, at most.
  double most_lowered();

 private:
  std::vector<double> values_;
  bool sorted_ = false;
};

}  // namespace sagitta
