#pragma once

/// The straight line that fits measured values best.

#include <vector>

namespace sagitta {

/// A value y measured at x.
struct Sample {
  double x = 0, y = 0;
};

/// y = start + slope x.
struct FittedLine {
  double start = 0, slope = 0;
  double at(double x) const { return start + slope * x; }
};

/// The line of the least sum of squares of what the samples lie off it, along y; level through their mean where all lie
/// at one x. At least one sample. Closed form (normal equations about the mean): any textbook of statistics.
inline FittedLine least_squares(const std::vector<Sample>& samples) {
  double x = 0, y = 0;
  for (const Sample& sample : samples) x += sample.x, y += sample.y;
  x /= static_cast<double>(samples.size()), y /= static_cast<double>(samples.size());
  double xx = 0, xy = 0;
  for (const Sample& sample : samples) {
    xx += (sample.x - x) * (sample.x - x);
    xy += (sample.x - x) * (sample.y - y);
  }
  const double slope = xx > 0 ? xy / xx : 0;
  return {y - slope * x, slope};
}

}  // namespace sagitta
