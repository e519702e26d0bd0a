#include "neck/FaceSpans.hpp"

#include <algorithm>

namespace sagitta {
namespace {

/// Two stretches less than this apart are one: the faces of a split glue face meet within their outlines' chords. mm.
constexpr double seam = 0.02;

/// `fixed`: the coordinate that the line holds; the other of x and y is given back.
std::vector<FaceSpan> spans(const NeckOutlines& outlines, std::size_t fixed, double at) {
  const std::size_t free = 1 - fixed;
  std::vector<std::array<double, 2>> crossings;
  for (const auto& outline : outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Place3 &a = outline[i], &b = outline[i + 1 == outline.size() ? 0 : i + 1];
      if ((a[fixed] < at) == (b[fixed] < at)) continue;
      const double part = (at - a[fixed]) / (b[fixed] - a[fixed]);
      crossings.push_back({a[free] + part * (b[free] - a[free]), a[2] + part * (b[2] - a[2])});
    }
  std::sort(crossings.begin(), crossings.end());
  std::vector<FaceSpan> found;
  for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
    const FaceSpan span{crossings[i][0], crossings[i + 1][0], crossings[i][1], crossings[i + 1][1]};
    if (!found.empty() && span.low - found.back().high < seam)
      found.back().high = span.high, found.back().high_z = span.high_z;
    else
      found.push_back(span);
  }
  return found;
}

}  // namespace

std::vector<FaceSpan> spans_at(const NeckOutlines& outlines, double x) { return spans(outlines, 0, x); }
std::vector<FaceSpan> spans_along(const NeckOutlines& outlines, double y) { return spans(outlines, 1, y); }

}  // namespace sagitta
