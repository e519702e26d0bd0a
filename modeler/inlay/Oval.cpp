#include "inlay/Oval.hpp"

#include <algorithm>

#include "inlay/Biarc.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

/// The ellipse with its longer axis along x, from the touching point of the disc at its right end to that at its left.
struct Lying {
  double a, b, r;

  /// The disc's middle, from the ellipse's: a disc about (c, 0) touches the ellipse at x = c a^2 / (a^2 - b^2), where
  /// it measures r^2 = b^2 (1 - c^2 / (a^2 - b^2)).
  double end() const { return std::sqrt((a * a - b * b) * std::max(0.0, 1 - r * r / (b * b))); }
  /// The ellipse's parameter where the disc touches it; 0: at its very end.
  double touch() const {
    if (whole()) return 0;
    return std::acos(std::clamp(end() * a / (a * a - b * b), 0.0, 1.0));
  }
  bool whole() const { return r <= b * b / a + tolerance::same; }

  /// Of the curve moved out by `off`.
  Point at(double t, double off) const { return Point{a * std::cos(t), b * std::sin(t)} + off * normal(t); }
  Point normal(double t) const { return unit({b * std::cos(t), a * std::sin(t)}); }
  Point tangent(double t) const { return left_of(normal(t)); }
};

/// Two arcs over a stretch of the curve.
std::vector<CurveSegment> stretch(const Lying& oval, double off, double t0, double t1) {
  return biarc(oval.at(t0, off), oval.tangent(t0), oval.at(t1, off), oval.tangent(t1), 1, tolerance::same);
}

double strays(const Lying& oval, double off, double t0, double t1) {
  constexpr int looks = 8;
  const std::vector<CurveSegment> arcs = stretch(oval, off, t0, t1);
  double most = 0;
  for (int i = 1; i < looks; ++i) most = std::max(most, off_chain(arcs, oval.at(t0 + (t1 - t0) * i / looks, off)));
  return most;
}

/// Where the stretches of the quarter from the right to the top meet: each as long as it may be.
std::vector<double> quarter(const Lying& oval, double off, double stray) {
  constexpr double longest = pi / 4, longer = 1.5, shorter = 0.95;
  std::vector<double> ends{oval.touch()};
  double step = longest;
  while (ends.back() < pi / 2 - tolerance::same) {
    const double from = ends.back(), left = pi / 2 - from;
    step = std::min({left, longest, longer * step});
    while (strays(oval, off, from, from + step) > stray) step *= shorter;
    if (step < left) step = std::min(step, left / 2);  // no stretch is left that is much shorter than the others
    ends.push_back(step < left ? from + step : pi / 2);
  }
  return ends;
}

/// The upper half, from the right to the left, in stretches that are alike on both sides.
Loop upper_half(const Lying& oval, double off, double stray) {
  std::vector<double> ends = quarter(oval, off, stray);
  for (std::size_t i = ends.size() - 1; i-- > 0;) ends.push_back(pi - ends[i]);
  Loop half;
  for (std::size_t i = 0; i + 1 < ends.size(); ++i)
    for (const CurveSegment& arc : stretch(oval, off, ends[i], ends[i + 1])) half.push_back(arc);
  return half;
}

CurveSegment turned_half(const CurveSegment& segment) {
  const auto about = [](Point p) { return -1.0 * p; };
  CurveSegment image = segment;
  image.a = about(segment.a), image.b = about(segment.b), image.centre = about(segment.centre), image.start += pi;
  return image;
}

CurveSegment turned_quarter(const CurveSegment& segment) {
  CurveSegment image = segment;
  image.a = left_of(segment.a), image.b = left_of(segment.b), image.centre = left_of(segment.centre),
  image.start += pi / 2;
  return image;
}

Lying lying(const Oval& oval) { return {std::max(oval.x, oval.y), std::min(oval.x, oval.y), oval.cutter}; }

}  // namespace

bool Oval::empty() const { return cutter > std::min(x, y) || !(std::min(x, y) > 0); }

bool Oval::whole() const { return lying(*this).whole(); }

double Oval::off_ends() const {
  const Lying own = lying(*this);
  return own.whole() ? 0 : own.a - own.end() - own.r;
}

Loop Oval::outline(double off, double stray) const {
  const Lying own = lying(*this);
  if (own.a - own.b < tolerance::same) return circle({}, own.a + off);
  Loop half = upper_half(own, off, stray);
  if (!own.whole()) {
    const Point out = own.normal(own.touch());
    const double angle = std::atan2(out.y, out.x);
    const Point left = half.empty() ? own.at(pi - own.touch(), off) : half.back().b;
    half.push_back(arc_between({-own.end(), 0}, own.r + off, left, {left.x, -left.y}, true));
    half.back().sweep = 2 * angle;
  }
  Loop loop = half;
  for (const CurveSegment& segment : half) loop.push_back(turned_half(segment));
  for (std::size_t i = 0; i < loop.size(); ++i) loop[i].b = loop[(i + 1) % loop.size()].a;
  if (y > x)
    for (CurveSegment& segment : loop) segment = turned_quarter(segment);
  return loop;
}

}  // namespace sagitta
