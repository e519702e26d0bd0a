#pragma once

/// Arcs that follow each other with one tangent, as one curve of the plane.

#include <array>
#include <vector>

#include "plane/Plane.hpp"
#include "solid/Jet.hpp"

namespace sagitta {

/// A curve with one tangent throughout, over its length in mm: quintic Hermite segments between points of the arcs. It
/// passes through the ends of every arc and stays within 1e-8 mm of arcs whose tangents agree; where those differ by an
/// angle d, it takes their mean and departs by up to d / 16 of the longer arc.
class CompositeCurve {
 public:
  explicit CompositeCurve(const std::vector<CurveSegment>& run);

  /// Lengths at which the segments begin, and the whole. At least two.
  const std::vector<double>& spans() const { return spans_; }
  /// x and y with derivatives at length s of a span.
  std::array<Jet, 2> at(double s, std::size_t span) const;

 private:
  using Place = std::array<Jet, 2>;

  void add(const CurveSegment& segment);
  void share_tangents();

  std::vector<double> spans_{0};
  std::vector<std::array<Place, 2>> ends_;  ///< of each span
};

}  // namespace sagitta
