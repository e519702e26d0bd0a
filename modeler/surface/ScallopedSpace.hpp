#pragma once

/// A fret space that is scalloped: the playing surface moved down by depth sin^2(pi s). Lengths in mm.

#include <cmath>
#include <numbers>

namespace sagitta {

/// s runs from 0 to 1 along x, at each y, from the line x = low_at + low_lean y to the line x = high_at + high_lean y:
/// the middles of the two slots, less the lands. Height and slope join the playing surface there. T is double or a jet.
struct ScallopedSpace {
  int fret = 0;  ///< the one that ends the space
  double low_at = 0, low_lean = 0, high_at = 0, high_lean = 0;
  double depth = 0;

  template <class T>
  T width(T y) const {
    return (high_at - low_at) + (high_lean - low_lean) * y;
  }
  template <class T>
  T share(T x, T y) const {
    return (x - (low_at + low_lean * y)) / width(y);
  }
  /// Where the share is s.
  double x(double s, double y) const { return low_at + low_lean * y + s * width(y); }
  /// How far the space lies under the playing surface.
  template <class T>
  T below(T x, T y) const {
    using std::sin;
    const T wave = sin(std::numbers::pi * share(x, y));
    return depth * (wave * wave);
  }
  friend bool operator==(const ScallopedSpace&, const ScallopedSpace&) = default;
};

}  // namespace sagitta
