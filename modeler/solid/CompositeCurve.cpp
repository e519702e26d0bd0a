#include "solid/CompositeCurve.hpp"

#include <algorithm>

#include "solid/Hermite.hpp"

namespace sagitta {
namespace {

constexpr double aim = 1e-8;  // mm

/// Parts of an arc whose quintics stay within the aim: R angle^6 / 46080, the remainder of two-point Hermite
/// interpolation, f(6) h^6 / (6! 2^6).
int parts_of(const CurveSegment& segment) {
  if (!segment.is_arc()) return 1;
  const double widest = std::pow(46080 * aim / segment.radius, 1.0 / 6);
  return std::max(1, static_cast<int>(std::ceil(std::abs(segment.sweep) / widest)));
}

}  // namespace

CompositeCurve::CompositeCurve(const std::vector<CurveSegment>& run) {
  for (const CurveSegment& segment : run) add(segment);
  share_tangents();
}

void CompositeCurve::add(const CurveSegment& segment) {
  const int parts = parts_of(segment);
  const double size = segment.length(), from = spans_.back();
  const double bend = segment.is_arc() ? (segment.sweep > 0 ? 1 : -1) / segment.radius : 0;
  const auto place = [&](double t) {
    const Point p = segment.at(t), along = unit(segment.slope(t)), inward = bend * left_of(along);
    return Place{Jet{p.x, along.x, inward.x}, Jet{p.y, along.y, inward.y}};
  };
  for (int i = 0; i < parts; ++i) {
    ends_.push_back({place(1.0 * i / parts), place((i + 1.0) / parts)});
    spans_.push_back(from + size * (i + 1) / parts);
  }
}

/// Where two segments meet, both get the same slope.
void CompositeCurve::share_tangents() {
  for (std::size_t i = 0; i + 1 < ends_.size(); ++i) {
    Place &in = ends_[i][1], &out = ends_[i + 1][0];
    const Point shared = unit(Point{in[0].d + out[0].d, in[1].d + out[1].d});
    in[0].d = out[0].d = shared.x;
    in[1].d = out[1].d = shared.y;
  }
}

std::array<Jet, 2> CompositeCurve::at(double s, std::size_t span) const {
  const double h = spans_[span + 1] - spans_[span];
  const auto& [from, to] = ends_[span];
  Place place;
  for (std::size_t k = 0; k < 2; ++k) place[k] = hermite(from[k], to[k], h, (s - spans_[span]) / h);
  return place;
}

}  // namespace sagitta
