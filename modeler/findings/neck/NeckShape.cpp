#include "neck/NeckShape.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Stations along the neck between its corners.
constexpr int stations = 64;
/// How far from a corner to look: at the corner itself the outline has two places across. mm.
constexpr double beside = 1e-3;

struct Span {
  double low = std::numeric_limits<double>::infinity(), high = -std::numeric_limits<double>::infinity();
  void add(double value) { low = std::min(low, value), high = std::max(high, value); }
};

Span along(const NeckShape& shape) {
  Span span;
  for (const auto& outline : shape.outlines)
    for (const Place3& place : outline) span.add(place[0]);
  return span;
}

/// Where the glue face's outlines cross the line of this x: y and z, in order of y.
std::vector<std::array<double, 2>> across(const NeckShape& shape, double x) {
  std::vector<std::array<double, 2>> crossings;
  for (const auto& outline : shape.outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Place3 &a = outline[i], &b = outline[(i + 1) % outline.size()];
      if ((a[0] < x) == (b[0] < x)) continue;
      const double part = (x - a[0]) / (b[0] - a[0]);
      crossings.push_back({a[1] + part * (b[1] - a[1]), a[2] + part * (b[2] - a[2])});
    }
  std::sort(crossings.begin(), crossings.end());
  return crossings;
}

/// The stretch of x where both board and neck have straight sides.
Span shared(const NeckShape& shape, const Layout& layout) {
  Span span = along(shape);
  for (const LineSegment& edge : layout.edges) {
    span.low = std::max(span.low, std::min(edge.a.x, edge.b.x));
    span.high = std::min(span.high, std::max(edge.a.x, edge.b.x));
  }
  span.low += beside, span.high -= beside;
  return span;
}

}  // namespace

GluePlane glue_plane(const NeckShape& shape) {
  // Normal equations about the middle of the corners, so that they stay well conditioned.
  double n = 0, mx = 0, my = 0, mz = 0;
  for (const auto& outline : shape.outlines)
    for (const Place3& p : outline) n += 1, mx += p[0], my += p[1], mz += p[2];
  if (n < 3) return {};
  mx /= n, my /= n, mz /= n;
  double xx = 0, xy = 0, yy = 0, xz = 0, yz = 0;
  for (const auto& outline : shape.outlines)
    for (const Place3& p : outline) {
      const double x = p[0] - mx, y = p[1] - my, z = p[2] - mz;
      xx += x * x, xy += x * y, yy += y * y, xz += x * z, yz += y * z;
    }
  const double whole = xx * yy - xy * xy;
  if (whole <= tolerance::same) return {mz, 0, 0};
  const double a = (xz * yy - yz * xy) / whole, b = (yz * xx - xz * xy) / whole;
  return {mz - a * mx - b * my, a, b};
}

double glue_twist(const NeckShape& shape, const Layout& layout) {
  const Span span = shared(shape, layout);
  if (span.low >= span.high) return 0;
  const auto nut = across(shape, span.low), heel = across(shape, span.high);
  if (nut.size() < 2 || heel.size() < 2) return 0;
  return (heel.back()[1] - heel.front()[1]) - (nut.back()[1] - nut.front()[1]);
}

std::vector<Overlap> overlaps(const NeckShape& shape, const Layout& layout) {
  const Span span = shared(shape, layout);
  std::vector<double> places;
  for (int i = 0; i <= stations; ++i) places.push_back(span.low + (span.high - span.low) * i / stations);
  for (const auto& outline : shape.outlines)
    for (const Place3& p : outline)
      for (const double x : {p[0] - beside, p[0] + beside})
        if (x > span.low && x < span.high) places.push_back(x);
  std::vector<Overlap> found;
  if (span.low >= span.high) return found;
  for (const double x : places) {
    const auto ys = across(shape, x);
    if (ys.size() < 2) continue;
    found.push_back({x, -1, -ys.front()[0] - layout.edge(0, x)});
    found.push_back({x, +1, ys.back()[0] - layout.edge(1, x)});
  }
  return found;
}

std::optional<FoundChannel> channel_in(const NeckShape& shape) {
  const Span span = along(shape);
  std::optional<FoundChannel> found;
  Span length;
  std::vector<double> places;
  for (const auto& outline : shape.outlines)
    for (const Place3& p : outline)
      for (const double x : {p[0] - beside, p[0] + beside}) places.push_back(x);
  for (int i = 1; i < stations; ++i) places.push_back(span.low + (span.high - span.low) * i / stations);
  for (const double x : places) {
    const auto ys = across(shape, x);
    if (ys.size() < 4) continue;
    const double width = ys[ys.size() - 2][0] - ys[1][0];
    length.add(x);
    found = FoundChannel{std::max(width, found ? found->width : 0), length.low, length.high};
  }
  if (found) found->from = length.low - beside, found->to = length.high + beside;
  return found;
}

}  // namespace sagitta
