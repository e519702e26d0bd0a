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
  /// A height that no level may have: there it would touch a scallop in its lowest place on the centre line, a saddle.
  void keep_off(double saddle) { saddles_.push_back(saddle); }
  /// What stands for a level that was added: `one_floor` away from the heights to be kept off.
  double clear(double value);
  /// How far a height was moved, at most.
  double most_lowered();

 private:
  std::vector<double> values_, saddles_;
  double kept_off_ = 0;  ///< how far a level was moved from a saddle at most
  bool sorted_ = false;
};

}  // namespace sagitta
